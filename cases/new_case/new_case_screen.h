// What `gapstrain new` tells: what was measured and what was not, loads, strains, what to mind, what to do next.
#pragma once

#include "cases/new_case/new_request.h"
#include "models/patient/intact_strain.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// `trot`: of the intact bone; `found`: paragraphs on its own analysis, told first; `file` as written.
std::string new_case_screen(const NewRequest& request, const models::Draft& draft,
                            const models::IntactStrain& trot, const std::vector<std::string>& found,
                            const std::string& file);

}  // namespace gapstrain::cases
