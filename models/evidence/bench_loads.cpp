#include "models/evidence/bench_loads.h"

namespace gapstrain::models {

namespace {

// What a grip leaves to turn and slide, as springs too soft to count: some 1e-4 of any construct here.
EndSupport turning_grip() {
  EndSprings springs;
  springs.translation[0] = 0.1 * (newton / mm);
  springs.rotation[0] = 1.0 * (newton_mm / radian);
  return {EndHold::elastic, flexibility_of(springs)};
}

LoadLine line_between(double length, double proximal_z, double distal_z) {
  return {{0.0 * mm, 0.0 * mm, proximal_z * mm}, {length * mm, 0.0 * mm, distal_z * mm}};
}

LoadCase load_case(std::string_view name, const BenchSizes& sizes) {
  using namespace bench_load;  // NOLINT: names of loads
  LoadCase load;
  load.name = name;
  const Moment moment = sizes.moment * newton_mm;
  if (name == torsion || name == torsion_gripped)
    load.torsion = moment;
  else if (name == tension)
    load.bending_y = moment;
  else if (name == compression)
    load.bending_y = -moment;
  else if (name == edge)
    load.bending_z = moment;
  else if (name == hard)
    load.bending_y = sizes.hard_moment * newton_mm;
  else
    load.axial_compression = sizes.axial * newton;

  if (name == torsion_gripped) load.supports = {turning_grip(), {EndHold::held}};
  if (name == axial_guided) load.supports = {{EndHold::guided}, {EndHold::held}};
  if (name == axial_free) load.supports = {{EndHold::free}, {EndHold::held}};
  if (name == axial_held || name == aside_held || name == head_to_knee_held)
    load.supports = {{EndHold::ball}, {EndHold::held}};
  const double length = sizes.tube.length, beside = -sizes.line_aside;
  if (name == aside || name == aside_held) load.line = line_between(length, beside, beside);
  if (name == head_to_knee || name == head_to_knee_held) load.line = line_between(length, beside, 0.0);
  return load;
}

}  // namespace

std::vector<LoadCase> bench_loads(const BenchSizes& sizes) {
  using namespace bench_load;  // NOLINT: names of loads
  std::vector<LoadCase> loads;
  for (const auto& name : {axial, torsion, tension, compression, edge}) loads.push_back(load_case(name, sizes));
  for (const auto& name : sizes.more_loads) loads.push_back(load_case(name, sizes));
  return loads;
}

double size_of(const LoadCase& load) {
  return load.axial_compression.value() + load.bending_y.value() + load.bending_z.value() + load.torsion.value();
}

}  // namespace gapstrain::models
