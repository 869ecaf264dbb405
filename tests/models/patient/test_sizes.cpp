#include "models/patient/allometry.h"
#include "models/patient/magnification.h"
#include "models/patient/union_time.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>
#include <limits>

using namespace gapstrain::models;

TEST_CASE("a marker of 25 mm seen as 27.5 mm is a magnification of 110 %", "[models][patient]") {
  const Magnification found = magnification(25.0 * mm, 27.5 * mm);
  CHECK(found.factor == Approx(1.10));
  CHECK(true_length(165.0 * mm, found).value() == Approx(150.0));
  // By hand: two edges of 0.2 mm each in 27.5 mm are 1.03 %, a marker 20 mm out of plane at 1 m is 2 %.
  CHECK(found.spread == Approx(0.0225).epsilon(2e-3));
}

TEST_CASE("a marker's size in the image bounds the magnification from both sides", "[models][patient]") {
  CHECK(magnification(25.0 * mm, 25.0 * mm).factor == 1.0);  // of a calibrated image
  CHECK(magnification(20.0 * mm, 30.0 * mm).factor == Approx(1.5));
  CHECK_THROWS_WITH(magnification(25.0 * mm, 24.9 * mm), Catch::Contains("smaller than it is"));
  CHECK_THROWS_WITH(magnification(20.0 * mm, 30.1 * mm), Catch::Contains("up to 150 %"));
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double wrong : {0.0, -25.0, nan, std::numeric_limits<double>::infinity()}) {
    CHECK_THROWS_AS(magnification(wrong * mm, 27.5 * mm), PatientError);
    CHECK_THROWS_AS(magnification(25.0 * mm, wrong * mm), PatientError);
  }
}

TEST_CASE("a femur's size follows the published exponents", "[models][patient]") {
  // Alexander et al. 1979, J Zool 189:305: length as mass^0.35, diameter as mass^0.36. That the sizes themselves
  // are right is asked for in the next case.
  const auto exponent = [](Length of_ten, Length of_one) { return std::log10((of_ten / of_one).value()); };
  for (const double mass : {0.5, 3.0, 7.0}) {
    INFO(mass << " kg");
    CHECK(exponent(femur_length(10.0 * mass * kilogram), femur_length(mass * kilogram)) == Approx(0.35));
    CHECK(exponent(femur_diameter(10.0 * mass * kilogram), femur_diameter(mass * kilogram)) == Approx(0.36));
  }
}

TEST_CASE("estimated bones have the size of remembered ones within their spread", "[models][patient]") {
  // A dog of 30 kg, a toy breed's radius of 2 to 3 kg: ranges from memory. A cat's femur of 8.4 to 8.8 mm: screw
  // holes of 1.5 to 2.7 mm that were 17.8 to 31.1 % of it, Hoon et al. 2021, Vet Comp Orthop Traumatol.
  struct Row {
    Patient patient;
    double shortest, longest, narrowest, widest;  // mm
  };
  const Row rows[] = {
      {{Species::dog, LongBone::femur, 30.0 * kilogram}, 195, 215, 15, 17},
      {{Species::dog, LongBone::tibia, 30.0 * kilogram}, 200, 220, 13, 15},
      {{Species::dog, LongBone::radius, 30.0 * kilogram}, 180, 200, 10, 14},
      {{Species::dog, LongBone::radius, 2.5 * kilogram}, 0, 1e3, 3.5, 7},
      {{Species::cat, LongBone::femur, 5.0 * kilogram}, 0, 1e3, 8.4, 8.8},
  };
  for (const Row& row : rows) {
    const BoneSizes sizes = complete_sizes(row.patient, {});
    INFO(name_of(row.patient.species) << " " << name_of(row.patient.bone));
    REQUIRE(sizes.length.guess);
    REQUIRE(sizes.cortex.guess);
    const double spread = sizes.length.guess->spread;
    CHECK(sizes.length.value.value() * (1.0 + spread) >= row.shortest);
    CHECK(sizes.length.value.value() * (1.0 - spread) <= row.longest);
    for (const auto& width : {sizes.width_mediolateral, sizes.width_craniocaudal}) {
      CHECK(width.value.value() * (1.0 + spread) >= row.narrowest);
      CHECK(width.value.value() * (1.0 - spread) <= row.widest);
    }
    CHECK(sizes.width_mediolateral.value >= sizes.width_craniocaudal.value);
  }
  const BoneSizes toy = complete_sizes({Species::dog, LongBone::radius, 2.5 * kilogram}, {});
  CHECK(toy.cortex.value.value() == Approx(1.0).margin(0.2));  // 0.8 to 1.2 mm, from memory
}

TEST_CASE("what was measured stays, and the rest follows from it before it follows from the mass",
          "[models][patient]") {
  const Patient patient{Species::dog, LongBone::radius, 18.0 * kilogram};
  MeasuredBone measured;
  measured.width_mediolateral = 14.0 * mm;
  const BoneSizes sizes = complete_sizes(patient, measured);
  CHECK_FALSE(sizes.width_mediolateral.guess);
  CHECK(sizes.width_mediolateral.value.value() == 14.0);
  CHECK(sizes.width_craniocaudal.value.value() == Approx(10.0));  // 14 x 10 mm at 30 kg, from memory
  CHECK(sizes.cortex.value.value() == Approx(0.2 * 12.0));        // a canal of 0.6 of the width
  CHECK(sizes.cortex.guess->measure.find("craniocaudal view") != std::string::npos);
  CHECK(sizes.width_craniocaudal.guess->measure.find("mediolateral view") != std::string::npos);
  measured.cortex = 1.7 * mm;
  measured.width_craniocaudal = 9.1 * mm;
  measured.length = 151.0 * mm;
  const BoneSizes whole = complete_sizes(patient, measured);
  for (const auto& size : {whole.length, whole.width_mediolateral, whole.width_craniocaudal, whole.cortex})
    CHECK_FALSE(size.guess);
}

TEST_CASE("masses outside the laws are refused", "[models][patient]") {
  const auto refused = [](Species species, double mass) {
    try {
      complete_sizes({species, LongBone::tibia, mass * kilogram}, {});
    } catch (const PatientError&) {
      return true;
    }
    return false;
  };
  CHECK_FALSE(refused(Species::dog, 1.5));
  CHECK_FALSE(refused(Species::dog, 80.0));
  CHECK_FALSE(refused(Species::cat, 10.0));
  CHECK(refused(Species::dog, 1.4));
  CHECK(refused(Species::dog, 81.0));
  CHECK(refused(Species::cat, 1.9));
  CHECK(refused(Species::cat, 10.5));
  CHECK(refused(Species::dog, 0.0));
  CHECK(refused(Species::dog, -18.0));
  CHECK(refused(Species::dog, std::numeric_limits<double>::quiet_NaN()));
}

TEST_CASE("fractures take longer to heal with age", "[models][patient]") {
  double before = 0.0;
  for (const double months : {2.0, 4.0, 9.0, 48.0}) {
    const UnionTime time = union_under_plate(months);
    CHECK(time.weeks_from < time.weeks_to);
    CHECK(time.weeks_from > before);
    CHECK(time.source.find("from memory") != std::string::npos);
    before = time.weeks_from;
  }
  // The weeks are the months that the source is said to give, of 52 / 12 weeks each.
  for (const double months : {3.0, 5.9, 6.0, 11.9, 12.0, 360.0}) {
    const UnionTime time = union_under_plate(months);
    INFO(months << " months: " << time.source);
    double from = 0.0, to = 0.0;
    REQUIRE(std::sscanf(time.source.c_str(), "%*[^:]: %lf to %lf months at", &from, &to) == 2);
    CHECK(time.weeks_from == Approx(from * 52.0 / 12.0).margin(0.5));
    CHECK(time.weeks_to == Approx(to * 52.0 / 12.0).margin(0.5));
  }
  CHECK_THROWS_AS(union_under_plate(0.0), PatientError);
  CHECK_THROWS_AS(union_under_plate(361.0), PatientError);
}
