// What the pictures of one run are drawn with: their common frame, and one renderer for all views of bodies.
#pragma once

#include "viz/drawing/picture_frame.h"
#include "viz/drawing/virtual_display.h"

#include <filesystem>
#include <memory>

namespace gapstrain::viz {

class SceneRenderer;

// Charts need no display. The first view of bodies looks for one, and keeps it with its renderer as long as this
// object lives; so make it on a thread that outlives it.
class Display {
 public:
  explicit Display(PictureFrame frame = {});
  ~Display();
  Display(const Display&) = delete;
  Display& operator=(const Display&) = delete;

  const PictureFrame& frame() const { return frame_; }
  // The path with the extension of the frame's format behind it.
  std::filesystem::path file(const std::filesystem::path& stem) const;

  // @throw DisplayError when there is neither a display nor Xvfb.
  SceneRenderer& scenes() const;

 private:
  struct Renderer;
  PictureFrame frame_;
  mutable std::unique_ptr<Renderer> renderer_;
};

}  // namespace gapstrain::viz
