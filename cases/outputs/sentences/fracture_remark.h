// What is to be said first of the fracture: strain where it is open, pressure and motion where it is closed.
#pragma once

#include "cases/outputs/sentences/remark.h"
#include "models/findings/findings.h"

namespace gapstrain::cases {

// On the load under which the fracture is worst. `used` is the largest axial strain over Perren's 10 %, the share
// of the steps' force that is lost, or more than 1 where a pressed place gapes. @pre there is a load.
Remark fracture_remark(const models::Findings& findings);

// Force across the fracture after the last step; 0 without steps.
models::Force force_after_steps(const models::Findings& findings);

}  // namespace gapstrain::cases
