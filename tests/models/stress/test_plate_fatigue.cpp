// Stress cycles of plate and screws, and what walls get of a screw, against what can be told without
// them. A coarse mesh serves.
#include "models/layouts/ready_screws.h"
#include "models/measures/screw_forces.h"
#include "models/measures/solve.h"
#include "models/preparation/from_scratch.h"
#include "models/preparation/prepare_bodies.h"
#include "models/stress/body_stress.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/compression_constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain {

namespace {

models::Construct tiring_tube() {
  models::Construct construct = tests::plated_tube();
  construct.mesh.refinement = 0.5;
  only(construct.plates).material = models::find_metal("stainless-steel-cold-worked").value();
  for (auto& screw : construct.screws) screw.material = only(construct.plates).material;
  return construct;
}

// Its steps leave stress in the plate.
models::Construct tiring_pressed_tube() {
  models::Construct construct = tests::pressed_tube();
  construct.name = "pressed tube";
  only(construct.plates).material = models::find_metal("stainless-steel-cold-worked").value();
  for (auto& screw : construct.screws) screw.material = only(construct.plates).material;
  return construct;
}

}  // namespace

TEST_CASE("the plate's largest equivalent amplitude is where the fields say, between rest and load",
          "[models][findings]") {
  for (const models::Construct& construct : {tiring_tube(), tiring_pressed_tube()}) {
    const auto findings = models::analyse(construct).findings;
    const models::Assembly assembly = models::assemble(construct, models::screws_to_make_ready(construct));
    const auto chosen = models::chosen_screws(assembly, construct.screws);
    const auto made = models::carry_out(assembly, models::procedure_of(construct, chosen)).back();
    const auto stress_in = [&](const models::ConstructState& state) {
      const auto displacements = models::recover_displacements(assembly, {state.pressed.solution});
      return models::read_stress(assembly.bodies[models::only_plate_body].body->shell(),
                                 displacements[models::only_plate_body])
          .front();
    };
    const models::BodyStress rest = stress_in(made);
    for (std::size_t l = 0; l < construct.loads.size(); ++l) {
      const models::BodyStress loaded = stress_in(models::solve_load(assembly, made, assembly.loads[l]));
      double most = 0.0;
      Eigen::Index node = 0;
      const auto look_at = [&](const Eigen::MatrixX3d& from, const Eigen::MatrixX3d& to) {
        for (Eigen::Index n = 0; n < to.rows(); ++n) {
          const Eigen::RowVector3d s = 0.5 * (to.row(n) - from.row(n)), m = 0.5 * (to.row(n) + from.row(n));
          const double amplitude = std::sqrt(s(0) * s(0) - s(0) * s(1) + s(1) * s(1) + 3.0 * s(2) * s(2));
          // Cold-worked steel: 690 MPa yield, 930 MPa ultimate.
          const double mean = std::min(std::max(0.0, m(0) + m(1)), std::max(0.0, 690.0 - amplitude));
          const double reversed = amplitude / (1.0 - mean / 930.0);
          if (reversed <= most) continue;
          most = reversed;
          node = n;
        }
      };
      look_at(rest.top, loaded.top);
      look_at(rest.middle, loaded.middle);
      look_at(rest.bottom, loaded.bottom);
      CAPTURE(construct.name, findings.loads[l].load);
      const auto& fatigue = findings.loads[l].plate.fatigue;
      REQUIRE(fatigue);
      CHECK(fatigue->reversed.value() == Approx(most).epsilon(1e-6));
      const auto at = only(assembly.plates).mesh.mesh->nodes.row(node);
      CHECK(fatigue->across.value() == Approx(at.y()).margin(1e-6));
      // The plate lies straight along the bone, from 24 mm on.
      CHECK(fatigue->along.value() == Approx(at.x() - 24.0).margin(1e-6));
    }
  }
}

TEST_CASE("a metal of unknown fatigue strength has no cycle", "[models][findings]") {
  models::Construct construct = tiring_tube();
  only(construct.plates).material.fatigue_strength.reset();
  construct.loads.resize(1);
  CHECK_FALSE(models::analyse(construct).findings.loads[0].plate.fatigue);
}

TEST_CASE("a solid bar's first yield is its section modulus times its yield strength", "[models][findings]") {
  // Worked by hand from beam theory: 10 mm x 3 mm, 690 MPa: 690 x 10 x 9 / 6 N mm = 10.35 N m. Between the
  // innermost holes, 40 mm apart, the plate is a plain bar; it is read halfway, over the gap, where it alone
  // carries the bending. A tenth of the moment leaves the gap open.
  tests::TubeSizes sizes;
  sizes.plate_width = 10.0;
  sizes.plate_thickness = 3.0;
  sizes.holes_a_side = 3;
  sizes.first_hole = 20.0;
  sizes.pitch = 14.0;
  sizes.screws = {0, 1, 2};
  models::Construct construct = tests::plated_tube(sizes);
  construct.loads = {construct.loads[1]};
  construct.loads[0].bending_y = 1035.0 * models::newton_mm;
  const auto findings = models::analyse(construct).findings;
  const auto& stations = findings.loads[0].plate.stations;
  const auto& middle = *std::min_element(stations.begin(), stations.end(), [](const auto& one, const auto& other) {
    return std::abs(one.along.value() - 56.0) < std::abs(other.along.value() - 56.0);
  });
  CHECK(middle.surface_top.value() == Approx(69.0).epsilon(0.005));
  CHECK(middle.surface_bottom.value() == Approx(-69.0).epsilon(0.005));
}

TEST_CASE("what walls get of a screw adds up to what its head passes on", "[models][findings]") {
  for (models::Construct construct : {tiring_tube(), tests::pressed_tube()}) {
    construct.screws.front().cortices = 1;
    const auto findings = models::analyse(construct).findings;
    for (const auto& load : findings.loads)
      for (std::size_t k = 0; k < load.screws.size(); ++k) {
        const auto& screw = load.screws[k];
        CAPTURE(construct.name, load.load, screw.label);
        REQUIRE(screw.cortices.size() == (k == 0 ? 1U : 2U));
        double pull = 0.0, most_shear = 0.0, least_shear = 0.0;
        for (const auto& cortex : screw.cortices) {
          pull += cortex.pull.value();
          most_shear += cortex.shear.value();
          least_shear = std::abs(least_shear - cortex.shear.value());
          CHECK(cortex.wall.value() == Approx(2.5).epsilon(1e-3));
        }
        const double head = std::hypot(screw.shear_x.value(), screw.shear_y.value());
        CHECK(pull == Approx(screw.axial.value()).margin(1e-9));
        // Vectors that add up to the head's shear.
        CHECK(head <= most_shear + 1e-9);
        CHECK(head >= least_shear - 1e-9);
        // The shaft between the walls carries what the far one gets.
        if (k > 0) {
          CHECK(screw.cortices[1].far);
          CHECK(screw.cortices[1].pull.value() == Approx(screw.stations.back().axial.value()).margin(1e-9));
          CHECK(screw.cortices[1].shear.value() == Approx(screw.stations.back().shear.value()).margin(1e-9));
        }
      }
  }
}

TEST_CASE("without stress at rest a head's cycle is half of what the load brings", "[models][findings]") {
  const auto findings = models::analyse(tiring_tube()).findings;
  constexpr double radius = 1.2, area = std::numbers::pi * radius * radius, modulus = area * radius / 4.0;
  for (const auto& load : findings.loads)
    for (const auto& screw : load.screws) {
      CAPTURE(load.load, screw.label);
      const double bending = std::hypot(screw.bending_x.value(), screw.bending_y.value()) / modulus;
      const double shear = screw.torsion.value() / (2.0 * modulus);
      // The cycle is that of the fibre with the largest equivalent amplitude: the one that the load pulls, unless
      // the axial force that presses is so large that the other one has enough more amplitude.
      const double pulled = bending + screw.axial.value() / area, pressed = bending - screw.axial.value() / area;
      const double amplitude = screw.head_cycle.amplitude.value();
      const bool is_pulled = screw.head_cycle.mean.value() > 0.0;
      // Cold-worked steel's ultimate strength is 930 MPa.
      const auto reversed = [&](double fibre, double mean) {
        return 0.5 * std::hypot(fibre, std::sqrt(3.0) * shear) / (1.0 - std::max(0.0, mean) / 930.0);
      };
      CHECK(reversed(is_pulled ? pulled : pressed, screw.head_cycle.mean.value()) >=
            0.9999999 * std::max(reversed(pulled, 0.5 * pulled), reversed(pressed, -0.5 * pressed)));
      CHECK(amplitude == Approx(0.5 * std::hypot(is_pulled ? pulled : pressed, std::sqrt(3.0) * shear)));
      CHECK(screw.head_cycle.mean.value() == Approx(0.5 * (is_pulled ? pulled : -pressed)));
    }
}

TEST_CASE("a preload is in the mean of a head's cycle, not in its amplitude", "[models][findings]") {
  models::Construct construct = tiring_pressed_tube();
  construct.contact.friction = models::FrictionLaw::none;
  construct.loads.resize(1);
  construct.loads[0].axial_compression = 0.5 * models::newton;  // next to nothing
  const auto findings = models::analyse(construct).findings;
  constexpr double area = std::numbers::pi * 1.2 * 1.2;
  for (std::size_t k = 0; k < 6; ++k) {
    const auto& screw = findings.loads[0].screws[k];
    const double held = findings.compression.steps.back().held[k].axial.value();
    CAPTURE(screw.label, held);
    REQUIRE(held > 100.0);
    CHECK(screw.head_cycle.mean.value() > 0.25 * held / area);
    CHECK(screw.head_cycle.amplitude.value() < 0.01 * held / area);
    CHECK(screw.head_cycle.amplitude.value() >= 0.999 * 0.5 * std::abs(screw.axial.value() - held) / area);
  }
}

TEST_CASE("a bending that only turns makes a shaft's stress come and go", "[models][findings]") {
  const models::Metal metal = models::find_metal("titanium-6al-4v-eli").value();
  const Eigen::Vector3d axis = Eigen::Vector3d::UnitZ();
  const double radius = 1.4, modulus = std::numbers::pi * std::pow(radius, 3) / 4.0;
  const models::ShaftForce none{Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero()};
  const models::ShaftForce one{Eigen::Vector3d::Zero(), {400.0, 0.0, 0.0}};
  const models::ShaftForce other{Eigen::Vector3d::Zero(), {0.0, 400.0, 0.0}};
  // Half the difference of the vectors: 400 / sqrt(2) N mm.
  const auto turned = models::shaft_cycle(one, other, axis, radius, metal);
  CHECK(turned.amplitude.value() >= 0.999 * 400.0 / std::sqrt(2.0) / modulus * std::sqrt(0.5));
  const models::Metal unknown{"unknown", 1e5 * models::mpa, 0.3, std::nullopt, "made up for tests"};
  CHECK(models::shaft_cycle(one, other, axis, radius, unknown).amplitude.value() ==
        Approx(400.0 / std::sqrt(2.0) / modulus));
  CHECK(models::shaft_cycle(one, one, axis, radius, metal).amplitude.value() == Approx(0.0).margin(1e-12));
  // By hand: tension from 0 to 900 N with a twist of 300 N mm.
  const models::ShaftForce both{{0.0, 0.0, 900.0}, {0.0, 0.0, 300.0}};
  const double tension = 900.0 / (std::numbers::pi * radius * radius), twist = 300.0 / (2.0 * modulus);
  const auto pulled = models::shaft_cycle(none, both, axis, radius, metal);
  CHECK(pulled.amplitude.value() == Approx(0.5 * std::hypot(tension, std::sqrt(3.0) * twist)));
  CHECK(pulled.mean.value() == Approx(0.5 * tension));
}

}  // namespace gapstrain
