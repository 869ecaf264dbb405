// What of a study's rows has no result, or none to be trusted: to be said before all else.
#pragma once

#include "models/parts/construct.h"

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct RowStates {
  std::size_t rows = 0, failed = 0, doubtful = 0;
  std::size_t only_bonded =
      0;                     // that hold as their screws are taken, and do not, or fail a check, at the soft bound
  std::string first_reason;  // of the first failed row
  std::vector<models::Estimate> estimated{};  // what of the case all rows share was not measured
};

// From rows.csv in the folder, of a study of this case. @throw OutputError
RowStates count_states(const std::filesystem::path& folder, const models::Construct& construct);

// A sentence each, empty when all rows are sound and nothing was estimated.
std::vector<std::string> alarms_of(const RowStates& states);

}  // namespace gapstrain::cases
