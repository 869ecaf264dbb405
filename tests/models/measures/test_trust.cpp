// Each reason for which a result is not to be trusted, brought about on its own in a construct that is sound: the
// check that it concerns fails, no other does, and the state of the result says so.
#include "models/assembly/screw_interface.h"
#include "models/assessment/assess.h"
#include "models/assessment/result_state.h"
#include "models/measures/buckling.h"
#include "models/measures/outcome.h"
#include "models/preparation/prepare_bodies.h"
#include "models/words/state_words.h"
#include "tests/framework/numbers.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

namespace gapstrain {

namespace {

using namespace models;
using tests::SolvedConstruct;
using Names = std::vector<std::string>;

const std::string residual = "residual", balance = "force balance", energy = "energy balance",
                  rotation = "error of small turns, estimated",
                  over_yield = "share of the plate over its yield strength",
                  contact = "contact: tension or penetration, relative",
                  friction = "contact: friction law, relative",
                  travel = "travel of a fragment beyond what a step moves (mm)",
                  yield_law = "yield: strength of sections, relative",
                  mesh_error = "mesh error of the peak stress, estimated", buckling = "load factor to buckling";

// Axial load and torsion of a tube on a mesh that is just fine enough for its own check.
Construct sound_tube() {
  Construct construct = tests::plated_tube();
  construct.loads = {construct.loads[0], construct.loads[2]};
  construct.mesh.refinement = 0.7;
  return construct;
}

Trust trust_of(const SolvedConstruct& whole) {
  return measure_trust(whole.assembly, whole.steps, whole.solved, whole.loads);
}

Names failed(const Trust& trust) {
  Names names;
  for (const auto& check : trust.checks)
    if (!check.passed) names.push_back(check.name);
  return names;
}

const Check& check_named(const Trust& trust, const std::string& name) {
  for (const auto& check : trust.checks)
    if (check.name == name) return check;
  throw std::logic_error("no check \"" + name + "\"");
}

void scale(std::vector<Eigen::MatrixXd>& all, double factor) {
  for (auto& one : all) one *= factor;
}

// A node of the plate as far as can be from another place along it.
Eigen::Index node_far_from(const SolvedConstruct& whole, double along) {
  Eigen::Index node = 0;
  (only(whole.assembly.plates).mesh.along_across.col(0).array() - along).abs().maxCoeff(&node);
  return node;
}

int hottest(const SolvedConstruct& whole, std::size_t load) {
  const PlatePeak& peak = whole.loads[load].plate.peak;
  const Eigen::RowVector2d place(peak.along.value(), peak.across.value());
  Eigen::Index node = 0;
  (only(whole.assembly.plates).mesh.along_across.rowwise() - place).rowwise().squaredNorm().minCoeff(&node);
  return static_cast<int>(node);
}

// The force on the plate that has most of a resultant: a rim's own strain has none.
double& force_with_resultant(SolvedConstruct& whole, std::size_t load) {
  Eigen::MatrixXd& forces = whole.solved.states[load].pressed.solution.port_forces[only_plate_body];
  const Eigen::VectorXd reach = whole.assembly.bodies[only_plate_body].condensed->rigid.rowwise().norm();
  Eigen::Index row = 0;
  forces.col(0).cwiseProduct(reach).cwiseAbs().maxCoeff(&row);
  return forces(row, 0);
}

struct Fault {
  std::string what;
  std::function<void(SolvedConstruct&)> plant;
  Names fails;  // in the order of the checks
};

// Every fault is planted in the second load or a single step, so that none is overlooked for not being the first.
std::vector<Fault> faults() {
  return {{"one node of the plate is moved",
           [](SolvedConstruct& w) {
             const auto node = node_far_from(w, w.loads[1].plate.peak.along.value());
             w.solved.displacements[only_plate_body](6 * node, 1) += 1e-6;
           },
           {residual}},
          {"one force on the plate is lost",
           [](SolvedConstruct& w) { force_with_resultant(w, 1) = 0.0; },
           {residual, balance, energy}},
          {"one force on the plate is off, and the displacements are those of the wrong force",
           [](SolvedConstruct& w) {
             force_with_resultant(w, 1) *= 1.0 + 1e-6;
             const auto& body = w.assembly.bodies[only_plate_body];
             const solver::Solution& solution = w.solved.states[1].pressed.solution;
             w.solved.displacements[only_plate_body].col(1) = body.body->displacements(
                 *body.ports, solution.port_forces[only_plate_body], solution.amplitudes[only_plate_body]);
           },
           {balance}},
          {"the loads are not those that were solved for",
           [](SolvedConstruct& w) { scale(w.assembly.loads[1].forces, 1.001); },
           {energy}},
          {"links carry other forces than the bodies do",
           [](SolvedConstruct& w) { scale(w.solved.states[1].pressed.solution.link_forces, 1.001); },
           {energy}},
          {"a fragment has turned by as much as motions to first order cannot follow",
           [](SolvedConstruct& w) {
             Eigen::VectorXd turn = Eigen::VectorXd::Zero(6);
             turn(3) = 1.0;
             Eigen::VectorXd motion =
                 w.assembly.bodies[body_of_fragment(w.assembly.construct, 1)].body->rigid() * turn;
             motion *= 0.33 / motion.tail<3>().norm();
             w.solved.displacements[body_of_fragment(w.assembly.construct, 1)].col(1) += motion;
           },
           {rotation}},
          {"more of the plate yields than spots",
           [](SolvedConstruct& w) { w.loads[1].plate.share_over_yield = 0.0101; },
           {over_yield}},
          {"faces overlap after a step",
           [](SolvedConstruct& w) { w.steps[1].pressed.complementarity = 1.1e-8; },
           {contact}},
          {"faces overlap under a load",
           [](SolvedConstruct& w) { w.solved.states[1].pressed.complementarity = 1.1e-8; },
           {contact}},
          {"friction is beyond its limit after a step",
           [](SolvedConstruct& w) { w.steps[1].pressed.friction_residual = 1.1e-5; },
           {friction}},
          {"friction is beyond its limit under a load",
           [](SolvedConstruct& w) { w.solved.states[1].pressed.friction_residual = 1.1e-5; },
           {friction}},
          {"a fragment wanders off in a step that does not move it",
           [](SolvedConstruct& w) {
             w.steps[1].pressed.amplitudes(
                 6 * static_cast<Eigen::Index>(body_of_fragment(w.assembly.construct, 1))) += 0.3;
           },
           {travel}},
          {"a section bears more than its metal after a step",
           [](SolvedConstruct& w) { w.steps[1].yield_residual = 1.1e-4; },
           {yield_law}},
          {"a section bears more than its metal under a load",
           [](SolvedConstruct& w) { w.solved.states[1].yield_residual = 1.1e-4; },
           {yield_law}},
          {"stress leaps from cell to cell where the plate is hottest",
           [](SolvedConstruct& w) { w.solved.displacements[only_plate_body](6 * hottest(w, 1), 1) += 5e-3; },
           {residual, mesh_error}},
          {"a load comes close to the one that buckles the construct",
           [](SolvedConstruct& w) { w.loads[1].buckling_factor = 3.99; },
           {buckling}}};
}

// The same checks fed with what a calculation gives that broke down on the way.
std::vector<Fault> missing_numbers() {
  using tests::missing;
  return {
      {"of a displacement",
       [](SolvedConstruct& w) {
         w.solved.displacements[body_of_fragment(w.assembly.construct, 1)](7, 1) = missing;
       },
       {residual}},
      {"of a rotation",
       [](SolvedConstruct& w) {
         w.solved.displacements[body_of_fragment(w.assembly.construct, 1)](9, 1) = missing;
       },
       {residual, rotation}},
      {"of all displacements",
       [](SolvedConstruct& w) {
         for (auto& body : w.solved.displacements) body.setConstant(missing);
       },
       {residual, rotation, mesh_error}},
      {"of a force on a body",
       [](SolvedConstruct& w) {
         w.solved.states[1].pressed.solution.port_forces[body_of_fragment(w.assembly.construct, 0)](0, 0) =
             missing;
       },
       {residual, balance, energy}},
      {"of a link's force",
       [](SolvedConstruct& w) { w.solved.states[1].pressed.solution.link_forces[0](0, 0) = missing; },
       {energy}},
      {"of the share over yield",
       [](SolvedConstruct& w) { w.loads[1].plate.share_over_yield = missing; },
       {over_yield}},
      {"of a step's contact", [](SolvedConstruct& w) { w.steps[1].pressed.complementarity = missing; }, {contact}},
      {"of a load's friction",
       [](SolvedConstruct& w) { w.solved.states[1].pressed.friction_residual = missing; },
       {friction}},
      {"of a step's travel",
       [](SolvedConstruct& w) { w.steps[1].pressed.amplitudes.setConstant(missing); },
       {travel}},
      {"of a load's yield", [](SolvedConstruct& w) { w.solved.states[1].yield_residual = missing; }, {yield_law}},
      {"of the peak stress",
       [](SolvedConstruct& w) { w.loads[1].plate.peak.von_mises = missing * mpa; },
       {mesh_error}},
      {"of the buckling factor", [](SolvedConstruct& w) { w.loads[1].buckling_factor = missing; }, {buckling}}};
}

// Planted one after another in one construct, each taken out again.
void check_each(const std::vector<Fault>& all) {
  SolvedConstruct whole = tests::solve_and_measure(sound_tube());
  const auto sound_steps = whole.steps;
  const auto sound_solved = whole.solved;
  const auto sound_loads = whole.loads;
  std::vector<solver::PortLoads> sound_forces;
  for (const auto& load : whole.assembly.loads) sound_forces.push_back(load.forces);
  for (const auto& [what, plant, fails] : all) {
    plant(whole);
    const Trust trust = trust_of(whole);
    INFO(what);
    for (const auto& check : trust.checks) UNSCOPED_INFO(check.name << ": " << check.value);
    CHECK(failed(trust) == fails);
    CHECK_FALSE(trust.passed());

    Findings findings;
    findings.trust = trust;
    const ResultState state = state_of(whole.assembly.construct, findings, Assessment{});
    CHECK(state.standing() == Standing::not_trusted);
    CHECK(state.not_trusted.size() == fails.size());
    for (std::size_t k = 0; k < std::min(fails.size(), state.not_trusted.size()); ++k) {
      CHECK(doubt_sentence(state.not_trusted[k]).starts_with(fails[k] + ": "));
      CHECK(doubt_sentence(state.not_trusted[k])
                .ends_with("; it should hold that " + check_named(trust, fails[k]).meaning));
    }

    whole.steps = sound_steps;
    whole.solved = sound_solved;
    whole.loads = sound_loads;
    for (std::size_t l = 0; l < sound_forces.size(); ++l) whole.assembly.loads[l].forces = sound_forces[l];
    REQUIRE(failed(trust_of(whole)).empty());
  }
}

}  // namespace

TEST_CASE("every fault that a check looks for takes trust away by that check", "[models][findings][trust]") {
  check_each(faults());
}

TEST_CASE("a number that is missing takes trust away, wherever it is missing", "[models][findings][trust]") {
  check_each(missing_numbers());
}

TEST_CASE("no check is without a fault that makes it fail", "[models][findings][trust]") {
  Names seen;
  for (const auto& all : {faults(), missing_numbers()})
    for (const auto& fault : all) seen.insert(seen.end(), fault.fails.begin(), fault.fails.end());
  for (const auto& check : trust_of(tests::solve_and_measure(sound_tube())).checks) {
    INFO(check.name);
    CHECK(std::find(seen.begin(), seen.end(), check.name) != seen.end());
  }
}

TEST_CASE("a load a thousand times as large is not trusted for what the model cannot follow",
          "[models][findings][trust]") {
  Construct construct = sound_tube();
  construct.mesh.refinement = 0.5;
  construct.loads.resize(1);
  construct.loads[0].axial_compression = 100000.0 * newton;
  only(construct.fractures).gap = 30.0 * mm;  // too wide to close
  construct.screws.erase(construct.screws.begin(), construct.screws.begin());
  const Trust trust = analyse(assemble(construct, construct.screws)).findings.trust;
  for (const auto& name : {rotation, over_yield, buckling}) {
    INFO(name);
    CHECK_FALSE(check_named(trust, name).passed);
  }
  for (const auto& name : {residual, balance, energy, contact, friction}) {
    INFO(name);
    CHECK(check_named(trust, name).passed);
  }
}

TEST_CASE("an assessment tries both bounds of screws in bone on the bodies that are there",
          "[models][findings][trust]") {
  Construct construct = sound_tube();
  construct.loads.resize(1);
  only(construct.fractures).gap = 30.0 * mm;  // too wide to close
  const auto prepared = prepare_bodies(construct, construct.screws);
  const auto bounds_of = [&](const Construct& one) {
    return assess(prepared, one, one.screws, false).assessment.state.interface.value();
  };
  const InterfaceBounds bounds = bounds_of(construct);
  const FirstDay soft = first_day_of(prepared, with_interface(construct, soft_interface), construct.screws);
  CHECK(bounds.verdict() == BoundsVerdict::holds_at_both);
  CHECK(bounds.soft.day.least->factor == soft.least->factor);
  CHECK(bounds.soft.day.gap_strain == soft.gap_strain);
  CHECK(*bounds.soft.day.gap_strain > *bounds.bonded.day.gap_strain);
  CHECK(bounds.soft.day.least->factor != bounds.bonded.day.least->factor);
  // Taken in between, the bounds are the same.
  const InterfaceBounds between = bounds_of(with_interface(construct, mean_interface));
  CHECK(between.taken == mean_interface);
  CHECK(between.bonded.day.least->factor == bounds.bonded.day.least->factor);
  CHECK(between.soft.day.least->factor == bounds.soft.day.least->factor);
}

TEST_CASE("a verdict by itself is that of the whole assessment", "[models][findings][trust]") {
  Construct construct = sound_tube();
  construct.metal_law = MetalLaw::elastic_plastic;  // what is over its yield strength is trusted, and fails
  const auto prepared = prepare_bodies(construct, construct.screws);
  std::vector<Standing> seen;
  for (const double factor : {1.0, 6.0, 10.0, 300.0}) {
    construct.loads[0].axial_compression = factor * 100.0 * newton;
    const Standing alone = standing_of(prepared, construct, construct.screws);
    CHECK(alone == assess(prepared, construct, construct.screws, false).assessment.state.standing());
    seen.push_back(alone);
    UNSCOPED_INFO(factor << ": " << static_cast<int>(alone));
  }
  CHECK(seen.front() == Standing::holds);
  CHECK(std::find(seen.begin(), seen.end(), Standing::fails) != seen.end());
  CHECK(seen.back() == Standing::not_trusted);
}

TEST_CASE("a plate that yields is trusted where metals may, and not where they are taken as elastic",
          "[models][findings][trust]") {
  Construct construct = sound_tube();
  construct.loads.resize(1);
  construct.loads[0].axial_compression = 900.0 * newton;
  only(construct.fractures).gap = 5.0 * mm;
  const auto over = [&](MetalLaw law) {
    construct.metal_law = law;
    return check_named(analyse(assemble(construct, construct.screws)).findings.trust, over_yield);
  };
  CHECK_FALSE(over(MetalLaw::elastic).passed);
  CHECK(over(MetalLaw::elastic_plastic).passed);
}

TEST_CASE("a mesh too coarse for the plate's hottest place is not trusted", "[models][findings][trust]") {
  Construct construct = sound_tube();
  construct.mesh = {0.5, 8};
  CHECK(failed(analyse(assemble(construct, construct.screws)).findings.trust) == Names{mesh_error});
}

TEST_CASE("a buckling factor that is not found is no number", "[models][findings][trust]") {
  const SolvedConstruct whole = tests::solve_and_measure(sound_tube());
  ConstructState lost = whole.solved.states[0];
  for (auto& forces : (lost.straight ? *lost.straight : lost.pressed).solution.port_forces)
    forces.setConstant(tests::missing);
  const auto factor = measure_buckling(whole.assembly, whole.steps.back(), whole.assembly.loads[0], lost);
  REQUIRE(factor);
  CHECK(std::isnan(*factor));
}

TEST_CASE("an outcome fails by value, limit and name what the findings of the same state fail",
          "[models][findings][trust]") {
  SolvedConstruct whole = tests::solve_and_measure(sound_tube());
  const auto doubts = [&] {
    std::vector<CarriedState> loaded;
    for (std::size_t load = 0; load < whole.solved.states.size(); ++load)
      loaded.push_back(
          carried_state(whole.assembly, whole.solved.states[load].pressed, whole.assembly.loads[load].forces));
    return doubts_about(whole.assembly, loaded);
  };
  CHECK(doubts().empty());
  auto& state = whole.solved.states[1].pressed;
  state.complementarity = 0.02;
  state.friction_residual = 0.003;
  const auto failing = doubts();
  REQUIRE(failing.size() == 2);
  CHECK(failing[0] == check_named(trust_of(whole), contact));
  CHECK(failing[1] == check_named(trust_of(whole), friction));
  CHECK(check_text(failing[0]) == contact + ": 0.02, limit 1e-08");
  state.forces(0) = std::numeric_limits<double>::quiet_NaN();
  const auto broken = doubts();
  REQUIRE(broken.size() == 1);
  CHECK(broken[0].value > 0.0);
  CHECK(broken[0].limit == 0.0);
}

}  // namespace gapstrain
