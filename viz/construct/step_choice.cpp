#include "viz/construct/step_choice.h"

#include <algorithm>
#include <cassert>
#include <cctype>
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

bool names(const std::string& text, const std::string& label) {
  if (label.empty()) return false;
  const auto in_word = [&](std::size_t place) {
    return place < text.size() &&
           (std::isalnum(static_cast<unsigned char>(text[place])) != 0 || text[place] == '_');
  };
  for (auto at = text.find(label); at != std::string::npos; at = text.find(label, at + 1))
    if ((at == 0 || !in_word(at - 1)) && !in_word(at + label.size())) return true;
  return false;
}

}  // namespace gapstrain::viz
