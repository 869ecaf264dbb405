// How an uncertain quantity is distributed, and its value at a given probability.
#pragma once

#include <limits>
#include <variant>

namespace gapstrain::models {

struct Uniform {
  double low = 0.0, high = 1.0;
};

struct Normal {
  double mean = 0.0, standard_deviation = 1.0;
};

struct Lognormal {  // mean and standard deviation of the quantity itself, not of its logarithm
  double mean = 1.0, standard_deviation = 1.0;
};

struct Triangular {  // mode in [low, high]
  double low = 0.0, mode = 0.5, high = 1.0;
};

// Truncated to [least, most]: what lies outside is left out, the rest keeps its shape and is scaled up to one.
struct Distribution {
  std::variant<Uniform, Normal, Lognormal, Triangular> shape;
  double least = -std::numeric_limits<double>::infinity();
  double most = std::numeric_limits<double>::infinity();
};

// Throws std::invalid_argument, saying what is wrong, if a parameter is not finite, a range or deviation not above
// zero, a lognormal mean not above zero, or the bounds leave nothing of the distribution.
void check_distribution(const Distribution& distribution);

// The value that the quantity stays below with this probability. Throws std::invalid_argument for a wrong
// distribution or a probability not between 0 and 1.
double quantile(const Distribution& distribution, double probability);

}  // namespace gapstrain::models
