#include "cases/reader/read_parts.h"
#include "models/geometry/anatomical_axes.h"
#include "models/parts/load_parts.h"
#include "models/parts/words.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace gapstrain::cases {

namespace {

models::FourPointBending read_four_point(const Section& section) {
  models::FourPointBending bending;
  bending.outer_proximal = section.get<models::Length>("outer_proximal");
  bending.inner_proximal = section.get<models::Length>("inner_proximal");
  bending.inner_distal = section.get<models::Length>("inner_distal");
  bending.outer_distal = section.get<models::Length>("outer_distal");
  bending.total = section.get<models::Force>("force");
  bending.across_plate = section.text("plane") == "edge";
  return bending;
}

std::optional<double> plain_number(const Value& value) {
  if (const auto* whole = std::get_if<std::int64_t>(&value.content)) return static_cast<double>(*whole);
  if (const auto* real = std::get_if<double>(&value.content)) return *real;
  return std::nullopt;
}

// Two plain numbers; what they can be is checked with the construct. As without it when a fault was reported.
models::PartBand read_band(const Section& load, std::string_view key) {
  if (!load.has(key)) return {};
  const auto ends = load.values(key);
  const auto low = ends.size() == 2 ? plain_number(ends[0]) : std::nullopt,
             high = ends.size() == 2 ? plain_number(ends[1]) : std::nullopt;
  if (low && high) return {*low, *high};
  load.complain(key,
                "two plain numbers are wanted here, the least and the most over the value entered, such as "
                "[0.6, 1.4]");
  return {};
}

// Six rows of six numbers; nothing when a fault was reported.
std::optional<models::EndFlexibility> read_flexibility(const Section& spring) {
  constexpr double largest = 1000.0;
  const auto rows = spring.values("flexibility");
  models::EndFlexibility flexibility;
  if (rows.size() != 6) {
    spring.complain("flexibility",
                    fmt::format("found {} rows; six rows of six plain numbers are wanted here, such as "
                                "[[0.002, 0, 0, 0, 0, 0], ...]",
                                rows.size()));
    return std::nullopt;
  }
  for (std::size_t row = 0; row < 6; ++row) {
    const auto* entries = std::get_if<std::vector<Value>>(&rows[row].content);
    if (entries == nullptr || entries->size() != 6) {
      spring.complain("flexibility", row,
                      fmt::format("found {}; a row is six plain numbers in [square brackets]", quote(rows[row])));
      return std::nullopt;
    }
    for (std::size_t column = 0; column < 6; ++column) {
      const auto number = plain_number((*entries)[column]);
      if (!number || !(std::abs(*number) <= largest)) {
        spring.complain("flexibility", row,
                        fmt::format("found {}; a plain number from -1000 to 1000 is wanted here, in mm, N and rad",
                                    quote((*entries)[column])));
        return std::nullopt;
      }
      flexibility.rows[6 * row + column] = *number;
    }
  }
  return flexibility;
}

models::EndFlexibility read_spring(const Section& spring) {
  const std::vector<std::string_view> stiffnesses{"axial",   "transverse_y", "transverse_z",
                                                  "torsion", "bending_y",    "bending_z"};
  if (spring.has("flexibility")) {
    if (spring.has_any(stiffnesses))
      spring.complain("flexibility", "given together with stiffnesses; remove one or the other");
    return read_flexibility(spring).value_or(models::EndFlexibility{});
  }
  if (!spring.has_any(stiffnesses))
    spring.complain(
        "", fmt::format("holds nothing; add at least one of {}, or flexibility", fmt::join(stiffnesses, ", ")));
  models::EndSprings springs;
  for (std::size_t k = 0; k < 3; ++k) {
    springs.translation[k] = spring.find<models::AxialStiffness>(stiffnesses[k]);
    springs.rotation[k] = spring.find<models::AngularStiffness>(stiffnesses[k + 3]);
  }
  return models::flexibility_of(springs);
}

models::EndSupport read_end(const Section& load, const std::string& end, const models::EndSupport& shorthand) {
  models::EndSupport support = shorthand;
  if (const auto word = load.text(end)) support.hold = *models::find_end_hold(*word);
  const std::string table = end + "_spring";
  const Section spring = load.section(table);
  const bool is_elastic = support.hold == models::EndHold::elastic;
  if (is_elastic && !load.has(table))
    load.complain(end, fmt::format("found \"elastic\" without its spring; add [load.{}], such as axial = "
                                   "\"500 N/mm\": what is left out of it is rigid",
                                   table));
  if (spring.present() && !is_elastic && (load.text(end) || !load.has(end)))
    load.complain(table, fmt::format("given for an end that is \"{}\"; write {} = \"elastic\" or remove it",
                                     models::name_of(support.hold), end));
  if (spring.present()) support.flexibility = read_spring(spring);
  return support;
}

models::EndSupports read_supports(const Section& load) {
  if (load.has("supports") && load.has_any({"proximal", "distal"}))
    load.complain("supports",
                  "given together with proximal or distal, for which it is short; remove one or the other");
  const auto shorthand = load.text("supports") == "cantilever" ? models::cantilever() : models::ball_joints();
  return {read_end(load, "proximal", shorthand.proximal), read_end(load, "distal", shorthand.distal)};
}

models::Point point_of(const std::array<models::Length, 3>& place) { return {place[0], place[1], place[2]}; }

std::optional<models::LoadLine> read_line(const Section& load) {
  if (!load.has_any({"line_from", "line_to"})) return std::nullopt;
  load.require({"line_from", "line_to"}, "a load line is given by two points: add the other one");
  for (const auto* key : {"ball_distance", "ball_offset_y", "ball_offset_z"})
    if (load.has(key))
      load.complain(key, "given together with line_from and line_to, which say where the balls are; remove it");
  const auto from = load.vector<models::Length>("line_from"), to = load.vector<models::Length>("line_to");
  if (!from || !to) return std::nullopt;
  return models::LoadLine{point_of(*from), point_of(*to)};
}

// Of a side of the bone as anatomy names it.
models::Angle angle_of(models::Aspect side, models::Aspect plate_aspect) {
  const bool is_across = side == models::Aspect::medial || side == models::Aspect::lateral;
  const double sign = side == models::Aspect::lateral || side == models::Aspect::cranial ? 1.0 : -1.0;
  const auto out = models::in_construct(is_across ? sign : 0.0, is_across ? 0.0 : sign, plate_aspect);
  return std::atan2(out.y + 0.0, out.z) * models::radian;  // no -0, which would be -180 degrees
}

models::SurfaceForce read_force(const Section& section, models::Aspect plate_aspect) {
  models::SurfaceForce force;
  force.position = section.get<models::Length>("position");
  if (section.has("around") && section.has("aspect"))
    section.complain("aspect", "given together with around; remove one or the other");
  if (!section.has_any({"around", "aspect"}))
    section.complain("around",
                     "missing; add the angle round the bone from the plate's side, such as around = "
                     "\"90 deg\", or aspect = \"lateral\"");
  if (const auto aspect = section.text("aspect"))
    force.around = angle_of(aspect_named(*aspect), plate_aspect);
  else
    force.around = section.get<models::Angle>("around");
  if (const auto parts = section.vector<models::Force>("force"))
    force.force = {(*parts)[0], (*parts)[1], (*parts)[2]};
  return force;
}

// All that acts; supports stay.
void multiply(models::LoadCase& load, double factor) {
  for (models::Force* force : {&load.axial_compression, &load.transverse_y, &load.transverse_z}) *force *= factor;
  for (models::Moment* moment : {&load.bending_y, &load.bending_z, &load.torsion}) *moment *= factor;
  if (load.four_point) load.four_point->total *= factor;
  for (auto& force : load.forces)
    for (models::Force* part : {&force.force.x, &force.force.y, &force.force.z}) *part *= factor;
}

models::LoadCase read_load(const Section& section, std::size_t number, models::Aspect plate_aspect) {
  models::LoadCase load;
  load.name = section.text("name").value_or(fmt::format("load {}", number));
  load.supports = read_supports(section);
  load.line = read_line(section);
  if (!load.line) {
    load.ball_distance = section.get<models::Length>("ball_distance");
    load.ball_offset_y = section.get<models::Length>("ball_offset_y");
    load.ball_offset_z = section.get<models::Length>("ball_offset_z");
  }
  load.axial_compression = section.get<models::Force>("axial");
  load.transverse_y = section.get<models::Force>("transverse_y");
  load.transverse_z = section.get<models::Force>("transverse_z");
  load.bending_y = section.get<models::Moment>("bending_y");
  load.bending_z = section.get<models::Moment>("bending_z");
  load.torsion = section.get<models::Moment>("torsion");
  load.cycles_per_day = section.find<double>("cycles_per_day");
  load.spread = section.get<double>("spread");
  for (const models::LoadPart part : models::load_parts)
    models::band_of(load, part) = read_band(section, models::key_of_band(part));
  const Section four_point = section.section("four_point");
  if (four_point.present()) load.four_point = read_four_point(four_point);
  for (const auto& force : section.sections("force")) load.forces.push_back(read_force(force, plate_aspect));
  const double factor = section.get<double>("factor");
  if (factor != 1.0) multiply(load, factor);
  return load;
}

models::LoadCase bench_load(const std::string& name) {
  models::LoadCase load;
  load.name = name;
  return load;
}

}  // namespace

std::vector<models::LoadCase> read_loads(const Section& file, const models::Plate& plate) {
  std::vector<models::LoadCase> loads;
  for (const auto& section : file.sections("load"))
    loads.push_back(read_load(section, loads.size() + 1, plate.aspect));
  return loads;
}

std::vector<models::LoadCase> bench_loads() {
  auto axial = bench_load("axial 100 N");
  axial.axial_compression = 100.0 * models::newton;
  auto bending = bench_load("bending 1 N m");
  bending.bending_y = 1000.0 * models::newton_mm;
  auto torsion = bench_load("torsion 1 N m");
  torsion.supports = models::cantilever();
  torsion.torsion = 1000.0 * models::newton_mm;
  return {axial, bending, torsion};
}

}  // namespace gapstrain::cases
