#include "viz/construct/peak_text.h"
#include "viz/construct/pictures.h"
#include "viz/construct/plate_places.h"
#include "viz/construct/screw_surface.h"
#include "viz/construct/shell_surface.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/window.h"

#include <fmt/format.h>
#include <vtkActor.h>

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::viz {

namespace {

constexpr double tilt = 16.0 * std::numbers::pi / 180.0;  // off the face's normal, so that the thickness shows
constexpr double scene_height = 880.0;
constexpr double plate_share = 0.62;  // of the scene's height taken by the plate's width

struct CloseView {
  Eigen::Vector3d peak;  // on its face
  Projection projection;
};

// Width of the plate across `axis` near a place.
double local_width(const models::ShellField& plate, const Eigen::Vector3d& centre, const Eigen::Vector3d& along,
                   const Eigen::Vector3d& across, double reach) {
  double low = 0.0, high = 0.0;
  for (Eigen::Index i = 0; i < plate.mesh->nodes.rows(); ++i) {
    const Eigen::Vector3d arm = plate.mesh->nodes.row(i).transpose() - centre;
    if (std::abs(arm.dot(along)) > reach) continue;
    low = std::min(low, arm.dot(across));
    high = std::max(high, arm.dot(across));
  }
  return high - low;
}

CloseView close_view(const models::ShellField& plate, const std::vector<HolePlace>& holes,
                     const models::PlatePeak& peak, const Rect& scene) {
  const bool from_below = peak.face == models::PlateFace::bottom;
  const int node = hottest_node(plate, peak.face);
  const Eigen::Vector3d director = plate.mesh->directors.row(node), place = plate.mesh->nodes.row(node);
  const double side = peak.face == models::PlateFace::middle ? 0.0 : from_below ? -1.0 : 1.0;
  const Eigen::Vector3d normal = from_below ? Eigen::Vector3d(-director) : director;
  const Eigen::Vector3d along = level_view(normal, Eigen::Vector3d::UnitX()).right;
  const Eigen::Vector3d across = normal.cross(along);

  Eigen::Vector3d target = place;
  double reach = 4.0 * plate.mesh->thickness(node);
  const auto hole = std::find_if(holes.begin(), holes.end(), [&](const auto& h) { return h.number == peak.hole; });
  if (hole != holes.end()) {
    target = hole->centre;
    reach = 2.0 * hole->radius;
  }
  CloseView view;
  view.peak = place + 0.5 * side * plate.mesh->thickness(node) * director;
  view.projection = level_view(std::cos(tilt) * normal - std::sin(tilt) * across, along);
  view.projection.target = target;
  view.projection.at = scene.centre();
  view.projection.pixels_per_mm =
      plate_share * scene.height() / local_width(plate, target, along, across, std::max(reach, 1.0));
  return view;
}

// Ring round the peak, its text on the free ground beyond the plate's nearer edge, a line between.
void draw_callout(Canvas& canvas, const Pixel& peak, const Rect& scene, const std::string& text) {
  constexpr double radius = 26.0, half_height = 32.0, from_edge = 62.0;
  const TextStyle style{.across = Across::centre, .upright = Upright::centre, .bold = true};
  const double half_width = 0.5 * canvas.text_size(text, style).x() + 22.0;
  const bool above = peak.y() >= scene.centre().y();
  const Pixel place(kept_between(peak.x(), half_width + sheet::margin, picture_width - half_width - sheet::margin),
                    above ? scene.top - from_edge : scene.bottom + from_edge);
  const Rect box{place.x() - half_width, place.y() - half_height, place.x() + half_width, place.y() + half_height};
  const Pixel foot(kept_between(peak.x(), box.left + 20.0, box.right - 20.0), above ? box.bottom : box.top);
  const Pixel direction = (foot - peak).normalized();
  // Light beneath dark, so that the mark shows on every colour of the scale.
  for (const auto& line : {LineStyle{ink::white, 10.0}, LineStyle{ink::text, 4.0}}) {
    canvas.ring(peak, radius, line);
    canvas.line(peak + radius * direction, foot, line);
  }
  canvas.fill(box, ink::white);
  canvas.frame(box, {.width = 3.0});
  canvas.text(place, text, style);
}

}  // namespace

void draw_hottest_hole(const Display& display, const models::LoadFields& fields,
                       const models::LoadFindings& findings, const std::filesystem::path& file) {
  const models::ShellField& plate = plate_of(fields);
  const models::PlatePeak& peak = findings.plate.peak;
  const auto holes = hole_places(plate);
  const double scene_bottom = sheet::caution_height + sheet::legend_height + sheet::row_of_directions;
  const Rect scene{0.0, scene_bottom, picture_width, scene_bottom + scene_height};
  const int height = static_cast<int>(scene.top + sheet::head_height);
  const CloseView view = close_view(plate, holes, peak, scene);
  const Projection& projection = view.projection;
  const double largest = largest_von_mises(plate);
  const ColourRange range = colour_range(largest);

  Window window(display, height);
  window.open_scene(scene, projection);
  const FacePoints faces = undeformed_faces(*plate.mesh);
  ShellSurface surface = shell_surface(*plate.mesh, faces);
  set_scalars(surface, *plate.mesh, plate.von_mises_top, plate.von_mises_bottom);
  for (const auto& part : {surface.top, surface.bottom, surface.rim}) window.add(scalar_actor(part, range.high));
  for (const auto* face : {&faces.top, &faces.bottom})
    window.add(line_actor(lines(boundary_edges(*plate.mesh), *face), {.colour = ink::text, .width = 2.0}));
  // Bone and shafts would hide the underside, so only the heads are shown.
  for (const auto& screw : fields.screws)
    window.add(plain_actor(head_surface(screw, plate.mesh->thickness.mean(), 0.0), {}));

  window.draw([&](Canvas& canvas) {
    draw_head(canvas, height, fields.load,
              fmt::format("largest von Mises stress of the plate, seen from {}; undeformed, without the bone",
                          peak.face == models::PlateFace::bottom ? "the bone's side" : "above"));
    for (const auto& hole : holes) {
      const Pixel centre = projection.pixel(hole.centre);
      if (centre.x() < 80.0 || centre.x() > picture_width - 80.0) continue;
      canvas.text(centre, fmt::format("hole {}", hole.number),
                  {.across = Across::centre, .upright = Upright::centre});
    }
    draw_callout(canvas, projection.pixel(view.peak), scene, peak_text(peak));
    const double row = scene.bottom - 34.0;
    draw_bone_directions(canvas, row);
    draw_length_bar(canvas, {0.5 * picture_width, row - 8.0}, projection.pixels_per_mm, 400.0, "");
    draw_colour_legend(canvas, scene.bottom - 78.0, range, ScaleMark{largest, "plate peak"},
                       "von Mises stress, MPa");
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
