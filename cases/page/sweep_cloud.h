// The rows of a sweep as a cloud of points in a page.
#pragma once

#include "cases/files/json_value.h"
#include "cases/study/sweep_rows.h"
#include "models/assembly/prepared_bodies.h"

#include <filesystem>
#include <functional>
#include <memory>

namespace gapstrain::cases {

// cloud_json.h, and of each row what it sets in the case (`variables`, `settings`), and whether the page's bodies
// are its own (`touch`: 2 the same mesh, 1 a mesh made ready for other screws, 0 none, and why).
// `prepared`: the bodies of the page. `reached`: told the share of rows looked at. @throw OutputError
Json sweep_cloud(const std::filesystem::path& folder, const StudyFile& study, const SweepRows& sweep,
                 const std::shared_ptr<const models::PreparedBodies>& prepared,
                 const std::function<void(double)>& reached);

}  // namespace gapstrain::cases
