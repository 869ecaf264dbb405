// What a picture is drawn on: pixels of a PNG file, or a page of vectors as SVG or PDF.
#pragma once

#include "viz/drawing/picture_frame.h"

#include <cairo.h>
#include <filesystem>
#include <memory>
#include <string>

namespace gapstrain::viz {

const char* extension_of(PictureFormat format);  // ".png"
// @throw std::invalid_argument for an extension that is none of these.
PictureFormat format_of(const std::filesystem::path& file);

struct CairoDeleter {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, CairoDeleter>;
using Context = std::unique_ptr<cairo_t, CairoDeleter>;

// White, of the sheet's pixels: `width` of them over the file's width, y downward from the upper edge.
class Paper {
 public:
  Paper(const PictureFrame& frame, PictureFormat format, double width, double height);
  ~Paper() = default;
  Paper(const Paper&) = delete;
  Paper& operator=(const Paper&) = delete;

  cairo_t* context() { return context_.get(); }
  // Of what is drawn as pixels also on a page of vectors: so many to one of the sheet's.
  double raster_scale() const { return raster_scale_; }

  // The file with the frame's metadata in it; ends the drawing. @throw std::runtime_error when drawing failed.
  std::string contents();

 private:
  Metadata metadata_;
  PictureFormat format_;
  double raster_scale_ = 1.0;
  std::string stream_;  // of vectors; written by the surface, so before it
  Surface surface_;
  Context context_;
};

}  // namespace gapstrain::viz
