#include "models/plan/plan.h"

#include "models/assembly/procedure.h"
#include "models/plan/plan_notes.h"
#include "models/rules/rules_subject.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace gapstrain::models {

namespace {

std::vector<PlateBend> find_bends(const Plate& plate, const PlateShape& shape) {
  if (plate.contour == Contour::straight) return {};
  std::vector<Length> places{Length()};
  for (const auto& hole : plate.holes) places.push_back(hole.position);
  places.push_back(plate.length);
  std::vector<PlateBend> bends;
  for (std::size_t i = 0; i + 1 < places.size(); ++i)
    bends.push_back({static_cast<int>(i), static_cast<int>(i) + 1, 0.5 * (places[i] + places[i + 1]),
                     (slope_angle(shape, places[i]) - slope_angle(shape, places[i + 1])) * radian});
  return bends;
}

std::optional<PlannedPrebend> find_prebend_angle(const Construct& construct, const PlateShape& shape) {
  const Plate& plate = only(construct.plates);
  if (!(plate.prebend > Length())) return std::nullopt;
  const Length at = shape.along_at(only(construct.fractures).position.value()) * mm;
  const double bend =
      std::atan((plate.prebend / at).value()) + std::atan((plate.prebend / (plate.length - at)).value());
  return PlannedPrebend{plate.prebend, at, bend * radian};
}

// Through one cortex: between its inner surface and the far one's.
Length length_into_canal(Length measured, Length wall, const Stock& stock) {
  const double steps = std::floor((measured / stock.screw_step).value() + 1e-9);
  const Length below = steps * stock.screw_step;
  return below > wall ? below : below + stock.screw_step;
}

OrderedScrew order_screw(const Construct& construct, const SeatedScrew& seated) {
  const Screw& screw = *seated.screw;
  const ScrewPlacement& place = seated.placement;
  const bool is_measured = !screw_lengths_rest_on(construct.estimated);
  const Eigen::Vector3d seat = screw.entry ? place.hole_centre : place.head_top;
  OrderedScrew ordered;
  ordered.screw = screw.id;
  ordered.label = screw.label;
  ordered.hole = screw.hole;
  ordered.kind = screw.kind;
  // A size entered by hand has no designation that could be ordered by.
  ordered.size = find_screw_size(screw.size.designation)
                     ? screw.size.designation
                     : fmt::format("{:.3g} mm", screw.size.thread_diameter.value());
  ordered.thread = screw.size.thread_diameter;
  ordered.metal = screw.material.name;
  ordered.cortices = screw.cortices;
  if (screw.cortices == 2) {
    ordered.measured = (place.bone->far.outer - seat).norm() * mm;
    if (is_measured) ordered.length = length_to_order(ordered.measured, construct.stock);
  } else {
    ordered.measured = (place.tip - seat).norm() * mm;
    if (is_measured)
      ordered.length =
          length_into_canal(ordered.measured, (place.bone->near.inner - seat).norm() * mm, construct.stock);
  }
  ordered.drill = screw.size.pilot_drill;
  if (screw.kind == ScrewKind::lag) ordered.gliding = screw.size.thread_diameter;
  ordered.tilt_along = screw.tilt_along;
  ordered.tilt_across = screw.tilt_across;
  ordered.off_centre = std::abs(seated.placement.slide) * mm;
  ordered.core = screw.size.core_diameter;
  ordered.seat = seat;
  ordered.direction = place.direction;
  return ordered;
}

// The construct's own, its screws by their positions in it.
Procedure own_procedure(const Construct& construct) {
  std::vector<int> all(construct.screws.size());
  std::iota(all.begin(), all.end(), 0);
  return procedure_of(construct, all);
}

// The first step that a screw goes in with, 1-based.
int step_of(const Procedure& procedure, int screw) {
  const auto goes_in = [&](const ProcedureStep& step) {
    return std::find(step.insert.begin(), step.insert.end(), screw) != step.insert.end();
  };
  return static_cast<int>(std::find_if(procedure.steps.begin(), procedure.steps.end(), goes_in) -
                          procedure.steps.begin()) +
         1;
}

std::vector<OrderedScrew> order_screws(const RuleSubject& subject, const Procedure& procedure) {
  const Construct& construct = subject.construct;
  std::vector<OrderedScrew> screws;
  for (std::size_t k = 0; k < subject.screws.size(); ++k) {
    screws.push_back(order_screw(construct, subject.screws[k]));
    screws.back().step = step_of(procedure, static_cast<int>(k));
  }
  const auto rank = [&](const OrderedScrew& screw) {
    return screw.hole > 0 ? screw.hole : static_cast<int>(only(construct.plates).holes.size()) + 1;
  };
  std::stable_sort(screws.begin(), screws.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
  return screws;
}

}  // namespace

Length length_to_order(Length measured, const Stock& stock) {
  const double steps = ((measured + stock.screw_allowance) / stock.screw_step).value();
  return std::ceil(steps - 1e-9) * stock.screw_step;
}

Plan make_plan(const Construct& construct) {
  const Plate& plate = only(construct.plates);
  const RuleSubject subject = RuleSubject::of(construct);
  const PlateShape& plate_shape = subject.plate;
  const Procedure procedure = own_procedure(construct);
  Plan plan;
  plan.bone = construct.bone.name;
  plan.side = construct.bone.side;
  plan.fracture_position = only(construct.fractures).position;
  plan.estimated = construct.estimated;
  plan.plate_length = plate.length;
  for (const auto& section : plate.sections) {
    plan.plate_width = std::max(plan.plate_width, section.width);
    plan.plate_thickness = std::max(plan.plate_thickness, section.thickness);
  }
  plan.holes = static_cast<int>(plate.holes.size());
  plan.slots = static_cast<int>(std::count_if(plate.holes.begin(), plate.holes.end(), [](const PlateHole& hole) {
    return hole.shape == HoleShape::slot;
  }));
  plan.metal = plate.material.name;
  plan.aspect = plate.aspect;
  plan.proximal_end = plate.proximal_end;
  plan.standoff = plate.standoff;
  plan.bends = find_bends(plate, plate_shape);
  plan.prebend = find_prebend_angle(construct, plate_shape);
  plan.screws = order_screws(subject, procedure);
  for (const auto& step : procedure.steps) plan.steps.push_back(describe(step, procedure, construct));
  plan.notes = plan_notes(plan, construct, plate_shape);
  return plan;
}

}  // namespace gapstrain::models
