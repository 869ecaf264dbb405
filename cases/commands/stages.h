// Stages of long work, with their time, where somebody is looking.
#pragma once

#include "models/findings/analyse.h"

namespace gapstrain::cases {

// On stderr when it is a terminal and not `quiet`; else empty.
models::Progress tell_stages(bool quiet);

}  // namespace gapstrain::cases
