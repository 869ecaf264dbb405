// Lessons from their file to what their page shows, on a coarse mesh: figures in texts against analyses of the
// same states, claims and goals against solved states, and texts as text.
#include "cases/lessons/lesson_json.h"
#include "cases/lessons/make_lesson.h"
#include "cases/text/digits.h"
#include "models/assessment/assess.h"
#include "models/catalogue/analysed_outcome.h"
#include "models/catalogue/outcome_figures.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/cases/as_a_user/run_program.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <string>

namespace gapstrain {

using namespace cases;  // NOLINT: this file is nothing but cases

namespace {

namespace fs = std::filesystem;

const std::string shaft = R"(base = "EXAMPLES/simple_tibia.toml"
[mesh]
refinement = 0.4
rim_elements = 24
)";

// Three scenes; the second has a state of its own, one beside it, a goal and an answer that reaches it.
const std::string lesson_text = R"(case = "case.toml"
name = "A <b>lesson</b>"
[[scene]]
title = "First & <i>foremost</i>"
text = ["Stress {peak_stress}, strain {gap_strain:axial 200 N}, length {working_length}."]
look_at = ["holes", "peak_stress"]
[[scene]]
title = "Second"
text = ["{peak_stress} of {peak_stress@1} is {peak_stress@2/1}; {{so}}."]
[[scene.case.screw]]
holes = [1, 2, 4, 9, 11, 12]
[scene.beside]
title = "As entered"
[[scene.limit]]
finding = "gap_strain@2/beside"
least = 1.2
[scene.question]
text = "Less than 4 %?"
[[scene.question.limit]]
finding = "gap_strain"
most = 0.04
[scene.answer]
text = "{gap_strain@answer}"
[[scene.answer.case.screw]]
holes = [1, 2, 6, 7, 11, 12]
[[scene]]
title = "Third"
text = "Nothing."
[scene.question]
text = "Which?"
answers = ["this </script>", "that"]
right = 2
[scene.answer]
text = "That."
)";

class LessonFolder {
 public:
  explicit LessonFolder(const std::string& text = lesson_text) {
    std::string base = shaft;
    base.replace(base.find("EXAMPLES"), 8, GAPSTRAIN_EXAMPLES);
    tests::write_file(scratch_.path() / "case.toml", base);
    tests::write_file(scratch_.path() / "lesson.toml", text);
  }
  Lesson read() const { return read_lesson(scratch_.path() / "lesson.toml"); }
  LessonPage page() const {
    return make_lesson(read(), false, "", [](const std::string&) {});
  }

 private:
  tests::ScratchFolder scratch_;
};

std::string with(std::string text, const std::string& old, const std::string& put) {
  const auto at = text.find(old);
  REQUIRE(at != std::string::npos);
  return text.replace(at, old.size(), put);
}

std::string refused(const std::string& text) {
  try {
    LessonFolder(text).page();
  } catch (const CaseError& error) {
    return error.what();
  }
  return "";
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// The state of a scene as a case of its own, analysed as the command line does, and told by the catalogue.
class Analysed {
 public:
  Analysed(const PageContent& content, const Json& state) {
    PageSession session(content.pack);
    const Json read = Json::parse(
        session.ask(Json{{"changes", state["changes"]}, {"variant", state["variant"]}, {"detail", "read"}}.dump())
            .text);
    const CaseFile file = read_case_text("case.toml", read["case_text"]);
    const auto screws = file.screws_to_make_ready();
    const auto found =
        models::assess(models::prepare_bodies(file.construct, screws), file.construct, screws, false);
    outcome_ = models::outcome_of(found.analysis.findings, file.construct, found.assessment.margins,
                                  found.assessment.review);
  }
  double value(const std::string& name) const { return models::figure(outcome_, name).value(); }

 private:
  models::Outcome outcome_;
};

}  // namespace

TEST_CASE("figures in a lesson's texts are those of an analysis of the scene's state", "[cases][lessons]") {
  const LessonPage page = LessonFolder().page();
  const Json lesson = Json::parse(page.content.lesson);
  const Json& scenes = lesson["scenes"];
  const Analysed first(page.content, scenes[0]["state"]), second(page.content, scenes[1]["state"]),
      answer(page.content, scenes[1]["answer"]["state"]);

  CHECK(scenes[0]["text"][0] ==
        fmt::format("Stress {} MPa, strain {} %, length {} mm.", three_digits(first.value("peak_stress")),
                    three_digits(100.0 * first.value("gap_strain")), three_digits(first.value("working_length"))));
  const double ratio = second.value("peak_stress") / first.value("peak_stress");
  CHECK(scenes[1]["text"][0] ==
        fmt::format("{} MPa of {} MPa is {} %; {{so}}.", three_digits(second.value("peak_stress")),
                    three_digits(first.value("peak_stress")), two_digits_signed(100.0 * (ratio - 1.0))));
  CHECK(scenes[1]["answer"]["text"][0] == fmt::format("{} %", three_digits(100.0 * answer.value("gap_strain"))));

  // What is looked at and what is asked for, of all states of the scene.
  const Json& goal = scenes[1]["figures"].back();
  CHECK(goal["name"] == "gap_strain");
  CHECK(goal["own"] == fmt::format("{} %", three_digits(100.0 * second.value("gap_strain"))));
  CHECK(goal["beside"] == fmt::format("{} %", three_digits(100.0 * first.value("gap_strain"))));
  CHECK(goal["answer"] == scenes[1]["answer"]["text"][0]);
  CHECK(scenes[1]["question"]["goals"][0]["words"] == "at most 4 %");
}

TEST_CASE("a lesson's page opens with its first scene", "[cases][lessons]") {
  const std::string moved = with(lesson_text, "look_at = [\"holes\", \"peak_stress\"]\n",
                                 "[[scene.case.screw]]\nholes = [1, 2, 3, 10, 11, 12]\n");
  const LessonPage page = LessonFolder(moved).page();
  const Json first = Json::parse(page.content.first.text), scene = Json::parse(page.content.lesson)["scenes"][0];
  CHECK_FALSE(scene["state"]["changes"].empty());
  CHECK(first["changes"] == scene["state"]["changes"]);
}

TEST_CASE("texts of a lesson are text in its page, never markup", "[cases][lessons]") {
  const LessonPage page = LessonFolder().page();
  const std::string html = page_html(page.content);
  CHECK_FALSE(has(html, "<b>lesson</b>"));
  CHECK_FALSE(has(html, "<i>foremost</i>"));
  CHECK_FALSE(has(html, "this </script>"));
  CHECK(has(page.content.scenes, "Scene 1 of 3: First &amp; &lt;i&gt;foremost&lt;/i&gt;"));
  CHECK(has(page.content.scenes, "this &lt;/script&gt;"));
  CHECK(has(page.content.scenes, "Right is number 2."));
  CHECK(has(html, "id=\"page-lesson\""));
  CHECK(has(html, page.content.scenes));
}

TEST_CASE("what a lesson says and its solved states do not bear out is refused with what was found",
          "[cases][lessons]") {
  const std::string claim = refused(with(lesson_text, "least = 1.2", "least = 30"));
  CHECK(has(claim, "lesson.toml:14:1: scene[1].limit[0]: gap_strain@2/beside is 1."));
  CHECK(has(claim, "and at least 30 is said"));

  CHECK(has(refused(with(lesson_text, "most = 0.04", "most = 0.5")),
            "scene[1].question.limit: the scene's own state reaches this goal already"));
  CHECK(has(refused(with(lesson_text, "most = 0.04", "most = 0.01")),
            "scene[1].question.limit: the state of the answer does not reach this goal: gap strain"));
}

TEST_CASE("a state on other bodies is told to be a variant, and is one then", "[cases][lessons]") {
  const std::string fracture = "[scene.case.fracture]\ngap = \"2 mm\"\n";
  const std::string third = "title = \"Third\"\ntext = \"Nothing.\"\n";
  CHECK(has(refused(with(lesson_text, third, third + fracture)), "is a [[variant]] with what differs"));

  const std::string variant =
      "[[variant]]\nname = \"narrow\"\n[variant.case.fracture]\ngap = \"2 mm\"\n[[scene]]\n";
  const std::string mended =
      with(with(lesson_text, "[[scene]]\n", variant), third, third + "variant = \"narrow\"\n");
  const Lesson lesson = LessonFolder(mended).read();
  CHECK(lesson.page.variants.size() == 2);
  CHECK(lesson.scenes[2].own.page.variant == 1);
  CHECK(lesson.scenes[0].own.page.variant == 0);
}

TEST_CASE("each part of the page that a scene may point at is there", "[cases][lessons]") {
  const std::string page = tests::read_file(fs::path(GAPSTRAIN_EXAMPLES) / "../page/interface/page.html");
  for (const auto& part : page_parts()) {
    INFO(part.name);
    CHECK(has(page, "id=\"" + part.id + "\""));
  }
}

TEST_CASE("the lessons among the examples are sound", "[cases][lessons]") {
  for (const auto* name : {"working_length", "pressing_order", "gap"}) {
    INFO(name);
    const Lesson lesson = read_lesson(fs::path(GAPSTRAIN_EXAMPLES) / "lessons" / fmt::format("{}.toml", name));
    CHECK(lesson.scenes.size() >= 3);
  }
}

}  // namespace gapstrain
