// What commands that draw have in common on the command line.
#pragma once

#include "cases/outputs/pictures/picture_frame.h"

#include <optional>

namespace CLI {
class App;
}

namespace gapstrain::cases {

struct PictureOptions {
  bool none = false;
  PictureStyle style;

  std::optional<PictureStyle> wanted() const { return none ? std::nullopt : std::optional(style); }
};

void add_picture_options(CLI::App& command, PictureOptions& options);

}  // namespace gapstrain::cases
