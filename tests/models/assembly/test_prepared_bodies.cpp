// What constructs can share bodies, and that it makes no difference to them.
#include "models/assembly/prepared_bodies.h"
#include "models/layouts/construct_solver.h"
#include "models/preparation/prepare_bodies.h"
#include "models/stress/peak_stress.h"
#include "tests/models/constructs.h"
#include "tests/models/layouts/long_way.h"
#include "tests/models/measures/compression_constructs.h"

#include <catch2/catch.hpp>

#include <functional>
#include <numeric>
#include <utility>

namespace gapstrain {

using namespace models;  // NOLINT: this file is nothing but constructs

namespace {

// A tube whose gap closes and whose plate touches under the loads, with rollers and a wire.
Construct tube() {
  tests::TubeSizes sizes;
  sizes.gap = 0.03;
  sizes.standoff = 0.01;
  Construct construct = tests::plated_tube(sizes);
  construct.mesh.refinement = 0.4;
  LoadCase four_point;
  four_point.name = "four-point";
  four_point.four_point = {8.0 * mm, 22.0 * mm, 138.0 * mm, 152.0 * mm, 60.0 * newton, false};
  construct.loads.push_back(four_point);
  TemporaryHold wire;
  wire.label = "W";
  wire.kind = HoldKind::wire;
  wire.hole = 9;
  wire.diameter = 2.0 * mm;
  construct.temporary = {wire};
  return construct;
}

void scale_bone(Construct& construct, double factor) {
  CorticalBone& cortex = construct.bone.cortex;
  for (Stress* modulus : {&cortex.longitudinal_modulus, &cortex.transverse_modulus, &cortex.shear_modulus_lt,
                          &cortex.shear_modulus_lr, &cortex.shear_modulus_tr})
    *modulus *= factor;
}

Outcome outcome_of(const Assembly& assembly) {
  std::vector<int> chosen(assembly.construct.screws.size());
  std::iota(chosen.begin(), chosen.end(), 0);
  const PeakStress peak(assembly, PlatePlaces::likely_and_sample);
  return ConstructSolver(assembly, peak).solve(chosen);
}

// Whether a change leaves the construct with the same bodies, in both directions.
bool shares_bodies(const std::function<void(Construct&)>& change) {
  const Construct construct = tube();
  Construct other = construct;
  change(other);
  const bool shares = have_same_bodies(construct, construct.screws, other, other.screws);
  CHECK(have_same_bodies(other, other.screws, construct, construct.screws) == shares);
  return shares;
}

// Compliances of all bodies and what their probes read.
bool equal_bits(const PreparedBodies& one, const PreparedBodies& other) {
  for (std::size_t b = 0; b < one.bodies.size(); ++b) {
    const solver::Condensed &a = *one.bodies[b].condensed, &c = *other.bodies[b].condensed;
    if (a.compliance.rows() != c.compliance.rows() || a.probes.size() != c.probes.size()) return false;
    if (a.compliance != c.compliance || a.rigid != c.rigid) return false;
    for (std::size_t k = 0; k < a.probes.size(); ++k)
      if (a.probes[k].of_port_forces != c.probes[k].of_port_forces || a.probes[k].of_rigid != c.probes[k].of_rigid)
        return false;
  }
  return true;
}

}  // namespace

TEST_CASE("a construct of other moduli has on shared bodies the outcome that it has on its own",
          "[models][build][prepared]") {
  const bool is_pressed = GENERATE(false, true);
  CAPTURE(is_pressed);
  // Friction is iterated until its law is met to 1e-10: what is pressed follows the rounding of the way there
  // (seen: 0.8e-9 and 2.5e-9, by how the compiler put the same sums together).
  const double bound = is_pressed ? 1e-8 : 1e-9;
  Construct construct = is_pressed ? tests::pressed_tube() : tube();
  construct.mesh.refinement = 0.4;
  const auto prepared = prepare_bodies(construct, construct.screws);
  const Outcome first = outcome_of(assemble(prepared, construct, construct.screws));
  const auto check_on_shared_bodies = [&](const Construct& other) {
    REQUIRE(have_same_bodies(construct, construct.screws, other, other.screws));
    const Outcome shared = outcome_of(assemble(prepared, other, other.screws));
    const auto difference = tests::difference(shared, outcome_of(assemble(other, other.screws)));
    CAPTURE(difference.figure);
    CHECK(difference.value < bound);
    CHECK(tests::difference(shared, first).value > 0.01);
  };

  Construct other = construct;
  only(other.plates).material.youngs_modulus *= 2.0;
  scale_bone(other, 1.3);
  check_on_shared_bodies(other);

  // And with all the rest that bodies do not depend on.
  only(other.fractures).tissue = Tissue{"soft", 1.0 * mpa, 0.3, "made up for tests"};
  other.contact = {FrictionLaw::coulomb, 0.2, 0.3};
  other.loads[0].axial_compression *= 1.4;
  other.loads[1].ball_offset_y = 1.0 * mm;
  for (auto& screw : other.screws) {
    screw.label += " too";
    screw.material.youngs_modulus *= 1.5;
    screw.material.yield_strength = 500.0 * mpa;
    if (is_tightened(screw)) screw.preload = 250.0 * newton;
  }
  check_on_shared_bodies(other);

  // The bodies are none the worse for it.
  CHECK(tests::same_bits(outcome_of(assemble(prepared, construct, construct.screws)), first));
}

TEST_CASE("loads, contact, tissue, forces, labels and moduli by one factor leave the bodies as they are",
          "[models][build][prepared]") {
  CHECK(shares_bodies([](Construct&) {}));
  CHECK(shares_bodies([](Construct& c) { c.name = "another"; }));
  CHECK(shares_bodies([](Construct& c) { c.body_mass = 12.0 * kilogram; }));
  CHECK(shares_bodies([](Construct& c) { c.loads[0].axial_compression *= 2.0; }));
  CHECK(shares_bodies([](Construct& c) { c.loads[0].ball_distance *= 2.0; }));
  CHECK(shares_bodies([](Construct& c) { c.loads[2].supports = ball_joints(); }));
  CHECK(shares_bodies([](Construct& c) { c.loads[3].four_point->total *= 2.0; }));
  CHECK(shares_bodies([](Construct& c) { c.loads.erase(c.loads.begin()); }));
  CHECK(shares_bodies([](Construct& c) { c.contact.friction = FrictionLaw::stick; }));
  CHECK(shares_bodies([](Construct& c) { c.contact.plate_on_bone = 0.1; }));
  CHECK(shares_bodies([](Construct& c) { only(c.fractures).tissue = Tissue{"soft", 1.0 * mpa, 0.3, ""}; }));
  CHECK(shares_bodies([](Construct& c) { c.steps = tests::steps_of({"S1", "S2"}); }));
  CHECK(shares_bodies([](Construct& c) { c.screws[0].label = "another"; }));
  CHECK(shares_bodies([](Construct& c) { c.screws[0].preload = 10.0 * newton; }));
  CHECK(shares_bodies([](Construct& c) { c.screws[0].insertion_torque = 10.0 * newton_mm; }));
  CHECK(shares_bodies([](Construct& c) { c.screws[0].material.youngs_modulus *= 2.0; }));
  CHECK(shares_bodies([](Construct& c) { c.temporary[0].label = "another"; }));
  CHECK(shares_bodies([](Construct& c) { only(c.plates).prebend = 0.5 * mm; }));
  CHECK(shares_bodies([](Construct& c) { only(c.plates).material.yield_strength.reset(); }));
  CHECK(shares_bodies([](Construct& c) { only(c.plates).material.youngs_modulus *= 1.7; }));
  CHECK(shares_bodies([](Construct& c) { c.bone.cortex.yield_strain = 0.007; }));
  CHECK(shares_bodies([](Construct& c) { scale_bone(c, 1.0 / 3.0); }));
}

TEST_CASE("lengths, Poisson's ratios, ratios of moduli, places and meshes make other bodies",
          "[models][build][prepared]") {
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.length += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.stations[0].width_mediolateral += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.stations[0].width_craniocaudal += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.stations[0].cortex += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.stations[0].bow_lateral += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.stations[0].bow_cranial += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.cortex.poissons_ratio_lt += 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.cortex.transverse_modulus *= 1.0 + 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.cortex.longitudinal_modulus *= 1.0 + 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.cortex.shear_modulus_lt *= 1.0 + 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.cortex.shear_modulus_lr *= 1.0 + 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.bone.cortex.shear_modulus_tr *= 1.0 + 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).length += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).proximal_end += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).standoff += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).sections[0].width += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).sections[0].thickness += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).holes[2].position += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).holes[2].diameter += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).holes[2].slot_length += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).holes[2].shape = HoleShape::slot; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).material.poissons_ratio += 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).aspect = Aspect::lateral; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.plates).contour = Contour::straight; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.fractures).position += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.fractures).gap += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.fractures).obliquity += 1e-6 * radian; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { only(c.fractures).direction += 1e-6 * radian; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].hole = 3; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].tilt_along += 1e-6 * radian; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].tilt_across += 1e-6 * radian; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].cortices = 1; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].size.core_diameter += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].size.thread_diameter += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].kind = ScrewKind::cortical; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws[0].slide = 0.1 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.screws.pop_back(); }));
  CHECK_FALSE(shares_bodies([](Construct& c) { std::swap(c.screws[0], c.screws[1]); }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.temporary[0].hole = 1; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.temporary[0].diameter += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.temporary.clear(); }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.second_order = SecondOrderEffects::automatic; }));  // has axes
  CHECK_FALSE(shares_bodies([](Construct& c) { c.mesh.refinement += 1e-6; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.mesh.rim_elements += 2; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.loads[3].four_point->outer_proximal += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.loads[3].four_point->inner_distal += 1e-6 * mm; }));
  CHECK_FALSE(shares_bodies([](Construct& c) { c.loads.pop_back(); }));
}

TEST_CASE("constructs that differ by a factor in their moduli are prepared with the same moduli to the last bit",
          "[models][build][prepared]") {
  const Construct shared = tube();
  for (const double factor : {1.3, 0.7, 1.0 / 3.0, 2.0, 1.05}) {
    CAPTURE(factor);
    Construct other = shared;
    only(other.plates).material.youngs_modulus *= factor;
    scale_bone(other, factor);
    const Construct one = with_moduli_of(shared, shared), two = with_moduli_of(other, shared);
    CHECK(one.bone.cortex == two.bone.cortex);
    CHECK(only(one.plates).material == only(two.plates).material);
    CHECK(two.bone.cortex.longitudinal_modulus == shared.bone.cortex.longitudinal_modulus);
    CHECK(two.bone.cortex.shear_modulus_tr.value() ==
          Approx(shared.bone.cortex.shear_modulus_tr.value()).epsilon(1e-11));
  }
}

TEST_CASE("bodies are the same to the last bit whatever was meshed before", "[models][build][prepared]") {
  const Construct construct = tube();
  Construct between = tests::random_construct(5);
  between.mesh.refinement = 0.4;
  const auto first = prepare_bodies(construct, construct.screws);
  const auto other = prepare_bodies(between, between.screws);
  const auto again = prepare_bodies(construct, construct.screws);
  CHECK(equal_bits(*first, *again));
  CHECK_FALSE(equal_bits(*first, *other));
  // Also with the first ones gone, so that memory is handed out anew.
  const auto compliance = first->bodies[body_of_fragment(construct, 0)].condensed->compliance;
  CHECK(compliance ==
        prepare_bodies(construct, construct.screws)->bodies[body_of_fragment(construct, 0)].condensed->compliance);
}

}  // namespace gapstrain
