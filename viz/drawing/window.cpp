#include "viz/drawing/window.h"

#include "viz/drawing/paper.h"
#include "viz/drawing/picture_head.h"
#include "viz/drawing/replace_file.h"
#include "viz/drawing/scene_renderer.h"

#include <vtkActor.h>

#include <Eigen/Geometry>

#include <cassert>
#include <cmath>

namespace gapstrain::viz {

Projection level_view(const Eigen::Vector3d& towards_viewer, const Eigen::Vector3d& axis) {
  Projection view;
  view.towards_viewer = towards_viewer.normalized();
  view.right = (axis - axis.dot(view.towards_viewer) * view.towards_viewer).normalized();
  view.up = view.towards_viewer.cross(view.right);
  return view;
}

Window::Window(const Display& display, double height) : display_(display), height_(height) {}

void Window::open_scene(const Rect& area, const Projection& projection) {
  assert((projection.at - area.centre()).norm() < 1e-6);
  scenes_.push_back({area, projection, {}});
}

void Window::add(const vtkSmartPointer<vtkActor>& actor) {
  assert(!scenes_.empty());
  scenes_.back().actors.push_back(actor);
}

void Window::write(const std::filesystem::path& file) const {
  const PictureHead head(display_.frame());
  const double whole_height = height_ + head.height();
  Paper paper(display_.frame(), format_of(file), picture_width, whole_height);
  cairo_t* context = paper.context();
  const double scale = paper.raster_scale();
  for (const auto& [area, projection, actors] : scenes_) {
    const View view{projection.up,
                    projection.towards_viewer,
                    projection.target,
                    scale * projection.pixels_per_mm,
                    scale,
                    static_cast<int>(std::lround(scale * area.width())),
                    static_cast<int>(std::lround(scale * area.height())),
                    actors};
    const Surface image = display_.scenes().render(view);
    cairo_save(context);
    // Onto whole pixels.
    cairo_translate(context, std::round(scale * area.left) / scale,
                    std::round(scale * (whole_height - area.top)) / scale);
    cairo_scale(context, 1.0 / scale, 1.0 / scale);
    cairo_set_source_surface(context, image.get(), 0.0, 0.0);
    cairo_paint(context);
    cairo_restore(context);
  }
  Canvas canvas(*context, whole_height);
  head.draw(canvas, whole_height);
  if (drawing_) drawing_(canvas);
  replace_file(file, paper.contents());
}

}  // namespace gapstrain::viz
