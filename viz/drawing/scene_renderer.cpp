#include "viz/drawing/scene_renderer.h"

#include <vtkActor.h>
#include <vtkCamera.h>
#include <vtkNew.h>
#include <vtkProperty.h>
#include <vtkRenderWindow.h>
#include <vtkRenderer.h>
#include <vtkUnsignedCharArray.h>

#include <algorithm>
#include <cstdint>

namespace gapstrain::viz {

namespace {

// A view is rendered in strips of so many of its rows, so that memory does not grow with the picture: VTK and the
// driver hold some ten buffers of the window's size.
constexpr int strip_rows = 128;

// As many rows as the image has. Those of `fine` run from below, those of `image` from `last_row` upward.
void average_down(const unsigned char* fine, int width, cairo_surface_t* image, int last_row) {
  constexpr unsigned samples = fineness * fineness;
  const std::ptrdiff_t stride = cairo_image_surface_get_stride(image), fine_stride = 3 * fineness * width;
  unsigned char* pixels = cairo_image_surface_get_data(image);
  for (int row = 0; row < std::min(strip_rows, last_row + 1); ++row) {
    auto* to = reinterpret_cast<std::uint32_t*>(pixels + (last_row - row) * stride);
    const unsigned char* from = fine + row * fineness * fine_stride;
    for (int column = 0; column < width; ++column, from += 3 * fineness) {
      std::uint32_t colour = 0;
      for (int channel = 0; channel < 3; ++channel) {
        unsigned sum = samples / 2;
        for (int y = 0; y < fineness; ++y)
          for (int x = 0; x < fineness; ++x) sum += from[y * fine_stride + 3 * x + channel];
        colour = colour << 8U | sum / samples;
      }
      to[column] = colour;
    }
  }
}

void scale_lines(const View& view, double factor) {
  for (const auto& actor : view.actors) {
    vtkProperty* property = actor->GetProperty();
    property->SetLineWidth(static_cast<float>(factor * property->GetLineWidth()));
  }
}

}  // namespace

SceneRenderer::SceneRenderer() : window_(vtkSmartPointer<vtkRenderWindow>::New()) {
  window_->SetOffScreenRendering(1);
  window_->SetMultiSamples(0);
  window_->DoubleBufferOff();
}

SceneRenderer::~SceneRenderer() = default;

Surface SceneRenderer::render(const View& view) {
  Surface image(cairo_image_surface_create(CAIRO_FORMAT_RGB24, view.width, view.height));
  vtkNew<vtkRenderer> renderer;
  renderer->SetBackground(1.0, 1.0, 1.0);
  for (const auto& actor : view.actors) renderer->AddActor(actor);
  scale_lines(view, fineness * view.line_scale);
  window_->AddRenderer(renderer);
  vtkCamera* camera = renderer->GetActiveCamera();
  camera->ParallelProjectionOn();
  camera->SetViewUp(view.up.data());
  vtkNew<vtkUnsignedCharArray> pixels;
  window_->SetSize(fineness * view.width, fineness * strip_rows);
  camera->SetParallelScale(0.5 * strip_rows / view.pixels_per_mm);
  // Rows from below; the last strip may reach beyond the view.
  for (int from = 0; from < view.height; from += strip_rows) {
    const double above = (from + 0.5 * (strip_rows - view.height)) / view.pixels_per_mm;
    const Eigen::Vector3d middle = view.middle + above * view.up, eye = middle + 1000.0 * view.towards_viewer;
    camera->SetFocalPoint(middle.data());
    camera->SetPosition(eye.data());
    renderer->ResetCameraClippingRange();
    window_->Render();
    window_->GetPixelData(0, 0, fineness * view.width - 1, fineness * strip_rows - 1, 0, pixels);
    average_down(pixels->GetPointer(0), view.width, image.get(), view.height - 1 - from);
  }
  window_->RemoveRenderer(renderer);
  scale_lines(view, 1.0 / (fineness * view.line_scale));
  cairo_surface_mark_dirty(image.get());
  return image;
}

}  // namespace gapstrain::viz
