// Screws and plates that yield, held against figures, rigid motions and limit loads worked out by hand.
#include "models/assembly/yield_sections.h"

#include "models/assembly/yield_curve.h"
#include "models/measures/analyse.h"
#include "models/measures/bent_parts.h"
#include "models/measures/screw_forces.h"
#include "models/measures/solve.h"
#include "models/preparation/from_scratch.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/compression_constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace gapstrain {

namespace {

models::StepState make(const models::Assembly& assembly) {
  const auto chosen = models::chosen_screws(assembly, assembly.construct.screws);
  return models::carry_out(assembly, models::procedure_of(assembly.construct, chosen)).back();
}

// A tube bridged over an open gap, bent so that the gap opens on the far side.
models::Construct bridged(double moment) {
  tests::TubeSizes sizes;
  sizes.metal_modulus = 190000.0;
  models::Construct construct = tests::plated_tube(sizes);
  construct.metal_law = models::MetalLaw::elastic_plastic;
  construct.mesh.refinement = 0.6;
  construct.loads = {construct.loads[1]};
  construct.loads[0].bending_y = -moment * models::newton_mm;
  return construct;
}

// Turn of the distal end against the proximal one, about y.
double turn_across(const models::Assembly& assembly, const models::ConstructState& state) {
  const auto turn = [&](const models::Ring& ring) {
    return state.pressed.solution.motions[ring.place.body](ring.place.column + 4, 0);
  };
  return turn(assembly.load_ports.distal_end) - turn(assembly.load_ports.proximal_end);
}

}  // namespace

TEST_CASE("sections read the same forces as the figures of plate and screws", "[models][yield]") {
  tests::TubeSizes sizes;
  sizes.tilt = 6.0;
  models::Construct construct = tests::plated_tube(sizes);
  construct.metal_law = models::MetalLaw::elastic_plastic;
  construct.mesh.refinement = 0.6;
  construct.loads[0].ball_offset_y = 3.0 * models::mm;
  const auto whole = tests::solve_and_measure(construct);
  const auto& yields = whole.assembly.yields;
  for (std::size_t l = 0; l < whole.loads.size(); ++l)
    for (std::size_t k = 0; k < yields.places.size(); ++k) {
      const auto& place = yields.places[k];
      const solver::Resultants found = yields.sections[k].resultants(whole.solved.states[l].pressed.forces);
      INFO(l << " section " << k << " at " << place.along);
      if (place.screw) {
        const auto& stations = whole.loads[l].screws[static_cast<std::size_t>(*place.screw)].stations;
        const auto same = std::find_if(stations.begin(), stations.end(), [&](const auto& station) {
          return std::abs(station.depth.value() - place.along) < 1e-9;
        });
        REQUIRE(same != stations.end());
        CHECK(std::abs(found(0)) == Approx(std::abs(same->axial.value())).margin(1e-6));
        CHECK(found.segment<2>(1).norm() == Approx(same->shear.value()).margin(1e-6));
        CHECK(std::abs(found(3)) == Approx(std::abs(same->torsion.value())).margin(1e-6));
        CHECK(found.tail<2>().norm() == Approx(same->bending.value()).margin(1e-6));
      } else {
        // Stations are a little before and a little behind each hole, as the sections are.
        const auto& stations = whole.loads[l].plate.stations;
        const bool is_first = k + 1 < yields.places.size() && yields.places[k + 1].along == place.along;
        const double beside = place.along + (is_first                                             ? -1e-6
                                             : k > 0 && yields.places[k - 1].along == place.along ? 1e-6
                                                                                                  : 0.0);
        const auto& near =
            *std::min_element(stations.begin(), stations.end(), [&](const auto& one, const auto& other) {
              return std::abs(one.along.value() - beside) < std::abs(other.along.value() - beside);
            });
        // Nothing but a constant shear acts between a station and the middle of a bridge.
        const double apart = place.along - near.along.value();
        CHECK(found(0) == Approx(near.normal.value()).margin(1e-4));
        CHECK(std::abs(found(1)) == Approx(std::abs(near.shear_y.value())).margin(1e-4));
        CHECK(std::abs(found(2)) == Approx(std::abs(near.shear_z.value())).margin(1e-4));
        CHECK(std::abs(found(4)) ==
              Approx(std::abs(near.bending_flat.value())).margin(1e-3 + std::abs(apart * near.shear_z.value())));
        CHECK(std::abs(found(5)) ==
              Approx(std::abs(near.bending_edge.value())).margin(1e-3 + std::abs(apart * near.shear_y.value())));
        CHECK(std::abs(found(3)) == Approx(std::abs(near.torsion.value())).margin(1e-3));
      }
    }
}

TEST_CASE("what does not yield is the same with metals that may", "[models][yield]") {
  models::Construct construct = bridged(1000.0);
  const auto solve = [&](models::MetalLaw law) {
    construct.metal_law = law;
    const auto assembly = models::assemble(construct, construct.screws);
    return models::solve_load(assembly, make(assembly), assembly.loads[0]).pressed.forces;
  };
  CHECK(solve(models::MetalLaw::elastic) == solve(models::MetalLaw::elastic_plastic));
}

// Between the innermost screws the moment is the load's, whatever yields. Four holes bear it, 8 mm wide with 3 mm
// open, full plastic moment 800 (8 - 3) 2.5^2 / 4 = 6250 N mm: two empty ones, and the inner halves of those of
// the screws. Half a hole turns by what slices of the width beside it turn by under that moment. Bridges of 8 mm
// yield from 6667 N mm on.
TEST_CASE("a plate over an open gap bends at its holes, and the fragments turn by just that", "[models][yield]") {
  constexpr double net = 6250.0, first_yield = 2.0 * 800.0 / 190000.0 / 2.5;
  const auto half_hole = [&](double moment) {
    constexpr int slices = 1000;
    double turn = 0.0;
    for (int k = 0; k < slices; ++k) {
      const double from_centre = 1.5 * (k + 0.5) / slices;
      const double full = 800.0 * (8.0 - 2.0 * std::sqrt(2.25 - from_centre * from_centre)) * 6.25 / 4.0;
      turn += 1.5 / slices * first_yield * solver::plastic_curvature(solver::BarSection::rectangle, moment / full);
    }
    return turn;
  };
  const auto turned = [&](double moment) {
    models::Construct construct = bridged(moment);
    for (auto& screw : construct.screws) screw.material.yield_strength.reset();
    const auto assembly = models::assemble(construct, construct.screws);
    const auto loaded = models::solve_load(assembly, make(assembly), assembly.loads[0]);
    CHECK(loaded.yield_residual < 1e-6);
    CHECK(loaded.elastic.has_value() == (loaded.yielded.flow.maxCoeff() > 0.0));
    std::map<double, double> bent;
    for (std::size_t k = 0; k < assembly.yields.places.size(); ++k) {
      const double turn = loaded.yielded.deformed(4, static_cast<Eigen::Index>(k));
      if (turn != 0.0) bent[assembly.yields.places[k].along] += turn;
    }
    return std::pair(turn_across(assembly, loaded), bent);
  };
  const auto [elastic, nowhere] = turned(0.5 * net);
  CHECK(nowhere.empty());
  for (const double share : {0.70, 0.75}) {
    const auto [turn, bent] = turned(share * net);
    INFO(share);
    REQUIRE(bent.size() == 4);
    double in_all = 0.0;
    for (const auto& [along, of_hole] : bent) {
      UNSCOPED_INFO(along << ": " << of_hole);
      const double from_middle = std::abs(along - 56.0);
      REQUIRE((std::abs(from_middle - 5.5) < 1e-6 || std::abs(from_middle - 16.5) < 1e-6));
      // What the metal hardens takes a little off it.
      CHECK(std::abs(of_hole) == Approx((from_middle < 10.0 ? 2.0 : 1.0) * half_hole(share * net)).epsilon(0.05));
      in_all += of_hole;
    }
    CHECK(turn - in_all == Approx(elastic * share / 0.5).epsilon(1e-6));
  }
}

// The slide pushes with a ball head on a shaft that stands in the bone, against a screw that was locked too early:
// no more than the plastic moment of the core over the way from the ball to the bone, 800 2.4^3 / 6 / (1.25 + 2) =
// 567 N, but for what the metal hardens.
TEST_CASE("a compression screw pushes no harder than its shaft bears", "[models][yield]") {
  models::Construct construct = tests::compression_tube();
  only(construct.plates).standoff = 2.0 * models::mm;
  construct.screws[2].preload = 40.0 * models::newton;
  construct.screws[2].slide = 0.5 * models::mm;
  construct.steps = tests::steps_of({"P1", "P2", "L", "C"});
  const auto push = [&](models::MetalLaw law) {
    construct.metal_law = law;
    const auto assembly = models::assemble(construct, construct.screws);
    const auto state = make(assembly);
    CHECK(state.yield_residual < 1e-6);
    const auto screws = models::measure_screws(assembly, state.screws, state.pressed.solution);
    const auto& pushing = screws.back();
    REQUIRE(pushing.label == "C");
    return std::pair(std::hypot(pushing.shear_x.value(), pushing.shear_y.value()),
                     models::bent_parts(assembly, state.screws, state.yielded));
  };
  const auto [elastic, straight] = push(models::MetalLaw::elastic);
  const auto [force, bent] = push(models::MetalLaw::elastic_plastic);
  const double by_hand = 800.0 * std::pow(2.4, 3) / 6.0 / 3.25;
  CHECK(elastic > 1.5 * by_hand);
  CHECK(force == Approx(by_hand).epsilon(0.1));
  CHECK(straight.empty());
  REQUIRE(!bent.empty());
  CHECK(bent.back().label == "C");
  CHECK(bent.back().turn > 1.0 * models::degree);
}

TEST_CASE("what bends for good is told once: of the steps by how much, of a load by how much more",
          "[models][yield]") {
  const auto limits_of = [](const models::Construct& construct) {
    return models::analyse(models::assemble(construct, construct.screws)).findings.compression.limits;
  };
  const auto of = [](const std::vector<models::PassedLimit>& limits, models::LimitKind kind,
                     const std::string& label) -> const models::PassedLimit* {
    const auto found = std::find_if(limits.begin(), limits.end(), [&](const models::PassedLimit& limit) {
      return limit.kind == kind && limit.label == label;
    });
    return found == limits.end() ? nullptr : &*found;
  };
  using models::LimitKind;

  models::Construct early = tests::compression_tube();
  only(early.plates).standoff = 2.0 * models::mm;
  early.screws[2].preload = 40.0 * models::newton;
  early.screws[2].slide = 0.5 * models::mm;
  early.steps = tests::steps_of({"P1", "P2", "L", "C"});
  for (auto& load : early.loads) {
    load.axial_compression *= 1e-3;
    load.bending_y *= 1e-3;
    load.torsion *= 1e-3;
  }
  const auto elastic = limits_of(early);
  CHECK(of(elastic, LimitKind::over_yield_by_steps, "C") != nullptr);
  CHECK(of(elastic, LimitKind::bent_by_steps, "C") == nullptr);
  early.metal_law = models::MetalLaw::elastic_plastic;
  const auto bent = limits_of(early);
  CHECK(of(bent, LimitKind::over_yield_by_steps, "C") == nullptr);
  const auto* screw = of(bent, LimitKind::bent_by_steps, "C");
  REQUIRE(screw != nullptr);
  const auto assembly = models::assemble(early, early.screws);
  const auto made = make(assembly);
  const auto parts = models::bent_parts(assembly, made.screws, made.yielded);
  REQUIRE(parts.back().label == "C");
  CHECK(screw->value == Approx(models::in_degrees(parts.back().turn)));
  CHECK(screw->unit == models::FigureUnit::angle);
  CHECK(!screw->load);
  // A thousandth of the loads bends nothing more.
  CHECK(of(bent, LimitKind::bent_by_load, "C") == nullptr);

  models::Construct loaded = bridged(1.05 * 6250.0);
  for (auto& other : loaded.screws) other.material.yield_strength.reset();
  const auto by_load = limits_of(loaded);
  const auto* plate = of(by_load, LimitKind::bent_by_load, "plate");
  REQUIRE(plate != nullptr);
  CHECK(plate->load == loaded.loads[0].name);
  CHECK(plate->value > plate->limit);
  CHECK(of(by_load, LimitKind::bent_by_steps, "plate") == nullptr);
  loaded.metal_law = models::MetalLaw::elastic;
  CHECK(of(limits_of(loaded), LimitKind::bent_by_load, "plate") == nullptr);
}

// Between the innermost screws the plate turns with the fragments, but for what their screws and bone give: most
// of the turn is the plate's own, and a good part of that stays.
TEST_CASE("a plate that has bent for good is drawn bent", "[models][yield]") {
  models::Construct construct = bridged(1.05 * 6250.0);
  for (auto& screw : construct.screws) screw.material.yield_strength.reset();
  const auto assembly = models::assemble(construct, construct.screws);
  const auto loaded = models::solve_load(assembly, make(assembly), assembly.loads[0]);
  const auto whole = models::analyse(assembly);
  const auto& shell = whole.fields.loads[0].shells.front();
  const auto& places = assembly.plates[0].mesh.along_across;
  const auto turn_at = [&](double from, double to) {
    double sum = 0.0;
    int nodes = 0;
    for (Eigen::Index node = 0; node < places.rows(); ++node)
      if (places(node, 0) > from && places(node, 0) < to) {
        sum += shell.rotations(node, 1);
        ++nodes;
      }
    return sum / nodes;
  };
  double bent = 0.0;
  for (std::size_t k = 0; k < assembly.yields.places.size(); ++k)
    if (!assembly.yields.places[k].screw) bent += loaded.yielded.deformed(4, static_cast<Eigen::Index>(k));
  const double drawn = turn_at(110.0, 112.0) - turn_at(0.0, 2.0);
  const double across = turn_across(assembly, loaded);
  REQUIRE(std::abs(bent) > 0.1 * std::abs(across));
  CHECK(drawn == Approx(across).epsilon(0.1));
  // Its screws' heads stay in their holes.
  for (const auto& screw : whole.fields.loads[0].screws) {
    double nearest = 1e9;
    Eigen::Index at = 0;
    const Eigen::Vector3d seat = screw.axis[1];
    for (Eigen::Index node = 0; node < places.rows(); ++node)
      if (const double off = (shell.mesh->nodes.row(node).transpose() - seat).norm(); off < nearest) {
        nearest = off;
        at = node;
      }
    CHECK((screw.displacements[1] - Eigen::Vector3d(shell.displacements.row(at).transpose())).norm() <
          0.1 * shell.displacements.rowwise().norm().maxCoeff());
  }
}

TEST_CASE("strength grows from first yield to the full moment and on as the metal hardens", "[models][yield]") {
  models::Metal metal{"test metal", 190000.0 * models::mpa, 0.3, 700.0 * models::mpa, "made up for tests"};
  metal.ultimate_strength = 860.0 * models::mpa;
  CHECK(models::hardening_modulus(metal) == Approx(1600.0));
  const double full = 700.0 * 8.0 * 2.5 * 2.5 / 4.0;
  const auto curve = models::bending_curve({{solver::BarSection::rectangle, 10.0, 2.5, full}}, metal);
  CHECK(curve.at(0.0).share == Approx(2.0 / 3.0));
  // Fibres by hand: at twelve times the curvature at first yield the elastic core is a twelfth of the depth.
  const double first = 2.0 * 700.0 / 190000.0 / 2.5, curvature = 12.0 * first;
  const double share = 1.0 - 1.0 / (3.0 * 144.0);
  const double turn = 10.0 * (curvature - share * 1.5 * first);
  const double hardened = 1600.0 / 12.0 * 8.0 * std::pow(2.5, 3) * (curvature - first) / full;
  CHECK(curve.at(turn * full).share == Approx(share + hardened).epsilon(0.01));
}

}  // namespace gapstrain
