#include "mesh/cut_tube.h"

#include "mesh/plane_mesher.h"
#include "mesh/smooth.h"
#include "mesh/tube_outline.h"
#include "mesh/tube_seam.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

namespace gapstrain::mesh {

namespace {

void check(const UnrolledTube& tube) {
  require_positive("tube", tube.perimeter, "perimeter");
  require_positive("tube", tube.length, "length");
  require_positive("tube", tube.size_max, "edge length size_max");
  require_positive("tube", tube.size_cut, "edge length size_cut");
  require_positive("tube", tube.growth, "growth");
  if (tube.ring_elements < 8 || tube.ring_elements % 2 != 0)
    throw MeshError(fmt::format("A ring has an even number of elements, 8 or more, not {}.", tube.ring_elements));
  for (const double x : tube.section_lines)
    if (!std::isfinite(x) || x <= 0.0 || x >= tube.length)
      throw MeshError(
          fmt::format("The section line at x = {} mm lies outside the tube of {} mm.", x, tube.length));
  std::set<std::string> names;
  for (const Spot& spot : tube.spots) {
    if (!std::isfinite(spot.s) || !std::isfinite(spot.x))
      throw MeshError(fmt::format("The place of the spot \"{}\" is not finite.", spot.name));
    require_positive("tube", spot.radius_s, "spot radius round it");
    require_positive("tube", spot.radius_x, "spot radius along it");
    if (2.0 * spot.radius_s >= tube.perimeter)
      throw MeshError(fmt::format("The spot \"{}\" is wider than the tube's perimeter.", spot.name));
    if (!names.insert(spot.name).second) throw MeshError(fmt::format("Two spots are named \"{}\".", spot.name));
  }
  if (!tube.cut) return;
  constexpr int samples = 48;
  for (int i = 0; i < samples; ++i) {
    const double s = tube.perimeter * i / samples;
    const double x = (*tube.cut)(s);
    if (!std::isfinite(x)) throw MeshError(fmt::format("The cut is not finite at s = {} mm.", s));
    if (std::abs((*tube.cut)(s + tube.perimeter) - x) > 1e-6 * tube.perimeter)
      throw MeshError(fmt::format("The cut does not close: it differs one perimeter on from s = {} mm.", s));
  }
}

// The sheet closed at its seam: nodes one perimeter on give way to their twins.
void close_seam(FlatMesh& sheet, const TubeOutline& outline) {
  std::vector<int> replacement(static_cast<std::size_t>(sheet.nodes.rows()));
  std::iota(replacement.begin(), replacement.end(), 0);
  for (const auto& [node, twin] : outline.seam) replacement[twin] = node;
  for (Quad& quad : sheet.quads)
    for (int& node : quad) node = replacement[node];
}

// What holds a node in its place: every curve but the seam, and the spots' centres.
std::vector<bool> held_nodes(const FlatMesh& sheet, const TubeOutline& outline) {
  std::vector<bool> held(static_cast<std::size_t>(sheet.nodes.rows()), false);
  std::fill_n(held.begin(), outline.plane.points.size(), true);
  for (const auto& [node, twin] : outline.seam) held[node] = false;
  for (const Level& level : outline.levels) held[level.nodes.front()] = true;
  return held;
}

// Takes the quads of some bands out of the closed sheet, and their groups.
class PartExtractor {
 public:
  PartExtractor(const UnrolledTube& tube, const TubeOutline& outline, const PlaneMesh& sheet)
      : tube_(tube), outline_(outline), sheet_(sheet) {}

  FlatMesh part(int first_band, int last_band) {
    part_ = {};
    index_of_.assign(static_cast<std::size_t>(sheet_.mesh.nodes.rows()), -1);
    kept_.clear();
    std::vector<std::set<int>> spot_nodes(tube_.spots.size());
    for (std::size_t q = 0; q < sheet_.mesh.quads.size(); ++q) {
      const int face = sheet_.face_of_quad[q], band = outline_.band_of_face[face],
                spot = outline_.spot_of_face[face];
      if (band < first_band || band > last_band) continue;
      Quad quad = sheet_.mesh.quads[q];
      for (int& node : quad) node = index(node);
      part_.quads.push_back(quad);
      if (spot >= 0) spot_nodes[spot].insert(quad.begin(), quad.end());
    }
    add_nodes();
    for (int level = first_band; level <= last_band + 1; ++level) add_level(outline_.levels[level]);
    for (std::size_t spot = 0; spot < spot_nodes.size(); ++spot) {
      if (spot_nodes[spot].empty()) continue;
      part_.groups["spot:" + tube_.spots[spot].name].assign(spot_nodes[spot].begin(), spot_nodes[spot].end());
      for (const int node : outline_.rings[spot])
        part_.groups["ring:" + tube_.spots[spot].name].push_back(index_of_[node]);
    }
    return std::move(part_);
  }

 private:
  int index(int node) {
    if (index_of_[node] < 0) {
      index_of_[node] = static_cast<int>(kept_.size());
      kept_.push_back(node);
    }
    return index_of_[node];
  }

  void add_nodes() {
    part_.nodes.resize(static_cast<Eigen::Index>(kept_.size()), 2);
    for (std::size_t i = 0; i < kept_.size(); ++i) {
      const double s = sheet_.mesh.nodes(kept_[i], 0);
      const double wrapped = s - tube_.perimeter * std::floor(s / tube_.perimeter);
      const auto row = static_cast<Eigen::Index>(i);
      part_.nodes(row, 0) = wrapped < tube_.perimeter ? wrapped : 0.0;  // rounding may make it the perimeter
      part_.nodes(row, 1) = sheet_.mesh.nodes(kept_[i], 1);
    }
  }

  void add_level(const Level& level) {
    std::vector<int>& group = part_.groups[level.group];
    for (std::size_t i = 0; i + 1 < level.nodes.size(); ++i) group.push_back(index_of_[level.nodes[i]]);
    const auto smaller_s = [this](int a, int b) { return part_.nodes(a, 0) < part_.nodes(b, 0); };
    std::rotate(group.begin(), std::min_element(group.begin(), group.end(), smaller_s), group.end());
  }

  const UnrolledTube& tube_;
  const TubeOutline& outline_;
  const PlaneMesh& sheet_;
  FlatMesh part_;
  std::vector<int> index_of_, kept_;
};

}  // namespace

CutTube mesh_cut_tube(const GmshSession& session, const UnrolledTube& tube) {
  check(tube);
  const TubeOutline outline = outline_tube(tube, choose_seam(tube));
  PlaneMesh sheet = mesh_plane(session, outline.plane, outline.size);
  close_seam(sheet.mesh, outline);
  smooth(sheet.mesh, held_nodes(sheet.mesh, outline), tube.perimeter, 8);

  PartExtractor extractor(tube, outline, sheet);
  const int bands = static_cast<int>(outline.levels.size()) - 1;
  if (!tube.cut) return {extractor.part(0, bands - 1), {}};
  const auto cut = std::find_if(outline.levels.begin(), outline.levels.end(),
                                [](const Level& level) { return level.group == "cut"; });
  const int distal_band = static_cast<int>(cut - outline.levels.begin());
  return {extractor.part(0, distal_band - 1), extractor.part(distal_band, bands - 1)};
}

}  // namespace gapstrain::mesh
