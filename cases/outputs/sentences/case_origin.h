// Where findings come from: carried by every output.
#pragma once

#include <string>
#include <vector>

namespace gapstrain::cases {

struct CaseOrigin {
  std::string file;
  std::string text;
  std::vector<std::string> assumptions;
  std::string date{};  // of the run; empty where nobody asks
};

}  // namespace gapstrain::cases
