#include "models/preparation/plate_mesh.h"

#include "mesh/perforated_plate.h"
#include "mesh/roll_up.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

PlateMesh mesh_plate(const mesh::GmshSession& session, const Plate& plate, const PlateShape& shape,
                     const MeshDensity& density) {
  const double refinement = density.refinement;
  mesh::PerforatedPlate flat;
  flat.length = plate.length.value();
  double narrowest = plate.sections.front().width.value();
  for (const auto& section : plate.sections) {
    flat.widths.push_back({section.position.value(), section.width.value()});
    narrowest = std::min(narrowest, section.width.value());
  }
  for (const auto& hole : plate.holes)
    flat.holes.push_back({hole.position.value(), hole.diameter.value(), hole.slot_length.value()});
  // What few elements a coarse mesh leaves of few: as many as a rim takes at the least.
  flat.rim_elements = std::max(MeshDensity::least_rim_elements,
                               4 * static_cast<int>(std::lround(density.rim_elements * refinement / 4.0)));
  flat.size_max = narrowest / (7.0 * refinement);

  mesh::FlatMesh meshed = mesh::mesh_perforated_plate(session, flat);
  const auto surface = [&](double along, double across) { return shape.mid_surface(along, across); };
  return {std::make_shared<mesh::ShellMesh>(mesh::roll_up(meshed, surface, 0.0)), std::move(meshed.nodes)};
}

}  // namespace gapstrain::models
