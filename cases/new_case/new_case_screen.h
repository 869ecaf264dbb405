// What `gapstrain new` tells: what was measured and what was not, loads, strains, what to mind, what to do next.
#pragma once

#include "cases/new_case/new_request.h"
#include "cases/new_case/sized_draft.h"
#include "models/patient/measured_strain.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// The intact bone at the walk and the trot, and against what was measured.
struct IntactFindings {
  models::IntactStrain walk, trot;
  std::vector<models::StrainCheck> checks;
};

// `found`: paragraphs on its own analysis, told first; `file` as written.
std::string new_case_screen(const NewRequest& request, const SizedDraft& sized, const IntactFindings& intact,
                            const std::vector<std::string>& found, const std::string& file);

}  // namespace gapstrain::cases
