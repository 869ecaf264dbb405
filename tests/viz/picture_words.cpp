#include "tests/viz/picture_words.h"

#include <cairo.h>
#include <dlfcn.h>

#include <mutex>
#include <stdexcept>

namespace gapstrain::tests {

namespace {

std::mutex writing;
std::vector<std::string>* written = nullptr;  // null: nobody reads along

}  // namespace

std::vector<std::string> words_written_by(const std::function<void()>& draw) {
  std::vector<std::string> words;
  const auto read_along = [](std::vector<std::string>* into) {
    const std::lock_guard lock(writing);
    written = into;
  };
  read_along(&words);
  try {
    draw();
  } catch (...) {
    read_along(nullptr);
    throw;
  }
  read_along(nullptr);
  return words;
}

}  // namespace gapstrain::tests

// Stands before the library's own in this program, takes the text down and passes it on.
extern "C" __attribute__((visibility("default"))) void cairo_show_text(cairo_t* context, const char* text) {
  using Show = void (*)(cairo_t*, const char*);
  static const auto show = reinterpret_cast<Show>(::dlsym(RTLD_NEXT, "cairo_show_text"));
  if (show == nullptr) throw std::logic_error("Cairo has no cairo_show_text to pass on to");
  {
    const std::lock_guard lock(gapstrain::tests::writing);
    if (gapstrain::tests::written != nullptr) gapstrain::tests::written->emplace_back(text);
  }
  show(context, text);
}
