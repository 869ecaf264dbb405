// findings.json: everything but the fields, with its own documentation under "keys".
#pragma once

#include "cases/files/json_value.h"
#include "cases/outputs/sentences/case_origin.h"
#include "models/assessment/assess.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// A figure that the construct does not have (a factor to yield without yield strength) is left out, and so is one
// that is no finite number, which "not_finite" names; so there is never a null. `files` are the files of the
// folder, findings.json among them.
// @pre findings and assessment are the construct's
std::string findings_json(const models::Construct& construct, const models::Findings& findings,
                          const models::Assessment& assessment, const CaseOrigin& origin,
                          const std::vector<std::string>& files);

// The same without `files` and `keys`, for who puts it into a larger answer.
Json findings_document(const models::Construct& construct, const models::Findings& findings,
                       const models::Assessment& assessment, const CaseOrigin& origin);

// Figures that came out as no finite number make a result not to be trusted: says so in its state.
void doubt_not_finite(const models::Construct& construct, models::AssessedConstruct& assessed);

}  // namespace gapstrain::cases
