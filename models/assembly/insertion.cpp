#include "models/assembly/insertion.h"

#include "models/assembly/first_state.h"
#include "models/parts/tightening.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace gapstrain::models {

namespace {

// Rows of a ball head's link.
enum SeatRow { seat_along, seat_across, seat_axis };

template <class Value>
void remove(std::vector<Value>& values, const Value& value) {
  values.erase(std::remove(values.begin(), values.end(), value), values.end());
}

// Where pairs that are apart are sideways: the place from which they will have slipped once they meet.
void note_meeting(const Assembly& assembly, ConstructState& state, const Eigen::VectorXd& deformations) {
  for (std::size_t pair = 0; pair < assembly.pairs.size(); ++pair)
    if (state.pressed.closed[pair] == 0)
      state.met.row(static_cast<Eigen::Index>(pair)) =
          deformations.segment<2>(assembly.system->first_row(assembly.pairs[pair].tangent)).transpose();
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
    state_.met = Eigen::MatrixX2d::Zero(static_cast<Eigen::Index>(assembly.pairs.size()), 2);
  }

  StepState carry_out(const ProcedureStep& step) {
    state_.setting.driven.clear();
    if (step.tissue) fill(*step.tissue);
    for (const int hold : step.place) place(hold);
    for (const int screw : step.insert) insert(screw);
    for (const int screw : step.tighten) tighten(screw);
    drive_loose_screws();
    solve();
    // Things are taken out of the construct as the rest of the step left it.
    if (!step.remove.empty()) {
      state_.setting.driven.clear();
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
    if (!hold.wire)
      state_.setting.driven.push_back({assembly_.system->first_row(hold.links[0]), hold.hold.force.value()});
    state_.holds.push_back(index);
  }

  void insert(int index) {
    add(candidate(index).links);
    relax(candidate(index).links);
    state_.screws.push_back(index);
  }

  // The seat holds sideways from here on, where the head now is but for its slide; along its axis it pulls with a
  // given force in this step, and stays as long as it then is.
  void tighten(int index) {
    const CandidateScrew& screw = candidate(index);
    relax({screw.head});
    const Eigen::Index first = assembly_.system->first_row(screw.head);
    state_.setting.initial(first + seat_along) += screw.planned.placement.slide;
    const Force force = tightened_force(screw.planned.screw, engaged_thread(screw));
    state_.setting.driven.push_back({first + seat_axis, force.value()});
    state_.tightened.push_back(index);
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

  void solve() {
    const solver::System& system = *assembly_.system;
    state_.pressed = solver::press(system, assembly_.pairs, state_.setting, system.no_loads(1));
    solver::Setting& setting = state_.setting;
    setting.initial = state_.pressed.initial;
    setting.closed = state_.pressed.closed;
    deformations_ = system.deformations(state_.pressed.solution);
    note_meeting(assembly_, state_, deformations_);
    for (std::size_t b = 0; b < assembly_.bodies.size(); ++b)
      setting.hands.at.segment<6>(static_cast<Eigen::Index>(6 * b)) = state_.pressed.solution.amplitudes[b].col(0);
  }

  const Assembly& assembly_;
  StepState state_;
  Eigen::VectorXd deformations_;
};

// Force or moment on any port, N or N mm.
double largest_force(const AssembledLoad& load) {
  double largest = 0.0;
  for (const auto& forces : load.forces) largest = std::max(largest, forces.cwiseAbs().maxCoeff());
  return largest;
}

}  // namespace

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

Eigen::VectorXd slips(const Assembly& assembly, const ConstructState& state) {
  const Eigen::VectorXd deformations = assembly.system->deformations(state.pressed.solution);
  Eigen::VectorXd all = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(assembly.pairs.size()));
  for (std::size_t pair = 0; pair < assembly.pairs.size(); ++pair) {
    if (state.pressed.closed[pair] == 0) continue;
    const auto p = static_cast<Eigen::Index>(pair);
    const Eigen::Index first = assembly.system->first_row(assembly.pairs[pair].tangent);
    all(p) = (deformations.segment<2>(first) - state.met.row(p).transpose()).norm();
  }
  return all;
}

bool pulls_at_hands(const solver::PressedForces& pressed, const AssembledLoad& load) {
  return pressed.pull.norm() > 1e-6 * largest_force(load);
}

ConstructState apply_load(const Assembly& assembly, const ConstructState& state, const AssembledLoad& load) {
  const solver::System& system = *assembly.system;
  ConstructState loaded;
  loaded.setting = state.setting;
  loaded.setting.initial = state.pressed.initial;
  loaded.setting.closed = state.pressed.closed;
  loaded.met = state.met;
  std::vector<int>& links = loaded.setting.links;
  for (const int support : assembly.on_the_table.supports) remove(links, support);
  // Supports take the construct as it lies: they would turn it otherwise.
  const Eigen::VectorXd deformations = system.deformations(state.pressed.solution);
  for (const Eigen::Index row : system.rows_of(load.supports)) loaded.setting.initial(row) = deformations(row);
  links.insert(links.end(), load.supports.begin(), load.supports.end());
  loaded.pressed = solver::press(system, assembly.pairs, loaded.setting, load.forces);
  if (pulls_at_hands(loaded.pressed, load)) throw solver::MechanismError(loaded.pressed.pull);
  note_meeting(assembly, loaded, system.deformations(loaded.pressed.solution));
  return loaded;
}

}  // namespace gapstrain::models
