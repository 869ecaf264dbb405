// What `gapstrain new` tells: what was measured and what was not, loads, strains, what to mind, what to do next.
#pragma once

#include "cases/commands/new_request.h"
#include "models/patient/intact_strain.h"

#include <string>

namespace gapstrain::cases {

// `trot`: of the intact bone; `file` as written.
std::string new_case_screen(const NewRequest& request, const models::Draft& draft,
                            const models::IntactStrain& trot, const std::string& file);

}  // namespace gapstrain::cases
