// Smooth interpolation that never overshoots its data.
#pragma once

#include <vector>

namespace gapstrain::models {

// Piecewise cubic Hermite interpolant with the slopes of F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic
// interpolation, SIAM J. Numer. Anal. 17 (1980) 238-246: monotone wherever the data are, once continuously
// differentiable, constant outside the data.
class MonotoneCubic {
 public:
  // The slope at an outer knot: `level` joins the constant part beyond it without a kink, `secant` is the slope of
  // the chord next to it, for data that end where the curve ends.
  enum class EndSlope { level, secant };

  // `knots` rise strictly and are at least one; as many values. Throws std::invalid_argument otherwise.
  MonotoneCubic(std::vector<double> knots, std::vector<double> values, EndSlope first, EndSlope last);

  // Derivatives at an outer knot are those of its inner side; beyond the knots they are zero. The second
  // derivative jumps from knot to knot.
  double value(double x) const;
  double slope(double x) const;
  double second_derivative(double x) const;

 private:
  struct Local {  // of one piece: t in [0, 1], its width and end values and slopes
    double t, width, value_0, value_1, slope_0, slope_1;
  };
  bool is_outside(double x) const;
  Local local(double x) const;

  std::vector<double> knots_, values_, slopes_;
};

}  // namespace gapstrain::models
