#include "models/evidence/published_lists.h"
#include "models/evidence/trend_measures.h"

namespace gapstrain::models {

namespace {

const std::string stoffel_plate = "Stoffel et al. 2003, Injury 34 Suppl 2:B11";
const std::string tubes_known =
    "12-hole 4.5 mm titanium plate on composite cylinders, gap 6 mm, compression and torsion (from memory)";
const std::string bottlang = "Bottlang et al. 2009, J Bone Joint Surg Am 91:1985";
const std::string surrogate_known =
    "locked plate on a surrogate of strong bone; from memory: 27 mm across, steel plate 17.5 x 5.6 mm, 11 holes, "
    "1 mm "
    "off, gap 10 mm, screws in the first, third, fifth hole of each side";
const std::string surrogate_guessed =
    "wall of 5 mm (7 from memory, too thick for a shell), modulus, length, core of the screws; ends";
const std::string condyles_guessed =
    "a straight tube, sizes, gap of 10 mm, holes; head 40 mm beside the shaft; how condyles were held";

}  // namespace

std::vector<Trend> published_on_plates() {
  using enum Evidence;
  using namespace bench;  // NOLINT: names of models
  return {
      {"plate to bone",
       stoffel_plate,
       from_memory,
       "Six instead of two millimetres off the bone costs roughly 10 to 15 %.",
       tubes_known,
       "cylinders, ends",
       criteria::first_table,
       {shaft, shaft_off},
       in_rigs({on_balls, held_and_guided}, six_off),
       "The bone turns about a plate further away.",
       "Torsion is as published. Compression costs the square of the offset of plate and line, (17.5/21.5)^2 = "
       "0.66, with balls, and as much with ends held. Whatever gives way in line with the plate (mounts, threads) "
       "would make it less."},
      {"plate to bone",
       "Ahmad et al. 2007, Injury 38",
       from_memory,
       "Plate flush and 2 mm off are alike; 5 mm off is clearly less stiff.",
       "locked plate on humerus-like cylinders, compression and torsion (from memory)",
       "sizes, gap, ends",
       criteria::first_table,
       {humerus_flush, humerus_near, humerus_far},
       in_rigs({on_balls, held_and_guided}, flush_and_off),
       "The bone turns about a plate further away.",
       "5 mm as published. 2 mm costs the square of the offset, (12.25/14.25)^2 = 0.74, before anything touches, "
       "and a plate that lies on the bone, hollowed to it here, is pressed on it besides."},
      {"plate to bone",
       "Plate-bone distance and working length of 2.0 mm plates, VCOT 2024 (authors from memory: Evans et al.)",
       seen,
       "1, 1.5 and 3 mm off: no effect in compression bending, less stiff in torsion the further off.",
       "three screws a fragment, four-point bending and torsion",
       "surrogate, gap of 2 mm, holes; grips",
       criteria::first_table,
       {toy, toy_off},
       in_rigs({on_balls, held_and_guided}, toy_distance),
       "A moment bends the plate alike wherever it is; twist about the bone's axis bends a plate that is off it."},
      {"plate to bone",
       "Liu et al. 2017, BMC Musculoskelet Disord 18:26",
       seen,
       "A plate 30 mm off the tibia is less stiff in compression and torsion than one on it.",
       "composite tibiae, distal gap, plates at the inner side",
       "tube, gap of 20 mm, holes, near plate 2 mm off; ends",
       criteria::direction,
       {human_tibia_near, human_tibia_far},
       in_rigs({on_balls, held_and_ball, held_and_guided}, far_off),
       "The bone turns about a plate further away, and screws are longer."},
      {"plate length",
       stoffel_plate,
       from_memory,
       "A shorter plate with as many screws is less stiff in compression, not in torsion.",
       tubes_known,
       "cylinders, which holes, ends",
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, held_and_guided}, shorter_plate),
       "Outer screws that are further apart hold the bone better.",
       "As published with ends kept straight. On balls the screws of the shorter plate are nearer to the gap, on "
       "a tube much stiffer than the plate."},
      {"plate length",
       "Trefny et al. 2024, VCOT, doi 10.1055/s-0044-1789263",
       seen,
       "Short fragment, four-point bending: a 12-hole plate is stiffer than those of 6, 8 and 10 holes, and its "
       "strain is lower than with 6.",
       "polyacetal tubes, 12 holes are 80 % of the bone, strain of regions of the surface from images",
       "tube, gap of 1 mm, holes filled; regions: between the six-hole plate's holes",
       "as in the first table, but read in regions and not at the peak",
       {short_fragment},
       as_tested("constant moment", twelve_holes),
       "The longer plate stiffens more of a soft bone.",
       "Stiffness as published. Over the gap the moment is the same for any length; between holes further out the "
       "longer plate, held at fewer of them, carries more and not less. Which holes the paper filled is not "
       "known."},
      {"plate length",
       "Weaver et al. 2021, BMC Musculoskelet Disord 22, doi 10.1186/s12891-021-04341-2",
       seen,
       "13 instead of 5 holes in the shaft, same working length: 995 over 849 N/mm.",
       "distal femur, locked plate at the side, steel, axial load",
       condyles_guessed,
       "1.17 within 0.15, and up by 2 % (ours)",
       {human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, thirteen_holes),
       "Outer screws that are further apart hold the bone better.",
       "On balls three screws close to the gap hold better than three that are spread; with condyles held the "
       "spread ones win, by 3 % and not 17 %."},
      {"metal",
       "Ang et al. 2017, Bone Joint Res 6",
       seen,
       "Plate far off the bone: steel instead of titanium gives 525 over 469 N/mm and 0.69 over 0.64 N m/degree.",
       "composite tibiae, gap in mid-shaft, locked plate outside the leg, five of each; axial not significant",
       "plate 30 mm off, tube, gap of 20 mm, holes; screws of the plate's metal; ends",
       "1.12 and 1.07, within 0.15 (ours)",
       {human_tibia_far, human_tibia_far_titanium},
       in_rigs({on_balls, held_and_ball, held_and_guided}, metal_far_off),
       "Bone and mounts, which do not change, give way as well.",
       "Plate and screws are nearly all that gives way in our model, and all of them are of the metal. Specimens "
       "that hardly tell metals apart must have had as much again in bone, threads or mounts."},
      {"metal",
       "Schmidt et al. 2013, Clin Orthop Relat Res 471:2808",
       seen,
       "Distal femur: two titanium plates over two steel ones have 63 % of the axial and 79 % of the torsional "
       "stiffness.",
       "bone substitutes, 62.6 and 51.7 over 100.8 and 80.8 N/mm, 2.63 and 2.56 over 3.40 and 3.15 N m/degree; "
       "which "
       "are of which metal from memory; they differ in shape too",
       condyles_guessed,
       "0.63 within 30 %, 0.79 within 0.15 (ours)",
       {human_femur_titanium, human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, metal_of_femur),
       "Titanium has 55 % of steel's modulus.",
       "As published on balls. With the condyles held the bone's own bending between the ends is most of the "
       "axial stiffness, and the metal hardly counts."},
      {"metal",
       "Blake et al. 2011, VCOT 24:408 (pages from memory)",
       seen,
       "Of two plates of one shape, the titanium one is less stiff in torsion.",
       "3.5 mm plates on a bone model, bridging",
       "bone model, gap of 47 mm, holes; grips",
       criteria::direction,
       {bridge, bridge_titanium},
       in_rigs({on_balls, held_and_guided}, metal_in_torsion),
       "Titanium has 55 % of steel's modulus."},
      {"plane of bending",
       "Bridged humeri, BioMed Res Int 2021, 6649712, table 1 (authors not seen)",
       seen,
       "Plated humeri are twice as stiff in lateral as in anterior bending (2.8 over 1.4, 3.1 over 1.5 N "
       "m/degree).",
       "cadaver humeri, comminuted, compression plates",
       "that the plate lay in front: inferred; tube, gap of 30 mm, locking heads, constant moment",
       criteria::size,
       {bridged_humerus},
       as_tested("constant moment", edge_over_flat),
       "On its edge the plate is stiffer; bone, which is round, takes a part of both."},
      {"reduced and plated",
       "Three methods of plating distal radial osteotomies, Vet Surg 1992, 21(2) (authors not seen)",
       seen,
       "Osteotomy closed under a plate: no loss of axial stiffness against the intact radius, whichever the "
       "plate.",
       "18 dog radii, 3.5 mm plate in front or 2.7 mm plate at the side, under compression, with and without "
       "sideways "
       "motion",
       "tube for the radius; faces touch without pressure; both plates at one side; locking heads",
       criteria::alike,
       {closed_radius_front, closed_radius_side},
       in_rigs({on_balls, held_and_guided}, closed_radius),
       "The bone carries the load past the cut."},
      {"how it is tested",
       "MacLeod, Simpson & Pankaj 2018, Bone Joint Res 7:111",
       seen,
       "Ways of holding and loading alone change the stiffness over the gap by up to six times.",
       "composite bones, four ways that recent studies used, two plates, three choices of screws",
       "tube for the tibia, gap of 20 mm, holes; the four ways: two balls; one end held and the other on a ball, "
       "guided, "
       "free",
       criteria::size,
       {human_tibia_near},
       as_tested("four ways", ways_to_hold),
       "Ends that are held keep the fragments from turning, and turning is most of what a plate beside the load "
       "lets "
       "the gap do."},
      {"screw in bone",
       "MacLeod, Pankaj & Simpson 2012, J Biomech 45:1712",
       seen,
       "Bonded, frictional and undersized screw holes differ by less than 1 % in the construct's deformation.",
       "finite elements, tibia, mid-shaft, three locked screws, up to 770 N",
       "",
       "",
       {},
       {},
       "",
       "All our threads are bonded to the bone: there is no second interface to compare with."},
      {"screw in bone",
       bottlang + ", table I",
       seen,
       "Locked construct over a gap: axial stiffness 2.9 kN/mm (SD 0.13).",
       surrogate_known,
       surrogate_guessed,
       "2.9 kN/mm within 30 % (ours)",
       {surrogate},
       in_rigs({on_balls, held_and_ball, held_and_guided}, locked_stiffness),
       "The plate's own bending is most of it.",
       "As measured on balls; three to four times as stiff with ends held. How ends were held was not seen."},
      {"screw in bone",
       "Moazen et al. 2013, Proc IMechE H 227:746 (pages from memory), on the test of " + bottlang,
       seen,
       "Models whose screws are fixed to the bone overestimate the measured stiffness.",
       surrogate_known,
       surrogate_guessed,
       criteria::direction,
       {surrogate},
       in_rigs({on_balls, held_and_ball, held_and_guided}, bonded_too_stiff),
       "Threads are bonded here.",
       "With ends held ours is three to four times as stiff as measured, on balls 11 % softer: whether bonded "
       "threads or supports make it, only the paper's supports could tell."},
      {"screw in bone",
       "Locked plates of distal femora 2011, PMC3057092 (authors from memory: Doornink et al., J Orthop Trauma 25 "
       "Suppl 1)",
       seen,
       "Locked plates: 48 % less motion at the near than at the far cortex.",
       "22 pairs of cadaver femora, axial load like that of a stride",
       condyles_guessed,
       criteria::size,
       {human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, near_over_far),
       "The far cortex moves by the plate's bending, the near one by what screws and bone give way.",
       "The plate's bending turns the fragments about a point near it, and the near cortex hardly moves. The "
       "specimens' near cortex moved half as much as the far one: screws must give way in the bone along its "
       "axis, which bonded threads do not."},
  };
}

}  // namespace gapstrain::models
