// What of a page is made before: the core as a WebAssembly module, scripts, styles. In the program as bytes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

struct EmbeddedFile {
  std::string_view name;  // "core.wasm", "page.html"
  std::string_view bytes;
};

// In the order in which scripts run.
const std::vector<EmbeddedFile>& embedded_files();

// Empty for one that is not there: the program may have been built without core.wasm.
std::string_view embedded_file(std::string_view name);

}  // namespace gapstrain::cases
