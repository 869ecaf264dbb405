#include "viz/peak_text.h"
#include "viz/pictures.h"
#include "viz/plate_places.h"
#include "viz/screw_surface.h"
#include "viz/sheet.h"
#include "viz/shell_surface.h"
#include "viz/ticks.h"
#include "viz/window.h"

#include <fmt/format.h>
#include <vtkActor.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace gapstrain::viz {

namespace {

constexpr double wanted_share = 0.04;  // largest shown displacement, of the construct's length
constexpr double label_room = 120.0;   // above and below the bodies, pixels
constexpr double most_scene_height = 1000.0;

// Three-quarter view from the side away from +y, the bone level and the plate on top.
Projection three_quarter_view() {
  return level_view(Eigen::Vector3d(-0.22, -0.80, 0.56), Eigen::Vector3d::UnitX());
}

double construct_length(const models::LoadFields& fields) {
  double low = std::numeric_limits<double>::max(), high = std::numeric_limits<double>::lowest();
  for (const auto& shell : fields.shells) {
    low = std::min(low, shell.mesh->nodes.col(0).minCoeff());
    high = std::max(high, shell.mesh->nodes.col(0).maxCoeff());
  }
  return high - low;
}

// A round factor that shows the largest displacement at about `wanted_share`, never less than the truth.
double deformation_factor(const models::LoadFields& fields) {
  const double displacement = largest_displacement(fields);
  if (!(displacement > 0.0)) return 1.0;
  return std::max(1.0, round_below(1.3 * wanted_share * construct_length(fields) / displacement));
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

struct Frame {
  Rect scene;
  int height = 0;
};

// Scales the view so that all points fill the picture's width, and lays the picture out round them.
Frame fit(Projection& view, const std::vector<Eigen::Vector3d>& points) {
  Pixel low = Pixel::Constant(1e9), high = Pixel::Constant(-1e9);
  for (const auto& point : points) {
    const Pixel pixel = view.pixel(point);
    low = low.cwiseMin(pixel);
    high = high.cwiseMax(pixel);
  }
  const Pixel size = (high - low).cwiseMax(1e-6), middle = 0.5 * (low + high);
  view.pixels_per_mm = std::min((picture_width - 2.0 * sheet::margin) / size.x(), most_scene_height / size.y());
  view.target = middle.x() * view.right + middle.y() * view.up;

  constexpr double row_of_directions = 70.0;
  const double scene_height = size.y() * view.pixels_per_mm + 2.0 * label_room;
  Frame frame;
  frame.scene.bottom = sheet::caution_height + sheet::legend_height + row_of_directions;
  frame.scene.top = frame.scene.bottom + std::ceil(scene_height);
  frame.scene.right = picture_width;
  frame.height = static_cast<int>(frame.scene.top + sheet::head_height);
  view.at = frame.scene.centre();
  return frame;
}

}  // namespace

void draw_construct(const Display&, const models::LoadFields& fields, const models::LoadFindings& findings,
                    const std::filesystem::path& png) {
  const double factor = deformation_factor(fields);
  const models::ShellField& plate = plate_of(fields);

  std::vector<FacePoints> faces;
  std::vector<Eigen::Vector3d> points;
  for (const auto& shell : fields.shells) {
    faces.push_back(deformed_faces(*shell.mesh, shell.displacements, shell.rotations, factor));
    for (const auto* face : {&faces.back().top, &faces.back().bottom})
      for (Eigen::Index i = 0; i < face->rows(); ++i) points.emplace_back(face->row(i).transpose());
  }
  for (const auto& screw : fields.screws)
    for (std::size_t i = 0; i < screw.axis.size(); ++i) points.push_back(deformed_point(screw, i, factor));

  double largest = largest_von_mises(plate);
  for (const auto& screw : fields.screws)
    largest = std::max(largest, *std::max_element(screw.stress.begin(), screw.stress.end()));
  const ColourRange range = colour_range(largest);

  Projection view = three_quarter_view();
  const Frame frame = fit(view, points);
  Window window(picture_width, frame.height);
  window.open_scene(frame.scene, view);

  // Opaque things first, then the bone from back to front: its far wall, its cut faces, its near wall.
  for (const auto& screw : fields.screws) {
    window.add(scalar_actor(shaft_surface(screw, factor), range.high));
    window.add(plain_actor(head_surface(screw, plate.mesh->thickness.mean(), factor), {}));
  }
  // Edges keep clear of the surfaces they bound; the outline at rest stays behind all that is solid.
  const Eigen::RowVector3d behind = construct_length(fields) * view.towards_viewer.transpose();
  const Eigen::RowVector3d in_front = 0.05 * view.towards_viewer.transpose();
  std::vector<ShellSurface> bones;
  for (std::size_t s = 0; s < fields.shells.size(); ++s) {
    const auto& shell = fields.shells[s];
    const mesh::ShellMesh& mesh = *shell.mesh;
    ShellSurface surface = shell_surface(mesh, faces[s]);
    const Eigen::MatrixX3d at_rest = undeformed_faces(mesh).top.rowwise() - behind;
    window.add(line_actor(lines(outer_edges(mesh), at_rest), {.colour = ink::grid, .width = 2.0}));
    if (shell.kind == models::BodyKind::plate) {
      set_scalars(surface, mesh, shell.von_mises_top, shell.von_mises_bottom);
      for (const auto& part : {surface.top, surface.bottom, surface.rim})
        window.add(scalar_actor(part, range.high));
    } else {
      for (const auto* face : {&faces[s].top, &faces[s].bottom})
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

  Silhouette silhouette;
  for (const auto& point : points) silhouette.cover(view.pixel(point));
  const auto holes = hole_places(plate);
  window.draw([&](Canvas& canvas) {
    const std::string deformed = factor > 1.0 ? fmt::format("deformed x {:.0f}, thin outline at rest", factor)
                                              : std::string("true deformation");
    draw_head(canvas, frame.height, fields.load,
              fmt::format("{}; largest displacement {:.3g} mm; plate peak {}", deformed,
                          largest_displacement(fields), peak_text(findings.plate.peak)));
    std::vector<Label> hole_labels, screw_labels;
    for (const auto& hole : holes) {
      const Pixel centre = view.pixel(hole.centre + factor * hole.displacement);
      hole_labels.push_back({centre,
                             {centre.x(), silhouette.above(centre.x()) + 34.0},
                             std::to_string(hole.number),
                             {.size = letter::small, .colour = ink::quiet_text}});
    }
    for (const auto& screw : fields.screws) {
      const Pixel tip = view.pixel(deformed_point(screw, screw.axis.size() - 1, factor));
      screw_labels.push_back(
          {tip, {tip.x(), silhouette.below(tip.x()) - 36.0}, screw.label, {.size = letter::small, .bold = true}});
    }
    draw_labels(canvas, hole_labels, 34.0);
    draw_labels(canvas, screw_labels, -34.0);
    const double row = frame.scene.bottom - 34.0;
    draw_bone_directions(canvas, row);
    const Eigen::Vector3d along = Eigen::Vector3d::UnitX();
    draw_length_bar(canvas, {0.5 * picture_width, row - 8.0}, view.pixels_per_mm * view.right.dot(along), 330.0,
                    " along the bone");
    draw_colour_legend(canvas, frame.scene.bottom - 78.0, range, largest,
                       "von Mises stress (screws: fibre stress), MPa");
    draw_caution(canvas);
  });
  window.write(png);
}

}  // namespace gapstrain::viz
