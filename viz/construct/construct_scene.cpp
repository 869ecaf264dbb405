#include "viz/construct/construct_scene.h"

#include "viz/construct/plate_places.h"
#include "viz/construct/screw_surface.h"
#include "viz/drawing/ticks.h"

#include <fmt/format.h>
#include <vtkActor.h>

#include <algorithm>
#include <limits>
#include <string>
#include <utility>

namespace gapstrain::viz {

namespace {

constexpr double wanted_share = 0.04;  // largest shown displacement, of the construct's length

double construct_length(const models::LoadFields& fields) {
  double low = std::numeric_limits<double>::max(), high = std::numeric_limits<double>::lowest();
  for (const auto& shell : fields.shells) {
    low = std::min(low, shell.mesh->nodes.col(0).minCoeff());
    high = std::max(high, shell.mesh->nodes.col(0).maxCoeff());
  }
  return high - low;
}

// How far the drawn bodies reach on the picture, in columns a few pixels wide, so that a label finds free ground
// next to what it names.
class Silhouette {
 public:
  void cover(const Pixel& pixel) {
    auto& [low, high] = columns_[column(pixel.x())];
    low = std::min(low, pixel.y());
    high = std::max(high, pixel.y());
  }
  double above(double x) const { return around(x).second; }
  double below(double x) const { return around(x).first; }

 private:
  static constexpr double column_width = 10.0;
  static constexpr std::size_t column_count = static_cast<std::size_t>(picture_width / column_width);
  static std::size_t column(double x) {
    return static_cast<std::size_t>(std::clamp(x / column_width, 0.0, static_cast<double>(column_count - 1)));
  }
  std::pair<double, double> around(double x) const {
    std::pair<double, double> extent{1e9, -1e9};
    const std::size_t middle = column(x);
    for (std::size_t c = middle < 3 ? 0 : middle - 3; c <= std::min(middle + 3, column_count - 1); ++c) {
      extent.first = std::min(extent.first, columns_[c].first);
      extent.second = std::max(extent.second, columns_[c].second);
    }
    return extent;
  }
  std::vector<std::pair<double, double>> columns_{column_count, {1e9, -1e9}};
};

// Boundary edges without the holes' rims.
std::vector<Edge> outer_edges(const mesh::ShellMesh& mesh) {
  std::vector<char> on_rim(static_cast<std::size_t>(mesh.nodes.rows()), 0);
  for (const auto& [name, nodes] : mesh.groups)
    if (name.compare(0, 5, "hole:") == 0)
      for (const int node : nodes) on_rim[static_cast<std::size_t>(node)] = 1;
  std::vector<Edge> edges = boundary_edges(mesh);
  std::erase_if(edges, [&](const Edge& edge) { return on_rim[static_cast<std::size_t>(edge[0])] != 0; });
  return edges;
}

}  // namespace

ConstructScene construct_scene(const models::LoadFields& fields, double factor) {
  ConstructScene scene;
  scene.fields = &fields;
  scene.factor = factor;
  scene.largest = {largest_von_mises(plate_of(fields)), "plate peak"};
  for (const auto& shell : fields.shells) {
    scene.faces.push_back(deformed_faces(*shell.mesh, shell.displacements, shell.rotations, factor));
    for (const auto* face : {&scene.faces.back().top, &scene.faces.back().bottom})
      for (Eigen::Index i = 0; i < face->rows(); ++i) scene.points.emplace_back(face->row(i).transpose());
  }
  for (const auto& screw : fields.screws) {
    for (std::size_t i = 0; i < screw.axis.size(); ++i) scene.points.push_back(deformed_point(screw, i, factor));
    const double stress = *std::max_element(screw.stress.begin(), screw.stress.end());
    if (stress > scene.largest.value) scene.largest = {stress, "peak of screw " + screw.label};
  }
  return scene;
}

double deformation_factor(const models::LoadFields& fields) {
  const double displacement = largest_displacement(fields);
  if (!(displacement > 0.0)) return 1.0;
  return std::max(1.0, round_below(1.3 * wanted_share * construct_length(fields) / displacement));
}

std::string deformation_text(double factor) {
  return factor > 1.0 ? fmt::format("deformed x {:.0f}, thin outline at rest", factor)
                      : std::string("true deformation");
}

Projection three_quarter_view() {
  return level_view(Eigen::Vector3d(-0.22, -0.80, 0.56), Eigen::Vector3d::UnitX());
}

Rect reach(const Projection& view, const std::vector<Eigen::Vector3d>& points) {
  Rect reached{1e9, 1e9, -1e9, -1e9};
  for (const auto& point : points) {
    const Pixel pixel = view.pixel(point);
    reached.left = std::min(reached.left, pixel.x());
    reached.right = std::max(reached.right, pixel.x());
    reached.bottom = std::min(reached.bottom, pixel.y());
    reached.top = std::max(reached.top, pixel.y());
  }
  return reached;
}

void add_construct(Window& window, const ConstructScene& scene, const Projection& view, const ColourRange& range) {
  const models::ShellField& plate = plate_of(*scene.fields);
  // Opaque things first, then the bone from back to front: its far wall, its cut faces, its near wall.
  for (const auto& screw : scene.fields->screws) {
    window.add(scalar_actor(shaft_surface(screw, scene.factor), range.high));
    window.add(plain_actor(head_surface(screw, plate.mesh->thickness.mean(), scene.factor), {}));
  }
  // Edges keep clear of the surfaces they bound; the outline at rest stays behind all that is solid.
  const Eigen::RowVector3d behind = construct_length(*scene.fields) * view.towards_viewer.transpose();
  const Eigen::RowVector3d in_front = 0.05 * view.towards_viewer.transpose();
  std::vector<ShellSurface> bones;
  for (std::size_t s = 0; s < scene.fields->shells.size(); ++s) {
    const auto& shell = scene.fields->shells[s];
    const mesh::ShellMesh& mesh = *shell.mesh;
    ShellSurface surface = shell_surface(mesh, scene.faces[s]);
    const Eigen::MatrixX3d at_rest = undeformed_faces(mesh).top.rowwise() - behind;
    window.add(line_actor(lines(outer_edges(mesh), at_rest), {.colour = ink::grid, .width = 2.0}));
    if (shell.kind == models::BodyKind::plate) {
      set_scalars(surface, mesh, shell.von_mises_top, shell.von_mises_bottom);
      for (const auto& part : {surface.top, surface.bottom, surface.rim})
        window.add(scalar_actor(part, range.high));
    } else {
      for (const auto* face : {&scene.faces[s].top, &scene.faces[s].bottom})
        window.add(line_actor(lines(boundary_edges(mesh), face->rowwise() + in_front),
                              {.colour = ink::quiet_text, .width = 3.0}));
      bones.push_back(surface);
    }
  }
  Colour wall = ink::bone, cut = ink::bone;
  wall.opacity = 0.28;
  cut.opacity = 0.7;
  for (const auto& bone : bones) window.add(plain_actor(bone.top, {wall, Cull::front, 0.75}));
  for (const auto& bone : bones) window.add(plain_actor(bone.rim, {cut, Cull::nothing, 0.3}));
  for (const auto& bone : bones) window.add(plain_actor(bone.top, {wall, Cull::back, 0.75}));
}

void label_construct(Canvas& canvas, const ConstructScene& scene, const Projection& view) {
  Silhouette silhouette;
  for (const auto& point : scene.points) silhouette.cover(view.pixel(point));
  std::vector<Label> hole_labels, screw_labels;
  for (const auto& hole : hole_places(plate_of(*scene.fields))) {
    const Pixel centre = view.pixel(hole.centre + scene.factor * hole.displacement);
    hole_labels.push_back({centre,
                           {centre.x(), silhouette.above(centre.x()) + 34.0},
                           std::to_string(hole.number),
                           {.size = letter::small, .colour = ink::quiet_text}});
  }
  for (const auto& screw : scene.fields->screws) {
    const Pixel tip = view.pixel(deformed_point(screw, screw.axis.size() - 1, scene.factor));
    screw_labels.push_back(
        {tip, {tip.x(), silhouette.below(tip.x()) - 36.0}, screw.label, {.size = letter::small, .bold = true}});
  }
  draw_labels(canvas, hole_labels, 34.0);
  draw_labels(canvas, screw_labels, -34.0);
}

void draw_directions_and_length(Canvas& canvas, double y, const Projection& view) {
  draw_bone_directions(canvas, y);
  const Eigen::Vector3d along = Eigen::Vector3d::UnitX();
  draw_length_bar(canvas, {0.5 * picture_width, y - 8.0}, view.pixels_per_mm * view.right.dot(along), 330.0,
                  " along the bone");
}

void draw_stress_legend(Canvas& canvas, double top, const ColourRange& range, const ScaleMark& largest) {
  draw_colour_legend(canvas, top, range, largest, "von Mises stress (screws: fibre stress), MPa");
}

}  // namespace gapstrain::viz
