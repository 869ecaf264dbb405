#include "cases/outputs/json/assessment_keys.h"

#include "cases/outputs/json/race_json.h"

namespace gapstrain::cases {

namespace {

using Keys = std::vector<FindingsKey>;

const Keys of_margins_and_rules{
    {"margins[].part", "what may fail, and how; worst first"},
    {"margins[].load", "under which it is nearest to it"},
    {"margins[].factor", "strength over demand: below 1 it fails; of fatigue on the load, at the cycles asked"},
    {"margins[].basis.stress_mpa", "yield: von Mises stress of plate or screw core"},
    {"margins[].basis.yield_mpa", "its metal's yield strength"},
    {"margins[].basis.axial_n", "a tightened screw after the last step alone: its pull"},
    {"margins[].basis.limit_n", "its core's yield, or its thread's pull-out"},
    {"margins[].basis.amplitude_mpa", "fatigue: stress amplitude"},
    {"margins[].basis.mean_mpa", "mean stress"},
    {"margins[].basis.reversed_mpa", "equivalent fully reversed amplitude (Goodman)"},
    {"margins[].basis.strength_mpa", "amplitude the metal bears for the cycles, notch and finish included"},
    {"margins[].basis.cycles", "cycles asked for"},
    {"margins[].basis.damage", "all loads of the day together: share of life used (Palmgren, Miner)"},
    {"margins[].basis.weeks", "in so many weeks"},
    {"margins[].basis.factor_low", "fatigue: the factor at the low end of the metal's published strength"},
    {"margins[].basis.factor_high", "and at its high end"},
    {"margins[].basis.hole", "of the plate: the hole whose rim it is; left out elsewhere"},
    {"margins[].basis.along_mm", "place along the plate from its proximal end"},
    {"margins[].basis.face", "top, middle or bottom of the plate's wall"},
    {"margins[].basis.pull_n", "pull-out: along the screw towards its head; negative pushes it in"},
    {"margins[].basis.pull_out_n", "what its thread bears"},
    {"margins[].basis.wall", "near or far: the wall pressed hardest"},
    {"margins[].basis.shear_n", "that wall: pressed sideways"},
    {"margins[].basis.bearing_n", "what it bears"},
    {"margins[].basis.strain", "bone: largest principal strain magnitude"},
    {"margins[].basis.yield_strain", "its limit"},
    {"margins[].sentence", "place, figures, limit and what is assumed"},
    {"margins[].assumed", "notch, finish, cycles and so on; empty where nothing is"},
    {"margins[].source", "of the limit"},
    {"margins[].indicative", "the model does not see the place well enough to trust the figure"},
    {"margins_left_out[]", "why parts have no margin"},
    {"review[].rule", "a rule of the trade; broken ones first"},
    {"review[].verdict", "kept, broken or not applicable"},
    {"review[].bound", "what the rule asks"},
    {"review[].figure", "this construct's"},
    {"review[].source", "of the rule"},
    {"review[].advice", "what to change; left out unless broken"},
    {"review[].value", "the figure as a number; left out where the rule is on none"},
    {"review[].least", "the bound as a number: at least; left out without one"},
    {"review[].most", "at most"},
    {"review[].ample", "up to here more is worth having; to pass it breaks nothing"},
    {"review[].unit", "of these numbers; left out of ratios and counts"},
    {"review[].parts[]", "screws and clamps it is about: what breaks it, or the worst that keeps it"},
};

const Keys of_plan{
    {"plan.bone", "as the case names it"},
    {"plan.side", "of the limb: left or right; absent where the case does not say"},
    {"plan.fracture_position_mm", "of the gap's middle, from the bone's proximal end"},
    {"plan.plate.length_mm", "end to end"},
    {"plan.plate.width_mm", "largest"},
    {"plan.plate.thickness_mm", "largest"},
    {"plan.plate.holes", "number of holes, slots among them"},
    {"plan.plate.slots", "number of slots"},
    {"plan.plate.metal", "by name"},
    {"plan.plate.aspect", "face of the bone that it lies on"},
    {"plan.plate.proximal_end_mm", "of its proximal end, along the bone"},
    {"plan.plate.standoff_mm", "underside to bone"},
    {"plan.prebend.height_mm", "of the underside over its bed at the fracture; prebend is left out without one"},
    {"plan.prebend.at_mm", "its place along the plate"},
    {"plan.prebend.bend_deg", "on top of following the bone, positive with the hollow side down"},
    {"plan.bends[].from_hole", "interval between two holes; 0 is the proximal end"},
    {"plan.bends[].to_hole", "its other end; one more than the holes is the distal end"},
    {"plan.bends[].at_mm", "its middle, along the plate"},
    {"plan.bends[].bend_deg", "the underside's turn over the interval, positive with the hollow side down"},
    {"plan.screws[].label", "as in the case"},
    {"plan.screws[].hole", "number of its plate hole; 0 for a screw beside the plate"},
    {"plan.screws[].kind", "locking, cortical, compression or lag"},
    {"plan.screws[].size", "thread by designation"},
    {"plan.screws[].thread_mm", "diameter of the thread"},
    {"plan.screws[].metal", "by name"},
    {"plan.screws[].cortices", "1 ends in the canal, 2 passes the far cortex"},
    {"plan.screws[].measured_mm", "as a depth gauge shows it, from the plate's top face along the screw"},
    {"plan.screws[].length_mm", "to order: measured and allowance, rounded up to a stocked length"},
    {"plan.screws[].drill_mm", "for the thread; left out where it is not known"},
    {"plan.screws[].gliding_mm", "hole in the near cortex, lag screws only"},
    {"plan.screws[].tilt_along_deg", "of the tip towards the distal end"},
    {"plan.screws[].tilt_across_deg", "of the tip towards +y"},
    {"plan.screws[].off_centre_mm", "compression: of the drill from the hole's middle, away from the fracture"},
    {"plan.steps[]", "the operation in words, in order"},
    {"plan.notes[]", "what the hand must mind"},
};

}  // namespace

std::vector<FindingsKey> assessment_keys() {
  Keys keys = of_margins_and_rules;
  keys.insert(keys.end(), of_plan.begin(), of_plan.end());
  const Keys race = race_keys();
  keys.insert(keys.end(), race.begin(), race.end());
  keys.push_back({"no_race", "why bone and plate are not raced, and what to enter; left out when they are"});
  return keys;
}

}  // namespace gapstrain::cases
