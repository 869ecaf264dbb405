// How long a fracture under a plate takes to heal.
#pragma once

#include <string>

namespace gapstrain::models {

struct UnionTime {
  double weeks_from = 0.0, weeks_to = 0.0;
  std::string source;
};

// By age, for dogs (a textbook's table, from memory), taken for cats as well: below 3 months 4 weeks (here 3 to 5,
// a choice of this program), below 6 months 2 to 3 months, below a year 3 to 5 months, later 5 to 12 months.
// @throw PatientError for an age that is not above 0 or beyond 30 years
UnionTime union_under_plate(double age_in_months);

}  // namespace gapstrain::models
