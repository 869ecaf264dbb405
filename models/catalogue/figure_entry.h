// What the catalogue says of a figure, whoever shows it: tables, limits, rankings, comparisons, charts, the
// screen.
#pragma once

#include "models/parts/figure_unit.h"

#include <string>

namespace gapstrain::models {

// What the model may be off by where no estimate of its own is at hand, as a share: against three-dimensional
// solids stiffness agrees to some 3 % and stress to some 10 % (tests/PROOF.md). Lives go as stress to the power of
// some 12: two stresses off by 5 % each, one standard deviation, put a factor of 4 between two lives in one of ten
// cases (as models/race/race has them).
inline constexpr double model_error_of_stiffness = 0.03, model_error_of_stress = 0.10, model_error_of_life = 0.6;
inline constexpr double most_lives = 1e4;  // beyond, one life is like another

// Which of them holds for a figure.
enum class ErrorOf { nothing, stiffness, stress, life };
double model_error_of(ErrorOf kind);

enum class Better { neither, high, low };  // neither: it depends on the fracture

// Comparisons list figures that are told apart alike in this order.
enum class FigureGroup { margins, lives, stress, gap, pressing, stiffness, geometry, rules };

// How constructs are held against each other by a figure.
struct ComparedBy {
  FigureGroup group = FigureGroup::geometry;
  std::string label{};  // "plate stress, largest"; empty: they are not
  Better better = Better::neither;
  ErrorOf error_of = ErrorOf::nothing;
};

struct FigureEntry {
  std::string name;  // "peak_stress": of columns, limits and rankings
  FigureUnit unit;
  std::string meaning;
  ComparedBy compared{};
};

}  // namespace gapstrain::models
