#include "models/evidence/published_lists.h"
#include "models/evidence/trend_measures.h"

namespace gapstrain::models {

namespace {

const std::string stoffel_span = "Stoffel et al. 2003, Injury 34 Suppl 2:B11";
const std::string stoffel_known =
    "12-hole 4.5 mm titanium plate on composite cylinders, gaps of 6 and 1 mm, plate 2 mm off, compression and "
    "torsion (all from memory)";
const std::string distances_span =
    "Plate-bone distance and working length of 2.0 mm plates, VCOT 2024 (authors from memory: Evans et al.)";
const std::string small_gap = "Short fragment, small gap, 12-hole 3.5 mm plate, VCOT, doi 10.1055/s-0044-1791701";
const std::string small_gap_known =
    "synthetic short fragment, 12-hole 3.5 mm plate, four-point bending, six replicates; the far cortex touches "
    "at "
    "150 to 155 N";
const std::string small_gap_guessed = "tube, gap of 1 mm, holes, spans of the rollers: a constant moment here";

}  // namespace

std::vector<Trend> published_on_working_length() {
  using enum Evidence;
  using namespace bench;  // NOLINT: names of models
  return {
      {"working length",
       stoffel_span,
       from_memory,
       "Leaving out one hole on each side of the gap makes the construct nearly twice as flexible, in compression "
       "and in torsion.",
       stoffel_known,
       "cylinders' size and modulus; how ends were held",
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, held_and_guided}, one_hole_omitted),
       "The plate over the gap bends and twists along three times the length; bone and screws do not change.",
       "On balls compression is as published and torsion is not: the twist of the tube and of the screws in it is "
       "part of both figures, and only the plate's own is tripled. With ends kept straight the plate is bent to "
       "an S, and its length counts little."},
      {"working length",
       "Henschel et al. 2017, J Orthop Trauma",
       seen,
       "Distal femur: two more empty holes over the fracture cost 45 % of the axial stiffness.",
       "femur surrogates, locked plate at the side, axial load; motion mostly sideways",
       "a straight tube for the femur, sizes, gap; the line of the load",
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, line_head_to_knee}, two_more_empty),
       "Rotation over the gap grows with the free span; a straight tube stands for the femur."},
      {"working length",
       "Nassiri et al. 2013, Proc IMechE H 227",
       from_memory,
       "A large unsupported gap and a long working length raise plate stress.",
       "locked plate on a long bone (from memory)",
       "all sizes; how ends were held",
       criteria::first_table,
       {shaft},
       in_rigs({on_balls, held_and_guided}, unsupported_span),
       "The span of 18 mm has no empty hole, the long one has: its rim carries the peak. Between spans that both "
       "have empty holes nothing changes, since the moment is force times offset whatever the length."},
      {"working length",
       stoffel_span,
       from_memory,
       "With a gap of 1 mm that closes, a longer working length can lower plate stress.",
       stoffel_known,
       "cylinders, 1000 N; how ends were held",
       criteria::first_table,
       {closing_shaft},
       in_rigs({on_balls, held_and_guided}, closing_span),
       "The longer span lets the far cortex close, which then carries load past the plate.",
       "Where both ends are kept straight the fragments cannot turn, and the gap stays open under 1000 N."},
      {"working length",
       "Plane finite-element model of a bridging plate 2018, Rev Bras Ortop",
       seen,
       "Transverse fracture, 1000 N: a longer working length gives more bending and a lower peak plate stress.",
       "plane model of a femur, titanium plate for 4.5 mm screws, one vertical load of 1000 N; peak next to the "
       "inner "
       "screws",
       "gap (1.2 mm by a reader of the paper, not seen by us); ends; sizes",
       criteria::first_table,
       {closing_shaft, closing_shaft_wider},
       plane_model_set_ups(),
       "The far cortex closes and carries load.",
       "A gap of 1 mm is closed at either length, so that its motion has no room to grow; one of 1.2 mm does as "
       "published."},
      {"working length",
       "Chao et al. 2013, BMC Vet Res 9:125",
       seen,
       "12-hole 2.4 mm plate in contact with dog femora: two or five screws a fragment, no significant difference "
       "in stiffness.",
       "dog femora, plate on the bone, axial load on the femoral head, which is beside the shaft (its fig. 3)",
       "gap; the head 15 mm beside the shaft, away from the plate; how condyles were held; a tube for the femur",
       criteria::first_table,
       {femur, femur_off},
       in_rigs({line_beside, line_beside_held, on_balls}, contact_hides),
       "Contact bridges the free span.",
       "With condyles held, contact takes most of the effect away (0.26 without it), not all; on balls beside the "
       "bone the plate bends away from it. The paper's stiffness has that of the femur and its mounts in it and "
       "the scatter of cadavers."},
      {"working length",
       "Maxwell et al. 2009, VCOT 22:125",
       seen,
       "12-hole 3.5 mm plates on polyacetal rods: strain over the gap is the greatest and does not change as "
       "screws "
       "are left out; elsewhere it rises.",
       "gap of 10 mm in the middle, 3 + 3 to 6 + 5 screws, three gauges from the gap on, compression",
       "locking heads for tightened ones; a hollow rod; gauges between holes 6 and 7, 4 and 5, 2 and 3; screws "
       "left "
       "out next to the gap; ends",
       "no significant change: within 15 %; directions by 2 % (ours). Its figures were not seen for the first "
       "table",
       {polyacetal_on},
       in_rigs({on_balls, held_and_ball}, gap_gauge),
       "The moment over the gap is force times offset; a gauge further out is relieved once screws stand on both "
       "sides of it."},
      {"working length",
       "Wainberg et al. 2023, VCOT Open 6:e122",
       seen,
       "3.5 mm plate on bone surrogates: a short working length gives lower plate strain in all patterns.",
       "six gauges between holes, 50 to 200 N in compression, nine patterns of fracture and contact",
       "which six places (over the gap, and next to it); surrogate; screws; ends",
       "as in the first table, but read where gauges sat and not at the peak",
       {polyacetal},
       in_rigs({on_balls, held_and_ball, held_and_guided}, six_gauges),
       "More of the gauges lie in the free span, where the whole moment is in the plate.",
       "Where both ends are kept straight the plate is bent to an S, which a longer span relieves. On ends that "
       "can turn more gauges lie in the span that carries the whole moment."},
      {"working length",
       "Bird et al. 2020, VCOT Open 3:e119",
       seen,
       "2.0 mm straight plate, compressed fracture near the joint: a short working length is stiffer in "
       "compression "
       "bending and in torsion.",
       "2.0 mm plate, compressed, four-point bending, torsion",
       "surrogate, holes; faces touch without pressure",
       criteria::first_table,
       {toy_reduced},
       in_rigs({on_balls, held_and_guided}, reduced),
       "A longer free span bends and twists more. The faces touch here without the pressure that the paper put on "
       "them."},
      {"working length",
       distances_span,
       seen,
       "2.0 mm plate over a gap: a shorter working length is stiffer in compression bending and torsion and "
       "strains "
       "the plate less.",
       "three screws a fragment, three spans, four-point bending and torsion, strain from images",
       "surrogate, gap of 2 mm, holes",
       criteria::first_table,
       {toy},
       in_rigs({on_balls, held_and_guided}, toy_working_length),
       "A longer free span bends and twists more. The peak is at an empty hole's rim, which the shortest span "
       "lacks."},
      {"working length",
       small_gap,
       seen,
       "Until the far cortex touches, a short working length is stiffer and strains the plate less.",
       small_gap_known,
       small_gap_guessed,
       criteria::first_table,
       {short_fragment},
       as_tested("constant moment", before_touching),
       "A longer free span bends more. The peak is at an empty hole's rim, which the shortest span lacks."},
      {"working length",
       small_gap,
       seen,
       "In tension bending the far cortex comes to touch, which stiffens the long working length and lowers its "
       "plate strain.",
       small_gap_known,
       small_gap_guessed,
       criteria::first_table,
       {short_fragment},
       as_tested("constant moment", after_touching),
       "The far cortex carries load once it touches."},
      {"working length",
       "Roytman et al. 2023, Clin Biomech 110:106129",
       seen,
       "Distal femur: strain at the fracture is 7 to 9 % with a working length of 35 mm and 15 % with 140 mm.",
       "cadaver, finite elements and a beam formula agree; single-leg stance",
       "a straight tube, sizes; head 40 mm beside the shaft; holes; the largest strain round the gap",
       "ratio 1.67 to 2.14, mean 1.88, within 30 % (ours)",
       {human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, strain_at_fracture),
       "Rotation over the gap grows with the free span, on top of what screws and bone give way.",
       "Nearly all of our gap's motion is in proportion to the free span. The published ratio needs as much again "
       "as 75 mm of plate give, whatever the span; bone and bonded screws give 7 to 15. Threads that give way "
       "would be "
       "in that part."},
      {"working length",
       "Lagoni et al. 2025, Cureus 17, doi 10.7759/cureus.94479",
       seen,
       "Distal femur: a working length of 175 instead of 95 mm gives more axial motion and much more motion "
       "sideways.",
       "composite femora, gap of 10 mm, 13-hole plate, 50 to 750 N",
       "a straight tube, sizes; head 40 mm beside the shaft; holes",
       criteria::direction,
       {human_femur_steel},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, motion_of_long_span),
       "A longer free span bends more."},
      {"working length",
       "Maerdian et al. 2015, Clin Biomech 30:391",
       seen,
       "Distal femur: a longer working length adds 12 to 19 % of axial motion and up to 545 % of motion sideways.",
       "finite elements of a scanned femur, loads with muscles, four working lengths",
       "working lengths 42 to 102 mm (from memory); a tube; no muscles, head 40 mm beside the shaft; titanium",
       "1.155 within 0.15, and up by 2 %; sideways up by 2 % (ours)",
       {human_femur_titanium},
       in_rigs({line_head_to_knee, line_head_to_knee_held}, motion_of_spans),
       "A longer free span bends more.",
       "As above: too much follows from the free span. Muscles, which keep fragments from turning, are not in the "
       "model."},
      {"working length",
       "Su et al. 2025, PMC12586413 (journal not seen)",
       seen,
       "Plate as external fixator of the tibia: inner screws one, two, three places further out leave 72, 69, 63 "
       "% of "
       "the stiffness.",
       "finite elements, locked femoral plate outside the leg, full weight",
       "plate 30 mm off, places 14 mm apart, other screws; tube; ends",
       "one place 0.72 within 0.15, three places 0.63 within 30 % (ours)",
       {human_tibia_far},
       in_rigs({on_balls, held_and_ball, held_and_guided}, spans_far_off),
       "A longer free span bends more.",
       "As published on balls. Where an end is held, fragments hardly turn, and what is left (stretch of the "
       "plate, screws 30 mm long) does not depend on the span."},
      {"working length",
       "Open hole over the gap, Front Vet Sci 2018, 5:89 (authors not seen)",
       seen,
       "1.5 mm plate on dog radii: with the open hole over the gap instead of beside it the construct is less "
       "stiff "
       "and gap strain higher.",
       "paired cadaver radii, small gap, compression",
       "tube, gap of 1 mm, three screws a fragment, plate on the bone",
       criteria::direction,
       {radius_open_over, radius_open_beside},
       in_rigs({on_balls, held_and_guided}, open_hole),
       "Beside the gap the bone under the open hole carries the plate; over it nothing does.",
       "The reverse: the same two screws bound the same span in both, and with the hole over the gap bone meets "
       "the plate on both sides of it. The open hole itself weakens the same span in both. What the cadavers' "
       "bone does under it is not settled."},
  };
}

}  // namespace gapstrain::models
