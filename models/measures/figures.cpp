#include "models/measures/figures.h"

#include "models/checks/checks.h"
#include "models/geometry/fracture_cut.h"
#include "models/geometry/plate_shape.h"

namespace gapstrain::models {

namespace {

Length hole_position(const Construct& construct, int hole) {
  return only(construct.plates).holes[static_cast<std::size_t>(hole - 1)].position;
}

// A plate screw of one fragment, rather than a lag screw across the fracture.
bool holds_one_fragment(const Screw& screw) { return screw.kind != ScrewKind::lag; }

}  // namespace

double fracture_along(const Construct& construct) { return fracture_extent(construct).along; }

FractureExtent fracture_extent(const Construct& construct) {
  const BoneShape bone(construct.bone, only(construct.plates).aspect);
  return {PlateShape(only(construct.plates), bone).along_at(only(construct.fractures).position.value()),
          CutThroughBone(only(construct.fractures), bone).length()};
}

namespace {

// After the last step.
std::vector<const Screw*> screws_left(const Construct& construct) {
  const auto gone = taken_out(construct);
  std::vector<const Screw*> screws;
  for (const auto& screw : construct.screws)
    if (!gone.contains(screw.label)) screws.push_back(&screw);
  return screws;
}

Innermost innermost_of(const Construct& construct, const std::vector<const Screw*>& screws, double fracture) {
  Innermost innermost;
  double nearest_proximal = -1e300, nearest_distal = 1e300;
  for (std::size_t k = 0; k < screws.size(); ++k) {
    if (!holds_one_fragment(*screws[k])) continue;
    const double along = hole_position(construct, screws[k]->hole).value();
    if (along < fracture && along > nearest_proximal) {
      nearest_proximal = along;
      innermost.proximal = k;
    } else if (along >= fracture && along < nearest_distal) {
      nearest_distal = along;
      innermost.distal = k;
    }
  }
  return innermost;
}

}  // namespace

Innermost innermost_screws(const Construct& construct) {
  const auto left = screws_left(construct);
  const auto [proximal, distal] = innermost_of(construct, left, fracture_along(construct));
  const auto index = [&](std::size_t k) { return static_cast<std::size_t>(left[k] - construct.screws.data()); };
  return {index(proximal), index(distal)};
}

ConstructFigures measure_figures(const Construct& construct) {
  return measure_figures(construct, screws_left(construct), fracture_extent(construct));
}

ConstructFigures measure_figures(const Construct& construct, const std::vector<const Screw*>& screws,
                                 const FractureExtent& fracture) {
  const auto [proximal, distal] = innermost_of(construct, screws, fracture.along);
  ConstructFigures figures;
  figures.fragments.resize(construct.fractures.size() + 1);
  figures.working_length =
      hole_position(construct, screws[distal]->hole) - hole_position(construct, screws[proximal]->hole);
  if (fracture.length > 0.0) figures.plate_span_ratio = only(construct.plates).length.value() / fracture.length;
  int in_plate = 0;
  for (const auto* each : screws) {
    const Screw& screw = *each;
    if (screw.hole > 0) ++in_plate;
    if (!holds_one_fragment(screw)) {
      ++figures.screws_across;
      continue;
    }
    const bool is_beyond = hole_position(construct, screw.hole).value() >= fracture.along;
    FragmentScrews& fragment = figures.fragments[is_beyond ? 1 : 0];
    ++fragment.screws;
    fragment.cortices += screw.cortices;
  }
  figures.plate_screw_density =
      static_cast<double>(in_plate) / static_cast<double>(only(construct.plates).holes.size());
  return figures;
}

}  // namespace gapstrain::models
