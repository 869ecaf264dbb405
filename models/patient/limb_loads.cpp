#include "models/patient/limb_loads.h"

#include "models/patient/allometry.h"

#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

constexpr double half_root = 0.5 * std::numbers::sqrt2;

// Beam theory with 17 GPa along the bone and a shear modulus of 4.5 GPa (3.3 to 5.7 published) throughout.
//
// Radius. No moment of a dog's radius is published. Its strains at the trot, +1500 cranially (Burr et al. 1985)
// and -2400 caudally (from memory), on a section of 14 x 10 mm, wall 2.4 mm, of a dog of 30 kg (from memory) are
// 14.1 mm of bending by body weight and 1.9 times the weight along the bone, over a force on the paw of 1.12;
// low: +625 at the walk; high: the 2400 alone on a bone bent only. The ulna bears its own share beside it.
LimbLoads radius_loads() {
  LimbLoads loads;
  loads.reference_diameter = 10.0 * mm;
  loads.axial = {
      1.0, 1.7, 2.4, LoadEvidence::memory,
      "derived by beam theory from strains of its cranial and caudal side at the trot, the cranial one as Burr "
      "et al. 1985, J Biomech 18:189, cites it, the caudal one and the section from memory"};
  loads.bending = {
      8.0, 12.8, 15.5, LoadEvidence::cited,
      "derived by beam theory from 625 to 1500 microstrain of its cranial side, as Burr et al. 1985, J Biomech "
      "18:189, cites them; caudal strain and section from memory"};
  loads.torsion = {0.9, 1.8, 3.8, LoadEvidence::none,
                   "no source: as if the principal strains ran 5 to 10 degrees to the shaft (a choice of this "
                   "program)"};
  loads.side = {
      0.0, 1.0, "cranial", LoadEvidence::cited,
      "in dogs (Burr et al. 1985), goats (Biewener & Taylor 1986, J Exp Biol 123:383) and horses (Turner et al. "
      "1975, Am J Vet Res)"};
  return loads;
}

// Humerus. Nothing is published of dogs or cats: taken like the femur, a proximal bone that lies oblique too, with
// wider bands.
LimbLoads humerus_loads() {
  const char* const likeness = "no source: nothing is published of the humerus; likened to the femur";
  LimbLoads loads;
  loads.reference_diameter = 14.65 * mm;
  loads.axial = {1.0, 1.7, 3.0, LoadEvidence::none, likeness};
  loads.bending = {5.0, 10.0, 20.0, LoadEvidence::none, likeness};
  loads.torsion = {4.0, 8.0, 16.0, LoadEvidence::none, likeness};
  loads.side = {1.0, 0.0, "lateral", LoadEvidence::none, "no source: likened to the femur"};
  loads.other_sides = {{0.0, 1.0, "cranial", LoadEvidence::none, "no source"},
                       {0.0, -1.0, "caudal", LoadEvidence::none, "no source"}};
  return loads;
}

// Femur. Page et al. 1993 (abstract): torsion 1.6 N m measured at the walk, which is 20, 16 or 12 mm over the
// force on the paw in a dog of 20, 25 or 35 kg (its mass is not in the abstract); from the turn of its strains, 29
// degrees at 458, 12.5 mm at 25 kg. Bending from its cortical strains, medial -300 to -502 and tension +250 to
// +458; axial force so that the mean of both sides comes out, 0.5 times the weight at the walk, up to the hip's
// 1.65. Diameter 14.65 mm: 25 kg by femur_diameter.
LimbLoads femur_loads() {
  LimbLoads loads;
  loads.reference_diameter = 14.65 * mm;
  loads.axial = {
      0.75, 1.25, 4.1, LoadEvidence::derived,
      "derived by beam theory from strains of both sides, high: the hip's force of 1.65 times the weight; Page "
      "et al. 1993, J Biomech 26:571, abstract, size of the dogs from memory"};
  loads.bending = {
      7.0, 10.0, 20.0, LoadEvidence::derived,
      "derived by beam theory from strains of both sides, Page et al. 1993, J Biomech 26:571, abstract, size of "
      "the dogs from memory"};
  loads.torsion = {7.5, 12.5, 20.0, LoadEvidence::abstract,
                   "1.6 N m measured at the walk and, within 25 %, what its strains' turn of 29 degrees comes "
                   "to; Page et al. 1993, J Biomech 26:571, abstract, size of the dogs from memory"};
  loads.side = {1.0, 0.0, "lateral", LoadEvidence::abstract,
                "the medial side is compressed, Page et al. 1993, abstract; bending the other way has no source"};
  return loads;
}

// Tibia. Yoshikawa et al. 1994, nine foxhounds (27 kg, from memory) at 0.845 times the weight on each paw: the
// outline of its fig 7A, 15.7 x 15.7 mm, I 2850, J 5180 mm4; shear 670, 920 and 1250 microstrain are 9, 12 and 17
// mm of torsion, a gradient of 71.5 microstrain/mm and the nine dogs' mean 15.5 and 17.6 mm of bending; low and
// high: about a standard error of the nine. (By femur_diameter the same dogs have a tibia of 13.2 mm; arms over
// that would be a fifth larger, within the bands.) The axial force cannot be had from it: low is by statics, high
// is running (2.8 to 6.9 times the weight, Rubin & Lanyon 1984, J Theor Biol 107:321, abstract).
// By 6.67 GPa, the shear modulus of the bone that cases are written with (ultrasound, from memory; machine tests
// of bone give less), the same shear strains are 13, 18 and 25 mm of torsion: the band reaches that far.
LimbLoads tibia_loads() {
  LimbLoads loads;
  loads.reference_diameter = 15.7 * mm;
  loads.axial = {
      1.25, 2.0, 3.0, LoadEvidence::none,
      "no source for the tibia: between statics and the 2.8 to 6.9 times the weight of any limb bone in fast "
      "running, Rubin & Lanyon 1984, J Theor Biol 107:321, abstract"};
  loads.bending = {
      10.0, 17.0, 23.0, LoadEvidence::derived,
      "derived by beam theory from strains of nine foxhounds, Yoshikawa et al. 1994, J Exp Biol 188:217, read "
      "in full, their mass from memory"};
  loads.torsion = {
      9.0, 12.0, 25.0, LoadEvidence::derived,
      "derived by beam theory from shear strains of 670 to 1250 in nine foxhounds, Yoshikawa et al. 1994, J Exp "
      "Biol 188:217, read in full, their mass from memory, high: by the shear modulus of this program's bone; the "
      "principal tension runs 30 to 60 degrees to the "
      "shaft in two dogs, Bouvier & Hylander 1984, Acta Anat 118:187, abstract"};
  loads.side = {half_root, half_root, "craniolateral", LoadEvidence::derived,
                "between the two that are published, as in horses (Turner et al. 1975, Am J Vet Res)"};
  loads.other_sides = {
      {0.0, 1.0, "cranial", LoadEvidence::abstract, "at a free walk, Matushek et al. 1988, VCOT 1:58, abstract"},
      {1.0, 0.0, "lateral", LoadEvidence::read_in_full,
       "uphill on the hind legs, Yoshikawa et al. 1994, J Exp Biol 188:217"}};
  return loads;
}

LimbLoads dog_loads(LongBone bone) {
  switch (bone) {
    case LongBone::radius:
      return radius_loads();
    case LongBone::humerus:
      return humerus_loads();
    case LongBone::femur:
      return femur_loads();
    case LongBone::tibia:
      break;
  }
  return tibia_loads();
}

}  // namespace

std::string_view name_of(LoadEvidence evidence) {
  switch (evidence) {
    case LoadEvidence::read_in_full:
      return "read in full";
    case LoadEvidence::abstract:
      return "abstract";
    case LoadEvidence::cited:
      return "as cited by a text read in full";
    case LoadEvidence::derived:
      return "derived by beam theory";
    case LoadEvidence::memory:
      return "from memory";
    case LoadEvidence::none:
      break;
  }
  return "no source";
}

const LimbLoad& LimbLoads::part(LoadPart part) const {
  return part == LoadPart::axial ? axial : part == LoadPart::bending ? bending : torsion;
}

LimbLoads limb_loads(Species species, LongBone bone) {
  LimbLoads loads = dog_loads(bone);
  if (species == Species::dog) return loads;
  for (LimbLoad* load : {&loads.axial, &loads.bending, &loads.torsion}) {
    if (load->evidence != LoadEvidence::none) load->source = "no source in cats; of dogs " + load->source;
    load->evidence = LoadEvidence::none;
  }
  loads.side.evidence = LoadEvidence::none;
  for (TensionSide& side : loads.other_sides) side.evidence = LoadEvidence::none;
  return loads;
}

double more_muscle_force(Mass mass) {
  const double factor = std::pow(27.0 / mass.value(), 0.25);
  return factor > 1.1 ? factor : 1.0;
}

Length diameter_for_loads(LongBone bone, const BoneSizes& sizes) {
  const Length craniocaudal = sizes.width_craniocaudal.value;
  return bone == LongBone::radius ? craniocaudal : 0.5 * (craniocaudal + sizes.width_mediolateral.value);
}

}  // namespace gapstrain::models
