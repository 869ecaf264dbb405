// A lesson's states, each solved once by what its page asks: on the page's bodies, by the page's session.
#pragma once

#include "cases/answers/page_session.h"
#include "cases/lessons/lesson_file.h"
#include "models/measures/analyse.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

// Answers to "verdict", see DEVELOPERS.md, "The page"; null where the scene has no such state.
struct SolvedScene {
  Json own, beside, answer;
};

// Called with each state that was solved, before the next one is.
using WithSolved = std::function<void(std::size_t scene, ScenePart part, const SolvedState& state)>;

// @throw CaseError for a state that asks for other bodies than its variant's, models::ModelError for one that the
//   model does not hold for: scene and sentence
std::vector<SolvedScene> solve_scenes(const Lesson& lesson, PageSession& session, const models::Progress& progress,
                                      const WithSolved& with_solved);

// Null if the scene has no such state.
const Json* find_answer(const std::vector<SolvedScene>& solved, std::size_t scene,
                        const StateReference& reference);

// The figure of figures_json.h; null where the state has none. @pre the answer was solved
const Json* find_figure_in(const Json& answer, const FigureReference& reference);

// Value of a reference as it is written: of `over`, how many times as large. Nothing where a state has no such
// figure.
std::optional<double> value_of(const std::string& text, const std::vector<SolvedScene>& solved, std::size_t scene);

// As a text shows it: "340 MPa", "+12 %"; nothing where there is none, or no change that a share tells.
std::optional<std::string> text_of_reference(const std::string& text, const std::vector<SolvedScene>& solved,
                                             std::size_t scene);

// Which of the scene's claims and goals the solved states do not bear out, at their places. Empty if all hold.
std::vector<CaseProblem> faults_of_solved(const Lesson& lesson, const std::vector<SolvedScene>& solved);

}  // namespace gapstrain::cases
