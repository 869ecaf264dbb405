#include "models/patient/union_time.h"

#include "models/patient/patient.h"

#include <fmt/format.h>

namespace gapstrain::models {

UnionTime union_under_plate(double age_in_months) {
  if (!(age_in_months > 0.0 && age_in_months <= 360.0))
    throw PatientError(
        Subject::age,
        fmt::format("The patient is {:.4g} months old; allowed is above 0, up to 360 months (30 years).",
                    age_in_months));
  const std::string table = "textbook table of union under a plate in dogs, from memory: ";
  if (age_in_months < 3.0) return {3.0, 5.0, table + "4 weeks below 3 months of age, a week either way added"};
  if (age_in_months < 6.0) return {9.0, 13.0, table + "2 to 3 months at an age of 3 to 6 months"};
  if (age_in_months < 12.0) return {13.0, 22.0, table + "3 to 5 months at an age of 6 to 12 months"};
  return {22.0, 52.0, table + "5 to 12 months at an age above 1 year"};
}

}  // namespace gapstrain::models
