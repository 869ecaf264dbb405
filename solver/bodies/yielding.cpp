#include "solver/bodies/yielding.h"

#include "solver/bodies/contact_on_links.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::solver {

namespace {

constexpr double demand_tolerance = 1e-7;  // of demands

// Largest share by which a section's demand and strength differ where it flows, or by which demand exceeds it.
double yield_residual(const std::vector<YieldSection>& sections, const Eigen::VectorXd& forces,
                      const Eigen::VectorXd& flow_before, const Eigen::VectorXd& flow) {
  double worst = 0.0;
  for (std::size_t k = 0; k < sections.size(); ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    const double asked = demand(sections[k].resultants(forces).cwiseQuotient(sections[k].full)).value;
    const double over = asked - sections[k].curve.at(flow_before(row) + flow(row)).share;
    const double off = flow(row) > 0.0 ? std::abs(over) : over;
    if (!(off <= worst)) worst = off;  // also what is no number
  }
  return worst;
}

}  // namespace

Yielded Yielded::none(std::size_t sections) {
  const auto count = static_cast<Eigen::Index>(sections);
  return {Eigen::VectorXd::Zero(count), Eigen::MatrixXd::Zero(6, count)};
}

// Of all rows that sections read, few carry anything: those of screws that are in, and of what touches.
bool would_flow(const std::vector<YieldSection>& sections, const Eigen::VectorXd& forces) {
  return std::any_of(sections.begin(), sections.end(), [&](const YieldSection& section) {
    Resultants resultants = Resultants::Zero();
    for (std::size_t k = 0; k < section.rows.size(); ++k)
      if (const double force = forces(section.rows[k]); force != 0.0)
        resultants += force * section.of_forces.col(static_cast<Eigen::Index>(k));
    return demand(resultants.cwiseQuotient(section.full)).value > section.curve.at(0.0).share + demand_tolerance;
  });
}

YieldedState press_yielding(const System& system, const std::vector<ContactPair>& pairs,
                            const std::vector<YieldSection>& sections, const Setting& setting,
                            const PortLoads& loads, const Yielded& before) {
  YieldedState result;
  result.pressed = press(system, pairs, setting, loads);
  result.yielded = before;
  Eigen::VectorXd flow = Eigen::VectorXd::Zero(before.flow.size());
  result.residual = yield_residual(sections, result.pressed.forces, before.flow, flow);
  if (result.residual <= demand_tolerance) return result;
  auto flowed = press_with_flow(system, pairs, sections, setting, loads, before.flow, result.pressed);
  result.residual = yield_residual(sections, flowed.pressed.forces, before.flow, flowed.flow);
  result.yielded.flow += flowed.flow;
  result.yielded.deformed += flowed.deformed;
  result.elastic = std::exchange(result.pressed, std::move(flowed.pressed));
  return result;
}

}  // namespace gapstrain::solver
