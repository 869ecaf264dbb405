// A sentence on the worst of one part, and how bad it is.
#pragma once

#include <string>

namespace gapstrain::cases {

struct Remark {
  double used = 0.0;  // share of the part's limit
  std::string sentence;
};

}  // namespace gapstrain::cases
