// A draft's plate, screws and holes found by trying those that are known, and what that is told by.
#pragma once

#include "cases/new_case/new_request.h"
#include "models/patient/sizing.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct SizedDraft {
  models::Draft draft;
  std::optional<models::Sizing> sizing;  // nothing for a pressed fracture, whose plate follows simple rules
};

// Plates are tried on a mesh half as fine as the default one; `file`: that the case will be written to.
// @throw CaseError where no plate makes a case, Interrupted
SizedDraft size_draft(const NewRequest& request, models::Draft draft, const std::string& file);

// "NOTHING KNOWN HERE HAS 1.2 IN HAND ..."; nothing where the plate taken has.
std::optional<std::string> sizing_alarm(const models::Sizing& sizing);

// A line a plate that was tried, smallest first, under a heading; then why the one taken was. Not wrapped.
std::vector<std::string> sizing_table(const SizedDraft& sized);
std::string sizing_reason(const models::Sizing& sizing);

}  // namespace gapstrain::cases
