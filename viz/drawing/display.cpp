#include "viz/drawing/display.h"

#include "viz/drawing/paper.h"
#include "viz/drawing/scene_renderer.h"

#include <utility>

namespace gapstrain::viz {

// VTK must let go of the display before it ends.
struct Display::Renderer {
  VirtualDisplay display;
  SceneRenderer scenes;
};

Display::Display(PictureFrame frame) : frame_(std::move(frame)) {}

Display::~Display() = default;

std::filesystem::path Display::file(const std::filesystem::path& stem) const {
  return stem.string() + extension_of(frame_.format);
}

SceneRenderer& Display::scenes() const {
  if (!renderer_) renderer_ = std::make_unique<Renderer>();
  return renderer_->scenes;
}

}  // namespace gapstrain::viz
