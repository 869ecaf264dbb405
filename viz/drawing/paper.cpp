#include "viz/drawing/paper.h"

#include "viz/drawing/picture_metadata.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <vtkImageData.h>
#include <vtkNew.h>
#include <vtkPNGWriter.h>
#include <vtkUnsignedCharArray.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <stdexcept>
#include <utility>

namespace gapstrain::viz {

namespace {

constexpr double page_width = 210.0 / 25.4 * 72.0;  // points; A4 upright

constexpr std::array<std::pair<PictureFormat, const char*>, 3> extensions{
    {{PictureFormat::png, ".png"}, {PictureFormat::svg, ".svg"}, {PictureFormat::pdf, ".pdf"}}};

cairo_status_t append(void* stream, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(stream)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

Surface make_surface(PictureFormat format, double width, double height, std::string& stream) {
  switch (format) {
    case PictureFormat::svg:
      return Surface(cairo_svg_surface_create_for_stream(append, &stream, width, height));
    case PictureFormat::pdf:
      return Surface(cairo_pdf_surface_create_for_stream(append, &stream, width, height));
    case PictureFormat::png:
      break;
  }
  return Surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(width), static_cast<int>(height)));
}

void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("a picture cannot be drawn: ") + cairo_status_to_string(status));
}

// Cairo's rows run from the top down, VTK's from below.
std::string png_of(cairo_surface_t* surface, const Metadata& metadata) {
  const int width = cairo_image_surface_get_width(surface), height = cairo_image_surface_get_height(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  const unsigned char* pixels = cairo_image_surface_get_data(surface);
  vtkNew<vtkImageData> image;
  image->SetDimensions(width, height, 1);
  image->AllocateScalars(VTK_UNSIGNED_CHAR, 3);
  auto* to = static_cast<unsigned char*>(image->GetScalarPointer());
  for (int row = height - 1; row >= 0; --row) {
    const auto* from = reinterpret_cast<const std::uint32_t*>(pixels + static_cast<std::ptrdiff_t>(row) * stride);
    for (int column = 0; column < width; ++column)
      for (const int shift : {16, 8, 0}) *to++ = static_cast<unsigned char>(from[column] >> shift & 0xFFU);
  }
  vtkNew<vtkPNGWriter> writer;
  writer->SetInputData(image);
  writer->WriteToMemoryOn();
  writer->SetCompressionLevel(2);  // higher ones take longer than drawing and save little
  for (const auto& [name, text] : metadata) writer->AddText(name.c_str(), latin_1(text).c_str());
  writer->Write();
  vtkUnsignedCharArray* bytes = writer->GetResult();
  return {reinterpret_cast<const char*>(bytes->GetPointer(0)),
          static_cast<std::size_t>(bytes->GetNumberOfValues())};
}

}  // namespace

const char* extension_of(PictureFormat format) {
  for (const auto& [known, extension] : extensions)
    if (known == format) return extension;
  return "";
}

PictureFormat format_of(const std::filesystem::path& file) {
  for (const auto& [format, extension] : extensions)
    if (file.extension() == extension) return format;
  throw std::invalid_argument("a picture is a .png, .svg or .pdf file, not " + file.string());
}

Paper::Paper(const PictureFrame& frame, PictureFormat format, double width, double height)
    : metadata_(metadata_of(frame)), format_(format) {
  const bool pixels = format == PictureFormat::png;
  const double scale = pixels ? frame.width_px / width : page_width / width;
  if (pixels) raster_scale_ = scale;
  surface_ = make_surface(format, pixels ? frame.width_px : scale * width,
                          pixels ? std::ceil(scale * height - 1e-6) : scale * height, stream_);
  context_.reset(cairo_create(surface_.get()));
  if (format == PictureFormat::pdf) set_pdf_metadata(surface_.get(), metadata_);
  cairo_set_source_rgb(context_.get(), 1.0, 1.0, 1.0);
  cairo_paint(context_.get());
  cairo_scale(context_.get(), scale, scale);
}

std::string Paper::contents() {
  check(cairo_status(context_.get()));
  if (format_ == PictureFormat::png) {
    cairo_surface_flush(surface_.get());
    return png_of(surface_.get(), metadata_);
  }
  cairo_surface_finish(surface_.get());
  check(cairo_surface_status(surface_.get()));
  return format_ == PictureFormat::svg ? with_svg_metadata(std::move(stream_), metadata_) : std::move(stream_);
}

}  // namespace gapstrain::viz
