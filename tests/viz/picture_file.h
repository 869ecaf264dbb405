// A picture read back, and a folder to draw into.
#pragma once

#include "viz/drawing/colour.h"
#include "viz/drawing/display.h"

#include <array>
#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace gapstrain::tests {

// A new folder of this test's own, removed with its contents at the end.
class OwnFolder {
 public:
  OwnFolder();
  ~OwnFolder();
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;
  const std::filesystem::path path;
};

struct PictureFile {
  int width = 0, height = 0;
  std::vector<std::array<unsigned char, 3>> pixels;
  std::vector<std::string> words{};  // written on it, when `drawn` made it; see picture_words.h

  // Whether that is written on it, over line breaks too.
  bool says(const std::string& text) const;
  // Without its lowest rows, where the legend is.
  PictureFile above(int rows) const;
  double share_not_white() const;
  // Share of the pixels within `tolerance` (0 to 1, each channel) of a colour.
  double share_near(const viz::Colour& colour, double tolerance) const;
  // Whether the outermost `border` pixels are white all round: nothing is cut off.
  bool has_white_border(int border) const;
};

// Share in one of the curves' colours.
double ink_of(const PictureFile& picture, std::size_t colour, double tolerance = 0.02);

// Share, above the legend, in the colour of a value of the scale, 0 to 1.
double scale_share(const PictureFile& picture, double value);

// All bytes of a file.
std::string bytes_of(const std::filesystem::path& file);

PictureFile read_picture(const std::filesystem::path& png);

// One for all tests of the program.
const viz::Display& display();

// What `draw` writes to the path it gets, read back; checks that it leaves nothing beside it.
PictureFile drawn(const std::function<void(const std::filesystem::path&)>& draw);

}  // namespace gapstrain::tests
