#include "tests/viz/plan/sample_plan.h"

#include "models/geometry/plate_shape.h"

#include <array>
#include <cmath>
#include <string>

namespace gapstrain::tests {

namespace {

using namespace models;  // NOLINT: this file is nothing but parts

Screw planned_screw(const std::string& label, int hole, ScrewKind kind) {
  Screw screw;
  screw.label = label;
  screw.hole = hole;
  screw.kind = kind;
  screw.size = {"HA 3.5", 3.5 * mm, 2.4 * mm, 1.25 * mm, "made up for tests", 2.5 * mm};
  return screw;
}

OrderedScrew order_of(const Screw& screw, double measured) {
  OrderedScrew order;
  order.screw = screw.id;
  order.label = screw.label;
  order.core = screw.size.core_diameter;
  order.hole = screw.hole;
  order.kind = screw.kind;
  order.size = screw.size.designation;
  order.cortices = screw.cortices;
  order.measured = measured * mm;
  order.length = 2.0 * std::ceil(0.5 * (measured + 2.0)) * mm;
  order.drill = screw.size.pilot_drill;
  if (screw.kind == ScrewKind::lag) order.gliding = screw.size.thread_diameter;
  order.tilt_along = screw.tilt_along;
  order.tilt_across = screw.tilt_across;
  return order;
}

}  // namespace

SamplePlan sample_plan(const PlanSizes& sizes) {
  SamplePlan sample;
  Construct& construct = sample.construct;
  construct.name = "Tibia, plate on the cranial side, transverse fracture";
  const double length = sizes.pitch * sizes.holes, bone_length = length + 4.0 * sizes.pitch;
  const double width = sizes.bone_width;
  construct.bone.length = bone_length * mm;
  const auto station = [&](double share, double scale, double bow) {
    return BoneStation{share * bone_length * mm,  scale * width * mm, 1.1 * scale * width * mm,
                       0.15 * scale * width * mm, 0.0 * mm,           bow * width * mm};
  };
  construct.bone.stations = {station(0.0, 1.5, 0.0), station(0.4, 1.0, 0.25), station(0.7, 0.95, 0.25),
                             station(1.0, 1.3, 0.0)};
  Plate& plate = only(construct.plates);
  plate.length = length * mm;
  plate.sections = {{0.0 * mm, 0.7 * width * mm, 0.2 * width * mm}};
  plate.proximal_end = 2.0 * sizes.pitch * mm;
  plate.standoff = 0.5 * mm;
  for (int hole = 0; hole < sizes.holes; ++hole) {
    const bool slot = hole % 3 == 1;
    const double diameter = std::min(4.0, 0.4 * sizes.pitch);
    plate.holes.push_back({(hole + 0.5) * sizes.pitch * mm, slot ? HoleShape::slot : HoleShape::round,
                           diameter * mm, (slot ? 1.5 : 1.0) * diameter * mm});
  }
  only(construct.fractures).position = 0.5 * bone_length * mm;
  only(construct.fractures).gap = 1.0 * mm;
  only(construct.fractures).obliquity = 25.0 * degree;

  for (const int hole : sizes.filled) {
    const bool slot = hole % 3 == 2;
    const auto kind = slot ? (hole % 2 == 0 ? ScrewKind::cortical : ScrewKind::compression) : ScrewKind::locking;
    Screw screw = planned_screw("S" + std::to_string(hole), hole, kind);
    screw.tilt_along = hole % 4 == 0 ? 6.0 * degree : Angle();
    screw.tilt_across = hole % 5 == 0 ? -4.0 * degree : Angle();
    screw.cortices = hole == 1 ? 1 : 2;
    construct.screws.push_back(screw);
  }
  if (sizes.lag_beside) {
    Screw lag = planned_screw("L", 0, ScrewKind::lag);
    lag.entry = {0.5 * bone_length * mm, 1.4 * radian};
    lag.tilt_along = -25.0 * degree;
    construct.screws.push_back(lag);
  }

  number_screws(construct.screws);

  Plan& plan = sample.plan;
  plan.plate_length = plate.length;
  plan.plate_width = plate.sections[0].width;
  plan.plate_thickness = plate.sections[0].thickness;
  plan.holes = sizes.holes;
  plan.metal = "stainless steel";
  plan.aspect = plate.aspect;
  plan.proximal_end = plate.proximal_end;
  plan.standoff = plate.standoff;
  constexpr std::array<double, 5> bends{-3.4, -0.02, 0.8, 12.5, -1.0};
  for (int bend = 0; bend <= sizes.holes; ++bend) {
    const double at = bend == 0             ? 0.25 * sizes.pitch
                      : bend == sizes.holes ? length - 0.25 * sizes.pitch
                                            : bend * sizes.pitch;
    plan.bends.push_back({bend, bend + 1, at * mm, bends[static_cast<std::size_t>(bend) % bends.size()] * degree});
  }
  const BoneShape bone_shape(construct.bone, plate.aspect);
  const PlateShape plate_shape(plate, bone_shape);
  for (const auto& screw : construct.screws) {
    plan.screws.push_back(order_of(screw, screw.cortices == 1 ? 0.8 * width : 1.5 * width));
    const auto place = place_screw(construct, plate_shape, bone_shape, screw);
    plan.screws.back().seat = screw.entry ? place.hole_centre : place.head_top;
    plan.screws.back().direction = place.direction;
    plan.screws.back().step = static_cast<int>(plan.steps.size()) + 1;
    plan.steps.push_back("insert and tighten " + screw.label);
    plan.notes.emplace_back(OneCortexNote{{screw.id, screw.label, screw.hole}});
  }
  return sample;
}

}  // namespace gapstrain::tests
