#include "models/findings/findings.h"

namespace gapstrain::models {

int plate_screws(const ConstructFigures& figures) {
  int count = 0;
  for (const auto& fragment : figures.fragments) count += fragment.screws;
  return count;
}

}  // namespace gapstrain::models
