#include "models/patient/gait.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gapstrain::models;

namespace {

const LoadCase& load_of(const std::vector<GaitLoad>& loads, Activity activity) {
  return loads.at(static_cast<std::size_t>(activity)).load;
}

}  // namespace

TEST_CASE("shares of body weight lie where force plates found them", "[models][patient]") {
  // Dogs: walk 55 to 70 % fore and 35 to 45 % hind, trot 100 to 125 % and 65 to 80 %; cats: walk 50 to 60 % and 40
  // to 50 %, all from memory. Standing dogs: 60.4 % in front, doi 10.1002/ar.24407.
  struct Row {
    Species species;
    LongBone bone;
    Activity activity;
    double low, high;
  };
  const Row rows[] = {{Species::dog, LongBone::radius, Activity::walk, 0.55, 0.70},
                      {Species::dog, LongBone::humerus, Activity::trot, 1.00, 1.25},
                      {Species::dog, LongBone::tibia, Activity::walk, 0.35, 0.45},
                      {Species::dog, LongBone::femur, Activity::trot, 0.65, 0.80},
                      {Species::cat, LongBone::radius, Activity::walk, 0.50, 0.60},
                      {Species::cat, LongBone::femur, Activity::walk, 0.40, 0.50}};
  for (const Row& row : rows) {
    const PublishedRange share = peak_vertical_force(row.species, row.bone, row.activity);
    CHECK(share.low == row.low);
    CHECK(share.high == row.high);
    CHECK_FALSE(share.source.empty());
  }
  const auto fore = peak_vertical_force(Species::dog, LongBone::radius, Activity::standing);
  const auto hind = peak_vertical_force(Species::dog, LongBone::tibia, Activity::standing);
  CHECK(2.0 * fore.middle() == Approx(0.604).epsilon(1e-9));
  for (const Species species : {Species::dog, Species::cat}) {
    const double in_all = peak_vertical_force(species, LongBone::radius, Activity::standing).middle() +
                          peak_vertical_force(species, LongBone::tibia, Activity::standing).middle();
    CHECK(2.0 * in_all == Approx(1.0));  // four limbs bear the weight
  }
  CHECK(hind.low < hind.high);
}

TEST_CASE("loads of a dog of 27.5 kg are those of design practice", "[models][patient]") {
  // By hand, fore limb at the trot: 1.125 x 27.5 kg x 9.81 N/kg = 303.5 N on the paw; axial 1.25 times that;
  // bending as if it passed 10 mm beside the bone; torsion 0.2 N m/kg on the humerus, a quarter of it on the
  // radius.
  const double on_paw = 1.125 * 27.5 * 9.81;
  const auto humerus = gait_loads({Species::dog, LongBone::humerus, 27.5 * kilogram});
  const LoadCase& trot = load_of(humerus, Activity::trot);
  CHECK(trot.support == Support::ball_joints);
  CHECK(trot.axial_compression.value() == Approx(1.25 * on_paw));
  CHECK((trot.axial_compression * trot.ball_offset_z).value() == Approx(-10.0 * on_paw));
  CHECK(trot.torsion.value() == Approx(5500.0));
  const auto radius = gait_loads({Species::dog, LongBone::radius, 27.5 * kilogram});
  CHECK(load_of(radius, Activity::trot).torsion.value() == Approx(1375.0));
  // Torsion keeps its proportion to the force on the paw.
  CHECK(load_of(humerus, Activity::walk).torsion.value() == Approx(5500.0 * 0.625 / 1.125));
  // Ranges of 1 to 1.25 and 5 to 15 mm, evenly: deviations of 0.125 / 1.125 and of one half, over the root of
  // three.
  CHECK(trot.spread == Approx(0.2957).epsilon(1e-3));
}

TEST_CASE("the load passes the bone at a distance in proportion to its diameter", "[models][patient]") {
  const auto offset = [](double mass) {
    return load_of(gait_loads({Species::dog, LongBone::tibia, mass * kilogram}), Activity::walk)
        .ball_offset_z.value();
  };
  CHECK(offset(55.0) / offset(5.5) == Approx(std::pow(10.0, 0.36)));
}

TEST_CASE("a confined patient walks much, trots little, and every figure says where it comes from",
          "[models][patient]") {
  for (const Species species : {Species::dog, Species::cat})
    for (const LongBone bone : {LongBone::humerus, LongBone::radius, LongBone::femur, LongBone::tibia}) {
      const auto loads = gait_loads({species, bone, 5.0 * kilogram});
      REQUIRE(loads.size() == 3);
      double axial = 0.0;
      for (const GaitLoad& gait : loads) {
        CHECK(gait.load.name == name_of(gait.activity));
        CHECK(gait.load.axial_compression.value() > axial);  // from standing to trot
        axial = gait.load.axial_compression.value();
        CHECK(*gait.load.cycles_per_day < 2000.0);  // the least of free dogs, from memory
        CHECK(gait.load.spread > 0.0);
        CHECK(gait.load.spread < 0.5);
        for (const char* part : {"Peak vertical force", "Axial", "Bending", "Torsion", "Cycles", "Spread"})
          CHECK(std::any_of(gait.sources.begin(), gait.sources.end(),
                            [&](const auto& source) { return source.starts_with(part); }));
      }
      CHECK(*load_of(loads, Activity::walk).cycles_per_day > *load_of(loads, Activity::trot).cycles_per_day);
    }
  CHECK_THROWS_AS(gait_loads({Species::cat, LongBone::femur, 40.0 * kilogram}), PatientError);
}
