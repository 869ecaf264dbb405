// Random contact problems, and what an answer to one has to keep.
#pragma once

#include "solver/bodies/contact.h"

#include <Eigen/Core>

#include <algorithm>
#include <limits>
#include <random>
#include <vector>

namespace gapstrain::tests {

class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
  Eigen::MatrixXd normal(Eigen::Index rows, Eigen::Index columns) {
    std::normal_distribution<double> bell;
    return Eigen::MatrixXd::NullaryExpr(rows, columns, [&] { return bell(engine_); });
  }
  std::vector<int> order(int count) {
    std::vector<int> numbers;
    for (int number = 0; number < count; ++number) numbers.push_back(number);
    std::shuffle(numbers.begin(), numbers.end(), engine_);
    return numbers;
  }
  std::vector<char> set(int count) {
    std::vector<char> chosen;
    for (int i = 0; i < count; ++i) chosen.push_back(whole(0, 1) == 1);
    return chosen;
  }

 private:
  std::mt19937 engine_;
};

inline constexpr double infinite = std::numeric_limits<double>::infinity();  // a coefficient that sticks

enum class Kind { full, nearly_singular, smooth };

// Any pair may rub, and tractions are coupled with normals as strongly as with each other unless the kind is
// smooth: there they influence what is near. Rows have scales from 1e-2 to 1e2.
solver::ContactProblem random_problem(Random& random, Kind kind, int pairs, bool rubs, double most_friction = 0.8);

// How far an answer is from the laws, by their text instead of by projections: no tension, no penetration, no
// force over a gap; no traction beyond its bound, none short of it at a pair that slides, none across or along the
// slide.
double breach(const solver::ContactProblem& problem, const solver::ContactAnswer& answer);

// Of all forces, over the larger of the pressures and the tractions.
double difference(const solver::ContactAnswer& one, const solver::ContactAnswer& other);

}  // namespace gapstrain::tests
