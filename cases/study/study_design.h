// Which combination of its variables' values each row of a study has.
#pragma once

#include "cases/study/variable.h"
#include "cases/toml/section.h"
#include "models/statistics/design.h"
#include "models/statistics/saltelli_design.h"

#include <optional>
#include <variant>
#include <vector>

namespace gapstrain::cases {

// Every combination, the first variable varies slowest.
struct Grid {
  std::vector<std::size_t> lengths;  // one a variable
};

using StudyDesign = std::variant<Grid, models::Design, models::SaltelliDesign>;

std::size_t rows_of(const StudyDesign& design);

// One setting a variable, of any row on its own.
std::vector<Setting> settings_of(const StudyDesign& design, const std::vector<Variable>& variables,
                                 std::size_t row);

// [design] of a study file; nothing when its faults, now reported, or absent variables leave none.
std::optional<StudyDesign> read_design(const Section& design, const std::vector<Section>& varies,
                                       const std::vector<Variable>& variables);

}  // namespace gapstrain::cases
