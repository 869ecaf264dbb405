#include "models/assembly/insertion.h"

#include "models/assembly/first_state.h"
#include "models/parts/tightening.h"

#include <Eigen/QR>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <functional>
#include <map>
#include <utility>

namespace gapstrain::models {

namespace {

// Rows of a ball head's link.
enum SeatRow { seat_along, seat_across, seat_axis };

template <class Value>
void remove(std::vector<Value>& values, const Value& value) {
  values.erase(std::remove(values.begin(), values.end(), value), values.end());
}

// Deformations B^T q with what has bent for good in plates. A section's deformation is in the links' initial ones,
// with the other sign (yield_sections.h).
Eigen::VectorXd with_bends(const Assembly& assembly, const solver::Yielded& yielded,
                           Eigen::VectorXd deformations) {
  for (std::size_t k = 0; k < assembly.yields.places.size(); ++k) {
    const auto bent = yielded.deformed.col(static_cast<Eigen::Index>(k));
    if (assembly.yields.places[k].screw || bent.isZero(0.0)) continue;
    const solver::YieldSection& section = assembly.yields.sections[k];
    deformations(section.rows) -= section.of_forces.transpose() * bent;
  }
  return deformations;
}

class Making {
 public:
  Making(const Assembly& assembly, const Procedure& procedure) : assembly_(assembly) {
    solver::Setting& setting = state_.setting;
    setting.links = assembly.on_the_table.supports;
    if (only(assembly.construct.fractures).tissue) add(assembly.tissues[0].links);
    setting.initial = first_deformations(assembly, procedure.prebend);
    setting.friction = friction_coefficients(assembly, procedure.friction);
    setting.hands.at = Eigen::VectorXd::Zero(assembly.system->rigid().cols());
    deformations_ = Eigen::VectorXd::Zero(assembly.system->rows());
    state_.yielded = solver::Yielded::none(assembly.yields.sections.size());
    state_.met = Eigen::MatrixX2d::Zero(static_cast<Eigen::Index>(assembly.pairs.size()), 2);
  }

  StepState carry_out(const ProcedureStep& step) {
    state_.setting.driven.clear();
    pulled_.clear();
    worst_ = {};
    if (step.tissue) fill(*step.tissue);
    for (const int hold : step.place) place(hold);
    for (const int screw : step.insert) insert(screw);
    for (const int screw : step.tighten) tighten(screw);
    drive_loose_screws();
    solve();
    // Things are taken out of the construct as the rest of the step left it.
    if (!step.remove.empty()) {
      state_.setting.driven.clear();
      pulled_.clear();
      for (const auto& part : step.remove) take_out(part);
      drive_loose_screws();
      solve();
    }
    state_.setting.driven.clear();  // what was tightened keeps its length from now on
    drive_loose_screws();
    return state_;
  }

 private:
  const CandidateScrew& candidate(int index) const { return assembly_.screws[static_cast<std::size_t>(index)]; }
  bool is_loose(int index) const {
    return is_tightened(candidate(index).planned.screw) &&
           std::find(state_.tightened.begin(), state_.tightened.end(), index) == state_.tightened.end();
  }

  void add(const std::vector<int>& links) {
    state_.setting.links.insert(state_.setting.links.end(), links.begin(), links.end());
  }
  void drop(const std::vector<int>& links) {
    for (const int link : links) remove(state_.setting.links, link);
  }

  // From here on these links carry what is more than the present deformation.
  void relax(const std::vector<int>& links) {
    for (const int link : links) {
      const Eigen::Index first = assembly_.system->first_row(link);
      const Eigen::Index size = assembly_.system->links()[static_cast<std::size_t>(link)].size();
      state_.setting.initial.segment(first, size) = deformations_.segment(first, size);
    }
  }

  void fill(const Tissue& tissue) {
    for (const auto& filling : assembly_.tissues) drop(filling.links);
    const auto& links = links_of_tissue(assembly_, tissue);
    add(links);
    relax(links);
  }

  void place(int index) {
    const Hold& hold = assembly_.holds[static_cast<std::size_t>(index)];
    add(hold.links);
    relax(hold.links);
    if (!hold.wire) {
      pull(hold.links[0], hold.ends[1] - hold.ends[0]);
      state_.setting.driven.push_back({assembly_.system->first_row(hold.links[0]), hold.hold.force.value()});
    }
    state_.holds.push_back(index);
  }

  void insert(int index) {
    add(candidate(index).links);
    relax(candidate(index).links);
    for (std::size_t k = 0; k < assembly_.yields.places.size(); ++k)
      if (assembly_.yields.places[k].screw == index) {  // another one, if it was in before
        state_.yielded.flow(static_cast<Eigen::Index>(k)) = 0.0;
        state_.yielded.deformed.col(static_cast<Eigen::Index>(k)).setZero();
      }
    state_.screws.push_back(index);
  }

  // The seat holds sideways from here on, where the head now is but for its slide; along its axis it pulls with a
  // given force in this step, and stays as long as it then is.
  void tighten(int index) {
    const CandidateScrew& screw = candidate(index);
    relax({screw.head});
    const Eigen::Index first = assembly_.system->first_row(screw.head);
    state_.setting.initial(first + seat_along) += screw.planned.placement.slide;
    pull(screw.head, screw.model.seat.col(seat_axis));
    if (screw.planned.placement.slide != 0.0) pull(screw.head, screw.model.seat.col(seat_along));
    const Force force = tightened_force(screw.planned.screw, engaged_thread(screw));
    state_.setting.driven.push_back({first + seat_axis, force.value()});
    state_.tightened.push_back(index);
  }

  // Hands let the parts that a link joins go along a line, as far as nothing else holds them.
  void pull(int link, const Eigen::Vector3d& along) {
    for (const auto& end : assembly_.system->links()[static_cast<std::size_t>(link)].ends)
      pulled_[end.body].push_back(along);
  }

  // Amplitudes begin with a body's shifts along the axes (solver/bodies/floating_factor).
  Eigen::MatrixXd soft_motions() const {
    Eigen::MatrixXd soft(assembly_.system->rigid().cols(), 0);
    for (const auto& [body, lines] : pulled_) {
      Eigen::Matrix3Xd all(3, static_cast<Eigen::Index>(lines.size()));
      for (std::size_t k = 0; k < lines.size(); ++k) all.col(static_cast<Eigen::Index>(k)) = lines[k].normalized();
      const Eigen::ColPivHouseholderQR<Eigen::Matrix3Xd> factor(all);
      const Eigen::Matrix3d axes = factor.householderQ();
      const Eigen::Index before = soft.cols();
      soft.conservativeResize(Eigen::NoChange, before + factor.rank());
      soft.rightCols(factor.rank()).setZero();
      soft.block(static_cast<Eigen::Index>(6 * body), before, 3, factor.rank()) = axes.leftCols(factor.rank());
    }
    return soft;
  }

  // A ball head that is not tight passes nothing on.
  void drive_loose_screws() {
    for (const int index : state_.screws) {
      if (!is_loose(index)) continue;
      const Eigen::Index first = assembly_.system->first_row(candidate(index).head);
      for (const auto row : {seat_along, seat_across, seat_axis})
        state_.setting.driven.push_back({first + row, 0.0});
    }
  }

  void take_out(const Part& part) {
    if (part.kind == Part::Kind::hold) {
      drop(assembly_.holds[static_cast<std::size_t>(part.index)].links);
      remove(state_.holds, part.index);
      return;
    }
    drop(candidate(part.index).links);
    remove(state_.screws, part.index);
    remove(state_.tightened, part.index);
  }

  // All motions but these.
  static Eigen::MatrixXd complement(const Eigen::MatrixXd& motions) {
    const Eigen::Index count = motions.rows(), held = motions.cols();
    const Eigen::MatrixXd all = Eigen::HouseholderQR<Eigen::MatrixXd>(motions).householderQ();
    return all.rightCols(count - held);
  }

  // Hands hold firmly until the step is done, and then let go of what touches by now and is held by that.
  void solve() {
    state_.setting.hands.soft = soft_motions();
    settle();
    const auto& closed = state_.pressed.closed;
    const double largest = state_.pressed.forces.cwiseAbs().maxCoeff();
    if (std::find(closed.begin(), closed.end(), 1) == closed.end() || state_.pressed.pull.norm() <= 1e-9 * largest)
      return;
    state_.setting.hands.soft = complement(state_.pressed.free_motions);
    settle();
  }

  void settle() {
    const solver::System& system = *assembly_.system;
    press_on(assembly_, system.no_loads(1), state_);
    // A step is judged by the worst of what it went through.
    const auto keep_worst = [](double& now, double& worst) { now = worst = now <= worst ? worst : now; };
    keep_worst(state_.pressed.complementarity, worst_.complementarity);
    keep_worst(state_.pressed.friction_residual, worst_.friction);
    keep_worst(state_.yield_residual, worst_.yield);
    solver::Setting& setting = state_.setting;
    setting.initial = state_.pressed.initial;
    setting.closed = state_.pressed.closed;
    deformations_ = system.deformations(state_.pressed.solution);
    note_meeting(assembly_, with_bends(assembly_, state_.yielded, deformations_), state_);
    for (std::size_t b = 0; b < assembly_.bodies.size(); ++b)
      setting.hands.at.segment<6>(static_cast<Eigen::Index>(6 * b)) = state_.pressed.solution.amplitudes[b].col(0);
  }

  const Assembly& assembly_;
  StepState state_;
  Eigen::VectorXd deformations_;
  struct {
    double complementarity = 0.0, friction = 0.0, yield = 0.0;
  } worst_;
  std::map<std::size_t, std::vector<Eigen::Vector3d>> pulled_;  // a body's lines along which this step pulls it
};

}  // namespace

void note_meeting(const Assembly& assembly, const Eigen::VectorXd& deformations, ConstructState& state) {
  for (std::size_t pair = 0; pair < assembly.pairs.size(); ++pair)
    if (state.pressed.closed[pair] == 0)
      state.met.row(static_cast<Eigen::Index>(pair)) =
          deformations.segment<2>(assembly.system->first_row(assembly.pairs[pair].tangent)).transpose();
}

void press_on(const Assembly& assembly, const solver::PortLoads& loads, ConstructState& state) {
  auto found = solver::press_yielding(*assembly.system, assembly.pairs, assembly.yields.sections, state.setting,
                                      loads, state.yielded);
  state.pressed = std::move(found.pressed);
  state.yielded = std::move(found.yielded);
  state.yield_residual = found.residual;
  state.elastic = std::move(found.elastic);
}

Length engaged_thread(const CandidateScrew& screw) {
  const auto& bone = *screw.planned.placement.bone;
  double length = 0.0;
  if (screw.planned.screw.kind != ScrewKind::lag) length += (bone.near.outer - bone.near.inner).norm();
  if (!screw.planned.far_spot.empty()) length += (bone.far.outer - bone.far.inner).norm();
  return length * mm;
}

std::vector<StepState> carry_out(const Assembly& assembly, const Procedure& procedure) {
  Making making(assembly, procedure);
  std::vector<StepState> states;
  for (const auto& step : procedure.steps) states.push_back(making.carry_out(step));
  return states;
}

Eigen::VectorXd link_deformations(const Assembly& assembly, const ConstructState& state) {
  Eigen::VectorXd deformations = assembly.system->deformations(state.pressed.solution);
  if (state.large) deformations -= state.large->initial;
  return deformations;
}

Eigen::VectorXd deformations_with_bends(const Assembly& assembly, const ConstructState& state) {
  return with_bends(assembly, state.yielded, link_deformations(assembly, state));
}

Eigen::VectorXd slips(const Assembly& assembly, const ConstructState& state) {
  const Eigen::VectorXd deformations = deformations_with_bends(assembly, state);
  Eigen::VectorXd all = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(assembly.pairs.size()));
  for (std::size_t pair = 0; pair < assembly.pairs.size(); ++pair) {
    if (state.pressed.closed[pair] == 0) continue;
    const auto p = static_cast<Eigen::Index>(pair);
    const Eigen::Index first = assembly.system->first_row(assembly.pairs[pair].tangent);
    all(p) = (deformations.segment<2>(first) - state.met.row(p).transpose()).norm();
  }
  return all;
}

ConstructState with_links_of(const Assembly& assembly, const ConstructState& made) {
  ConstructState state = made;
  state.setting.initial = made.pressed.initial;
  state.setting.closed = made.pressed.closed;
  press_on(assembly, assembly.system->no_loads(1), state);
  note_meeting(assembly, deformations_with_bends(assembly, state), state);
  return state;
}

}  // namespace gapstrain::models
