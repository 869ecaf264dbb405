// The main job in one call: build the bodies, solve every load, measure.
#pragma once

#include "models/build/assembly.h"
#include "models/findings/fields.h"
#include "models/findings/findings.h"
#include "models/findings/model_error.h"
#include "models/parts/construct.h"

#include <functional>
#include <string>

namespace gapstrain::models {

class Layouts;

struct Analysis {
  Findings findings;
  Fields fields;
};

// Called with a short description before each stage of the work.
using Progress = std::function<void(const std::string& stage)>;

// @pre check(construct) reports no error.
// @throw ModelError, mesh::MeshError
Analysis analyse(const Construct& construct, const Progress& progress = {});

// The screws that bodies are made ready for, each place once: the construct's and those of its working-length
// variants. With layout rules those of all layouts instead of the latter, so that every layout is worked out on
// one mesh.
std::vector<Screw> screws_to_make_ready(const Construct& construct);
std::vector<Screw> screws_to_make_ready(const Construct& construct, const Layouts& layouts);

// The same for an assembly's construct, whose screws may have been exchanged for others of its candidates.
Analysis analyse(const Assembly& assembly, const Progress& progress = {});

}  // namespace gapstrain::models
