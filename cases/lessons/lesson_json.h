// A lesson as lesson_panel.js shows it, its texts with all figures in place.
#pragma once

#include "cases/lessons/solved_lesson.h"

namespace gapstrain::cases {

// {name, text, scenes:[{title, text, state:{changes, variant}, load, head, look:[{label, id}],
//   figures:[{name, load?, label, own, beside?, answer?}], beside?:{title, state, head},
//   question?:{text, answers?, right?, goals?:[{name, load?, label, least?, most?, words}]},
//   answer?:{text, state?, head?}}]}
// `head`: what must be known of the state first, as of an answer; `load`: the position of the one that is seen.
// @pre faults_of_solved finds none
Json lesson_json(const Lesson& lesson, const std::vector<SolvedScene>& solved);

}  // namespace gapstrain::cases
