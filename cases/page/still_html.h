// Tables of the still part, cell by cell.
#pragma once

#include "cases/files/json_value.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

struct StillCell {
  std::string text, attributes{};  // ` data-at="/margins/0/factor"`
  bool is_number = false;
};

// Texts are no markup.
std::string still_table(const std::string& caption, const std::vector<std::string>& heading,
                        const std::vector<std::vector<StillCell>>& rows);
std::string still_paragraph(const std::string& text, const std::string& attributes = {});

// What stands at that place of findings.json: numbers in three digits times `scale` with the unit, texts as they
// are; empty where there is nothing.
StillCell found_at(const Json& findings, const std::string& pointer, const std::string& unit = {},
                   double scale = 1.0);

// Which construct to prefer and why, and all figures side by side. `comparison`: as compare's findings.json
std::string still_comparison(const Json& comparison);

}  // namespace gapstrain::cases
