// The main job in one call: build the bodies, solve every load, measure.
#pragma once

#include "models/assembly/assembly.h"
#include "models/assembly/insertion.h"
#include "models/findings/fields.h"
#include "models/findings/findings.h"
#include "models/findings/model_error.h"
#include "models/parts/construct.h"

#include <functional>
#include <string>

namespace gapstrain::models {

struct Analysis {
  Findings findings;
  Fields fields;
};

// Called with a short description before each stage of the work.
using Progress = std::function<void(const std::string& stage)>;

enum class Extent {
  whole,
  verdict,  // what margins and trust rest on: no fields, nothing that compares with another construct or order
  margins   // the same without buckling: trust does not know of it
};

// The construct after each step and under each load: what all is measured on.
struct SolvedCase {
  Procedure procedure;
  std::vector<StepState> steps;
  std::vector<ConstructState> loads;
};

// @throw ModelError
SolvedCase solve_case(const Assembly& assembly);

// Of the assembly's construct. Its screws may have been exchanged for others of the assembly's candidates; a
// working-length variant whose screws are not among these is said to be unavailable.
// @throw ModelError, mesh::MeshError
Analysis analyse(const Assembly& assembly, const Progress& progress = {}, Extent extent = Extent::whole);

// The same of what is solved already.
Analysis analyse(const Assembly& assembly, const SolvedCase& made_and_loaded, const Progress& progress,
                 Extent extent);

}  // namespace gapstrain::models
