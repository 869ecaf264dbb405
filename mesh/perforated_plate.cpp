#include "mesh/perforated_plate.h"

#include "mesh/plate_outline.h"
#include "mesh/smooth.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::mesh {

namespace {

void check(const PerforatedPlate& plate) {
  require_positive("plate", plate.length, "length");
  require_positive("plate", plate.size_max, "edge length size_max");
  require_positive("plate", plate.growth, "growth");
  if (plate.rim_elements < 8 || plate.rim_elements % 2 != 0)
    throw MeshError(fmt::format("A rim has an even number of elements, 8 or more, not {}.", plate.rim_elements));

  if (plate.widths.empty()) throw MeshError("The plate has no width.");
  for (std::size_t i = 0; i < plate.widths.size(); ++i) {
    require_positive("plate", plate.widths[i].width, "width");
    if (!std::isfinite(plate.widths[i].position)) throw MeshError("The place of a width is not finite.");
    if (i > 0 && plate.widths[i].position <= plate.widths[i - 1].position)
      throw MeshError(fmt::format("The places of the widths have to rise: {} mm follows {} mm.",
                                  plate.widths[i].position, plate.widths[i - 1].position));
  }
  for (const Hole& hole : plate.holes) {
    if (!std::isfinite(hole.centre)) throw MeshError("The place of a hole is not finite.");
    require_positive("plate", hole.diameter, "hole diameter");
    require_positive("plate", hole.slot_length, "slot length");
    if (hole.slot_length < hole.diameter)
      throw MeshError(fmt::format("The slot at {} mm is shorter ({} mm) than it is wide ({} mm).", hole.centre,
                                  hole.slot_length, hole.diameter));
  }
  std::vector<double> lines = plate.cross_lines;
  lines.insert(lines.end(), {0.0, plate.length});
  for (const double x : plate.cross_lines)
    if (!std::isfinite(x)) throw MeshError("The place of a line across is not finite.");
  std::sort(lines.begin(), lines.end());
  if (lines.front() < 0.0 || lines.back() > plate.length)
    throw MeshError(fmt::format("A line across lies outside the plate of {} mm.", plate.length));
  for (std::size_t i = 0; i + 1 < lines.size(); ++i)
    if (lines[i + 1] - lines[i] < 0.1 * plate.size_max)
      throw MeshError(fmt::format("The lines across at {} mm and {} mm lie too close for elements of {} mm.",
                                  lines[i], lines[i + 1], plate.size_max));
}

}  // namespace

FlatMesh mesh_perforated_plate(const GmshSession& session, const PerforatedPlate& plate) {
  check(plate);
  PlateOutline outline = outline_plate(plate);
  FlatMesh mesh = mesh_plane(session, outline.plane, outline.size).mesh;
  std::vector<bool> held(static_cast<std::size_t>(mesh.nodes.rows()), false);
  std::fill_n(held.begin(), outline.plane.points.size(), true);
  smooth(mesh, held, 0.0, 8);
  mesh.groups = std::move(outline.groups);
  return mesh;
}

}  // namespace gapstrain::mesh
