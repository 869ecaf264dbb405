#include "models/patient/allometry.h"
#include "models/patient/gait.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

using namespace gapstrain::models;

namespace {

LoadCase load_of(const std::vector<GaitLoad>& loads, Activity activity) {
  return loads.at(static_cast<std::size_t>(activity)).load;
}

// Of a dog, with estimated sizes.
std::vector<GaitLoad> loads_of(LongBone bone, double mass, Aspect aspect) {
  const Patient patient{Species::dog, bone, mass * kilogram};
  return gait_loads(patient, complete_sizes(patient, {}), aspect);
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

TEST_CASE("a femur's loads are the force on the paw times the middle of its table", "[models][patient]") {
  // By hand, hind limb at the walk: 0.40 x 25 kg x 9.81 N/kg = 98.1 N on the paw; axial 1.25 times that; the femur
  // of 25 kg is the table's own, so bending and torsion have its arms of 10 and 12.5 mm. Page et al. 1993, J
  // Biomech 26:571 (abstract), measured 1.6 N m of torsion: 1.23 here, 77 % of it (their dogs' mass is not known).
  const double on_paw = 0.40 * 25.0 * 9.81;
  const GaitLoad walk = loads_of(LongBone::femur, 25.0, Aspect::lateral).at(1);
  CHECK(walk.load.supports == ball_joints());
  CHECK(walk.load.axial_compression.value() == Approx(1.25 * on_paw));
  CHECK(walk.load.torsion.value() == Approx(12.5 * on_paw).epsilon(1e-3));
  // Lateral in tension: the line of the force lies medial, away from a lateral plate.
  CHECK((walk.load.axial_compression * walk.load.ball_offset_z).value() == Approx(-10.0 * on_paw).epsilon(1e-3));
  CHECK(walk.load.ball_offset_y.value() == Approx(0.0).margin(1e-12));
  CHECK(walk.torsion.low == Approx(7.5 / 12.5 * walk.torsion.middle));
  CHECK(walk.torsion.high == Approx(20.0 / 12.5 * walk.torsion.middle));
  CHECK(walk.load.torsion.value() / 1000.0 > 0.75 * 1.6);
  CHECK(walk.load.torsion.value() / 1000.0 < 1.25 * 1.6);
  // 0.35 to 0.45, evenly: a deviation of 0.125 over the root of three. Each part has a band of its own.
  CHECK(walk.load.spread == Approx(0.125 / std::sqrt(3.0)).epsilon(1e-6));
  CHECK(walk.load.torsion_band.low == Approx(7.5 / 12.5));
  CHECK(walk.load.torsion_band.high == Approx(20.0 / 12.5));
  CHECK(walk.load.bending_band.low == Approx(7.0 / 10.0));
  CHECK(walk.load.axial_band.high == Approx(4.1 / 1.25));
}

TEST_CASE("the side that bending stretches does not follow the plate", "[models][patient]") {
  // Strain at the bone's cranial, caudal, lateral and medial side, by aspect of the plate: where it is most
  // stretched.
  struct Row {
    LongBone bone;
    double lateral, cranial;
  };
  for (const Row& row : {Row{LongBone::radius, 0.0, 1.0}, Row{LongBone::femur, 1.0, 0.0},
                         Row{LongBone::tibia, std::sqrt(0.5), std::sqrt(0.5)}})
    for (const Aspect aspect : {Aspect::cranial, Aspect::caudal, Aspect::lateral, Aspect::medial}) {
      const LoadCase load = load_of(loads_of(row.bone, 20.0, aspect), Activity::trot);
      const double y = -load.ball_offset_y.value(), z = -load.ball_offset_z.value();
      // +z and +y by the table in geometry/bone_shape.h.
      const double lateral = aspect == Aspect::cranial   ? -y
                             : aspect == Aspect::caudal  ? y
                             : aspect == Aspect::lateral ? z
                                                         : -z;
      const double cranial = aspect == Aspect::cranial   ? z
                             : aspect == Aspect::caudal  ? -z
                             : aspect == Aspect::lateral ? y
                                                         : -y;
      INFO(name_of(row.bone) << " " << static_cast<int>(aspect));
      const double arm = std::hypot(lateral, cranial);
      CHECK(lateral / arm == Approx(row.lateral).margin(1e-12));
      CHECK(cranial / arm == Approx(row.cranial).margin(1e-12));
    }
}

TEST_CASE("a moment over the body weight is a length and grows with the bone", "[models][patient]") {
  const Patient patient{Species::dog, LongBone::tibia, 20.0 * kilogram};
  BoneSizes sizes = complete_sizes(patient, {});
  const auto moments = [&](const BoneSizes& of, double mass) {
    const Patient other{Species::dog, LongBone::tibia, mass * kilogram};
    const GaitLoad trot = gait_loads(other, of, Aspect::medial).back();
    const LoadCase& load = trot.load;
    const double bending =
        load.axial_compression.value() * std::hypot(load.ball_offset_y.value(), load.ball_offset_z.value());
    CHECK(bending == Approx(trot.bending.middle));
    return std::array{load.torsion.value() / (mass * 9.81), bending / (mass * 9.81),
                      load.axial_compression.value() / (mass * 9.81)};
  };
  const auto once = moments(sizes, 20.0), heavier = moments(sizes, 40.0);
  for (std::size_t k = 0; k < once.size(); ++k) CHECK(heavier[k] == Approx(once[k]));
  for (BoneSize* width : {&sizes.width_mediolateral, &sizes.width_craniocaudal}) width->value = 1.7 * width->value;
  const auto wider = moments(sizes, 20.0);
  CHECK(wider[0] == Approx(1.7 * once[0]));
  CHECK(wider[1] == Approx(1.7 * once[1]));
  CHECK(wider[2] == Approx(once[2]));
}

TEST_CASE("one part of a load is changed and no other", "[models][patient]") {
  const LoadCase load = load_of(loads_of(LongBone::tibia, 20.0, Aspect::medial), Activity::trot);
  const auto parts = [](const LoadCase& of) {
    return std::array{of.axial_compression.value(), (of.axial_compression * of.ball_offset_y).value(),
                      (of.axial_compression * of.ball_offset_z).value(), of.torsion.value()};
  };
  const auto before = parts(load);
  const auto changed = [&](LoadPart part, std::array<double, 4> times) {
    const auto after = parts(with_part(load, part, 1.5));
    for (std::size_t k = 0; k < 4; ++k) CHECK(after[k] == Approx(times[k] * before[k]));
  };
  changed(LoadPart::axial, {1.5, 1.0, 1.0, 1.0});
  changed(LoadPart::bending, {1.0, 1.5, 1.5, 1.0});
  changed(LoadPart::torsion, {1.0, 1.0, 1.0, 1.5});
  const auto cranial = parts(with_side(load, {0.0, 1.0, "cranial", LoadEvidence::none, ""}, Aspect::medial));
  CHECK(cranial[1] == Approx(std::hypot(before[1], before[2])));  // +y is caudal under a medial plate
  CHECK(cranial[2] == Approx(0.0).margin(1e-9));
}

TEST_CASE("a confined patient walks much, trots little, and every figure says where it comes from",
          "[models][patient]") {
  for (const Species species : {Species::dog, Species::cat})
    for (const LongBone bone : {LongBone::humerus, LongBone::radius, LongBone::femur, LongBone::tibia}) {
      const Patient patient{species, bone, 5.0 * kilogram};
      const auto loads = gait_loads(patient, complete_sizes(patient, {}), Aspect::lateral);
      REQUIRE(loads.size() == 3);
      double axial = 0.0;
      for (const GaitLoad& gait : loads) {
        CHECK(gait.load.name == name_of(gait.activity));
        CHECK(gait.load.axial_compression.value() > axial);  // from standing to trot
        axial = gait.load.axial_compression.value();
        CHECK(gait.load.spread > 0.0);
        CHECK(gait.load.spread < 0.5);
        for (const char* part :
             {"Peak vertical force", "Here", "Axial", "Bending", "Torsion", "Arms", "Cycles", "Spread"})
          CHECK(std::any_of(gait.sources.begin(), gait.sources.end(),
                            [&](const auto& source) { return source.starts_with(part); }));
        // What nobody measured is said to be without a source, beside the figure.
        const bool none = species == Species::cat || bone == LongBone::humerus;
        for (const char* part : {"Axial", "Bending", "Torsion"})
          for (const auto& source : gait.sources)
            if (none && source.starts_with(part)) CHECK(source.find("no source") != std::string::npos);
      }
      // Three walks of ten minutes at 1 m/s are 1800 m: at strides of 0.6 m, and of 1 m, a limb's cycles.
      const double walks = *load_of(loads, Activity::walk).cycles_per_day;
      CHECK(walks >= 1800.0 / 1.0);
      CHECK(walks <= 1800.0 / 0.6 + 1e-9);
      CHECK(walks > *load_of(loads, Activity::trot).cycles_per_day);
    }
  const Patient heavy{Species::cat, LongBone::femur, 40.0 * kilogram};
  CHECK_THROWS_AS(gait_loads(heavy, {}, Aspect::lateral), PatientError);
}
