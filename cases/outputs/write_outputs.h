// All files of one analysis into its folder.
#pragma once

#include "cases/files/output_folder.h"
#include "cases/outputs/pictures/picture_frame.h"
#include "cases/outputs/sentences/case_origin.h"
#include "models/assessment/assess.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct WrittenOutputs {
  std::optional<std::string> pictures_missing;  // why some are, although they were wanted
};

// findings.json, tables as CSV, the review and the plan as texts, case.toml, fields/ as VTK XML and pictures/ if
// wanted; does not publish the folder.
// @throw OutputError
WrittenOutputs write_outputs(OutputFolder& folder, const models::Construct& construct,
                             const models::AssessedConstruct& assessed, const CaseOrigin& origin,
                             const std::optional<PictureStyle>& pictures, const models::Progress& progress);

}  // namespace gapstrain::cases
