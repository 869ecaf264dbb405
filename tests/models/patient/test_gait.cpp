#include "models/patient/gait.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace gapstrain::models;

namespace {

const LoadCase& load_of(const std::vector<GaitLoad>& loads, Activity activity) {
  return loads.at(static_cast<std::size_t>(activity)).load;
}

}  // namespace

TEST_CASE("what the limbs bear over a stride is the weight", "[models][patient]") {
  // The force on a paw rises and falls like half a sine, to its peak; over a stride, the mean of all four is the
  // weight. So the share of the stride that a paw is down is pi / 2 over the sum of the peaks: dogs and cats are
  // seen to keep it down for 0.35 to 0.5 of a trot and 0.55 to 0.8 of a walk (duty factors from memory), all of a
  // stand.
  constexpr double pi = std::numbers::pi;
  for (const Species species : {Species::dog, Species::cat}) {
    INFO(name_of(species));
    const auto sum = [&](Activity activity) {
      return 2.0 * (peak_vertical_force(species, LongBone::radius, activity).middle() +
                    peak_vertical_force(species, LongBone::tibia, activity).middle());
    };
    const double trot = 0.5 * pi / sum(Activity::trot), walk = 0.5 * pi / sum(Activity::walk);
    CHECK(trot > 0.35);
    CHECK(trot < 0.50);
    CHECK(walk > 0.55);
    CHECK(walk < 0.80);
    CHECK(sum(Activity::standing) == Approx(1.0));
  }
}

TEST_CASE("the fore limbs bear more than the hind limbs, by as much as is published", "[models][patient]") {
  // Standing dogs: 60.4 +/- 4.8 % in front, doi 10.1002/ar.24407. Walking cats: fore over hind 1.3 +/- 0.2, Stadig
  // & Bergh 2015, J Feline Med Surg 17:523.
  const auto fore = [](Species species, Activity activity) {
    return peak_vertical_force(species, LongBone::humerus, activity);
  };
  const auto hind = [](Species species, Activity activity) {
    return peak_vertical_force(species, LongBone::femur, activity);
  };
  const PublishedRange dog = fore(Species::dog, Activity::standing);
  CHECK(2.0 * dog.middle() == Approx(0.604).epsilon(1e-9));
  CHECK(dog.high - dog.low == Approx(0.048).epsilon(1e-9));
  const double cat = fore(Species::cat, Activity::walk).middle() / hind(Species::cat, Activity::walk).middle();
  CHECK(cat > 1.1);
  CHECK(cat < 1.5);
  for (const Species species : {Species::dog, Species::cat})
    for (const Activity activity : {Activity::standing, Activity::walk, Activity::trot}) {
      INFO(name_of(species) << ", " << name_of(activity));
      for (const auto& share : {fore(species, activity), hind(species, activity)}) {
        CHECK(share.low < share.high);
        CHECK_FALSE(share.source.empty());
      }
      CHECK(fore(species, activity).middle() > hind(species, activity).middle());
      // Both bones of a limb stand on one paw.
      CHECK(peak_vertical_force(species, LongBone::radius, activity).low == fore(species, activity).low);
      CHECK(peak_vertical_force(species, LongBone::tibia, activity).low == hind(species, activity).low);
    }
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
