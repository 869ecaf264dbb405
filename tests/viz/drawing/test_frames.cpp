// Whatever the picture, its frame is on it: subject, banner, metadata.
#include "tests/viz/picture_file.h"
#include "tests/viz/picture_words.h"
#include "tests/viz/plan/sample_plan.h"
#include "tests/viz/sample.h"
#include "tests/viz/sample_steps.h"
#include "viz/compared/compared_pictures.h"
#include "viz/construct/pictures.h"
#include "viz/drawing/picture_head.h"
#include "viz/plan/review_pictures.h"
#include "viz/study/study_pictures.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

using namespace gapstrain;
namespace fs = std::filesystem;

namespace {

using Draw = std::function<void(const viz::Display&, const fs::path&)>;
struct Kind {
  std::string name;
  Draw draw;
  bool is_page = false;  // of a height of its own
};

std::vector<Kind> study_kinds() {
  const viz::ChartWords words{"Title", "subtitle"};
  const std::vector<double> x{1.0, 2.0, 3.0}, y{3.0, 1.0, 2.0};
  return {{"scatter",
           [=](const auto& on, const auto& file) {
             viz::draw_scatter(on, {words, {"x"}, {"y"}, {{"cloud", x, y, {}}}, {}, {}, {}, {}}, file);
           }},
          {"curves",
           [=](const auto& on, const auto& file) {
             viz::draw_curves(on, {words, {"x"}, {{{"y"}, {{"curve", x, y, {}, {}}}, {}}}}, file);
           }},
          {"map",
           [=](const auto& on, const auto& file) {
             viz::draw_map(on, {words, {"x"}, {"y"}, x, x, Eigen::MatrixXd::Ones(3, 3), "outcome"}, file);
           }},
          {"swings",
           [=](const auto& on, const auto& file) {
             viz::draw_swings(on, {words, {"outcome"}, 1.0, "mean", {{"factor", 0.5, 2.0}}}, file);
           }},
          {"bars",
           [=](const auto& on, const auto& file) {
             viz::draw_bars(on, {words, {"value"}, {"series"}, {{"row", {{1.0, 0.5, 1.5}}}}}, file);
           }},
          {"histogram",
           [=](const auto& on, const auto& file) {
             viz::draw_histogram(on, {words, {"value"}, y, {}, {}}, file);
           }},
          {"effects", [=](const auto& on, const auto& file) {
             viz::draw_effects(on, {words, {"y"}, 1.0, {{"factor", {{"low", {1.0, 1.0, 1.0}}}}}}, file);
           }}};
}

std::vector<Kind> kinds() {
  const auto fields = tests::sample_fields();
  const auto load = tests::sample_load_findings(fields);
  const auto findings = tests::sample_findings();
  const auto sample = tests::sample_plan();
  std::vector<Kind> all{
      {"construct", [=](const auto& on, const auto& file) { viz::draw_construct(on, fields, load, file); }},
      {"hottest hole", [=](const auto& on, const auto& file) { viz::draw_hottest_hole(on, fields, load, file); }},
      {"gap strain", [=](const auto& on, const auto& file) { viz::draw_gap_strain(on, findings, file); }},
      {"face pressure", [=](const auto& on, const auto& file) { viz::draw_face_pressure(on, findings, file); }},
      {"steps",
       [=](const auto& on, const auto& file) {
         viz::draw_steps(on, tests::sample_compression(), tests::sample_step_fields(), file);
       }},
      {"prebend", [=](const auto& on, const auto& file) { viz::draw_prebend(on, tests::sample_prebend(), file); }},
      {"along plate", [=](const auto& on, const auto& file) { viz::draw_along_plate(on, load, file); }},
      {"margins",
       [=](const auto& on, const auto& file) {
         viz::draw_margins(on, {"Margins", "", {{"plate", {0.7}}}, {}}, file);
       }},
      {"plan",
       [=](const auto& on, const auto& file) { viz::draw_plan(on, sample.construct, sample.plan, {}, file); },
       true},
      {"side by side",
       [=](const auto& on, const auto& file) {
         viz::draw_side_by_side(on, {{"A: one", &fields, &load}, {"B: other", &fields, &load}}, file);
       }},
      {"gap strain compared", [=](const auto& on, const auto& file) {
         viz::draw_gap_strain_compared(on, {{"A: one", &fields, &load}, {"B: other", &fields, &load}}, file);
       }}};
  for (auto& kind : study_kinds()) all.push_back(std::move(kind));
  return all;
}

struct Drawn {
  tests::PictureFile picture;
  std::string bytes;
};

Drawn drawn_in(const viz::PictureFrame& frame, const Draw& draw) {
  const tests::OwnFolder folder;
  const viz::Display display(frame);
  const auto words = tests::words_written_by([&] { draw(display, folder.path / "picture.png"); });
  Drawn all{tests::read_picture(folder.path / "picture.png"), tests::bytes_of(folder.path / "picture.png")};
  all.picture.words = words;
  return all;
}

// Rows from the top down in which dark ink runs from side to side: those of the banner's frame.
int heavy_rows(const tests::PictureFile& picture, int rows_from_top) {
  int heavy = 0;
  for (int row = picture.height - rows_from_top; row < picture.height; ++row) {
    int dark = 0;
    for (int column = 0; column < picture.width; ++column)
      dark += picture.pixels[static_cast<std::size_t>(row * picture.width + column)][1] < 80 ? 1 : 0;
    heavy += dark > picture.width * 9 / 10 ? 1 : 0;
  }
  return heavy;
}

const viz::PictureFrame calm{.subject = "Dog, left radius", .alarms = {}, .metadata = {}};

viz::PictureFrame alarmed() {
  viz::PictureFrame frame = calm;
  frame.alarms = {"NOT TO BE TRUSTED: the residual is too large", "FAILS: screw S4 yields under \"trot\""};
  return frame;
}

}  // namespace

TEST_CASE("every kind of picture carries subject, banner and warnings", "[viz][frames]") {
  const int without = static_cast<int>(viz::PictureHead(calm).height());
  const int with = static_cast<int>(viz::PictureHead(alarmed()).height());
  REQUIRE(without > 30);
  REQUIRE(with > without + 80);
  for (const auto& [name, draw, is_page] : kinds()) {
    CAPTURE(name);
    const auto bare = drawn_in({}, draw), quiet = drawn_in(calm, draw), loud = drawn_in(alarmed(), draw);
    CHECK(heavy_rows(quiet.picture, without) == 0);
    CHECK(heavy_rows(loud.picture, with) >= 14);  // two bars of eight pixels
    CHECK(quiet.picture.says("Dog, left radius"));
    CHECK_FALSE(bare.picture.says("Dog, left radius"));
    CHECK(loud.picture.says("NOT TO BE TRUSTED: the residual is too large"));
    CHECK(loud.picture.says("FAILS: screw S4 yields under \"trot\""));
    CHECK_FALSE(quiet.picture.says("TRUSTED"));
    CHECK(loud.bytes.find(std::string("Warning\0NOT TO BE TRUSTED: the residual", 39)) != std::string::npos);
    CHECK(loud.bytes.find("FAILS: screw S4 yields") != std::string::npos);
    CHECK(quiet.bytes.find("Warning") == std::string::npos);
    if (is_page) {
      CHECK(loud.picture.height == quiet.picture.height);
      continue;
    }
    CHECK(std::abs(quiet.picture.height - bare.picture.height - without) <= 1);
    CHECK(std::abs(loud.picture.height - bare.picture.height - with) <= 1);
  }
}

TEST_CASE("a long list of alarms is cut, and the rest counted", "[viz][frames]") {
  viz::PictureFrame frame = calm;
  for (int a = 0; a < 9; ++a) frame.alarms.push_back("FAILS: a part");
  const double nine = viz::PictureHead(frame).height();
  for (int a = 0; a < 40; ++a) frame.alarms.push_back("FAILS: a part");
  CHECK(viz::PictureHead(frame).height() == nine);
  frame.alarms.resize(2);
  CHECK(viz::PictureHead(frame).height() < nine);
}

TEST_CASE("alarms and subjects of any length stay inside the picture", "[viz][frames]") {
  viz::PictureFrame frame;
  for (int word = 0; word < 60; ++word) frame.subject += "subject ";
  frame.alarms = {"NOT TO BE TRUSTED: " + frame.subject + frame.subject, std::string(500, 'x')};
  const auto loud = drawn_in(frame, [](const auto& on, const auto& file) {
    viz::draw_margins(on, {"Margins", "", {{"plate", {0.7}}}, {}}, file);
  });
  CHECK(loud.picture.has_white_border(8));
}
