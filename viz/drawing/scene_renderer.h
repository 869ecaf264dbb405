// Views of bodies as pixels: VTK's part of a picture.
#pragma once

#include "viz/drawing/paper.h"

#include <vtkSmartPointer.h>
#include <Eigen/Core>

#include <vector>

class vtkActor;
class vtkRenderWindow;

namespace gapstrain::viz {

// Views are rendered this many times larger each way and averaged down. VTK's multisampling costs as much on a
// software renderer.
inline constexpr int fineness = 2;

// A view in parallel projection, level with the picture.
struct View {
  Eigen::Vector3d up, towards_viewer;  // unit, orthogonal
  Eigen::Vector3d middle;              // of the view, mm
  double pixels_per_mm = 1.0;
  double line_scale = 1.0;                        // pixels to one of the lines' widths
  int width = 0, height = 0;                      // pixels
  std::vector<vtkSmartPointer<vtkActor>> actors;  // translucent ones blend in this order
};

// One window off screen for all of them, needing a display.
class SceneRenderer {
 public:
  SceneRenderer();
  ~SceneRenderer();
  SceneRenderer(const SceneRenderer&) = delete;
  SceneRenderer& operator=(const SceneRenderer&) = delete;

  // On white, as an image surface.
  Surface render(const View& view);

 private:
  vtkSmartPointer<vtkRenderWindow> window_;
};

}  // namespace gapstrain::viz
