#include "cases/reader/case_keys.h"

#include "cases/reader/case_ranges.h"
#include "cases/reader/load_keys.h"
#include "models/parts/estimate.h"
#include "models/parts/material.h"
#include "models/parts/screw.h"
#include "models/parts/words.h"

namespace gapstrain::cases {

namespace {

using namespace ranges;
using enum Need;

// One list a part of the file.
// clang-format off

std::vector<Key> file_keys() {
  return {
    {"", "name", Kind::text, derived, "the file's name", "printed on tables and pictures", {}},
    {"", "base", Kind::text, optional, "",
     "another case file, beside this one: this file then holds only what differs; its tables add to the base's key by "
     "key, its lists take the place of the base's", {}},
    {"", "without", Kind::texts, optional, "", "with `base`: its keys and tables that fall away, such as [\"step\"]", {}},
    {"", "body_mass", Kind::mass, optional, "", "of the patient, for plausibility only", {}, {"0.01 kg", "1500 kg"}},
    {"", "estimated", Kind::texts, optional, "",
     "what of the case was estimated, not measured, by key: said in every output, and no screw is offered to order by it; "
     "take out what has been measured since", models::estimate_keys()},
    {"", "metals", Kind::choice, literal, "elastic_plastic",
     "plates and screws that bend for good beyond their yield strength, or elastic ones whatever the stress",
     {"elastic", "elastic_plastic"}},
    {"", "second_order", Kind::choice, literal, "auto",
     "what axial forces add to bending as plate and bone turn under them: in every load above 5 % of the one that "
     "buckles the construct, in all loads, or in none. Beyond 0.1 rad parts are also followed as they turn, with "
     "large in every load, with off in none",
     {"auto", "on", "off", "large"}},
    {"", "bone", Kind::table, required, "", "the shaft the plate lies on", {}},
    {"", "plate", Kind::table, required, "", "the bone plate", {}},
    {"", "screw", Kind::tables, required, "", "the screws; without [[step]] in the order of insertion",
     {}, {"1", "100"}},
    {"", "screws", Kind::table, optional, "", "values for every [[screw]] that does not set them itself", {}},
    {"", "candidate", Kind::tables, optional, "",
     "screws that `analyse` makes the mesh ready for as well, in this order: cases with the same list and the same bones "
     "and plate share one mesh, and their figures differ by their screws alone (gapstrain page writes it)",
     {}, {"1", "400"}},
    {"", "temporary", Kind::tables, optional, "", "wires and clamps that hold until a step takes them out",
     {}, {"1", "50"}},
    {"", "step", Kind::tables, derived, "every screw is inserted and tightened, in the order of the file",
     "the operation, step by step", {}, {"1", "200"}},
    {"", "contact", Kind::table, optional, "", "how surfaces that touch hold each other sideways", {}},
    {"", "fracture", Kind::table, required, "", "the fracture gap", {}},
    {"", "load", Kind::tables, derived, "three bench loads: axial 100 N, bending 1 N m, torsion 1 N m",
     "the load cases", {}, {"1", "100"}},
    {"", "layouts", Kind::table, optional, "",
     "which other choices of screws come into question: gapstrain layouts", {}},
    {"", "healing", Kind::table, optional, "",
     "how the fracture is expected to heal: the race of bone against plate", {}},
    {"", "stock", Kind::table, optional, "", "what screws can be ordered", {}},
    {"", "mesh", Kind::table, optional, "", "the density of the finite-element mesh", {}},
  };
}

std::vector<Key> bone_keys() {
  const auto cortices = models::cortex_names();
  return {
    {"bone", "name", Kind::text, literal, "bone", "such as \"left radius\"", {}},
    {"bone", "side", Kind::choice, optional, "", "of the limb: the plan's sides are a right limb's without it", {"left", "right"}},
    {"bone", "length", Kind::length, required, "", "proximal to distal end", {}, {"5 mm", "1000 mm"}},
    {"bone", "material", Kind::choice, optional, "", "cortical bone by name; or give [bone.cortical_bone]", cortices},
    {"bone", "width", Kind::length, optional, "", "outer width of a round uniform shaft without stations",
     {}, bone_width},
    {"bone", "width_mediolateral", Kind::length, optional, "",
     "outer width of a uniform shaft as the craniocaudal radiograph shows it", {}, bone_width},
    {"bone", "width_craniocaudal", Kind::length, optional, "",
     "outer width of a uniform shaft as the mediolateral radiograph shows it", {}, bone_width},
    {"bone", "cortex", Kind::length, optional, "", "wall thickness of a uniform shaft", {}, wall},
    {"bone", "station", Kind::tables, optional, "", "sections by rising position, where the shaft is not uniform",
     {}, {"1", "200"}},
    {"bone", "cortical_bone", Kind::table, optional, "", "own elastic constants in place of `material`", {}},

    {"bone.station", "position", Kind::length, required, "", "along the bone from its proximal end", {}, bone_place},
    {"bone.station", "width_mediolateral", Kind::length, required, "",
     "outer width as the craniocaudal radiograph shows it", {}, bone_width},
    {"bone.station", "width_craniocaudal", Kind::length, required, "",
     "outer width as the mediolateral radiograph shows it", {}, bone_width},
    {"bone.station", "cortex", Kind::length, required, "", "wall thickness", {}, wall},
    {"bone.station", "bow_lateral", Kind::length, literal, "0 mm",
     "the axis' offset towards lateral from the straight line between the ends", {}, bow},
    {"bone.station", "bow_cranial", Kind::length, literal, "0 mm", "likewise towards cranial", {}, bow},

    {"bone.cortical_bone", "youngs_modulus", Kind::stress, optional, "",
     "isotropic bone; else give the five moduli and poissons_ratio_lt", {}, bone_modulus},
    {"bone.cortical_bone", "poissons_ratio", Kind::number, optional, "", "of isotropic bone", {}, poissons_ratios},
    {"bone.cortical_bone", "longitudinal_modulus", Kind::stress, optional, "", "along the bone (L)", {}, bone_modulus},
    {"bone.cortical_bone", "transverse_modulus", Kind::stress, optional, "", "round the bone (T)", {}, bone_modulus},
    {"bone.cortical_bone", "poissons_ratio_lt", Kind::number, optional, "", "contraction along T per stretch along L",
     {}, {"0", "2"}},
    {"bone.cortical_bone", "shear_modulus_lt", Kind::stress, optional, "", "in the wall's plane", {}, bone_modulus},
    {"bone.cortical_bone", "shear_modulus_lr", Kind::stress, optional, "", "L with the wall's normal",
     {}, bone_modulus},
    {"bone.cortical_bone", "shear_modulus_tr", Kind::stress, optional, "", "T with the wall's normal",
     {}, bone_modulus},
    {"bone.cortical_bone", "yield_strain", Kind::number, optional, "",
     "in tension along the bone, such as 0.007; absent: no factor to yield strain is reported", {}, {"0.0001", "0.1"}},
    {"bone.cortical_bone", "source", Kind::text, literal, "case file", "where the constants come from", {}},
  };
}

std::vector<Key> plate_keys() {
  const auto metals = models::metal_names();
  const auto aspects = aspect_names();
  return {
    {"plate", "length", Kind::length, required, "", "end to end", {}, {"5 mm", "600 mm"}},
    {"plate", "width", Kind::length, optional, "", "of a uniform plate; else give [[plate.section]]", {}, plate_width},
    {"plate", "thickness", Kind::length, optional, "", "of a uniform plate", {}, plate_thickness},
    {"plate", "section", Kind::tables, optional, "", "width and thickness by rising position, linear between",
     {}, {"1", "100"}},
    {"plate", "holes", Kind::count, optional, "", "number of round holes in a row; else give [[plate.hole]]",
     {}, {"1", "100"}},
    {"plate", "pitch", Kind::length, optional, "", "from hole to hole, centre to centre; needed with `holes`",
     {}, {"0.5 mm", "200 mm"}},
    {"plate", "middle_spacing", Kind::length, derived, "the pitch",
     "between the two middle holes of an even number of holes", {}, {"0.5 mm", "500 mm"}},
    {"plate", "first_hole", Kind::length, derived, "equal margins at both ends",
     "centre of the most proximal hole from the plate's proximal end", {}, plate_place},
    {"plate", "hole_diameter", Kind::length, optional, "", "needed with `holes`", {}, hole_width},
    {"plate", "slot_length", Kind::length, optional, "",
     "makes every hole of the row a slot: overall length along the plate", {}, slot_lengths},
    {"plate", "hole", Kind::tables, optional, "", "the holes one by one, by rising position", {}, {"1", "100"}},
    {"plate", "material", Kind::choice, optional, "", "metal by name; or give [plate.metal]", metals},
    {"plate", "metal", Kind::table, optional, "", "own elastic constants in place of `material`", {}},
    {"plate", "aspect", Kind::choice, literal, "cranial",
     "the face of the bone the plate lies on; anterior is cranial, posterior is caudal", aspects},
    {"plate", "proximal_end", Kind::length, derived, "the plate's middle over the fracture",
     "place of the plate's proximal end along the bone", {}, {"-1000 mm", "1000 mm"}},
    {"plate", "standoff", Kind::length, derived, "1 mm when all screws lock in the plate, 0 mm when a ball head presses it on",
     "underside to bone surface; the defaults are common practice, no source", {}, {"0 mm", "30 mm"}},
    {"plate", "contour", Kind::choice, literal, "follows-bone", "bent to the bone, or left straight",
     {"follows-bone", "straight"}},
    {"plate", "prebend", Kind::length, literal, "0 mm",
     "bent once more before it is put on: height over its bed at the fracture, falling to nothing at both ends",
     {}, {"0 mm", "5 mm"}},

    {"plate", "angle_limit", Kind::angle, literal, "12 deg",
     "of the system's locking screws against square; the default is common practice, no source",
     {}, {"0 deg", "45 deg"}},
    {"plate", "finish_factor", Kind::number, literal, "1",
     "what its surface leaves of the fatigue strength of smooth bars; 1 is a smooth finish", {}, {"0.01", "1"}},

    {"plate.section", "position", Kind::length, required, "", "along the plate from its proximal end", {}, plate_place},
    {"plate.section", "width", Kind::length, required, "", "across the plate", {}, plate_width},
    {"plate.section", "thickness", Kind::length, required, "", "underside to top face", {}, plate_thickness},

    {"plate.hole", "position", Kind::length, required, "", "of the centre, along the plate from its proximal end",
     {}, plate_place},
    {"plate.hole", "shape", Kind::choice, literal, "round", "a slot is lengthened along the plate", {"round", "slot"}},
    {"plate.hole", "diameter", Kind::length, required, "", "across the plate for a slot", {}, hole_width},
    {"plate.hole", "slot_length", Kind::length, optional, "", "overall length of a slot; needed with shape \"slot\"",
     {}, slot_lengths},

    {"plate.metal", "youngs_modulus", Kind::stress, required, "", "of the isotropic metal",
     {}, {"100 MPa", "1000 GPa"}},
    {"plate.metal", "poissons_ratio", Kind::number, required, "", "of the isotropic metal", {}, poissons_ratios},
    {"plate.metal", "yield_strength", Kind::stress, optional, "",
     "0.2 % proof stress; absent: no factor to yield is reported", {}, strength},
    {"plate.metal", "ultimate_strength", Kind::stress, optional, "",
     "tensile; with fatigue_strength, absent: no fatigue is reported", {}, strength},
    {"plate.metal", "fatigue_strength", Kind::stress, optional, "",
     "amplitude of fully reversed stress borne for 10^7 cycles by smooth bars; 15 % of spread either way is taken",
     {}, strength},
    {"plate.metal", "source", Kind::text, literal, "case file", "where the constants come from", {}},
  };
}

// A [[candidate]] is said like a [[screw]], but nothing calls it by a label.
std::vector<Key> with_candidates(std::vector<Key> keys) {
  std::vector<Key> candidates;
  for (Key key : keys) {
    if (key.table != "screw" || key.name == "label") continue;
    key.table = "candidate";
    candidates.push_back(std::move(key));
  }
  keys.insert(keys.end(), candidates.begin(), candidates.end());
  return keys;
}

std::vector<Key> screw_keys() {
  const auto metals = models::metal_names();
  const auto sizes = models::screw_size_designations();
  const auto screw_kinds = models::screw_kind_names();
  return with_candidates({
    {"screws", "size", Kind::choice, optional, "", "thread by designation", sizes},
    {"screws", "kind", Kind::choice, optional, "", "what the screw does", screw_kinds},
    {"screws", "material", Kind::choice, optional, "", "metal by name", metals},
    {"screws", "cortices", Kind::count, optional, "", "1 or 2", {}, cortex_count},
    {"screws", "preload", Kind::force, optional, "", "of every screw that is tightened", {}, holding_force},
    {"screws", "torque", Kind::moment, optional, "", "likewise, in place of `preload`", {}, torques},
    {"screws", "root_radius", Kind::length, optional, "", "fillet at the thread's root", {}, root_fillet},
    {"screws", "interface", Kind::measure, derived, "bonded, a bound; the soft bound is tried beside it",
     "local stiffness of screws in bone over that of bonded ones: bonded (1), mean (0.84), soft (0.5) or a number from "
     "0.05 to 1", {}},
    {"screws", "interface_course", Kind::tables, optional, "",
     "how screws soften in bone from `interface` on the day of the operation, as the case states it (no published course): "
     "straight between its weeks, then as it is; a screw with an `interface` of its own keeps it", {}, {"1", "50"}},

    {"screws.interface_course", "week", Kind::number, required, "", "after the operation", {}, {"0.1", "260"}},
    {"screws.interface_course", "interface", Kind::measure, required, "", "by then: as `interface` of [screws]", {}},

    {"screw", "hole", Kind::count, optional, "", "number of the plate hole, 1 is the most proximal", {}, hole_number},
    {"screw", "holes", Kind::counts, optional, "", "several holes, such as [1, 2, 4]: one such screw in each",
     {}, hole_number},
    {"screw", "position", Kind::length, optional, "",
     "of the head along the bone; in place of `hole` for a lag screw beside the plate", {}, bone_place},
    {"screw", "around", Kind::angle, optional, "",
     "of the head round the bone from the plate's side towards +y; needed with `position`", {}, turn},
    {"screw", "kind", Kind::choice, literal, "locking",
     "a locking head is threaded in the plate; ball heads: cortical presses the plate on, compression slides along a "
     "slot as well, lag holds in the far cortex only and presses the fragments together",
     screw_kinds},
    {"screw", "size", Kind::choice, optional, "", "thread by designation; or give the three lengths below", sizes},
    {"screw", "thread_diameter", Kind::length, optional, "", "major diameter of the thread", {}, {"0.3 mm", "20 mm"}},
    {"screw", "core_diameter", Kind::length, optional, "", "minor diameter: what carries load",
     {}, {"0.2 mm", "20 mm"}},
    {"screw", "pitch", Kind::length, optional, "", "of the thread", {}, {"0.05 mm", "10 mm"}},
    {"screw", "root_radius", Kind::length, derived, "by size, from memory (ISO 5835); of an own thread 0.16 of the pitch",
     "fillet at the thread's root: how sharp a notch it is", {}, root_fillet},
    {"screw", "material", Kind::choice, derived, "the plate's metal", "metal by name", metals},
    {"screw", "cortices", Kind::count, literal, "2", "1 ends in the canal, 2 passes the far cortex", {}, cortex_count},
    {"screw", "tilt_along", Kind::angle, literal, "0 deg", "of the tip towards the distal end", {}, tilt},
    {"screw", "tilt_across", Kind::angle, literal, "0 deg", "of the tip towards +y, across the plate", {}, tilt},
    {"screw", "preload", Kind::force, derived, "half the pull-out strength of the cortices its thread holds in",
     "what tightening brings; not for locking screws", {}, holding_force},
    {"screw", "torque", Kind::moment, optional, "", "likewise, in place of `preload`", {}, torques},
    {"screw", "slide", Kind::length, derived, "0.6 mm for threads up to 2.0 mm, 0.8 mm up to 2.7 mm, 1.0 mm above",
     "of a compression screw's head along its slot; the default is from memory", {}, {"0 mm", "10 mm"}},
    {"screw", "interface", Kind::measure, derived, "that of [screws]",
     "as in [screws]; a screw that has its own keeps it at both bounds", {}},
    {"screw", "label", Kind::text, derived,
     "\"S\" and the number of the hole; beside the plate \"L1\", \"L2\" and so on",
     "printed in tables and pictures, what steps call it by", {}},
  });
}

std::vector<Key> step_keys() {
  const auto tissues = models::tissue_names();
  return {
    {"temporary", "label", Kind::text, required, "", "what steps call it by", {}},
    {"temporary", "kind", Kind::choice, required, "",

     "wire: through a plate hole and both cortices; plate-clamp: presses the plate onto the bone; fracture-clamp: presses "
     "the fragments together",
     {"wire", "plate-clamp", "fracture-clamp"}},
    {"temporary", "hole", Kind::count, optional, "", "number of the plate hole; needed for a wire", {}, hole_number},
    {"temporary", "diameter", Kind::length, optional, "", "needed for a wire", {}, {"0.1 mm", "10 mm"}},
    {"temporary", "along", Kind::length, optional, "",
     "place on the plate from its proximal end; needed for a plate clamp", {}, plate_place},
    {"temporary", "force", Kind::force, optional, "", "what a clamp is closed with; needed for clamps",
     {}, holding_force},

    {"step", "tissue", Kind::choice, optional, "", "fills the gap from here on, before all else in the step", tissues},
    {"step", "place", Kind::texts, optional, "", "labels of wires and clamps", {}},
    {"step", "insert", Kind::texts, optional, "", "labels of screws; a locking head holds from here on", {}},
    {"step", "tighten", Kind::texts, optional, "", "labels of ball-headed screws that are in", {}},
    {"step", "screw", Kind::texts, optional, "", "short for `insert` and, unless it locks, `tighten`", {}},
    {"step", "remove", Kind::texts, optional, "", "labels of whatever is in, taken out after all else in the step", {}},
  };
}

std::vector<Key> contact_keys() {
  return {
    {"contact", "friction", Kind::choice, literal, "coulomb",
     "up to the coefficient times the pressure; or a bound: surfaces slide freely, or never", {"coulomb", "none",
     "stick"}},
    {"contact", "plate_on_bone", Kind::number, literal, "0.37",
     "friction coefficient; default after Hayes & Perren 1972, Clin Orthop 89:340, from memory", {}, share},
    {"contact", "bone_on_bone", Kind::number, literal, "0.45", "friction coefficient; default from memory", {}, share},
  };
}

std::vector<Key> fracture_keys() {
  const auto tissues = models::tissue_names();
  return {
    {"fracture", "position", Kind::length, required, "", "of the gap's middle, from the bone's proximal end",
     {}, bone_place},
    {"fracture", "gap", Kind::length, required, "",
     "edge to edge along the bone; 0 mm when reduced; a comminuted zone's whole length", {}, {"0 mm", "500 mm"}},
    {"fracture", "obliquity", Kind::angle, literal, "0 deg", "of the cut against the cross-section; 0 is transverse",
     {}, {"0 deg", "65 deg"}},
    {"fracture", "direction", Kind::angle, literal, "0 deg",
     "round the bone from the plate's side towards +y: where the cut reaches furthest distally", {}, turn},
    {"fracture", "pattern", Kind::choice, derived, "comminuted when the gap is longer than half the bone is wide",
     "whether two edges fit, or a zone of pieces bears nothing: which rules of the trade apply", {"simple",
     "comminuted"}},
    {"fracture", "tissue", Kind::choice, derived, "an empty gap", "by name; or give [fracture.filling]", tissues},
    {"fracture", "filling", Kind::table, optional, "", "own elastic constants in place of `tissue`", {}},

    {"fracture.filling", "youngs_modulus", Kind::stress, required, "", "of the isotropic tissue",
     {}, {"100 Pa", "500 GPa"}},
    {"fracture.filling", "poissons_ratio", Kind::number, required, "", "of the isotropic tissue", {}, poissons_ratios},
  };
}

std::vector<Key> layout_keys() {
  return {
    {"layouts", "least_per_fragment", Kind::count, literal, "2", "plate screws in each fragment, at least",
     {}, {"1", "50"}},
    {"layouts", "most_per_fragment", Kind::count, optional, "", "at most", {}, {"1", "50"}},
    {"layouts", "most_in_all", Kind::count, optional, "", "plate screws in all, at most", {}, {"1", "100"}},
    {"layouts", "kinds", Kind::texts, derived, "the kinds of the case's plate screws",
     "that may go into the holes, each the first that fits, with the size of the first such screw; a hole's own "
     "screw stays what it is", {}},
    {"layouts", "barred", Kind::counts, optional, "", "holes that stay empty", {}, hole_number},
    {"layouts", "filled", Kind::counts, optional, "", "holes that always have a screw", {}, hole_number},
    {"layouts", "rank_by", Kind::texts, derived,
     "least margins_failing, then least rules_broken, then most margin, then least screws",
     "least or most and a finding, the first one first; findings: gapstrain keys --rows", {}},
    {"layouts", "front", Kind::texts, derived, "least peak_stress and least gap_strain",
     "the two findings that are weighed against each other", {}},
    {"layouts", "limit", Kind::tables, optional, "", "layouts that keep all limits come first", {}, {"1", "50"}},

    {"layouts.limit", "finding", Kind::text, required, "", "its worst over all loads is meant", {}},
    {"layouts.limit", "least", Kind::measure, optional, "", "not below; with the finding's unit, such as \"0.2 mm\"", {}},
    {"layouts.limit", "most", Kind::measure, optional, "", "not above", {}},
  };
}

std::vector<Key> other_keys() {
  const auto tissues = models::tissue_names();
  return {
    {"healing", "weeks_from", Kind::number, required, "", "to union under a plate, at the earliest", {}, healing_weeks},
    {"healing", "weeks_to", Kind::number, required, "", "at the latest; any week between is as likely",
     {}, healing_weeks},
    {"healing", "tissue_at_first", Kind::choice, literal, "granulation-tissue", "fills the gap on the first day",
     tissues},
    {"healing", "tissue_at_union", Kind::choice, literal, "mature-woven-bone", "fills it in the week of union",
     tissues},
    {"healing", "activity_factor", Kind::number, literal, "2",
     "cycles a day lie between the loads' own divided by this and multiplied by it", {}, {"1", "100"}},

    {"healing", "protection", Kind::tables, optional, "",
     "times after the operation, one after another, in which the patient is kept from loads; then all come as often as they "
     "say", {}, {"1", "20"}},

    {"healing.protection", "until_week", Kind::number, required, "",
     "its last week; it begins with the operation or the end of the one before", {}, {"0.1", "260"}},
    {"healing.protection", "share", Kind::number, literal, "1", "of the loads' cycles a day that still come", {}, share},
    {"healing.protection", "without", Kind::texts, optional, "", "names of loads that do not come at all", {}},

    {"stock", "screw_step", Kind::length, literal, "2 mm",
     "screws are stocked in multiples of this length (common practice, no source)", {}, {"0.1 mm", "50 mm"}},
    {"stock", "screw_allowance", Kind::length, literal, "2 mm",
     "added to a measured depth before rounding up (common practice, no source)", {}, {"0 mm", "50 mm"}},

    {"mesh", "refinement", Kind::number, literal, "1", "divides every element size; 2 is twice as fine",
     {}, {"0.25", "4"}},
    {"mesh", "rim_elements", Kind::count, literal, "48", "round each plate hole", {}, {"8", "128"}},
  };
}

// clang-format on

std::vector<Key> make_case_keys() {
  std::vector<Key> all;
  for (auto* list : {&file_keys, &bone_keys, &plate_keys, &screw_keys, &step_keys, &contact_keys, &fracture_keys,
                     &load_keys, &layout_keys, &other_keys}) {
    auto keys = list();
    all.insert(all.end(), keys.begin(), keys.end());
  }
  return all;
}

}  // namespace

const KeyTable& case_keys() {
  static const KeyTable keys(make_case_keys());
  return keys;
}

}  // namespace gapstrain::cases
