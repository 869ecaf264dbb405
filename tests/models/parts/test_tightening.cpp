#include "models/parts/tightening.h"

#include <catch2/catch.hpp>

#include <numbers>

using namespace gapstrain::models;

namespace {

Screw cortical(const char* size) {
  Screw screw;
  screw.kind = ScrewKind::cortical;
  screw.size = find_screw_size(size).value();
  screw.material = find_metal("stainless-steel-cold-worked").value();
  return screw;
}

}  // namespace

TEST_CASE("pull-out strength is the thread's shear area times the bone's shear strength", "[models][parts]") {
  // Worked by hand from the formula of Chapman et al. 1996, J Biomech Eng 118:391, for a 3.5 mm cortical screw in
  // two cortices of 2 mm: depth 0.55 mm, thread shape 0.5 + 0.57735 x 0.55 / 1.25 = 0.7540, area 33.16 mm2.
  const ScrewSize size = find_screw_size("HA 3.5").value();
  const Force force = pull_out_strength(size, 4.0 * mm);
  CHECK(force.value() == Approx(1711.0).epsilon(3e-4));
  const double thread_shape = force.value() / (51.6 * 4.0 * std::numbers::pi * 3.5);
  CHECK(thread_shape == Approx(0.7540).epsilon(1e-4));
  // Per millimetre of engagement, likewise by hand: each size has depth and pitch of its own.
  CHECK(pull_out_strength(find_screw_size("HA 2.0").value(), 1.0 * mm).value() == Approx(271.0).epsilon(2e-3));
  CHECK(pull_out_strength(find_screw_size("HA 4.5").value(), 1.0 * mm).value() == Approx(545.0).epsilon(2e-3));
  CHECK(pull_out_strength(find_screw_size("HB 6.5").value(), 1.0 * mm).value() == Approx(914.0).epsilon(2e-3));
}

TEST_CASE("a torque brings the preload of a power screw", "[models][parts]") {
  // Worked by hand from the handbook formula: 2500 N on a 3.5 mm cortical screw, head radius 2.2 mm, need 2.37 N m
  // at a friction of 0.2 in the thread and under the head, 3.32 N m at 0.3.
  const ScrewSize size = find_screw_size("HA 3.5").value();
  CHECK(preload_of_torque(size, 2370.0 * newton_mm, 0.2).value() == Approx(2500.0).epsilon(2e-3));
  CHECK(preload_of_torque(size, 3320.0 * newton_mm, 0.3).value() == Approx(2500.0).epsilon(2e-3));
  // Friction of 0.25 lies between, and force grows in proportion to torque.
  const double at_default = preload_of_torque(size, 2845.0 * newton_mm).value();
  CHECK(at_default == Approx(2500.0).epsilon(4e-3));
  CHECK(preload_of_torque(size, 711.25 * newton_mm).value() == Approx(at_default / 4.0));
}

TEST_CASE("without friction a torque does the work of its lead", "[models][parts]") {
  // A full turn's work, 2 pi T, moves the preload by one pitch.
  const ScrewSize size = find_screw_size("HA 2.7").value();
  const double torque = 137.0;
  CHECK(preload_of_torque(size, torque * newton_mm, 0.0).value() ==
        Approx(2.0 * std::numbers::pi * torque / size.pitch.value()));
}

TEST_CASE("a core yields at its area times the metal's yield strength", "[models][parts]") {
  Screw screw = cortical("HA 3.5");
  screw.material.yield_strength = 553.0 * mpa;  // what 2500 N bring in this core, worked by hand
  REQUIRE(core_yield(screw));
  CHECK(core_yield(screw)->value() == Approx(2500.0).epsilon(1e-3));
  screw.material.yield_strength.reset();
  CHECK_FALSE(core_yield(screw));
}

TEST_CASE("a preload counts before a torque, and a torque before half the pull-out strength", "[models][parts]") {
  Screw screw = cortical("HA 3.5");
  CHECK(tightened_force(screw, 4.0 * mm).value() == Approx(0.5 * 1711.0).epsilon(3e-4));
  CHECK(tightened_force(screw, 1.7 * mm).value() == Approx(0.5 * 1711.0 * 1.7 / 4.0).epsilon(3e-4));
  screw.insertion_torque = 1100.0 * newton_mm;
  CHECK(tightened_force(screw, 4.0 * mm) == preload_of_torque(screw.size, 1100.0 * newton_mm));
  screw.preload = 730.0 * newton;
  CHECK(tightened_force(screw, 4.0 * mm).value() == 730.0);
}

TEST_CASE("an eccentric screw slides by its thread's size unless told otherwise", "[models][parts]") {
  // 1.0 mm for 3.5 and 4.5 mm screws, 0.8 mm for 2.7 mm, 0.6 mm for 2.0 mm: customary, from memory.
  CHECK(tightened_slide(cortical("HA 4.5")).value() == 1.0);
  CHECK(tightened_slide(cortical("HA 3.5")).value() == 1.0);
  CHECK(tightened_slide(cortical("HA 2.7")).value() == 0.8);
  CHECK(tightened_slide(cortical("HA 2.0")).value() == 0.6);
  CHECK(tightened_slide(cortical("HA 1.5")).value() == 0.6);
  Screw screw = cortical("HA 2.7");
  screw.slide = 0.35 * mm;
  CHECK(tightened_slide(screw).value() == 0.35);
}
