#include "models/evidence/published_lists.h"
#include "models/evidence/trend_measures.h"

namespace gapstrain::models {

namespace {

const std::string stoffel_screws = "Stoffel et al. 2003, Injury 34 Suppl 2:B11";
const std::string cylinders_known =
    "12-hole 4.5 mm titanium plate on composite cylinders, gap 6 mm, compression and torsion (from memory)";
const std::string nourisa = "Nourisa et al. 2015, J Biomed Sci Eng 8:9";
const std::string nourisa_known =
    "finite elements of a femur, mid-shaft fracture, locked plate with little contact";
const std::string nourisa_guessed = "tube, holes, line of the load, ends; which screws stay";
const std::string weaver = "Weaver et al. 2021, BMC Musculoskelet Disord 22, doi 10.1186/s12891-021-04341-2";
const std::string weaver_known = "distal femur, locked plate at the side, steel, axial load";
const std::string femur_guessed =
    "a straight tube, sizes, gap of 10 mm, holes; head 40 mm beside the shaft; how condyles were held";
const std::string humeri = "Bridged humeri, BioMed Res Int 2021, 6649712, table 1 (authors not seen)";

}  // namespace

std::vector<Trend> published_on_screws() {
  using enum Evidence;
  using namespace bench;  // NOLINT: names of models
  return {
      {"number of screws",
       stoffel_screws,
       from_memory,
       "More than three screws a fragment add little in compression, more than four little in torsion.",
       cylinders_known,
       "cylinders, which holes, ends",
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, held_and_guided}, more_screws),
       "The inner and outer screws take nearly all of it."},
      {"number of screws",
       "Textbook chapter on locked plates",
       seen,
       "The third screw on each side exhausts the axial gain, a fourth still adds torsional stiffness.",
       "a sentence",
       "all; where the fourth screw goes",
       criteria::first_table,
       {shaft},
       third_and_fourth_set_ups(),
       "Inner screws take nearly all of the axial load.",
       "Where the fourth screw goes decides: next to the inner one it adds 4 % in compression, next to the outer "
       "one nothing."},
      {"number of screws",
       nourisa,
       seen,
       "Gap strain falls linearly as screws are added from the plate's ends.",
       nourisa_known,
       nourisa_guessed,
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, line_head_to_knee}, from_the_ends),
       "With nearly rigid fragments the gap's turn is in proportion to the free span, which each screw shortens "
       "by a hole."},
      {"number of screws",
       "Two or three screws a fragment, VCOT 2022 (authors from memory: Palierne et al.)",
       seen,
       "10-hole 3.5 mm plate over 47 mm: three instead of two locking screws a fragment raise axial stiffness "
       "from "
       "102 to 197 N/mm.",
       "steel plate 1 mm off, both cortices, screws from the ends inwards, compression; SD 23 and 50 N/mm",
       "bone model; ends",
       criteria::size,
       {bridge},
       in_rigs({on_balls, held_and_ball, held_and_guided}, three_over_two),
       "The third screw shortens the free span and holds the fragment against turning.",
       "As published unless both ends are kept straight. But ours is some three times as stiff as the specimens "
       "even on balls: mounts, sag under load and threads that give way are not in it."},
      {"number of screws",
       weaver,
       seen,
       "Ten instead of three screws in the shaft: no significant difference in axial stiffness.",
       weaver_known,
       femur_guessed,
       criteria::alike,
       {human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, ten_over_three),
       "The innermost and outermost screws are the same."},
      {"number of screws",
       humeri,
       seen,
       "Three or two screws a fragment: no significant difference in axial, bending and torsional stiffness.",
       "cadaver humeri, comminuted, compression plates; 394 and 388 N/mm, 1.5 and 1.4, 3.1 and 2.8, 0.8 and 0.7 N "
       "m a "
       "degree; scatter up to half",
       "tube, gap of 30 mm, locking heads, the third between the others; ends",
       "no significant difference: within one pooled SD, 15 % at least, 30 % at most (ours)",
       {bridged_humerus},
       in_rigs({on_balls, held_and_guided}, humerus_screws),
       "The innermost and outermost screws are the same."},
      {"number of screws",
       "Femoral plate as external fixator, BMC Musculoskelet Disord 2023, doi 10.1186/s12891-023-06150-1 (authors "
       "not "
       "seen)",
       seen,
       "Four, three, two screws a fragment: stiffness in compression falls each time, in torsion neighbours do "
       "not "
       "differ.",
       "lower tibia, locked plate outside the leg",
       "plate 30 mm off, which screws; tube; ends",
       "compression down by 2 % each time; torsion within 15 % (ours)",
       {human_tibia_far},
       in_rigs({on_balls, held_and_ball, held_and_guided}, fewer_far_off),
       "Between the inner and the outer screw others add a little.",
       "Compression as published. In torsion of a plate this far off, screws bend, and fewer of them more; with "
       "grips one step is alike, the other not. Which screws the paper left out is not known."},
      {"third screw",
       nourisa,
       seen,
       "Gap strain falls as a second-degree function as a screw is inserted closer to the fracture.",
       nourisa_known,
       nourisa_guessed,
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, line_head_to_knee}, one_more_inside),
       "Strain bends off as the screw nears the gap.",
       "It falls along a straight line, wherever the load line is: with nearly rigid fragments the gap's turn is "
       "in proportion to the free span. The abstract calls moving screws inwards linear too; how the cases differ "
       "was not seen."},
      {"third screw",
       stoffel_screws,
       from_memory,
       "The nearer to the gap the third screw sits, the stiffer in compression; torsion does not depend on it.",
       cylinders_known,
       "cylinders, which holes, ends",
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, held_and_guided}, third_screw),
       "Next to the inner screw it shares that one's load.",
       "On balls compression is as published, torsion counts as much: next to the inner screw the third halves "
       "what turns that one in the bone. With ends held it is in compression that it does not help."},
      {"cortices",
       "Demner et al. 2014, VCOT 27:422",
       seen,
       "Dog tibia, gap, two screws a fragment: two cortices are stiffer than one in torsion, not in bending.",
       "10-hole 3.5 mm plate at the inner side, the two outermost holes at each end, four-point bending both ways",
       "tube for the tibia, gap of 10 mm; grips of the torsion test",
       criteria::first_table,
       {tibia, tibia_one},
       in_rigs({on_balls, held_and_guided}, one_cortex),
       "A screw in one cortex turns about the near wall; in bending screws are pulled and pushed along their "
       "axes."},
      {"cortices",
       "Torsion of a 3.5 mm plate 2017, BMC Res Notes, doi 10.1186/s13104-017-3102-y",
       seen,
       "Screws next to the gap in one cortex lower torsional stiffness, within a range of 0.9 to 1.2 N m/degree.",
       "synthetic bone, not reduced; SD 0.1 N m/degree",
       "tube, holes, grips",
       criteria::first_table,
       {tibia, tibia_innermost},
       in_rigs({on_balls, held_and_guided}, innermost_in_one),
       "A screw in one cortex turns about the near wall."},
      {"cortices",
       "Locking reconstruction plate, one or two cortices, Mater Res (authors not seen)",
       seen,
       "Seven holes, gap 10 mm, three screws a fragment: no significant difference in bending, compression, "
       "torsion.",
       "synthetic cylinders, seven holes, gap of 10 mm, three screws a fragment",
       "cylinders, ends",
       criteria::first_table,
       {cylinder, cylinder_one},
       in_rigs({on_balls, held_and_guided}, reconstruction),
       "All three fall, by less than a bench test of a few specimens tells apart."},
      {"cortices",
       weaver,
       seen,
       "Screws of the shaft in one cortex instead of two: no significant difference in axial stiffness.",
       weaver_known,
       femur_guessed,
       criteria::alike,
       {human_femur_one, human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, shaft_in_one_cortex),
       "A locking head holds its screw's direction in the plate; under an axial load that is what counts."},
      {"heads",
       weaver,
       seen,
       "Screws of the shaft not locked: 18 % less axial stiffness than locked (808 to 995 N/mm).",
       weaver_known,
       femur_guessed + "; ball heads tightened to 2000 N, plate on the bone",
       "0.81 within 0.15 (ours)",
       {human_femur_cortical, human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, not_locked_weaver),
       "A ball head gives way where a locked one does not, and friction holds the plate on the bone.",
       "Heads that are tightened pull the plate onto the bone, where friction and contact hold it over part of "
       "the free span; the locked plate stands 1 mm off. Nothing slips or loosens under 100 N. The next paper "
       "measured the reverse of this one."},
      {"heads",
       "Locked and non-locked shaft screws, OTA Int 2024, PMC10969512 (authors not seen)",
       seen,
       "Screws of the shaft not locked, sound bone: 19 % more axial stiffness than locked (185 to 155 N/mm).",
       "cadaver femora, distal gap, cyclic axial load. The contrary of the statement above: no model can agree "
       "with "
       "both",
       femur_guessed + "; ball heads tightened to 2000 N, plate on the bone",
       "1.19 within 0.15 (ours)",
       {human_femur_cortical, human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, not_locked_cadavers),
       "A plate that is pressed on the bone has a shorter way to the load and a shorter free span.",
       "As published with the condyles held; on balls the contact of plate and bone makes three times as much of "
       "it."},
      {"heads",
       "Two locking or three non-locking screws, Bone Joint Res 2012, 1(6) (authors not seen)",
       seen,
       "Two locking screws a fragment are less stiff in torsion than three that are not locked.",
       "tubes, gap of 10 mm, five-hole plate with two a side, seven-hole plate with three",
       "tube, ball heads "
       "tightened to 1500 N, grips",
       criteria::direction,
       {cylinder, cylinder_cortical},
       in_rigs({on_balls, held_and_guided}, two_locked),
       "A third screw and a plate pressed on the bone add more than locked heads do."},
  };
}

}  // namespace gapstrain::models
