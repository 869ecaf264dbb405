#include "models/checks/checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

const Angle largest_obliquity = 65.0 * degree;  // the mesh of a longer cut is too distorted

// Of a screw's axis from the fracture's edge, in core radii: one for the shaft and half of one for bone around it.
constexpr double least_edge_distance = 1.5;

// The cut's middle plane, as a place along the axis for each unrolled coordinate u.
class CutPlane {
 public:
  CutPlane(const Fracture& fracture, const BoneShape& shape)
      : shape_(shape),
        middle_(fracture.position.value()),
        slope_(std::tan(fracture.obliquity.value())),
        direction_(fracture.direction.value()),
        half_gap_(0.5 * fracture.gap.value()) {}

  // Distance of a place on the mid-surface from the nearer edge, square to the cut; negative inside the gap.
  double edge_distance(const Eigen::Vector2d& unrolled) const {
    return (std::abs(beyond(unrolled)) - half_gap_) / std::hypot(1.0, slope_);
  }

  bool is_distal(const Eigen::Vector2d& unrolled) const { return beyond(unrolled) > 0.0; }

 private:
  double beyond(const Eigen::Vector2d& unrolled) const {
    const BoneSection section = shape_.section(middle_);
    const Eigen::Vector3d arm = shape_.mid_surface(unrolled.x(), middle_).position - section.centre;
    return unrolled.y() - middle_ - slope_ * (arm.y() * std::sin(direction_) + arm.z() * std::cos(direction_));
  }

  const BoneShape& shape_;
  double middle_, slope_, direction_, half_gap_;
};

// Whether the screw holds one fragment to the plate: lag screws hold fragments to each other, wires for a while.
bool holds_plate(const PlacedScrew& screw) { return !screw.is_wire && screw.screw.kind != ScrewKind::lag; }

// Whether the gap lies between screws at all. If not, one sentence replaces one for each screw inside it.
bool check_working_length(const std::vector<PlacedScrew>& screws, const Fracture& fracture,
                          ProblemList& problems) {
  const double middle = fracture.position.value();
  double proximal = -1.0, distal = -1.0;
  for (const PlacedScrew& screw : screws) {
    if (!holds_plate(screw)) continue;
    const double x = screw.placement.hole_centre.x();
    if (x < middle)
      proximal = std::max(proximal, x);
    else
      distal = distal < 0.0 ? x : std::min(distal, x);
  }
  if (proximal < 0.0 || distal < 0.0 || fracture.gap.value() < distal - proximal) return true;
  problems.error(
      "fracture.gap",
      fmt::format("The gap is {} long, but the screws next to it are only {:.4g} mm apart; leave the holes "
                  "over the fracture empty or enter a shorter gap.",
                  text(fracture.gap), distal - proximal));
  return false;
}

struct ScrewCount {
  int ever = 0, last = 0;  // in some step; after the last one
};

void check_fragment(std::string_view fragment, const ScrewCount& count, ProblemList& problems) {
  if (count.ever > 0 && count.last == 0)
    problems.error("step", fmt::format("After the last step no screw holds the plate to the {} fragment, so it "
                                       "floats; leave two there at least.",
                                       fragment));
  else if (count.last == 0)
    problems.error("screw",
                   fmt::format("No screw holds the {} fragment, so it floats; add at least two screws there or "
                               "check the fracture's and the plate's positions.",
                               fragment));
  if (count.last == 1)
    problems.warning("screw", fmt::format("Only one screw holds the {} fragment; two are the least that hold it "
                                          "against turning in practice.",
                                          fragment));
}

void report_edge_distance(const PlacedScrew& screw, double found, double needed, ProblemList& problems) {
  problems.error(screw.path,
                 fmt::format("The {} {}; its axis must stay {:.3g} mm away from the edge. {}", screw.name,
                             found < 0.0 ? "goes into the fracture gap"
                                         : fmt::format("passes {:.3g} mm from the fracture's edge", found),
                             needed, way_out(screw)));
}

// A lag screw glides in one fragment and holds in the other; any other screw, or wire, keeps to one.
void check_sides(const PlacedScrew& screw, bool is_near_distal, bool is_far_distal, ProblemList& problems) {
  const bool is_lag = screw.screw.kind == ScrewKind::lag;
  if (is_lag && is_near_distal == is_far_distal)
    problems.error(screw.path,
                   fmt::format("The lag {} does not cross the fracture: both its cortices lie in the {} fragment, "
                               "so it presses nothing. Aim it across the cut, or make it cortical.",
                               screw.name, is_near_distal ? "distal" : "proximal"));
  if (!is_lag && is_near_distal != is_far_distal)
    problems.error(
        screw.path,
        fmt::format("The {} crosses the fracture: its cortices lie in different fragments. {}.", screw.name,
                    screw.is_wire ? "Move it"
                                  : "Tilt it away, move it, end it in the near "
                                    "cortex, or make it a lag screw"));
}

}  // namespace

void check_fracture(const Construct& construct, ProblemList& problems) {
  const Fracture& fracture = only(construct.fractures);
  problems.finite("fracture.position", "The fracture's position", fracture.position);
  const bool is_gap_good = problems.not_negative("fracture.gap", "The fracture's gap", fracture.gap);
  if (is_gap_good && fracture.gap == 0.0 * mm && fracture.tissue)
    problems.error("fracture.gap",
                   "The gap is 0 mm and leaves no room for a tissue; remove the tissue or open "
                   "the gap.");
  problems.finite("fracture.direction", "The fracture's direction", fracture.direction);
  if (!(fracture.obliquity >= 0.0 * degree && fracture.obliquity <= largest_obliquity))
    problems.error(
        "fracture.obliquity",
        fmt::format("The obliquity is {}; allowed is 0 deg (transverse) to {}. For the other way round, turn "
                    "the direction by 180 deg.",
                    text(fracture.obliquity), text(largest_obliquity)));
}

void check_fracture_in_bone(const Fracture& fracture, const BoneShape& shape, ProblemList& problems) {
  const double middle = fracture.position.value();
  if (!(middle > 0.0 && middle < shape.length())) {
    problems.error("fracture.position",
                   fmt::format("The fracture lies at {}, outside the bone; it must be between 0 mm "
                               "and {:.4g} mm from the proximal end.",
                               text(fracture.position), shape.length()));
    return;
  }
  // How far an oblique cut reaches along the axis from its middle, and one wall for the end of the fragment to be
  // bone.
  const BoneSection section = shape.section(middle);
  const double direction = fracture.direction.value();
  const double reach = std::tan(fracture.obliquity.value()) *
                       std::hypot(section.semi_y * std::sin(direction), section.semi_z * std::cos(direction));
  const double first = middle - 0.5 * fracture.gap.value() - reach;
  const double last = middle + 0.5 * fracture.gap.value() + reach;
  if (first >= section.wall && last <= shape.length() - section.wall) return;
  problems.error(
      reach > fracture.gap.value() ? "fracture.obliquity" : "fracture.gap",
      fmt::format("The cut reaches from {:.4g} to {:.4g} mm along the bone and so to its end; both fragments "
                  "must be whole rings there. Enter a smaller gap or obliquity, or move the fracture.",
                  first, last));
}

void check_screws_and_fracture(const std::vector<PlacedScrew>& screws, const std::set<std::string>& gone,
                               const Fracture& fracture, const BoneShape& shape, ProblemList& problems) {
  const CutPlane cut(fracture, shape);
  const bool is_gap_between = check_working_length(screws, fracture, problems);
  ScrewCount proximal, distal;
  bool is_any_screw = false;
  for (const PlacedScrew& screw : screws) {
    const auto& bone = *screw.placement.bone;
    const Eigen::Vector2d near = shape.unrolled(bone.near.middle), far = shape.unrolled(bone.far.middle);
    if (holds_plate(screw)) {
      ScrewCount& fragment = cut.is_distal(near) ? distal : proximal;
      ++fragment.ever;
      if (!gone.contains(screw.screw.label)) ++fragment.last;
    }
    is_any_screw = is_any_screw || !screw.is_wire;
    if (!is_gap_between) continue;
    const bool passes_both = screw.screw.cortices == 2;
    const double needed = least_edge_distance * 0.5 * screw.screw.size.core_diameter.value();
    const double found =
        passes_both ? std::min(cut.edge_distance(near), cut.edge_distance(far)) : cut.edge_distance(near);
    if (found < needed)
      report_edge_distance(screw, found, needed, problems);
    else if (passes_both)
      check_sides(screw, cut.is_distal(near), cut.is_distal(far), problems);
  }
  if (!is_any_screw) return;
  check_fragment("proximal", proximal, problems);
  check_fragment("distal", distal, problems);
}

namespace {

// A fracture clamp presses square to the cut, along a line through its middle that has to come out of the bone.
void check_clamp_across(const TemporaryHold& clamp, const std::string& where, const Fracture& fracture,
                        const BoneShape& shape, ProblemList& problems) {
  const double x = fracture.position.value();
  const BoneSection section = shape.section(x);
  const double half = std::max(section.semi_y, section.semi_z), room = std::min(x, shape.length() - x);
  if (half < room * std::tan(fracture.obliquity.value())) return;
  problems.error(
      where + ".kind",
      fmt::format("The {} would press square to the cut, whose obliquity is {:.3g} degrees: that line leaves "
                  "the bone beyond its end, and the tips find nothing to hold. A cut of {:.2g} degrees or "
                  "more can be clamped; press a transverse one with a compression screw or a lag screw, "
                  "and hold it with a plate clamp or a wire.",
                  name_of(clamp), in_degrees(fracture.obliquity),
                  std::ceil(in_degrees(std::atan2(half, room) * radian))));
}

}  // namespace

void check_clamps_and_fracture(const Construct& construct, const std::vector<bool>& can_be_placed,
                               const PlateShape& plate_shape, const BoneShape& shape, ProblemList& problems) {
  const CutPlane cut(only(construct.fractures), shape);
  for (std::size_t i = 0; i < construct.temporary.size(); ++i) {
    const TemporaryHold& hold = construct.temporary[i];
    if (hold.kind == HoldKind::fracture_clamp)
      check_clamp_across(hold, path_of_hold(i), only(construct.fractures), shape, problems);
    if (hold.kind != HoldKind::plate_clamp || !can_be_placed[i]) continue;
    const double x = plate_shape.x_at(hold.along.value());
    const Eigen::Vector2d near(0.0, x), far(0.5 * shape.perimeter(), x);
    const double needed = shape.section(x).wall;
    const double found = std::min(cut.edge_distance(near), cut.edge_distance(far));
    if (found >= needed && cut.is_distal(near) == cut.is_distal(far)) continue;
    problems.error(
        path_of_hold(i) + ".along",
        fmt::format("The {} grips the bone over the fracture or less than {:.3g} mm (the wall's thickness) "
                    "from its edge; move it along the plate.",
                    name_of(hold), needed));
  }
}

}  // namespace gapstrain::models
