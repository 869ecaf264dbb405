// Every choice of screws on a plate as a cloud of points in a page.
#pragma once

#include "cases/answers/case_json.h"
#include "cases/outputs/studies/layout_report.h"
#include "models/layouts/layouts.h"

#include <filesystem>

namespace gapstrain::cases {

// cloud_json.h, and what makes each row's construct of the case: `screws`, the table of each candidate, and
// `chosen`, positions in it of each row. `entered`: the case's tables. @throw OutputError
Json layouts_cloud(const std::filesystem::path& folder, const Json& entered, const models::Construct& construct,
                   const models::Layouts& layouts, const LayoutReport& report);

}  // namespace gapstrain::cases
