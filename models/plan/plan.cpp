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
  const Plate& plate = construct.plate;
  if (!(plate.prebend > Length())) return std::nullopt;
  const Length at = shape.along_at(construct.fracture.position.value()) * mm;
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

OrderedScrew order_screw(const Construct& construct, const Screw& screw, const PlateShape& plate_shape,
                         const BoneShape& bone_shape) {
  const Length slide = slide_along(screw, construct.plate, plate_shape, construct.fracture.position);
  const ScrewPlacement place = place_screw(construct.plate, plate_shape, bone_shape, screw, slide);
  const bool is_measured = !screw_lengths_rest_on(construct.estimated);
  const Eigen::Vector3d seat = screw.entry ? place.hole_centre : place.head_top;
  OrderedScrew ordered;
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
  ordered.off_centre = std::abs(slide.value()) * mm;
  return ordered;
}

std::vector<OrderedScrew> order_screws(const Construct& construct, const PlateShape& plate_shape,
                                       const BoneShape& bone_shape) {
  std::vector<OrderedScrew> screws;
  for (const Screw& screw : construct.screws)
    screws.push_back(order_screw(construct, screw, plate_shape, bone_shape));
  const auto rank = [&](const OrderedScrew& screw) {
    return screw.hole > 0 ? screw.hole : static_cast<int>(construct.plate.holes.size()) + 1;
  };
  std::stable_sort(screws.begin(), screws.end(), [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
  return screws;
}

std::vector<std::string> steps_in_words(const Construct& construct) {
  std::vector<int> all(construct.screws.size());
  std::iota(all.begin(), all.end(), 0);
  std::vector<std::string> words;
  for (const Step& step : procedure_of(construct, all).steps) words.push_back(describe(step, construct.screws));
  return words;
}

}  // namespace

Length length_to_order(Length measured, const Stock& stock) {
  const double steps = ((measured + stock.screw_allowance) / stock.screw_step).value();
  return std::ceil(steps - 1e-9) * stock.screw_step;
}

Plan make_plan(const Construct& construct) {
  const Plate& plate = construct.plate;
  const BoneShape bone_shape(construct.bone, plate.aspect);
  const PlateShape plate_shape(plate, bone_shape);
  Plan plan;
  plan.bone = construct.bone.name;
  plan.side = construct.bone.side;
  plan.fracture_position = construct.fracture.position;
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
  plan.screws = order_screws(construct, plate_shape, bone_shape);
  plan.steps = steps_in_words(construct);
  plan.notes = plan_notes(plan, construct, plate_shape);
  return plan;
}

}  // namespace gapstrain::models
