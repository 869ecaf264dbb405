#include "cases/lessons/lesson_keys.h"

#include "cases/lessons/page_parts.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

// What tells a state from the case: of a variant, a scene, what stands beside it, and its answer.
void add_state(std::vector<Key>& keys, const char* table, bool is_variant) {
  using enum Need;
  // clang-format off
  if (!is_variant)
    keys.push_back({table, "variant", Kind::text, optional, "",
                    "the [[variant]] on whose bodies the state stands; absent: the case's own", {}});
  keys.push_back({table, "without", Kind::texts, optional, "",
                  "keys that fall away, such as [\"step\", \"fracture.tissue\"]", {}});
  keys.push_back({table, "case", Kind::table, optional, "",
                  "what differs, under the keys of a case (gapstrain keys): tables add to what is there key by key, all "
                  "else takes its place; [scene.case.fracture] and such", {}});
  // clang-format on
}

void add_limits(std::vector<Key>& keys, const char* table, const char* finding) {
  using enum Need;
  // clang-format off
  keys.insert(keys.end(), {
    {table, "finding", Kind::text, required, "", finding, {}},
    {table, "least", Kind::measure, optional, "", "not below; in a unit of the finding", {}},
    {table, "most", Kind::measure, optional, "", "not above", {}},
  });
  // clang-format on
}

std::vector<Key> make_lesson_keys() {
  using enum Need;
  static const std::string look_at = fmt::format(
      "what is shown first, and marked: parts of the page ({}), and figures as limits name them, whose values "
      "then "
      "stand in the scene, as they are and as they were",
      fmt::join(names_of_page_parts(), ", "));

  std::vector<Key> keys;
  // clang-format off
  keys = {
    {"", "case", Kind::text, required, "", "the case file of the lesson, seen from this file's folder", {}},
    {"", "name", Kind::text, derived, "the case's name", "the lesson's title", {}},
    {"", "text", Kind::texts, optional, "", "what the lesson is about, a paragraph each", {}},
    {"", "variant", Kind::tables, optional, "",
     "states with bodies of their own: another plate, gap or standoff; each makes the page larger", {}, {"1", "8"}},
    {"", "scene", Kind::tables, required, "", "one after another", {}, {"3", "8"}},

    {"variant", "name", Kind::text, required, "", "what scenes call it, and the page", {}},
    {"scene", "title", Kind::text, required, "", "a line", {}},
    {"scene", "text", Kind::texts, required, "",
     "a paragraph each. {FIGURE} stands for a figure of the scene's state, as columns of rows.csv are called (gapstrain keys "
     "--rows), without their units, in its worst load; {FIGURE:LOAD} in that load; {FIGURE@2} in scene 2, {FIGURE@beside} and "
     "{FIGURE@answer} beside this scene and in its answer, {FIGURE@2 beside} beside scene 2; {FIGURE@3/2} how much more it "
     "is in scene 3 than in scene 2, such as +12 %. {{ is a brace. So too in questions and answers", {}},
    {"scene", "load", Kind::text, derived, "the first", "the load whose picture and curves are shown", {}},
    {"scene", "look_at", Kind::texts, optional, "", look_at, {}},
  };
  add_state(keys, "variant", true);
  add_state(keys, "scene", false);
  keys.insert(keys.end(), {
    {"scene", "beside", Kind::table, optional, "", "another state, drawn on the same scales next to the scene's", {}},
    {"scene", "limit", Kind::tables, optional, "",
     "what the texts say without a number (\"hardly changes\"): bounds that figures of the solved states must keep, or no "
     "page is written", {}, {"1", "50"}},
    {"scene", "question", Kind::table, optional, "", "answered by trying", {}},
    {"scene", "answer", Kind::table, optional, "", "shown after; needed with a question", {}},
    {"scene.beside", "title", Kind::text, required, "", "what it is called", {}},
  });
  add_state(keys, "scene.beside", false);
  add_limits(keys, "scene.limit", "a figure as in texts, such as \"peak_stress:axial 200 N\"; \"peak_stress@3/2\" is how "
                                  "many times as large as in scene 2, a plain number");
  keys.insert(keys.end(), {
    {"scene.question", "text", Kind::texts, required, "", "a paragraph each", {}},
    {"scene.question", "answers", Kind::texts, optional, "", "to choose from, at least two; or give [[scene.question.limit]]",
     {}},
    {"scene.question", "right", Kind::count, optional, "", "which of them is right, the first is 1", {}, {"1", "8"}},
    {"scene.question", "limit", Kind::tables, optional, "",
     "a goal: the page says when the construct at hand keeps all of them. The scene's own state must not, and the answer's, "
     "if it has one, must", {}, {"1", "8"}},
  });
  add_limits(keys, "scene.question.limit", "a figure of the construct at hand: \"gap_strain\", \"gap_strain:axial 200 N\"");
  keys.push_back({"scene.answer", "text", Kind::texts, required, "", "a paragraph each", {}});
  // clang-format on
  add_state(keys, "scene.answer", false);
  return keys;
}

}  // namespace

const KeyTable& lesson_keys() {
  static const KeyTable keys(make_lesson_keys());
  return keys;
}

}  // namespace gapstrain::cases
