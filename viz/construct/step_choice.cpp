#include "viz/construct/step_choice.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace gapstrain::viz {

std::vector<std::size_t> chosen_steps(const std::vector<double>& forces, std::size_t most) {
  assert(most >= 2);
  std::vector<std::size_t> steps(forces.size());
  std::iota(steps.begin(), steps.end(), std::size_t{0});
  if (steps.size() <= most) return steps;
  const auto change = [&](std::size_t step) { return std::abs(forces[step] - forces[step - 1]); };
  std::stable_sort(steps.begin() + 1, steps.end() - 1,
                   [&](std::size_t a, std::size_t b) { return change(a) > change(b); });
  steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(most - 1), steps.end() - 1);
  std::sort(steps.begin(), steps.end());
  return steps;
}

}  // namespace gapstrain::viz
