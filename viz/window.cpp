#include "viz/window.h"

#include "viz/replace_file.h"

#include <vtkActor.h>
#include <vtkCamera.h>
#include <vtkContext2D.h>
#include <vtkContextActor.h>
#include <vtkContextItem.h>
#include <vtkContextScene.h>
#include <vtkImageData.h>
#include <vtkLookupTable.h>
#include <vtkNew.h>
#include <vtkObjectFactory.h>
#include <vtkPNGWriter.h>
#include <vtkPolyData.h>
#include <vtkPolyDataMapper.h>
#include <vtkProperty.h>
#include <vtkRenderWindow.h>
#include <vtkRenderer.h>
#include <vtkUnsignedCharArray.h>

#include <Eigen/Geometry>

#include <cassert>
#include <string_view>
#include <utility>

namespace gapstrain::viz {

namespace {

// Pictures are drawn this many times larger each way and averaged down. VTK's multisampling costs as much on a
// software renderer and wraps a faint row of every text round to its far side.
constexpr int fineness = 2;

vtkSmartPointer<vtkImageData> averaged_down(const unsigned char* from, int width, int height) {
  const int row_length = fineness * width;
  auto small = vtkSmartPointer<vtkImageData>::New();
  small->SetDimensions(width, height, 1);
  small->AllocateScalars(VTK_UNSIGNED_CHAR, 3);
  auto* to = static_cast<unsigned char*>(small->GetScalarPointer());
  for (int row = 0; row < height; ++row)
    for (int column = 0; column < width; ++column)
      for (int channel = 0; channel < 3; ++channel) {
        int sum = 0;
        for (int y = 0; y < fineness; ++y)
          for (int x = 0; x < fineness; ++x)
            sum += from[3 * ((row * fineness + y) * row_length + column * fineness + x) + channel];
        *to++ = static_cast<unsigned char>((sum + fineness * fineness / 2) / (fineness * fineness));
      }
  return small;
}

// Lets a plain function draw where VTK asks its items to.
class Drawing : public vtkContextItem {
 public:
  static Drawing* New();

  bool Paint(vtkContext2D* context) override {
    Canvas canvas(*context, fineness);
    draw(canvas);
    return true;
  }

  std::function<void(Canvas&)> draw;
};

vtkStandardNewMacro(Drawing)

}  // namespace

Projection level_view(const Eigen::Vector3d& towards_viewer, const Eigen::Vector3d& axis) {
  Projection view;
  view.towards_viewer = towards_viewer.normalized();
  view.right = (axis - axis.dot(view.towards_viewer) * view.towards_viewer).normalized();
  view.up = view.towards_viewer.cross(view.right);
  return view;
}

Window::Window(int width, int height)
    : width_(width), height_(height), window_(vtkSmartPointer<vtkRenderWindow>::New()) {
  window_->SetOffScreenRendering(1);
  window_->SetMultiSamples(0);
  window_->DoubleBufferOff();
  window_->SetSize(fineness * width, fineness * height);
  ground_ = vtkSmartPointer<vtkRenderer>::New();
  ground_->SetBackground(1.0, 1.0, 1.0);
  window_->AddRenderer(ground_);
}

Window::~Window() = default;

void Window::open_scene(const Rect& area, const Projection& projection) {
  window_->SetNumberOfLayers(2);
  auto scene = vtkSmartPointer<vtkRenderer>::New();
  scene->SetBackground(1.0, 1.0, 1.0);
  scene->SetViewport(area.left / width_, area.bottom / height_, area.right / width_, area.top / height_);
  assert((projection.at - area.centre()).norm() < 1e-6);
  const Eigen::Vector3d eye = projection.target + 1000.0 * projection.towards_viewer;
  vtkCamera* camera = scene->GetActiveCamera();
  camera->ParallelProjectionOn();
  camera->SetFocalPoint(projection.target.data());
  camera->SetPosition(eye.data());
  camera->SetViewUp(projection.up.data());
  camera->SetParallelScale(0.5 * area.height() / projection.pixels_per_mm);
  window_->AddRenderer(scene);
  scenes_.push_back(scene);
}

void Window::add(vtkActor* actor) {
  assert(!scenes_.empty());
  scenes_.back()->AddActor(actor);
}

void Window::draw(std::function<void(Canvas&)> drawing) {
  vtkNew<Drawing> item;
  item->draw = std::move(drawing);
  vtkNew<vtkContextActor> sheet;
  sheet->GetScene()->AddItem(item);
  if (scenes_.empty()) {
    ground_->AddActor(sheet);
    return;
  }
  vtkNew<vtkRenderer> layer;
  layer->SetLayer(1);
  layer->AddActor(sheet);
  window_->AddRenderer(layer);
}

void Window::write(const std::filesystem::path& png) {
  for (const auto& scene : scenes_) scene->ResetCameraClippingRange();
  window_->Render();
  vtkNew<vtkUnsignedCharArray> pixels;
  window_->GetPixelData(0, 0, fineness * width_ - 1, fineness * height_ - 1, 0, pixels);
  vtkNew<vtkPNGWriter> writer;
  writer->SetInputData(averaged_down(pixels->GetPointer(0), width_, height_));
  writer->WriteToMemoryOn();
  writer->SetCompressionLevel(1);
  writer->Write();
  vtkUnsignedCharArray* bytes = writer->GetResult();
  const std::string_view contents(reinterpret_cast<const char*>(bytes->GetPointer(0)),
                                  static_cast<std::size_t>(bytes->GetNumberOfValues()));
  replace_file(png, contents);
}

vtkSmartPointer<vtkActor> plain_actor(vtkPolyData* data, const SurfaceStyle& style) {
  vtkNew<vtkPolyDataMapper> mapper;
  mapper->SetInputData(data);
  mapper->ScalarVisibilityOff();
  auto actor = vtkSmartPointer<vtkActor>::New();
  actor->SetMapper(mapper);
  vtkProperty* property = actor->GetProperty();
  property->SetColor(style.colour.red, style.colour.green, style.colour.blue);
  property->SetOpacity(style.colour.opacity);
  property->SetAmbient(1.0 - style.shade);
  property->SetDiffuse(style.shade);
  property->SetBackfaceCulling(style.cull == Cull::back);
  property->SetFrontfaceCulling(style.cull == Cull::front);
  return actor;
}

vtkSmartPointer<vtkActor> scalar_actor(vtkPolyData* data, double high) {
  constexpr int steps = 256;
  vtkNew<vtkLookupTable> table;
  table->SetNumberOfTableValues(steps);
  table->SetTableRange(0.0, high);
  for (int k = 0; k < steps; ++k) {
    const Colour colour = scale_colour(static_cast<double>(k) / (steps - 1));
    table->SetTableValue(k, colour.red, colour.green, colour.blue, 1.0);
  }
  // Little shade, so that a colour can be found again on the legend.
  auto actor = plain_actor(data, {.colour = ink::white, .cull = Cull::nothing, .shade = 0.3});
  vtkMapper* mapper = actor->GetMapper();
  mapper->ScalarVisibilityOn();
  mapper->SetScalarModeToUsePointData();
  mapper->SetLookupTable(table);
  mapper->UseLookupTableScalarRangeOn();
  mapper->InterpolateScalarsBeforeMappingOn();
  return actor;
}

vtkSmartPointer<vtkActor> line_actor(vtkPolyData* data, const LineStyle& style) {
  auto actor = plain_actor(data, {.colour = style.colour});
  actor->GetProperty()->LightingOff();
  actor->GetProperty()->SetLineWidth(static_cast<float>(fineness * style.width));
  return actor;
}

}  // namespace gapstrain::viz
