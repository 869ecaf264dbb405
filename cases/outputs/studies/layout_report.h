// What a table of layouts says: which are best, what is weighed against what, and where the surgeon's own stands.
#pragma once

#include "cases/outputs/studies/row_states.h"
#include "cases/study/study_folder.h"
#include "models/parts/layout_rules.h"
#include "viz/drawing/display.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct LayoutReport {
  std::vector<std::size_t> best;   // rows, best first, ten at most
  std::vector<std::size_t> front;  // rows, by the first figure
  std::vector<char> keeps;         // of each row: it is to be trusted and within the limits
  std::vector<char> fails;         // likewise: a margin of plate or screws is below 1
  std::size_t kept = 0;
  RowStates states;
  std::string text;  // for the terminal and summary.txt
};

struct LayoutTitle {
  std::string name;                   // of the case
  std::vector<std::string> loads;     // names
  std::optional<std::size_t> own;     // row of the case's own layout
  std::vector<std::string> left_out;  // holes that take no screw, and why
};

// From rows.csv in the folder. @pre the case has layout rules. @throw OutputError
LayoutReport report_layouts(const std::filesystem::path& folder, const models::Construct& construct,
                            const LayoutTitle& title);

// Peak stress and gap strain over working length, and the front, own layout marked; into `charts`.
void draw_layout_charts(const viz::Display& display, const std::filesystem::path& folder,
                        const models::LayoutRules& rules, const LayoutTitle& title, const LayoutReport& report);

}  // namespace gapstrain::cases
