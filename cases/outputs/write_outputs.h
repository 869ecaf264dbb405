// All files of one analysis into its folder.
#pragma once

#include "cases/outputs/case_origin.h"
#include "cases/outputs/output_folder.h"
#include "models/review/assess.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

struct WrittenOutputs {
  std::vector<std::string> not_finite;          // as from make_findings_json
  std::optional<std::string> pictures_missing;  // why there are none although they were wanted
};

// findings.json, tables as CSV, the review and the plan as texts, case.toml, fields/ as VTK XML and pictures/ as
// PNG; does not publish the folder.
// @throw OutputError
WrittenOutputs write_outputs(OutputFolder& folder, const models::Construct& construct,
                             const models::AssessedConstruct& assessed, const CaseOrigin& origin,
                             bool with_pictures, const models::Progress& progress);

}  // namespace gapstrain::cases
