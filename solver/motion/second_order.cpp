#include "solver/motion/second_order.h"

#include "solver/motion/mixing.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::solver {

namespace {

// What a load has changed of a made construct, read at its axes.
class LoadedAxes {
 public:
  LoadedAxes(const AxialSlopes& axes, const PortState& made)
      : axes_(axes), made_slopes_(axes.slopes(made)), made_axial_(axes.axial(made.port_forces)) {}

  Eigen::VectorXd slopes(const PortState& state) const { return axes_.slopes(state) - made_slopes_; }

  // Added forces are none that act from outside or through links.
  Eigen::VectorXd axial(const PortState& state, const PortLoads& added) const {
    Eigen::VectorXd axial = axes_.axial(state.port_forces) - made_axial_;
    if (!added.empty()) axial -= axes_.axial(added);
    return axial;
  }

 private:
  const AxialSlopes& axes_;
  Eigen::VectorXd made_slopes_, made_axial_;
};

// 0 where the change stiffens only, or does nothing.
double quotient(const Eigen::VectorXd& axial, const Eigen::VectorXd& change, const Eigen::VectorXd& moments) {
  const double stored = -change.dot(moments);  // f.q of the added forces and of the motion they bring
  const double given = -axial.dot(change.cwiseAbs2());
  return stored > 0.0 && given > 0.0 ? given / stored : 0.0;
}

}  // namespace

SecondOrder find_second_order(const AxialSlopes& axes, const SecondOrderRule& rule, const PortState& made,
                              const PortState& linear, double work,
                              const std::function<PortState(const PortLoads&)>& solve) {
  constexpr int most_rounds = 40, most_idle = 3;
  constexpr double settled = 1e-10, acceptable_change = 1e-6, of_work = 1e-3;
  const LoadedAxes read(axes, made);
  const Eigen::VectorXd slopes = read.slopes(linear), axial = read.axial(linear, {});
  Eigen::VectorXd moments = axial.cwiseProduct(slopes);
  SecondOrder found;
  const double given = -moments.dot(slopes);
  if (moments.isZero(0.0) || (!rule.always && !(given > of_work * std::abs(work)))) return found;

  PortLoads added;
  PortState state;
  Eigen::VectorXd now;
  const auto go_on = [&] {  // N times the slopes under these
    added = axes.forces(moments);
    state = solve(added);
    now = read.slopes(state);
    return Eigen::VectorXd(read.axial(state, added).cwiseProduct(now));
  };
  Mixing mixing;
  Eigen::VectorXd value = go_on();
  double ratio = quotient(axial, now - slopes, moments);
  // One step of inverse iteration falls short of the ratio; by less than half (ours).
  if (rule.always || ratio > 0.5 * rule.least_ratio) {
    const Eigen::VectorXd before = now, more = value - moments;
    mixing.next(moments, value);
    moments = value;
    value = go_on();
    ratio = std::max(ratio, quotient(axial, now - before, more));
  }
  if (ratio > 0.0) found.load_ratio = ratio;
  if (!rule.always && !(ratio > rule.least_ratio)) return found;
  if (ratio >= 1.0) return found;
  // Answers with friction and yield are themselves exact to so many digits only: then rounds come no nearer.
  double best = 1.0;
  int idle = 0;
  for (int round = 2; round < most_rounds; ++round) {
    found.residual = (value - moments).norm() / moments.norm();
    idle = found.residual < 0.5 * best ? 0 : idle + 1;
    best = std::min(best, found.residual);
    if (found.residual <= settled || (idle >= most_idle && found.residual <= acceptable_change)) break;
    moments = mixing.next(moments, value);
    value = go_on();
  }
  const Eigen::VectorXd weighted = axial.cwiseAbs().cwiseProduct(slopes);
  found.amplification = weighted.dot(now) / weighted.dot(slopes);
  found.forces = std::move(added);
  return found;
}

}  // namespace gapstrain::solver
