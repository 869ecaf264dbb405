// findings.json: everything but the fields, with its own documentation under "keys".
#pragma once

#include "cases/outputs/case_origin.h"
#include "models/review/assess.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

struct FindingsJson {
  std::string text;
  std::vector<std::string>
      not_finite;  // figures that came out as no finite number: left out, named in the text too
};

// A figure that the construct does not have (a factor to yield without yield strength) is left out; so there is
// never a null. `files` are the files of the folder, findings.json among them.
FindingsJson make_findings_json(const models::Findings& findings, const models::Assessment& assessment,
                                const CaseOrigin& origin, const std::vector<std::string>& files);

}  // namespace gapstrain::cases
