#include "cases/page/embedded_files.h"

namespace gapstrain::cases {

std::string_view embedded_file(std::string_view name) {
  for (const auto& file : embedded_files())
    if (file.name == name) return file.bytes;
  return {};
}

}  // namespace gapstrain::cases
