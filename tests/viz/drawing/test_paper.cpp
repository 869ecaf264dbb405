#include "tests/viz/picture_file.h"
#include "viz/drawing/window.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <stdexcept>

using namespace gapstrain;
namespace fs = std::filesystem;

namespace {

viz::PictureFrame told_frame() {
  viz::PictureFrame frame;
  frame.subject = "Cat, left radius";
  frame.alarms = {"FAILS: screw S1 (yields)"};
  frame.metadata = {{"Title", "Cat, left radius"}, {"Software", "gapstrain 9.9"}, {"Description", "case <a> & b"}};
  return frame;
}

// A square in the middle of an otherwise empty sheet.
void draw_square(const viz::PictureFrame& frame, const fs::path& file) {
  const viz::Display display(frame);
  viz::Window window(display, 400);
  window.draw([](viz::Canvas& canvas) {
    canvas.fill({900.0, 100.0, 1100.0, 300.0}, viz::curve_colours[0]);
    canvas.text({100.0, 100.0}, "Text");
  });
  window.write(file);
}

// Of plain letters, as PDF writes a text in hexadecimal digits.
std::string as_utf_16(const std::string& text) {
  std::string digits;
  for (const char letter : text)
    for (const int half : {0, 0, letter >> 4, letter & 15}) digits += "0123456789ABCDEF"[half];
  return digits;
}

bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a PNG picture is as wide as asked, with the same drawing in it", "[viz][paper]") {
  const tests::OwnFolder folder;
  for (const int width : {500, 2000, 3000}) {
    viz::PictureFrame frame;
    frame.width_px = width;
    draw_square(frame, folder.path / "square.png");
    const auto picture = tests::read_picture(folder.path / "square.png");
    CHECK(picture.width == width);
    CHECK(picture.height == width / 5);
    CHECK(picture.share_near(viz::curve_colours[0], 0.02) == Approx(0.05).epsilon(0.02));
  }
}

TEST_CASE("every format carries title, program, case and warnings", "[viz][paper]") {
  const tests::OwnFolder folder;
  const auto written = [&](const char* name) {
    draw_square(told_frame(), folder.path / name);
    return tests::bytes_of(folder.path / name);
  };
  const std::string png = written("told.png"), svg = written("told.svg"), pdf = written("told.pdf");
  CHECK(contains(png, std::string("Title\0Cat, left radius", 22)));
  CHECK(contains(png, std::string("Description\0case <a> & b", 24)));
  CHECK(contains(png, std::string("Warning\0FAILS: screw S1 (yields)", 32)));
  CHECK(contains(svg, "<title>Cat, left radius</title>"));
  CHECK(contains(svg, "Software: gapstrain 9.9"));
  CHECK(contains(svg, "Description: case &lt;a&gt; &amp; b"));
  CHECK(contains(svg, "Warning: FAILS: screw S1 (yields)"));
  CHECK(contains(pdf, "/Title (Cat, left radius)"));
  CHECK(contains(pdf, "/Creator (gapstrain 9.9)"));
  CHECK(contains(pdf, as_utf_16("FAILS: screw S1")));  // of texts with brackets or line ends
}

TEST_CASE("vectors hold shapes, not pixels, on a page 210 mm wide", "[viz][paper]") {
  const tests::OwnFolder folder;
  draw_square({}, folder.path / "square.svg");
  draw_square({}, folder.path / "square.pdf");
  const std::string svg = tests::bytes_of(folder.path / "square.svg");
  CHECK_FALSE(contains(svg, "<image"));
  CHECK(contains(svg, "<path"));
  CHECK(contains(tests::bytes_of(folder.path / "square.pdf"), "595.27"));  // points
}

TEST_CASE("letters that are none do not empty a picture", "[viz][paper]") {
  const tests::OwnFolder folder;
  viz::PictureFrame frame;
  frame.subject = "broken \xff\xfe bytes";
  frame.metadata = {{"Title", frame.subject}};
  for (const char* name : {"picture.png", "picture.svg", "picture.pdf"})
    CHECK_NOTHROW(draw_square(frame, folder.path / name));
  CHECK(tests::read_picture(folder.path / "picture.png").share_near(viz::curve_colours[0], 0.02) > 0.02);
}

TEST_CASE("another kind of file is refused in words", "[viz][paper]") {
  CHECK_THROWS_WITH(draw_square({}, "picture.gif"), Catch::Contains(".png, .svg or .pdf"));
}
