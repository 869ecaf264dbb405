#include "models/patient/allometry.h"
#include "models/patient/gait.h"
#include "models/patient/starting_plate.h"
#include "models/rules/bounds.h"
#include "tests/models/geometry/sample_bones.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gapstrain::models;
using namespace gapstrain::tests;

namespace {

Bone estimated(LongBone name, double mass) {
  const BoneSizes sizes = complete_sizes({Species::dog, name, mass * kilogram}, {});
  return bone(sizes.length.value.value(),
              {station(0.5 * sizes.length.value.value(), sizes.width_mediolateral.value.value(),
                       sizes.width_craniocaudal.value.value(), sizes.cortex.value.value())});
}

Fracture fracture(const Bone& bone, double gap, FracturePattern pattern = FracturePattern::simple) {
  Fracture fracture;
  fracture.position = 0.5 * bone.length;
  fracture.gap = gap * mm;
  fracture.pattern = pattern;
  return fracture;
}

StartingPlate choose(LongBone name, const Bone& bone, const Fracture& fracture, Treatment treatment,
                     double mass = 18.0) {
  const Patient patient{Species::dog, name, mass * kilogram};
  const auto loads = gait_loads(patient, complete_sizes(patient, {}), usual_aspect(name));
  return choose_plate(name, bone, fracture, treatment, loads.back().load);
}

double place(const StartingPlate& plate, int hole) {
  const double half = 0.5 * (plate.middle_spacing - plate.pitch).value();
  const double steps = hole - 0.5 * (plate.holes + 1);
  return (plate.proximal_end + 0.5 * plate.length).value() + steps * plate.pitch.value() +
         (steps > 0.0 ? half : -half);
}

}  // namespace

TEST_CASE("screws stay below 30 % of the bone's width and clear of the fracture", "[models][patient]") {
  for (const LongBone name : {LongBone::humerus, LongBone::radius, LongBone::femur, LongBone::tibia})
    for (const double mass : {4.0, 8.0, 18.0, 30.0, 60.0})
      for (const Treatment treatment : {Treatment::bridging, Treatment::compression}) {
        const Bone bone = estimated(name, mass);
        const bool compress = treatment == Treatment::compression;
        const Fracture cut = fracture(bone, compress ? 0.5 : 2.0);
        const StartingPlate plate = choose(name, bone, cut, treatment, mass);
        INFO(name_of(name) << " " << mass << " kg, " << (compress ? "pressed" : "bridged"));
        const double thread = plate.screw_size.thread_diameter.value();
        const auto& station = bone.stations.front();
        const double width =
            (plate.aspect == Aspect::cranial ? station.width_mediolateral : station.width_craniocaudal).value();
        CHECK(thread <= 0.30 * width);
        CHECK(plate.width.value() <= width);
        CHECK(plate.length <= 0.8 * bone.length);
        CHECK(plate.length >= 8.0 * cut.gap);
        for (const auto& [holes, side] : {std::pair{plate.proximal, -1.0}, std::pair{plate.distal, 1.0}}) {
          REQUIRE(holes.size() == 3);
          CHECK(holes.back() == (side < 0.0 ? 1 : plate.holes));
          for (const int hole : holes)
            CHECK(side * (place(plate, hole) - cut.position.value()) >= 0.5 * cut.gap.value() + 1.5 * thread);
        }
        CHECK(plate.compression_hole == (compress ? plate.distal.front() : 0));
        CHECK((plate.slot_length > plate.hole_diameter) == compress);
        if (compress) CHECK(plate.slide > cut.gap);
        if (!compress) CHECK(plate.distal.front() - plate.proximal.front() >= 3);  // two empty over the fracture
        CHECK(plate.reasons.size() + plate.cautions.size() >= 3);
      }
}

TEST_CASE("a longer comminuted zone gets a longer plate, as far as the bone has room", "[models][patient]") {
  const Bone bone = estimated(LongBone::radius, 4.0);
  const auto plate = [&](double zone) {
    return choose(LongBone::radius, bone, fracture(bone, zone, FracturePattern::comminuted), Treatment::bridging,
                  4.0);
  };
  CHECK(plate(10.0).length.value() >= 30.0);
  CHECK(plate(22.0).length > plate(10.0).length);
  CHECK(plate(22.0).length.value() >= 66.0);
  CHECK(plate(22.0).cautions.empty());
  const StartingPlate too_short = plate(30.0);
  CHECK(too_short.length.value() < 90.0);
  REQUIRE(too_short.cautions.size() == 1);
  CHECK(too_short.cautions.front().find("at least 3 for a comminuted fracture, the upper end of 2 to 3") !=
        std::string::npos);
  // Short of what a plate to begin from is looked for at, it does not break the rule: that is below 2.
  CHECK(too_short.length.value() > comminuted_span.least * 30.0);
  CHECK(begin_with_comminuted_span == comminuted_span.ample);
}

TEST_CASE("a fracture off the middle moves the plate, not beyond the bone", "[models][patient]") {
  const Bone bone = estimated(LongBone::radius, 18.0);
  Fracture cut = fracture(bone, 2.0);
  cut.position = 0.6 * bone.length;
  const StartingPlate plate = choose(LongBone::radius, bone, cut, Treatment::bridging);
  CHECK(plate.proximal_end + plate.length <= 0.951 * bone.length);
  CHECK(place(plate, plate.proximal.front()) < cut.position.value());
  CHECK(place(plate, plate.distal.front()) > cut.position.value());
}

TEST_CASE("what cannot be plated by these rules is refused with the reason", "[models][patient]") {
  const Bone sound = estimated(LongBone::radius, 18.0);
  const auto refuse = [](const Bone& bone, const Fracture& fracture, Treatment treatment,
                         const std::string& reason) {
    CHECK_THROWS_WITH(choose(LongBone::radius, bone, fracture, treatment), Catch::Contains(reason));
  };
  Fracture near_end = fracture(sound, 2.0);
  near_end.position = 0.93 * sound.length;
  refuse(sound, near_end, Treatment::bridging, "The distal fragment gets");
  refuse(sound, fracture(sound, 120.0, FracturePattern::comminuted), Treatment::bridging, "clear of the fracture");
  refuse(sound, fracture(sound, 5.0, FracturePattern::comminuted), Treatment::compression, "bridge it");
  refuse(sound, fracture(sound, 2.0), Treatment::neutralisation, "lag screws");
  refuse(sound, fracture(sound, 3.0), Treatment::compression, "Reduce the fragments by hand or with a clamp");
  Fracture oblique = fracture(sound, 0.5);
  oblique.obliquity = 31.0 * degree;
  refuse(sound, oblique, Treatment::compression, "up to 30 deg");
  refuse(round_bone(100.0, 4.0, 0.7), fracture(round_bone(100.0, 4.0, 0.7), 0.5), Treatment::bridging,
         "needs 4.55 mm");
  refuse(round_bone(40.0, 9.0, 1.5), fracture(round_bone(40.0, 9.0, 1.5), 0.5), Treatment::bridging,
         "shortest plate");
}

TEST_CASE("a gap beyond a compression screw's travel is advised on, not refused alone", "[models][patient]") {
  const Bone bone = estimated(LongBone::radius, 18.0);
  const StartingPlate pressed = choose(LongBone::radius, bone, fracture(bone, 0.7), Treatment::compression);
  CHECK(pressed.cautions.empty());
  const StartingPlate open = choose(LongBone::radius, bone, fracture(bone, 1.0), Treatment::compression);
  REQUIRE_FALSE(open.cautions.empty());
  CHECK_THAT(open.cautions.back(),
             Catch::StartsWith("NOTHING IS PRESSED here.") && Catch::Contains("0.75 mm or less"));
}

TEST_CASE("a heavier patient on the same bone gets a stronger plate, then a warning", "[models][patient]") {
  const Bone bone = estimated(LongBone::radius, 18.0);
  const auto plate = [&](double mass) {
    return choose(LongBone::radius, bone, fracture(bone, 2.0), Treatment::bridging, mass);
  };
  const StartingPlate light = plate(8.0), usual = plate(14.0), heavy = plate(70.0);
  CHECK(light.thickness < usual.thickness);
  CHECK(light.cautions.empty());
  CHECK(usual.cautions.empty());
  CHECK(heavy.thickness == usual.thickness);
  REQUIRE(heavy.cautions.size() == 1);
  CHECK(heavy.cautions.front().find("weak for this patient") != std::string::npos);
}
