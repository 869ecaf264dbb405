// What the program tells its caller.
#pragma once

namespace gapstrain::cases {

enum class Status {
  done = 0,           // also when the construct fails mechanically: that is a finding
  does_not_hold = 1,  // the model does not hold for this case, or a trust check failed
  bad_input = 2,      // the case file, the command line or the output folder
  interrupted = 3     // long work that goes on when started again
};

}  // namespace gapstrain::cases
