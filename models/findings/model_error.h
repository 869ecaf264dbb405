#pragma once

#include <stdexcept>

namespace gapstrain::models {

// The model does not hold for this construct (a mechanism, say); one sentence that names the part and the motion.
struct ModelError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

}  // namespace gapstrain::models
