// How a command joins the program: it adds itself to the command line and, when chosen, sets the job to run.
#pragma once

#include "cases/status.h"

#include <functional>

namespace CLI {
class App;
}

namespace gapstrain::cases {

using Job = std::function<Status()>;

}  // namespace gapstrain::cases
