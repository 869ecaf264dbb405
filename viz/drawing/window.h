// One picture in the making: views of bodies in parallel projection with plane drawing over them.
#pragma once

#include "viz/drawing/actors.h"
#include "viz/drawing/canvas.h"
#include "viz/drawing/display.h"

#include <vtkSmartPointer.h>
#include <Eigen/Core>

#include <filesystem>
#include <functional>
#include <vector>

namespace gapstrain::viz {

// Parallel projection of construct space onto the picture.
struct Projection {
  Eigen::Vector3d right, up, towards_viewer;         // unit, orthogonal, right-handed
  Eigen::Vector3d target = Eigen::Vector3d::Zero();  // mm, drawn at `at`
  Pixel at = Pixel::Zero();
  double pixels_per_mm = 1.0;

  Pixel pixel(const Eigen::Vector3d& place) const {
    return at + pixels_per_mm * Pixel(right.dot(place - target), up.dot(place - target));
  }
};

// Looks from `towards_viewer` such that `axis` runs level, from left to right.
Projection level_view(const Eigen::Vector3d& towards_viewer, const Eigen::Vector3d& axis);

// `picture_width` wide; what the display's frame says of all pictures stands on top, above `height`.
class Window {
 public:
  Window(const Display& display, double height);

  // Shows the actors added from now on through `projection`, cut off at `area`, whose centre `projection.at` is.
  // A picture may hold several scenes.
  void open_scene(const Rect& area, const Projection& projection);
  void add(const vtkSmartPointer<vtkActor>& actor);  // translucent ones blend in the order they are added
  void draw(std::function<void(Canvas&)> drawing) { drawing_ = std::move(drawing); }
  // In the format of the file's extension. @throw std::filesystem::filesystem_error, DisplayError
  void write(const std::filesystem::path& file) const;

 private:
  struct Scene {
    Rect area;
    Projection projection;
    std::vector<vtkSmartPointer<vtkActor>> actors;
  };

  const Display& display_;
  double height_;
  std::vector<Scene> scenes_;
  std::function<void(Canvas&)> drawing_;
};

}  // namespace gapstrain::viz
