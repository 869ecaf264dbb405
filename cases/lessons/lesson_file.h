// A lesson file: scenes of a case, each a state of it with a text, a question and an answer.
#pragma once

#include "cases/figures/limits_and_charts.h"
#include "cases/lessons/figure_reference.h"
#include "cases/lessons/page_parts.h"
#include "cases/page/page_variants.h"
#include "cases/toml/case_places.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

// A state that the case reader found no fault with.
struct SceneState {
  PageState page;
  std::vector<std::string> loads;  // their names
  std::string path;                // in the file: "scene[1].beside"
};

struct SceneBeside {
  std::string title;
  SceneState state;
};

// Either answers to choose from or goals.
struct SceneQuestion {
  std::vector<std::string> text, answers;
  int right = 0;  // of the answers, from 1
  std::vector<Limit> goals;
};

struct SceneAnswer {
  std::vector<std::string> text;
  std::optional<SceneState> state;  // that shows it
};

// Texts have their marks still: see lesson_figures.h.
struct Scene {
  std::string title;
  std::vector<std::string> text;
  SceneState own;
  std::size_t load = 0;  // that is seen, of the state's
  std::vector<PagePart> parts;
  std::vector<std::string> figures;  // references
  std::vector<Limit> limits;         // that the solved states must keep; findings are references
  std::optional<SceneBeside> beside;
  std::optional<SceneQuestion> question;
  std::optional<SceneAnswer> answer;
};

struct Lesson {
  std::string file;  // as the user wrote it
  std::string name;
  std::vector<std::string> text;
  PageCase page;  // opens with the first scene's state
  std::vector<Scene> scenes;
  CasePlaces places;  // of the file's keys
};

// A state of the scene at `scene` (from 0), or of the one that the reference names; null if there is none.
const SceneState* find_state(const std::vector<Scene>& scenes, std::size_t scene, const StateReference& reference);

// Each state is held against the case reader, each figure's name against the catalogue and the state's loads.
// @throw CaseError with all problems of the lesson file; those of its case are among them, at `case`
Lesson read_lesson(const std::filesystem::path& path);

}  // namespace gapstrain::cases
