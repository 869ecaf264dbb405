#include "viz/drawing/text_fit.h"

#include "viz/drawing/ruler.h"

#include <catch2/catch.hpp>

#include <functional>

using namespace gapstrain;
using namespace gapstrain::viz;

namespace {

void on_canvas(const std::function<void(Canvas&)>& look) {
  Ruler ruler;
  look(ruler.canvas());
}

}  // namespace

TEST_CASE("a text that fits stays as it is", "[viz][text_fit]") {
  on_canvas([](Canvas& canvas) {
    CHECK(shortened(canvas, "working length", {}, 1000.0) == "working length");
    CHECK(wrapped(canvas, "working length", {}, 1000.0, 3) == std::vector<std::string>{"working length"});
    CHECK(fitted(canvas, "working length", {.size = 40}, 1000.0).size == 40);
    CHECK(fitted_lines(canvas, "working length", {.size = 40}, 1000.0, 1).style.size == 40);
  });
}

TEST_CASE("a text that is too long is shortened to its room, between letters of any alphabet", "[viz][text_fit]") {
  on_canvas([](Canvas& canvas) {
    for (const std::string text :
         {"largest stress of the plate", "ÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄÄ",
          "\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212\u2212"})
      for (const double width : {70.0, 100.0, 160.0}) {
        const std::string kept = shortened(canvas, text, {}, width);
        CAPTURE(text, width, kept);
        CHECK(canvas.text_size(kept, {}).x() <= width);
        REQUIRE(kept.size() > 3);
        CHECK(kept.substr(kept.size() - 3) == "\u2026");
        // What is kept is a beginning of the text that ends where a letter ends.
        const std::string beginning = kept.substr(0, kept.size() - 3);
        CHECK(text.compare(0, beginning.size(), beginning) == 0);
        CHECK((static_cast<unsigned char>(text[beginning.size()]) & 0xC0U) != 0x80U);
      }
  });
}

TEST_CASE("lines break between words, and none is wider than its room", "[viz][text_fit]") {
  on_canvas([](Canvas& canvas) {
    const std::string text = "endurance limit of the polished metal in body fluid";
    const auto lines = wrapped(canvas, text, {}, 260.0, 9);
    REQUIRE(lines.size() > 2);
    std::string joined;
    for (const auto& line : lines) {
      CHECK(canvas.text_size(line, {}).x() <= 260.0);
      joined += (joined.empty() ? "" : " ") + line;
    }
    CHECK(joined == text);
    const auto two = wrapped(canvas, text, {}, 260.0, 2);
    REQUIRE(two.size() == 2);
    CHECK(two[0] == lines[0]);
    CHECK(two[1].substr(two[1].size() - 3) == "\u2026");
  });
}

TEST_CASE("letters get smaller before a text is shortened", "[viz][text_fit]") {
  on_canvas([](Canvas& canvas) {
    const std::string text = "commercially pure titanium";
    const auto [lines, style] = fitted_lines(canvas, text, {.size = 60}, 300.0, 2, 16);
    CHECK(style.size < 60);
    REQUIRE(lines.size() == 2);
    CHECK(lines[0] + " " + lines[1] == text);
    CHECK(fitted_lines(canvas, text, {.size = 60}, 30.0, 2, 16).style.size == 16);
  });
}
