#include "models/patient/allometry.h"
#include "models/patient/limb_loads.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gapstrain::models;

namespace {

constexpr LongBone bones[] = {LongBone::humerus, LongBone::radius, LongBone::femur, LongBone::tibia};

}  // namespace

TEST_CASE("bands rise from low to high and say what stands behind them", "[models][patient]") {
  for (const Species species : {Species::dog, Species::cat})
    for (const LongBone bone : bones) {
      const LimbLoads loads = limb_loads(species, bone);
      INFO(name_of(species) << " " << name_of(bone));
      for (const LoadPart part : load_parts) {
        const LimbLoad& load = loads.part(part);
        CHECK(load.low > 0.0);
        CHECK(load.low <= load.middle);
        CHECK(load.middle <= load.high);
        CHECK_FALSE(load.source.empty());
        CHECK((load.evidence == LoadEvidence::none) == load.source.starts_with("no source"));
      }
      std::vector<TensionSide> sides = loads.other_sides;
      sides.push_back(loads.side);
      for (const TensionSide& side : sides) CHECK(std::hypot(side.lateral, side.cranial) == Approx(1.0));
    }
}

TEST_CASE("nothing of a cat's bones or of a humerus passes for measured", "[models][patient]") {
  for (const LongBone bone : bones)
    for (const LoadPart part : load_parts) {
      CHECK(limb_loads(Species::cat, bone).part(part).evidence == LoadEvidence::none);
      if (bone == LongBone::humerus) CHECK(is_weak(limb_loads(Species::dog, bone).part(part).evidence));
    }
}

TEST_CASE("femur and tibia are twisted by the same share of their diameter", "[models][patient]") {
  // Two sources that know nothing of each other: torque of dogs' femora, Page et al. 1993, J Biomech 26:571
  // (abstract), and shear strain of dogs' tibiae, Yoshikawa et al. 1994, J Exp Biol 188:217.
  const auto share = [](LongBone bone) {
    const LimbLoads loads = limb_loads(Species::dog, bone);
    return loads.torsion.middle / loads.reference_diameter.value();
  };
  CHECK(share(LongBone::femur) == Approx(share(LongBone::tibia)).epsilon(0.15));
  CHECK(share(LongBone::radius) < 0.3 * share(LongBone::tibia));
}

TEST_CASE("tibial arms come of the published strains by beam theory", "[models][patient]") {
  // Yoshikawa et al. 1994, J Exp Biol 188:217, nine foxhounds: outline of fig 7A, I 2850, J 5180 mm4, outer radius
  // 7.85 mm; shear of the compressed side 920 microstrain; strain's gradient of one dog 71.5 microstrain/mm, and
  // of the nine by Mohr (935 + 340) / 2 over the radius. 27 kg (from memory), 0.845 of the weight on the paw; 17
  // and 4.5 GPa.
  const double on_paw = 0.845 * 27.0 * 9.81;
  const LimbLoads tibia = limb_loads(Species::dog, LongBone::tibia);
  CHECK(tibia.torsion.middle == Approx(4500.0 * 920e-6 * 5180.0 / 7.85 / on_paw).epsilon(0.03));
  CHECK(tibia.torsion.low == Approx(4500.0 * 670e-6 * 5180.0 / 7.85 / on_paw).epsilon(0.03));
  CHECK(tibia.torsion.high == Approx(6670.0 * 1250e-6 * 5180.0 / 7.85 / on_paw).epsilon(0.03));
  const double one = 17000.0 * 2850.0 * 71.5e-6 / on_paw;
  const double nine = 17000.0 * 2850.0 * 0.5 * (935e-6 + 340e-6) / 7.85 / on_paw;
  CHECK(tibia.bending.middle > one);
  CHECK(tibia.bending.middle < nine);
}

TEST_CASE("arms go by the radius's craniocaudal width, and by the mean of both of other bones",
          "[models][patient]") {
  BoneSizes sizes;
  sizes.width_mediolateral.value = 14.0 * mm;
  sizes.width_craniocaudal.value = 10.0 * mm;
  CHECK(diameter_for_loads(LongBone::radius, sizes).value() == 10.0);
  CHECK(diameter_for_loads(LongBone::tibia, sizes).value() == 12.0);
}
