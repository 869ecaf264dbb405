// Constructs whose parts turn far under a load: balance about where they are, the linear answer below, the same
// gap wherever they are held, and what trust and outcomes make of it.
#include "models/assembly/axis_ports.h"
#include "models/measures/gap_strain.h"
#include "models/measures/second_order_effects.h"
#include "models/stress/peak_stress.h"
#include "models/words/state_words.h"
#include "solver/motion/rotation.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>
#include <string>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but constructs
using tests::SolvedConstruct;

namespace {

// A slender plate over a wide gap; nothing touches as it bends. Without loads of its own.
Construct slender_tube(SecondOrderEffects effects) {
  tests::TubeSizes sizes;
  sizes.gap = 30.0;
  sizes.screws = {2, 3, 4};
  sizes.standoff = 4.0;
  sizes.plate_thickness = 1.6;
  Construct construct = tests::plated_tube(sizes);
  construct.loads.resize(1);
  construct.loads.front().axial_compression = 0.0 * newton;
  construct.loads.front().ball_distance = 0.0 * mm;
  construct.second_order = effects;
  construct.mesh.refinement = 0.5;
  return construct;
}

// Held at one end; the other one is bent by a force across, or by a moment.
Construct held_tube(SecondOrderEffects effects, double force, double moment = 0.0, bool from_distal = false) {
  Construct construct = slender_tube(effects);
  LoadCase& load = construct.loads.front();
  load.supports = cantilever();
  if (from_distal) std::swap(load.supports.proximal, load.supports.distal);
  load.transverse_z = force * newton;
  load.bending_y = moment * newton_mm;
  return construct;
}

double turn_of(const SolvedConstruct& whole) {
  return largest_body_turn(whole.assembly, whole.steps.back().pressed.amplitudes,
                           whole.solved.states.front().pressed.amplitudes);
}

// Force across that turns the free end by so much in the linear law.
double force_for(double turn) {
  static const double a_newton = turn_of(tests::solve_only(held_tube(SecondOrderEffects::never, 1.0)));
  return turn / a_newton;
}

Check check_of(const Trust& all, const std::string& name) {
  for (const auto& one : all.checks)
    if (one.name == name) return one;
  throw std::logic_error("no check " + name);
}

const std::string of_small_turns = "error of small turns, estimated",
                  of_large_turns = "large turns: change in the last round";

}  // namespace

TEST_CASE("under a small load a construct that may turn far answers as the linear law has it",
          "[models][large-turns]") {
  const double force = force_for(1e-7);
  const auto linear = analyse(held_tube(SecondOrderEffects::never, force)).findings.loads.front();
  const auto large = analyse(held_tube(SecondOrderEffects::large, force)).findings.loads.front();
  REQUIRE(large.second_order.large);
  CHECK(large.second_order.large->settled);
  CHECK(large.plate.peak.von_mises.value() == Approx(linear.plate.peak.von_mises.value()).epsilon(1e-6));
  CHECK(large.gap.largest_motion.value() == Approx(linear.gap.largest_motion.value()).epsilon(1e-6));
  CHECK(large.gap.far.axial_motion.value() == Approx(linear.gap.far.axial_motion.value()).epsilon(1e-6));
  // Places are known to 1e-14 mm, and shafts are short and stiff.
  for (std::size_t k = 0; k < linear.screws.size(); ++k)
    CHECK(large.screws[k].peak_bending_stress.value() ==
          Approx(linear.screws[k].peak_bending_stress.value()).epsilon(2e-5));
}

TEST_CASE("a construct that turns far is in balance about where it is", "[models][large-turns]") {
  for (const double turn : {0.3, 0.6, 1.0}) {
    Construct construct = held_tube(SecondOrderEffects::automatic, force_for(turn));
    LoadCase& load = construct.loads.front();
    load.ball_distance = 12.0 * mm;
    load.ball_offset_z = 5.0 * mm;
    load.axial_compression = 0.3 * force_for(turn) * newton;
    const auto whole = tests::solve_only(construct);
    const ConstructState& loaded = whole.solved.states.front();
    CAPTURE(turn);
    REQUIRE(loaded.large);
    CHECK(loaded.second_order.turns->settled);
    CHECK(loaded.large->turn > 0.7 * turn);
    // Where the free end is, by the frame of its fragment.
    const Ring &free = whole.assembly.load_ports.distal_end, &held = whole.assembly.load_ports.proximal_end;
    const solver::TurningSystem turning(*whole.assembly.system, whole.assembly.turning);
    std::vector<Eigen::VectorXd> motions;
    for (std::size_t b = 0; b < whole.assembly.bodies.size(); ++b)
      motions.emplace_back(loaded.pressed.solution.motions[b].col(0) -
                           whole.steps.back().pressed.solution.motions[b].col(0));
    const auto placed = turning.place(motions);
    const auto ring = [&](const Ring& of) {
      const auto& ports = turning.bodies()[of.place.body].ports;
      std::size_t k = 0;
      while (ports[k].column != of.place.column) ++k;
      return placed.ports[of.place.body][k];
    };
    const Eigen::Vector3d arm(12.0, 0.0, 5.0),
        force(-load.axial_compression.value(), 0.0, load.transverse_z.value());
    const Eigen::Vector3d acts = ring(free).place + ring(free).frame * arm;
    const Eigen::VectorXd support =
        link_force(loaded.pressed.solution, whole.assembly.loads.front().supports.front());
    CHECK((support.head<3>() - force).norm() <= 1e-8 * force.norm());
    const Eigen::Vector3d moment = (acts - held.centre).cross(force);
    CHECK((support.tail<3>() - moment).norm() <= 1e-8 * moment.norm());
    // The linear law has another one.
    const Eigen::VectorXd straight =
        link_force(loaded.straight->solution, whole.assembly.loads.front().supports.front());
    CHECK((straight.tail<3>() - moment).norm() > 0.03 * turn * turn * moment.norm());
  }
}

TEST_CASE("at small turns an axial load does to a construct what second-order effects have it do",
          "[models][large-turns]") {
  const auto way = [](SecondOrderEffects effects, double axial) {
    Construct construct = slender_tube(effects);
    construct.loads.front().axial_compression = axial * newton;
    construct.loads.front().ball_offset_z = 0.01 * mm;
    const auto whole = tests::solve_only(construct);
    const Ring& end = whole.assembly.load_ports.distal_end;
    return std::pair{whole.solved.states.front().pressed.solution.motions[end.place.body](end.place.column + 4, 0),
                     whole.solved.states.front().second_order};
  };
  const double small = 1e-3;
  const auto tried = way(SecondOrderEffects::always, small).second;
  REQUIRE(tried.load_ratio);
  const double buckling = small / *tried.load_ratio;
  for (const double share : {0.1, 0.3, 0.5}) {
    const double first = way(SecondOrderEffects::never, share * buckling).first,
                 second = way(SecondOrderEffects::always, share * buckling).first,
                 large = way(SecondOrderEffects::large, share * buckling).first;
    CAPTURE(share, first, second, large);
    CHECK(second / first > 1.0 + 0.9 * share);
    // The plate's axis lies off the bone's: as it turns its own shift counts as well. Fragments bend in one frame.
    CHECK(large / first - 1.0 == Approx(second / first - 1.0).epsilon(0.03));
  }
}

TEST_CASE("what a moment does to the gap does not depend on which end is held, however far the other one turns",
          "[models][large-turns]") {
  const double moment = 60.0 * force_for(0.8);
  const auto one = analyse(held_tube(SecondOrderEffects::automatic, 0.0, moment)).findings.loads.front();
  const auto other = analyse(held_tube(SecondOrderEffects::automatic, 0.0, moment, true)).findings.loads.front();
  REQUIRE(one.second_order.large);
  REQUIRE(other.second_order.large);
  CHECK(one.second_order.large->turn.value() > 0.3);
  CHECK(one.gap.near.axial_motion.value() == Approx(other.gap.near.axial_motion.value()).epsilon(1e-6));
  CHECK(one.gap.far.axial_motion.value() == Approx(other.gap.far.axial_motion.value()).epsilon(1e-6));
  CHECK(one.gap.largest_motion.value() == Approx(other.gap.largest_motion.value()).epsilon(1e-6));
  CHECK(one.plate.peak.von_mises.value() == Approx(other.plate.peak.von_mises.value()).epsilon(1e-5));
}

TEST_CASE("turns above 0.1 rad are followed, and then no reason not to trust", "[models][large-turns][trust]") {
  const auto analysed = [](SecondOrderEffects effects, double turn) {
    return analyse(held_tube(effects, force_for(turn))).findings;
  };
  const auto below = analysed(SecondOrderEffects::automatic, 0.095),
             above = analysed(SecondOrderEffects::automatic, 0.105);
  CHECK_FALSE(below.loads.front().second_order.large);
  REQUIRE(above.loads.front().second_order.large);
  const auto without = analysed(SecondOrderEffects::never, 0.5),
             with = analysed(SecondOrderEffects::automatic, 0.5);
  CHECK_FALSE(check_of(without.trust, of_small_turns).passed);
  CHECK(check_of(with.trust, of_small_turns).passed);
  CHECK(check_of(with.trust, of_large_turns).passed);
  CHECK_THROWS(check_of(without.trust, of_large_turns));
  for (const auto* name : {"residual", "force balance", "energy balance"})
    CHECK(check_of(with.trust, name).passed);
  const auto& large = *with.loads.front().second_order.large;
  CHECK(large.turn.value() > 0.3);
  CHECK(large.within.value() < 0.2);
  const std::string said = turned_sentence({{"a load", large.turn, large.within}});
  CHECK(said.find("followed as they turn, by up to 0.") != std::string::npos);
  CHECK(said.find("\"a load\"") != std::string::npos);
}

}  // namespace gapstrain
