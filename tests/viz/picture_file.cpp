#include "tests/viz/picture_file.h"

#include "tests/viz/picture_words.h"

#include <unistd.h>
#include <vtkImageData.h>
#include <vtkNew.h>
#include <vtkPNGReader.h>

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace gapstrain::tests {

namespace {

std::filesystem::path make_folder() {
  std::string pattern = (std::filesystem::temp_directory_path() / "gapstrain_viz_XXXXXX").string();
  if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder for the test");
  return pattern;
}

constexpr std::array<unsigned char, 3> white{255, 255, 255};

}  // namespace

OwnFolder::OwnFolder() : path(make_folder()) {}

OwnFolder::~OwnFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path, ignored);
}

PictureFile PictureFile::above(int rows) const {
  return {width, height - rows, {pixels.begin() + static_cast<std::ptrdiff_t>(rows) * width, pixels.end()}};
}

double PictureFile::share_not_white() const {
  const auto count = std::count_if(pixels.begin(), pixels.end(), [](const auto& pixel) { return pixel != white; });
  return static_cast<double>(count) / static_cast<double>(pixels.size());
}

double PictureFile::share_near(const viz::Colour& colour, double tolerance) const {
  const std::array<double, 3> wanted{colour.red, colour.green, colour.blue};
  const auto count = std::count_if(pixels.begin(), pixels.end(), [&](const auto& pixel) {
    for (std::size_t c = 0; c < 3; ++c)
      if (std::abs(pixel[c] / 255.0 - wanted[c]) > tolerance) return false;
    return true;
  });
  return static_cast<double>(count) / static_cast<double>(pixels.size());
}

bool PictureFile::has_white_border(int border) const {
  for (int row = 0; row < height; ++row)
    for (int column = 0; column < width; ++column) {
      const bool outside = row < border || column < border || row >= height - border || column >= width - border;
      if (outside && pixels[static_cast<std::size_t>(row * width + column)] != white) return false;
    }
  return true;
}

bool PictureFile::says(const std::string& text) const {
  std::string all;
  for (const auto& line : words) all += line + " ";
  return all.find(text) != std::string::npos;
}

std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// Rows from the bottom up, as VTK has them.
PictureFile read_picture(const std::filesystem::path& png) {
  vtkNew<vtkPNGReader> reader;
  if (reader->CanReadFile(png.c_str()) == 0) throw std::runtime_error("not a PNG file: " + png.string());
  reader->SetFileName(png.c_str());
  reader->Update();
  vtkImageData* image = reader->GetOutput();
  if (image->GetNumberOfScalarComponents() != 3) throw std::runtime_error("not a colour picture");
  PictureFile picture;
  picture.width = image->GetDimensions()[0];
  picture.height = image->GetDimensions()[1];
  const auto* bytes = static_cast<const unsigned char*>(image->GetScalarPointer());
  for (int i = 0; i < picture.width * picture.height; ++i)
    picture.pixels.push_back({bytes[3 * i], bytes[3 * i + 1], bytes[3 * i + 2]});
  return picture;
}

const viz::Display& display() {
  static const viz::Display one;
  return one;
}

double ink_of(const PictureFile& picture, std::size_t colour, double tolerance) {
  return picture.share_near(viz::curve_colours[colour], tolerance);
}

double scale_share(const PictureFile& picture, double value) {
  constexpr int legend_and_below = 290;
  return picture.above(legend_and_below).share_near(viz::scale_colour(value), 0.06);
}

PictureFile drawn(const std::function<void(const std::filesystem::path&)>& draw) {
  const OwnFolder folder;
  const std::filesystem::path png = folder.path / "picture.png";
  const auto words = words_written_by([&] { draw(png); });
  std::size_t files = 0;
  for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(folder.path)) ++files;
  CHECK(files == 1);  // nothing is left beside it
  PictureFile picture = read_picture(png);
  picture.words = words;
  return picture;
}

}  // namespace gapstrain::tests
