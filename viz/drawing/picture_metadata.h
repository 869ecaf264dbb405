// Metadata in the terms of each format of pictures.
#pragma once

#include "viz/drawing/picture_frame.h"

#include <cairo.h>
#include <string>

namespace gapstrain::viz {

// PNG's text is ISO 8859-1: letters it has not become question marks.
std::string latin_1(const std::string& text);

// "Title" is the document's title, "Software" its creator, and all else, a line each, its subject.
void set_pdf_metadata(cairo_surface_t* pdf, const Metadata& metadata);

// The SVG text with a title and, a line each, all else as its description.
std::string with_svg_metadata(std::string svg, const Metadata& metadata);

}  // namespace gapstrain::viz
