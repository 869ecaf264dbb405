#include "models/parts/load_parts.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gapstrain::models;

namespace {

LoadCase pressed_beside() {
  LoadCase load;
  load.axial_compression = 100.0 * newton;
  load.ball_offset_z = -5.0 * mm;
  load.bending_z = 40.0 * newton_mm;
  load.torsion = 300.0 * newton_mm;
  return load;
}

}  // namespace

TEST_CASE("a part of a load is changed with the moments of the others as they are", "[models][parts]") {
  const LoadCase load = pressed_beside();
  const LoadCase axial = with_part(load, LoadPart::axial, 2.0), bending = with_part(load, LoadPart::bending, 3.0),
                 torsion = with_part(load, LoadPart::torsion, 0.5);
  CHECK(axial.axial_compression.value() == 200.0);
  CHECK((axial.axial_compression * axial.ball_offset_z).value() == Approx(-500.0));
  CHECK(axial.bending_z == load.bending_z);
  CHECK(bending.axial_compression == load.axial_compression);
  CHECK(bending.ball_offset_z.value() == Approx(-15.0));
  CHECK(bending.bending_z.value() == Approx(120.0));
  CHECK(bending.torsion == load.torsion);
  CHECK(torsion.torsion.value() == Approx(150.0));
  CHECK(torsion.ball_offset_z == load.ball_offset_z);
}

TEST_CASE("a load has the parts that can be larger or smaller by themselves", "[models][parts]") {
  LoadCase load = pressed_beside();
  for (const LoadPart part : load_parts) CHECK(has_part(load, part));
  load.bending_z = 0.0 * newton_mm;
  CHECK(has_part(load, LoadPart::bending));  // by its line
  load.supports = cantilever();              // which has no line of two balls
  CHECK_FALSE(has_part(load, LoadPart::bending));
  load.torsion = 0.0 * newton_mm;
  CHECK_FALSE(has_part(load, LoadPart::torsion));
  load.line = LoadLine{};  // sets bending and axial force at once
  CHECK_FALSE(has_part(load, LoadPart::axial));
}

TEST_CASE("half of a part's sizes lie below the one entered, all within its band", "[models][parts]") {
  const PartBand band{0.5, 3.0};
  CHECK(part_factor(band, 0.5) == 1.0);
  CHECK(part_factor(band, 0.0) == Approx(0.5));
  CHECK(part_factor(band, 1.0) == Approx(3.0));
  CHECK(part_factor(band, 0.25) == Approx(std::sqrt(0.5)));
  CHECK(part_factor(band, 0.75) == Approx(std::sqrt(3.0)));
  for (const double probability : {0.0, 0.3, 0.9}) CHECK(part_factor({}, probability) == 1.0);
}
