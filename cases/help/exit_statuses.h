// What the program's exit statuses mean, in words.
#pragma once

#include "cases/status.h"

#include <array>
#include <string_view>

namespace gapstrain::cases {

struct StatusMeaning {
  Status status;
  std::string_view meaning;
};

inline constexpr std::array<StatusMeaning, 4> exit_statuses{{
    {Status::done, "Done, also when the construct fails under its load: that is a finding."},
    {Status::does_not_hold,
     "The model does not hold for this case, or a check of the solution failed; nothing of the result is to be "
     "relied "
     "on."},
    {Status::bad_input,
     "Bad input: case file, study file, command line or output folder. The message names file, line and key and "
     "how to "
     "mend it; nothing is written."},
    {Status::interrupted,
     "Interrupted. Studies go on where they stopped when the same command is given again; other commands have "
     "written "
     "nothing."},
}};

}  // namespace gapstrain::cases
