// The main job in one call: build the bodies, solve every load, measure.
#pragma once

#include "models/findings/fields.h"
#include "models/findings/findings.h"
#include "models/parts/construct.h"

#include <functional>
#include <stdexcept>
#include <string>

namespace gapstrain::models {

// The model does not hold for this construct (a mechanism, say); one sentence that names the part and the motion.
struct ModelError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

struct Analysis {
  Findings findings;
  Fields fields;
};

// Called with a short description before each stage of the work.
using Progress = std::function<void(const std::string& stage)>;

// @pre check(construct) reports no error.
// @throw ModelError, mesh::MeshError
Analysis analyse(const Construct& construct, const Progress& progress = {});

}  // namespace gapstrain::models
