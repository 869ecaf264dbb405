#include "cases/reader/read_parts.h"

#include <fmt/format.h>

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

models::LoadCase read_load(const Section& section, std::size_t number) {
  models::LoadCase load;
  load.name = section.text("name").value_or(fmt::format("load {}", number));
  load.support =
      section.text("supports") == "cantilever" ? models::Support::cantilever : models::Support::ball_joints;
  load.ball_distance = section.get<models::Length>("ball_distance");
  load.ball_offset_y = section.get<models::Length>("ball_offset_y");
  load.ball_offset_z = section.get<models::Length>("ball_offset_z");
  load.axial_compression = section.get<models::Force>("axial");
  load.transverse_y = section.get<models::Force>("transverse_y");
  load.transverse_z = section.get<models::Force>("transverse_z");
  load.bending_y = section.get<models::Moment>("bending_y");
  load.bending_z = section.get<models::Moment>("bending_z");
  load.torsion = section.get<models::Moment>("torsion");
  load.cycles_per_day = section.find<double>("cycles_per_day");
  load.spread = section.get<double>("spread");
  const Section four_point = section.section("four_point");
  if (four_point.present()) load.four_point = read_four_point(four_point);
  return load;
}

models::LoadCase bench_load(const std::string& name) {
  models::LoadCase load;
  load.name = name;
  return load;
}

}  // namespace

std::vector<models::LoadCase> read_loads(const Section& file) {
  std::vector<models::LoadCase> loads;
  for (const auto& section : file.sections("load")) loads.push_back(read_load(section, loads.size() + 1));
  return loads;
}

std::vector<models::LoadCase> bench_loads() {
  auto axial = bench_load("axial 100 N");
  axial.axial_compression = 100.0 * models::newton;
  auto bending = bench_load("bending 1 N m");
  bending.bending_y = 1000.0 * models::newton_mm;
  auto torsion = bench_load("torsion 1 N m");
  torsion.support = models::Support::cantilever;
  torsion.torsion = 1000.0 * models::newton_mm;
  return {axial, bending, torsion};
}

}  // namespace gapstrain::cases
