#include "models/assembly/bodies_archive.h"

#include "models/assembly/construct_archive.h"
#include "models/assembly/load_setup.h"
#include "models/assembly/mesh_archive.h"
#include "solver/host/side_by_side.h"

#include <fmt/format.h>
#include <boost/crc.hpp>
#include <cereal/archives/binary.hpp>

#include <array>
#include <cstdint>
#include <istream>
#include <ostream>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>

namespace gapstrain::models {

// One more whenever anything below, or in the two headers of archives, is written otherwise.
constexpr std::uint32_t archive_version = 1;

template <class Archive>
void serialize(Archive& archive, FractureEdge& edge) {
  auto& [nodes, mid_cortex, around] = edge;
  archive(nodes, mid_cortex, around);
}

template <class Archive>
void serialize(Archive& archive, PlateSample& sample) {
  auto& [nodes, likely] = sample;
  archive(nodes);
  archive_index(archive, likely);
}

template <class Archive>
void serialize(Archive& archive, PortColumns& columns) {
  auto& [name, centre, column, motions] = columns;
  archive(name, centre);
  archive_index(archive, column);
  archive_index(archive, motions);
}

template <class Archive>
void serialize(Archive& archive, GapSpot& spot) {
  auto& [proximal, distal, fracture, area, around, outer] = spot;
  archive(proximal, distal, area, around, outer);
  archive_index(archive, fracture);
}

template <class Archive>
void serialize(Archive& archive, UndersideSpot& spot) {
  auto& [plate, bone, on_plate, fragment, along, area, gap, normal] = spot;
  archive(plate, bone, along, area, gap, normal);
  archive_index(archive, on_plate);
  archive_index(archive, fragment);
}

template <class Archive>
void serialize(Archive& archive, ClampTip& tip) {
  auto& [body, port] = tip;
  archive(port);
  archive_index(archive, body);
}

namespace {

constexpr std::string_view archive_mark = "gapstrain bodies";

struct Header {
  std::array<char, archive_mark.size()> mark{};
  std::uint32_t version = 0, checksum = 0;
  std::uint64_t bytes = 0;
};

std::uint32_t checksum_of(const std::string& bytes) {
  boost::crc_32_type crc;
  crc.process_bytes(bytes.data(), bytes.size());
  return crc.checksum();
}

// A value behind a pointer to a constant one.
template <class Archive, class Value>
void put(Archive& archive, const std::shared_ptr<const Value>& value) {
  archive(*value);
}
template <class Archive, class Value>
void take(Archive& archive, std::shared_ptr<const Value>& value) {
  auto read = std::make_shared<Value>();
  archive(*read);
  value = std::move(read);
}

void put_all(cereal::BinaryOutputArchive& archive, const PreparedBodies& prepared) {
  archive(prepared.construct, prepared.candidates);
  for (const auto& plate : prepared.plates) {
    put(archive, plate.mesh.mesh);
    archive(plate.mesh.along_across, plate.sample);
  }
  for (const auto& fragment : prepared.fragments) {
    put(archive, fragment.mesh);
    archive(fragment.proximal_edge, fragment.distal_edge);
  }
  for (const auto& body : prepared.bodies) {
    archive(body.name);
    put(archive, body.ports);
    put(archive, body.condensed);
  }
  archive(prepared.wishes.gap, prepared.wishes.underside, prepared.wishes.clamps);
  for (const auto& list : prepared.ports.lists()) archive(list.columns());
}

// Shapes and places follow from the construct, as they did when the bodies were made.
void set_up(PreparedBodies& prepared) {
  const Construct& construct = prepared.construct;
  prepared.bone_shape = std::make_shared<const BoneShape>(construct.bone, only(construct.plates).aspect);
  for (const Plate& plate : construct.plates)
    prepared.plates.push_back({std::make_shared<const PlateShape>(plate, *prepared.bone_shape), {}, {}});
  prepared.wishes.screws =
      plan_screws(construct, prepared.candidates, shapes_of(prepared.plates), *prepared.bone_shape);
  prepared.wishes.rollers = roller_places(construct.loads);
  prepared.fragments.resize(fragment_count(construct));
  prepared.bodies.resize(body_count(construct));
}

void take_all(cereal::BinaryInputArchive& archive, PreparedBodies& prepared) {
  archive(prepared.construct, prepared.candidates);
  set_up(prepared);
  for (auto& plate : prepared.plates) {
    take(archive, plate.mesh.mesh);
    archive(plate.mesh.along_across, plate.sample);
  }
  for (auto& fragment : prepared.fragments) {
    take(archive, fragment.mesh);
    archive(fragment.proximal_edge, fragment.distal_edge);
  }
  for (auto& body : prepared.bodies) {
    archive(body.name);
    take(archive, body.ports);
    take(archive, body.condensed);
  }
  archive(prepared.wishes.gap, prepared.wishes.underside, prepared.wishes.clamps);
  std::vector<PortList> lists(prepared.bodies.size());
  for (auto& list : lists) {
    std::vector<PortColumns> columns;
    archive(columns);
    for (const auto& entry : columns) list.add(entry);
  }
  prepared.ports = PortBook(std::move(lists));
}

std::string content_of(std::istream& stream) {
  Header header;
  stream.read(header.mark.data(), header.mark.size());
  stream.read(reinterpret_cast<char*>(&header.version), sizeof header.version);
  stream.read(reinterpret_cast<char*>(&header.checksum), sizeof header.checksum);
  stream.read(reinterpret_cast<char*>(&header.bytes), sizeof header.bytes);
  if (!stream || std::string_view(header.mark.data(), header.mark.size()) != archive_mark)
    throw ArchiveError("this is no archive of prepared bodies");
  if (header.version != archive_version)
    throw ArchiveError(
        fmt::format("the archive of bodies is of version {}, this program reads version {}: make it anew",
                    header.version, archive_version));
  std::ostringstream rest;
  rest << stream.rdbuf();
  std::string content = std::move(rest).str();
  if (content.size() != header.bytes || checksum_of(content) != header.checksum)
    throw ArchiveError("the archive of bodies is damaged or not complete: make it anew");
  return content;
}

}  // namespace

void write_bodies(std::ostream& stream, const PreparedBodies& prepared) {
  std::ostringstream content;
  {
    cereal::BinaryOutputArchive archive(content);
    put_all(archive, prepared);
  }
  const std::string bytes = std::move(content).str();
  const std::uint32_t version = archive_version, checksum = checksum_of(bytes);
  const std::uint64_t size = bytes.size();
  stream.write(archive_mark.data(), archive_mark.size());
  stream.write(reinterpret_cast<const char*>(&version), sizeof version);
  stream.write(reinterpret_cast<const char*>(&checksum), sizeof checksum);
  stream.write(reinterpret_cast<const char*>(&size), sizeof size);
  stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  if (!stream) throw ArchiveError("the archive of bodies cannot be written: the stream fails");
}

std::shared_ptr<const PreparedBodies> read_bodies(std::istream& stream, WholeBodies bodies) {
  std::istringstream content(content_of(stream));
  auto prepared = std::make_shared<PreparedBodies>();
  cereal::BinaryInputArchive archive(content);
  take_all(archive, *prepared);
  if (bodies == WholeBodies::factored) {
    const auto shells = shells_of(*prepared);
    solver::side_by_side(shells.size(), [&](std::size_t b) {
      prepared->bodies[b].body = std::make_shared<const solver::Body>(shells[b]);
    });
  }
  return prepared;
}

}  // namespace gapstrain::models
