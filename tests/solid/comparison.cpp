#include "tests/solid/comparison.h"

#include <cmath>
#include <utility>

namespace gapstrain::tests {

Comparison compare(std::string group, std::string figure, std::string unit, double ours, double reference,
                   double tolerance) {
  return {std::move(group), std::move(figure),   std::move(unit), ours,
          reference,        std::abs(reference), tolerance,       tolerance};
}

}  // namespace gapstrain::tests
