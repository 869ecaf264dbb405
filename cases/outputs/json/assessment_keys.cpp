#include "cases/outputs/json/assessment_keys.h"

namespace gapstrain::cases {

OutputKeys state_keys() {
  return {
      {"standing", "holds, FAILS (a margin below 1, or lost to healing in most samples) or NOT TO BE TRUSTED"},
      {"not_trusted[]", "why, a sentence each"},
      {"fails[].part", "what fails, one a kind, the worst first"},
      {"fails[].load", "under which; empty: over all loads of a day"},
      {"fails[].factor", "strength over demand; absent when the race alone says so"},
      {"fails[].when", "at the first such load, or the weeks from the 5th to the 95th percentile"},
      {"fails[].sentence", "with place, stress and limit"},
      {"fails[].screw", "label of the screw that fails; left out of other parts"},
      {"fails[].breaks_before_union", "share of the samples, where the race alone says so"},
      {"fails[].time",
       "at_first_load, in_race, before_union, before_union_unhealed (as the gap is on the first day), "
       "before_cycles_asked or as_screws_soften (from from_week on)"},
      {"fails[].from_week", "in_race: 5th percentile of the break"},
      {"fails[].to_week", "95th percentile; left out beyond five years"},
      {"limits[]", "passed by the steps or under a load, without a part that fails"},
      {"screws_in_bone.taken",
       "local stiffness of screws in bone over that of bonded ones, of the case; all of screws_in_bone is of the "
       "first day, and left out where the result is not to be trusted"},
      {"screws_in_bone.bonded.stiffness", "likewise, of this bound: 1"},
      {"screws_in_bone.bonded.standing", "holds, FAILS or NOT TO BE TRUSTED at it"},
      {"screws_in_bone.bonded.least_margin", "strength over demand; left out where none is known"},
      {"screws_in_bone.bonded.part", "of which"},
      {"screws_in_bone.bonded.load", "under which; of all loads of a day that which uses most"},
      {"screws_in_bone.bonded.gap_strain", "along the bone, largest magnitude of all loads, as a share"},
      {"screws_in_bone.soft.stiffness", "of the soft bound"},
      {"screws_in_bone.soft.standing", "as at the bonded one"},
      {"screws_in_bone.soft.least_margin", "as at the bonded one"},
      {"screws_in_bone.soft.part", "as at the bonded one"},
      {"screws_in_bone.soft.load", "as at the bonded one"},
      {"screws_in_bone.soft.gap_strain", "as at the bonded one"},
      {"screws_in_bone.verdict", "holds_at_both, hangs_on_it, fails_at_both or unknown"},
      {"screws_in_bone.least_margin", "the lesser of both; left out where one is unknown"},
      {"screws_in_bone.sentence", "what both come to"},
      {"estimated[]", "keys of the case whose values were estimated, not measured"},
      {"second_order[]", "loads whose figures have second-order effects of their axial forces in them"},
      {"screws_soften[].week",
       "after the operation, of the course that the case states for how bone holds its screws; left out without "
       "one. "
       "The gap is that of the first day"},
      {"screws_soften[].stiffness", "local stiffness of screws in bone over that of bonded ones by then"},
      {"screws_soften[].standing", "as at the bonded one"},
      {"screws_soften[].least_margin", "as at the bonded one"},
      {"screws_soften[].part", "as at the bonded one"},
      {"screws_soften[].load", "as at the bonded one"},
      {"screws_soften[].gap_strain", "as at the bonded one"},
      {"large_turns[]", "loads under which parts are followed as they turn far"},
  };
}

OutputKeys margin_keys() {
  return {
      {"part", "what may fail, and how; worst first"},
      {"load", "under which it is nearest to it"},
      {"factor", "strength over demand: below 1 it fails; of fatigue on the load, at the cycles asked"},
      {"basis.stress_mpa", "yield: von Mises stress of plate or screw core"},
      {"basis.yield_mpa", "its metal's yield strength"},
      {"basis.axial_n", "a tightened screw after the last step alone: its pull"},
      {"basis.limit_n", "its core's yield, or its thread's pull-out"},
      {"basis.amplitude_mpa", "fatigue: stress amplitude"},
      {"basis.mean_mpa", "mean stress"},
      {"basis.reversed_mpa", "equivalent fully reversed amplitude (Goodman)"},
      {"basis.strength_mpa", "amplitude the metal bears for the cycles, notch and finish included"},
      {"basis.cycles", "cycles asked for"},
      {"basis.damage", "all loads of the day together: share of life used (Palmgren, Miner)"},
      {"basis.weeks", "in so many weeks"},
      {"basis.factor_low", "fatigue: the factor at the low end of the metal's published strength"},
      {"basis.factor_high", "and at its high end"},
      {"basis.notch", "of a screw: what its notch divides the metal's strength at 10^7 cycles by"},
      {"basis.at", "of a screw: head, where its core leaves the seat, or thread in bone"},
      {"basis.hole", "of the plate: the hole whose rim it is; left out elsewhere"},
      {"basis.along_mm", "place along the plate from its proximal end"},
      {"basis.face", "top, middle or bottom of the plate's wall"},
      {"basis.pull_n", "pull-out: along the screw towards its head; negative pushes it in"},
      {"basis.pull_out_n", "what its thread bears"},
      {"basis.wall", "near or far: the wall pressed hardest"},
      {"basis.shear_n", "that wall: pressed sideways"},
      {"basis.bearing_n", "what it bears"},
      {"basis.strain", "bone: largest principal strain magnitude"},
      {"basis.yield_strain", "its limit"},
      {"sentence", "place, figures, limit and what is assumed"},
      {"assumed", "notch, finish, cycles and so on; empty where nothing is"},
      {"source", "of the limit"},
      {"indicative", "the model does not see the place well enough to trust the figure"},
  };
}

OutputKeys left_out_keys() {
  return {
      {"reason",
       "why a part has no margin: outside_the_day (fatigue under a load without cycles_per_day while others have "
       "them), unknown_strength or not_strained"},
      {"sentence", "the same in words, with what to enter"},
      {"load", "outside_the_day: which"},
      {"part", "what has no margin, and of which kind; left out of outside_the_day"},
      {"screw", "label of the screw; left out of other parts"},
      {"material", "unknown_strength: of the metal or bone"},
  };
}

OutputKeys review_keys() {
  return {
      {"rule", "a rule of the trade; broken ones first"},
      {"verdict", "kept, broken or not applicable"},
      {"bound", "what the rule asks"},
      {"figure", "this construct's"},
      {"source", "of the rule"},
      {"advice", "what to change; left out unless broken"},
      {"value", "the figure as a number; left out where the rule is on none"},
      {"least", "the bound as a number: at least; left out without one"},
      {"most", "at most"},
      {"ample", "up to here more is worth having; to pass it breaks nothing"},
      {"unit", "of these numbers; left out of ratios and counts"},
      {"parts[]", "screws and clamps it is about: what breaks it, or the worst that keeps it"},
  };
}

OutputKeys plan_keys() {
  return {
      {"bone", "as the case names it"},
      {"side", "of the limb: left or right; absent where the case does not say"},
      {"fracture_position_mm", "of the gap's middle, from the bone's proximal end"},
      {"plate.length_mm", "end to end"},
      {"plate.width_mm", "largest"},
      {"plate.thickness_mm", "largest"},
      {"plate.holes", "number of holes, slots among them"},
      {"plate.slots", "number of slots"},
      {"plate.metal", "by name"},
      {"plate.aspect", "face of the bone that it lies on"},
      {"plate.proximal_end_mm", "of its proximal end, along the bone"},
      {"plate.standoff_mm", "underside to bone"},
      {"prebend.height_mm", "of the underside over its bed at the fracture; prebend is left out without one"},
      {"prebend.at_mm", "its place along the plate"},
      {"prebend.bend_deg", "on top of following the bone, positive with the hollow side down"},
      {"bends[].from_hole", "interval between two holes; 0 is the proximal end"},
      {"bends[].to_hole", "its other end; one more than the holes is the distal end"},
      {"bends[].at_mm", "its middle, along the plate"},
      {"bends[].bend_deg", "the underside's turn over the interval, positive with the hollow side down"},
      {"screws[].label", "as in the case"},
      {"screws[].hole", "number of its plate hole; 0 for a screw beside the plate"},
      {"screws[].kind", "locking, cortical, compression or lag"},
      {"screws[].size", "thread by designation"},
      {"screws[].thread_mm", "diameter of the thread"},
      {"screws[].metal", "by name"},
      {"screws[].cortices", "1 ends in the canal, 2 passes the far cortex"},
      {"screws[].measured_mm", "as a depth gauge shows it, from the plate's top face along the screw"},
      {"screws[].length_mm", "to order: measured and allowance, rounded up to a stocked length"},
      {"screws[].drill_mm", "for the thread; left out where it is not known"},
      {"screws[].gliding_mm", "hole in the near cortex, lag screws only"},
      {"screws[].tilt_along_deg", "of the tip towards the distal end"},
      {"screws[].tilt_across_deg", "of the tip towards +y"},
      {"screws[].off_centre_mm", "compression: of the drill from the hole's middle, away from the fracture"},
      {"steps[]", "the operation in words, in order"},
      {"notes[].note",
       "what the hand must mind, the weightiest first: no_length_to_order, no_steps, bend_at_locking_hole, "
       "bend_between_holes, prebend, free_entry, aim, off_centre, gliding_hole, one_cortex, drill_guide, "
       "unknown_drills, other_metals or lengths; numbers are left out where it has none"},
      {"notes[].sentence", "the same in words"},
      {"notes[].screws[]", "labels of the screws it is about"},
      {"notes[].hole", "bend_at_locking_hole: number of the hole"},
      {"notes[].bend_deg", "bend_at_locking_hole: magnitude; prebend: as plan.prebend"},
      {"notes[].at_mm", "prebend: as plan.prebend"},
      {"notes[].height_mm", "likewise"},
      {"notes[].position_mm", "free_entry: from the bone's proximal end"},
      {"notes[].around_deg", "free_entry: round the bone from the plate's side towards +y"},
      {"notes[].tilt_along_deg", "aim: of the tip towards the distal end"},
      {"notes[].tilt_across_deg", "aim: of the tip towards +y"},
      {"notes[].off_centre_mm", "off_centre: of the drill from its slot's middle, away from the fracture"},
      {"notes[].diameter_mm", "gliding_hole: of the hole in the near cortex"},
      {"notes[].metals[]", "other_metals: of these screws, one each"},
      {"notes[].plate_metal", "other_metals: the plate's"},
      {"notes[].allowance_mm", "lengths: added to a length measured through both cortices"},
      {"notes[].step_mm", "lengths: the sum is rounded up to a multiple of it"},
  };
}

OutputKeys no_race_keys() {
  return {
      {"reason",
       "why bone and plate are not raced: no_healing, no_daily_cycles, no_gap, filled_by_step, unknown_strength, "
       "not_asked or without_an_answer; no_race is left out when they are"},
      {"sentence", "the same in words, with what to enter"},
      {"metal", "unknown_strength: the plate's"},
      {"error", "without_an_answer: what stopped the calculation"},
  };
}

}  // namespace gapstrain::cases
