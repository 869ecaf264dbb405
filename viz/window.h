// One picture in the making: a scene in parallel projection with plane drawing over it, off screen.
#pragma once

#include "viz/canvas.h"

#include <vtkSmartPointer.h>
#include <Eigen/Core>

#include <filesystem>
#include <functional>
#include <vector>

class vtkActor;
class vtkPolyData;
class vtkRenderer;
class vtkRenderWindow;

namespace gapstrain::viz {

inline constexpr int picture_width = 2000;  // pixels

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

class Window {
 public:
  Window(int width, int height);
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  int height() const { return height_; }
  // Shows the actors added from now on through `projection`, cut off at `area`, whose centre `projection.at` is.
  // A picture may hold several scenes.
  void open_scene(const Rect& area, const Projection& projection);
  void add(vtkActor* actor);  // translucent ones blend in the order they are added
  void draw(std::function<void(Canvas&)> drawing);
  // @throw std::filesystem::filesystem_error
  void write(const std::filesystem::path& png);

 private:
  int width_, height_;
  vtkSmartPointer<vtkRenderWindow> window_;
  vtkSmartPointer<vtkRenderer> ground_;
  std::vector<vtkSmartPointer<vtkRenderer>> scenes_;
};

enum class Cull { nothing, back, front };

struct SurfaceStyle {
  Colour colour = ink::metal;
  Cull cull = Cull::nothing;
  double shade = 0.45;  // share of the colour that depends on the light; the rest is always there
};

vtkSmartPointer<vtkActor> plain_actor(vtkPolyData* data, const SurfaceStyle& style);
// Coloured by the active point scalars, 0 to `high` over the colour scale.
vtkSmartPointer<vtkActor> scalar_actor(vtkPolyData* data, double high);
vtkSmartPointer<vtkActor> line_actor(vtkPolyData* data, const LineStyle& style);

}  // namespace gapstrain::viz
