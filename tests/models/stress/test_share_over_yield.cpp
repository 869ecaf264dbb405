// The share of the plate's area that passes its yield strength, counted on fields whose share is known.
#include "models/stress/plate_stress.h"
#include "tests/models/constructs.h"
#include "tests/models/measures/solved_construct.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace gapstrain {

namespace {

using namespace models;

constexpr double yield = 800.0, plate_length = 112.0, width = 8.0, hole = 3.0;

// The plate's own mesh under made-up fields; its forces play no part in the share.
struct PlateField {
  tests::SolvedConstruct whole;
  BodyStress stress;

  PlateField() : whole(tests::solve_only(coarse())) {
    const Eigen::MatrixX3d none = Eigen::MatrixX3d::Zero(only(whole.assembly.plates).mesh.along_across.rows(), 3);
    stress = {none, none, none};
  }
  static Construct coarse() {
    Construct construct = tests::plated_tube();
    construct.loads.resize(1);
    construct.mesh.refinement = 0.5;
    return construct;
  }
  double share() const {
    return measure_plate(whole.assembly, whole.chosen, whole.solved.states[0].pressed.solution, stress)
        .share_over_yield;
  }
  auto along() const { return only(whole.assembly.plates).mesh.along_across.col(0); }
};

constexpr double plate_area = plate_length * width - 10.0 * std::numbers::pi / 4.0 * hole * hole;

}  // namespace

TEST_CASE("all of the plate or nothing of it yields in an even field", "[models][findings][yield]") {
  PlateField field;
  field.stress.top.col(0).setConstant(yield * 0.999);
  CHECK(field.share() == 0.0);
  field.stress.top.col(0).setConstant(yield * 1.001);
  CHECK(field.share() == Approx(1.0).epsilon(1e-12));
  // Shear counts by von Mises: yield / sqrt(3).
  field.stress.top.setZero();
  field.stress.bottom.col(2).setConstant(yield / std::sqrt(3.0) * 1.001);
  CHECK(field.share() == Approx(1.0).epsilon(1e-12));
  field.stress.bottom.col(2).setConstant(yield / std::sqrt(3.0) * 0.999);
  CHECK(field.share() == 0.0);
}

TEST_CASE("in a field that rises along the plate the share over yield is that of its far end",
          "[models][findings][yield]") {
  // Stress 1000 MPa x / L passes 800 MPa beyond x = 0.8 L = 89.6 mm, which is between two holes. Beyond lie 22.4
  // mm of plate with two holes (at 94.5 and 105.5 mm). A node counts for the parts of its cells, so the edge may
  // be off by half a cell, 8 mm / 3.5 at refinement 0.5: 1.1 mm of 112.
  PlateField field;
  field.stress.top.col(0) = 1000.0 / plate_length * field.along();
  const double beyond = (22.4 * width - 2.0 * std::numbers::pi / 4.0 * hole * hole) / plate_area;
  const double half_a_cell = 0.5 * (width / 3.5) * width / plate_area;
  CHECK(field.share() == Approx(beyond).margin(half_a_cell));
  // The face does not matter, nor does the sign.
  const double on_top = field.share();
  std::swap(field.stress.top, field.stress.bottom);
  field.stress.bottom *= -1.0;
  CHECK(field.share() == on_top);
}

TEST_CASE("a plate of a strength that is not known has no share over it", "[models][findings][yield]") {
  PlateField field;
  only(field.whole.assembly.construct.plates).material.yield_strength.reset();
  field.stress.top.col(0).setConstant(1e6);
  CHECK(field.share() == 0.0);
}

}  // namespace gapstrain
