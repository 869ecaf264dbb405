#include "viz/construct/construct_scene.h"
#include "viz/construct/peak_text.h"
#include "viz/construct/pictures.h"
#include "viz/construct/plate_places.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::viz {

namespace {

constexpr double most_scene_height = 1000.0;

struct Frame {
  Rect scene;
  int height = 0;
};

// Scales the view so that all points fill the picture's width, and lays the picture out round them.
Frame fit(Projection& view, const std::vector<Eigen::Vector3d>& points) {
  const Rect reached = reach(view, points);
  const Pixel size = Pixel(reached.width(), reached.height()).cwiseMax(1e-6), middle = reached.centre();
  view.pixels_per_mm = std::min((picture_width - 2.0 * sheet::margin) / size.x(), most_scene_height / size.y());
  view.target = middle.x() * view.right + middle.y() * view.up;

  const double scene_height = size.y() * view.pixels_per_mm + 2.0 * construct_label_room;
  Frame frame;
  frame.scene.bottom = sheet::caution_height + sheet::legend_height + sheet::row_of_directions;
  frame.scene.top = frame.scene.bottom + std::ceil(scene_height);
  frame.scene.right = picture_width;
  frame.height = static_cast<int>(frame.scene.top + sheet::head_height);
  view.at = frame.scene.centre();
  return frame;
}

}  // namespace

void draw_construct(const Display& display, const models::LoadFields& fields, const models::LoadFindings& findings,
                    const std::filesystem::path& file) {
  const ConstructScene scene = construct_scene(fields, deformation_factor(fields));
  const ColourRange range = colour_range(scene.largest.value);
  Projection view = three_quarter_view();
  const Frame frame = fit(view, scene.points);
  Window window(display, frame.height);
  window.open_scene(frame.scene, view);
  add_construct(window, scene, view, range);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, frame.height, fields.load,
              fmt::format("{}; largest displacement {:.3g} mm; plate peak {}", deformation_text(scene.factor),
                          largest_displacement(fields), peak_text(findings.plate.peak)));
    label_construct(canvas, scene, view);
    draw_directions_and_length(canvas, frame.scene.bottom - 34.0, view);
    draw_stress_legend(canvas, frame.scene.bottom - 78.0, range, scene.largest);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
