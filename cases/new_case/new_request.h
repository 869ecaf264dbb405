// What a user says about a patient on the command line, and what it means.
#pragma once

#include "models/patient/draft.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

// As typed; empty: not given.
struct NewOptions {
  std::string species, bone, mass, side, age, name;
  std::string length, width_mediolateral, width_craniocaudal, cortex;
  std::vector<std::string> stations;
  std::string marker, marker_seen;
  std::string fracture_position, gap, obliquity, pattern, treatment;
  std::string out;
  bool force = false;
};

struct OptionProblem {
  std::string option;   // "--mass"
  std::string message;  // what was found, what is allowed, what to measure
};

struct NewRequest {
  models::DraftRequest draft;           // lengths seen on radiographs corrected for magnification
  std::string side;                     // "left", "right" or empty
  std::string name;                     // of the case
  std::optional<double> magnification;  // seen over true
};

// All that is wrong is added to the problems; the request is of use only when nothing is.
NewRequest read_request(const NewOptions& options, std::vector<OptionProblem>& problems);

// The options that a subject is given by, such as "--marker, --marker-seen".
std::string options_of(models::Subject subject);

}  // namespace gapstrain::cases
