#include "models/measures/stiffness.h"

#include "models/measures/solve.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace gapstrain::models {

namespace {

// Of unit loads on bodies' motions, f . u.
double work_of(const AssembledLoad& load, const solver::Solution& before, const solver::Solution& after) {
  double work = 0.0;
  for (std::size_t b = 0; b < load.forces.size(); ++b)
    work += load.forces[b].cwiseProduct(after.motions[b] - before.motions[b]).sum();
  return work;
}

double work_of(const AssembledLoad& load, const solver::Solution& answer) {
  double work = 0.0;
  for (std::size_t b = 0; b < load.forces.size(); ++b)
    work += load.forces[b].cwiseProduct(answer.motions[b]).sum();
  return work;
}

// Along their normals, of all pairs.
Eigen::VectorXd approach_of(const Assembly& assembly, const solver::Solution& answer) {
  const Eigen::VectorXd deformations = assembly.system->deformations(answer);
  Eigen::VectorXd approach(static_cast<Eigen::Index>(assembly.pairs.size()));
  for (std::size_t pair = 0; pair < assembly.pairs.size(); ++pair)
    approach(static_cast<Eigen::Index>(pair)) =
        deformations(assembly.system->first_row(assembly.pairs[pair].normal));
  return approach;
}

}  // namespace

StiffnessSizes stiffness_sizes(const Assembly& assembly) {
  constexpr double off_axis = 0.25;
  const BoneSection section = assembly.bone_shape->section(only(assembly.construct.fractures).position.value());
  const double half_width = 0.5 * (section.semi_y + section.semi_z);
  double axial = 0.0, any = 0.0;
  for (const auto& load : assembly.construct.loads) {
    axial = std::max(axial, load.axial_compression.value());
    for (const Force& part : {load.axial_compression, load.transverse_y, load.transverse_z})
      any = std::max(any, std::abs(part.value()));
    for (const Moment& part : {load.bending_y, load.bending_z, load.torsion})
      any = std::max(any, std::abs(part.value()) / half_width);
    if (load.four_point) any = std::max(any, std::abs(load.four_point->total.value()));
    for (const auto& force : load.forces)
      any = std::max(any, std::hypot(force.force.x.value(), force.force.y.value(), force.force.z.value()));
  }
  const double force = axial > 0.0 ? axial : any > 0.0 ? any : 1.0;
  return {force, force * off_axis * half_width};
}

std::array<StiffnessTrial, stiffness_trial_count> stiffness_trials(const Assembly& assembly,
                                                                   const StiffnessSizes& sizes) {
  const auto& units = assembly.stiffness_loads;
  std::array<StiffnessTrial, stiffness_trial_count> trials;
  trials[0] = {0, sizes.force, units[0]};
  for (std::size_t k = 1; k < trials.size(); ++k)
    trials[k] = {(k + 1) / 2, k % 2 == 1 ? sizes.moment : -sizes.moment, units[0]};
  for (std::size_t k = 0; k < trials.size(); ++k) {
    auto& [unit, size, load] = trials[k];
    const double moment = k == 0 ? 0.0 : size;
    for (std::size_t b = 0; b < load.forces.size(); ++b)
      load.forces[b] = sizes.force * units[0].forces[b] + moment * units[unit].forces[b];
    load.alone.deformations = sizes.force * units[0].alone.deformations + moment * units[unit].alone.deformations;
    load.alone.resultants = sizes.force * units[0].alone.resultants + moment * units[unit].alone.resultants;
    load.alone.work.resize(0);
  }
  return trials;
}

bool any_meets(const StiffnessSizes& sizes, const Eigen::VectorXd& gaps,
               const std::array<Eigen::VectorXd, 4>& approach) {
  if (gaps.size() == 0) return false;
  const Eigen::VectorXd left = gaps + sizes.force * approach[0];
  for (std::size_t k = 1; k < approach.size(); ++k)
    if ((left - sizes.moment * approach[k].cwiseAbs()).minCoeff() < 0.0) return true;
  return false;
}

StiffnessFindings stiffness_of(const StiffnessSizes& sizes, const Flexibilities& flexibilities,
                               bool with_contact) {
  StiffnessFindings stiffness;
  stiffness.axial = 1.0 / flexibilities[0] * (newton / mm);
  stiffness.bending_y = 1.0 / flexibilities[1] * (newton_mm / radian);
  stiffness.bending_z = 1.0 / flexibilities[2] * (newton_mm / radian);
  stiffness.torsion = 1.0 / flexibilities[3] * (newton_mm / radian);
  stiffness.force = sizes.force * newton;
  stiffness.with_contact = with_contact;
  return stiffness;
}

// What is no number stays.
Flexibilities softer_of(const std::array<double, stiffness_trial_count>& found) {
  const auto larger = [](double one, double other) { return std::isnan(one) || one > other ? one : other; };
  return {found[0], larger(found[1], found[2]), larger(found[3], found[4]), larger(found[5], found[6])};
}

StiffnessFindings measure_stiffness(const Assembly& assembly, const ConstructState& made) {
  const StiffnessSizes sizes = stiffness_sizes(assembly);
  const auto& closed = made.pressed.closed;
  if (std::find(closed.begin(), closed.end(), 1) == closed.end()) {
    Flexibilities flexibilities{};
    std::array<Eigen::VectorXd, 4> approach;
    for (std::size_t k = 0; k < approach.size(); ++k) {
      const auto answer = solve_small_load(assembly, made, assembly.stiffness_loads[k]);
      flexibilities[k] = work_of(assembly.stiffness_loads[k], answer);
      approach[k] = approach_of(assembly, answer);
    }
    if (!any_meets(sizes, made.pressed.gap, approach)) return stiffness_of(sizes, flexibilities, false);
  }
  std::array<double, stiffness_trial_count> found{};
  solver::Solution before = made.pressed.solution;
  for (std::size_t k = 0; const auto& [unit, size, load] : stiffness_trials(assembly, sizes)) {
    const ConstructState loaded = solve_load(assembly, made, load, Metals::elastic);
    found[k] = work_of(assembly.stiffness_loads[unit], before, loaded.pressed.solution) / size;
    if (k++ == 0) before = loaded.pressed.solution;
  }
  return stiffness_of(sizes, softer_of(found), true);
}

double work_on(const AssembledLoad& load, const Eigen::VectorXd& forces, const Eigen::VectorXd& amplitudes) {
  return load.alone.work(0) - load.alone.deformations.col(0).dot(forces) +
         load.alone.resultants.col(0).dot(amplitudes);
}

}  // namespace gapstrain::models
