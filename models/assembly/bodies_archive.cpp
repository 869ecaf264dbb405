#include "models/assembly/bodies_archive.h"

#include "models/assembly/body_numbers.h"
#include "models/assembly/construct_archive.h"
#include "models/assembly/mesh_archive.h"
#include "solver/host/side_by_side.h"

#include <fmt/format.h>
#include <boost/crc.hpp>
#include <cereal/archives/binary.hpp>

#include <algorithm>
#include <array>
#include <cstdint>
#include <istream>
#include <ostream>
#include <sstream>
#include <streambuf>
#include <string>
#include <string_view>
#include <utility>

namespace gapstrain::models {

// One more whenever anything below, or in the two headers of archives, is written otherwise.
constexpr std::uint32_t archive_version = 4;

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

// `move`: bytes from or to a stream.
template <class Move>
void each_field(Header& header, const Move& move) {
  move(header.mark.data(), header.mark.size());
  move(reinterpret_cast<char*>(&header.version), sizeof header.version);
  move(reinterpret_cast<char*>(&header.checksum), sizeof header.checksum);
  move(reinterpret_cast<char*>(&header.bytes), sizeof header.bytes);
}

std::uint32_t checksum_of(std::string_view bytes) {
  boost::crc_32_type crc;
  crc.process_bytes(bytes.data(), bytes.size());
  return crc.checksum();
}

// A value behind a pointer to a constant one.
template <class Value>
void pass(cereal::BinaryOutputArchive& archive, const std::shared_ptr<const Value>& value) {
  archive(*value);
}
template <class Value>
void pass(cereal::BinaryInputArchive& archive, std::shared_ptr<const Value>& value) {
  auto read = std::make_shared<Value>();
  archive(*read);
  value = std::move(read);
}

void pass(cereal::BinaryOutputArchive& archive, const PortBook& ports, std::size_t) {
  for (const auto& list : ports.lists()) archive(list.columns());
}
void pass(cereal::BinaryInputArchive& archive, PortBook& ports, std::size_t bodies) {
  std::vector<PortList> lists(bodies);
  for (auto& list : lists) {
    std::vector<PortColumns> columns;
    archive(columns);
    for (const auto& entry : columns) list.add(entry);
  }
  ports = PortBook(std::move(lists));
}

// One way, for writing (of a constant) and for reading.
template <class Archive, class Prepared>
void pass_all(Archive& archive, Prepared& prepared) {
  archive(prepared.construct, prepared.candidates);
  // Shapes and places follow from the construct, as they did when the bodies were made.
  if constexpr (Archive::is_loading::value) prepared = lay_out(prepared.construct, prepared.candidates);
  for (auto& plate : prepared.plates) {
    pass(archive, plate.mesh.mesh);
    archive(plate.mesh.along_across, plate.sample);
  }
  for (auto& fragment : prepared.fragments) {
    pass(archive, fragment.mesh);
    archive(fragment.proximal_edge, fragment.distal_edge);
  }
  for (auto& body : prepared.bodies) {
    archive(body.name);
    pass(archive, body.ports);
    pass(archive, body.condensed);
  }
  archive(prepared.wishes.gap, prepared.wishes.underside, prepared.wishes.clamps);
  pass(archive, prepared.ports, prepared.bodies.size());
}

// A stream over bytes that are there, without a copy of them.
class BytesBuffer : public std::streambuf {
 public:
  explicit BytesBuffer(std::string_view bytes) {
    char* begin = const_cast<char*>(bytes.data());  // NOLINT: the class wants it so; nothing is written
    setg(begin, begin, begin + bytes.size());
  }
};

std::string_view content_of(std::string_view bytes) {
  Header header;
  BytesBuffer buffer(bytes);
  std::istream stream(&buffer);
  std::size_t read = 0;
  each_field(header, [&](char* field, std::size_t count) {
    stream.read(field, static_cast<std::streamsize>(count));
    read += count;
  });
  if (!stream || std::string_view(header.mark.data(), header.mark.size()) != archive_mark)
    throw ArchiveError("this is no archive of prepared bodies");
  if (header.version != archive_version)
    throw ArchiveError(
        fmt::format("the archive of bodies is of version {}, this program reads version {}: make it anew",
                    header.version, archive_version));
  const std::string_view content = bytes.substr(read);
  if (content.size() != header.bytes || checksum_of(content) != header.checksum)
    throw ArchiveError("the archive of bodies is damaged or not complete: make it anew");
  return content;
}

}  // namespace

void write_bodies(std::ostream& stream, const PreparedBodies& prepared) {
  std::ostringstream content;
  {
    cereal::BinaryOutputArchive archive(content);
    pass_all(archive, prepared);
  }
  const std::string bytes = std::move(content).str();
  Header header;
  std::copy(archive_mark.begin(), archive_mark.end(), header.mark.begin());
  header.version = archive_version;
  header.checksum = checksum_of(bytes);
  header.bytes = bytes.size();
  each_field(header, [&](const char* field, std::size_t count) {
    stream.write(field, static_cast<std::streamsize>(count));
  });
  stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  if (!stream) throw ArchiveError("the archive of bodies cannot be written: the stream fails");
}

std::shared_ptr<PreparedBodies> read_bodies(std::string_view bytes, WholeBodies bodies) {
  BytesBuffer buffer(content_of(bytes));
  std::istream content(&buffer);
  auto prepared = std::make_shared<PreparedBodies>();
  cereal::BinaryInputArchive archive(content);
  pass_all(archive, *prepared);
  if (bodies == WholeBodies::factored)
    solver::side_by_side(prepared->bodies.size(), [&](std::size_t b) { factor_body(*prepared, b); });
  return prepared;
}

std::shared_ptr<const PreparedBodies> read_bodies(std::istream& stream, WholeBodies bodies) {
  std::ostringstream all;
  all << stream.rdbuf();
  const std::string bytes = std::move(all).str();
  return read_bodies(std::string_view(bytes), bodies);
}

PreparedBodies without_plate_probes(const PreparedBodies& prepared) {
  PreparedBodies other = prepared;
  for (std::size_t b = 0; b < other.bodies.size(); ++b) {
    if (!is_plate(other.construct, b)) continue;
    auto condensed = std::make_shared<solver::Condensed>(*other.bodies[b].condensed);
    condensed->probes.clear();
    other.bodies[b].condensed = std::move(condensed);
  }
  return other;
}

void factor_body(PreparedBodies& prepared, std::size_t body) {
  prepared.bodies[body].body = std::make_shared<const solver::Body>(shells_of(prepared)[body]);
}

}  // namespace gapstrain::models
