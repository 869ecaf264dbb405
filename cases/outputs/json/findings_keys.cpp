#include "cases/outputs/json/findings_keys.h"

#include "cases/outputs/json/assessment_keys.h"
#include "cases/outputs/json/race_json.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

using Keys = OutputKeys;

const Keys of_top{
    {"case.file", "the case file as it was named on the command line"},
    {"case.text_fnv1a64", "64-bit FNV-1a hash of the case file's text; a copy of the text is case.toml"},
    {"assumptions[]", "what was taken where the case is silent and the figures depend on it"},
    {"remarks[]", "warnings of the construct and limits of the model, worst first"},
    {"trustworthy", "all trust checks passed and all figures are finite numbers"},
    {"trust.checks[].name", "what was checked"},
    {"trust.checks[].value", "what came out"},
    {"trust.checks[].limit", "what it was held against"},
    {"trust.checks[].passed", "whether it holds"},
    {"trust.checks[].meaning", "what it says when it holds"},
    {"trust.mesh_error_stiffness", "estimated relative error of the motions from the mesh"},
    {"trust.mesh_error_peak", "estimated relative error of the peak stress from the mesh"},
    {"not_finite[]",
     "paths of figures that came out as no finite number and are left out; empty unless something is "
     "wrong with the calculation"},
};

Keys of_construct() {
  return {
      {"construct.name", "of the case"},
      figure_key("construct.working_length", "working_length"),
      figure_key("construct.plate_span_ratio", "plate_span_ratio", "left out where the fracture has no length"),
      figure_key("construct.plate_screw_density", "plate_screw_density"),
      figure_key("construct.screws_proximal", "screws_proximal"),
      figure_key("construct.screws_distal", "screws_distal"),
      {"construct.screws_across", "lag screws, which hold both fragments"},
      {"construct.cortices_proximal", "cortices held by the screws of the proximal fragment"},
      {"construct.cortices_distal", "cortices held by the screws of the distal fragment"},
      figure_key(
          "stiffness.axial", "axial_stiffness",
          "in the state after the last step, balls at the centres of the end sections; so are the next three"),
      figure_key("stiffness.bending_y", "bending_stiffness_flat"),
      figure_key("stiffness.bending_z", "bending_stiffness_edge"),
      figure_key("stiffness.torsion", "torsional_stiffness"),
      {"stiffness.under_axial_n",
       "the axial load that all four are told under: the largest axial compression of the loads; left out where "
       "no "
       "surfaces touch, with it or without: stiffness is then the same under any"},
  };
}

const Keys of_gap_point{
    {"around_deg", "place on the fracture edge round the bone: 0 is the plate's side, 180 the far cortex"},
    {"motion_y_mm", "distal minus proximal edge across the plate, at mid-cortex"},
    {"motion_z_mm", "likewise towards the plate"},
    {"shear_motion_mm", "magnitude in the plane across the bone"},
    {"axial_strain",
     "axial motion / gap that the steps left (Perren's longitudinal strain); left out where the faces touch"},
    {"shear_strain", "shear motion / that gap; left out where the faces touch"},
};

const std::string how_edges_move = "distal minus proximal edge, at mid-cortex";

Keys of_gap() {
  return {
      figure_key("largest_motion", "gap_motion",
                 "of any place of the edge, magnitude, against the unloaded construct after the last step"),
      {"axial_strain.min",
       "axial strain where the edge is open, signed; left out, as the next five, when it is closed all round"},
      figure_key("axial_strain.mean", "gap_strain_mean"),
      {"axial_strain.max", "likewise, the largest"},
      {"shear_strain.min", "shear strain where the edge is open"},
      {"shear_strain.mean", "likewise, the mean"},
      figure_key("shear_strain.max", "shear_strain"),
      {"share_of_edge.bone", "share with an axial strain of up to 2 % (windows of Perren & Cordey 1980)"},
      {"share_of_edge.cartilage", "share from 2 to 10 %"},
      {"share_of_edge.granulation", "share from 10 to 100 %"},
      {"share_of_edge.none", "share above 100 %"},
      figure_key("share_of_edge.closed", "gap_closed", "no strain there, see face"),
      figure_key("near.axial_motion", "gap_motion_near", how_edges_move),
      figure_key("far.axial_motion", "gap_motion_far", how_edges_move),
      {"edge[].axial_motion_mm", how_edges_move + ", along the bone; negative closes the gap"},
  };
}

const Keys of_face{
    {"friction_n", "resultant in the cut's plane, what the proximal face does to the distal one"},
    {"touching", "share of the faces' area that carries pressure"},
    {"near_mpa", "mean pressure within 30 degrees of the plate's side"},
    {"far_mpa", "mean pressure within 30 degrees of the opposite side"},
    {"peak_mpa", "largest pressure"},
    {"largest_slip_mm", "largest sideways slip of places that touch"},
    {"points[].around_deg", "place round the bone: 0 is the plate's side; two points a place, through the wall"},
    {"points[].wall", "outer or inner half of the wall"},
    {"points[].pressure_mpa", "0 where the faces do not touch"},
    {"points[].opening_mm", "0 where they touch"},
    {"points[].slip_mm", "sideways, since the faces met there; 0 where they do not touch"},
};

const Keys of_bent{
    {"label", "screw, or the plate, that stays bent"},
    {"along_mm", "of its worst section: on the plate, or along the screw from where its axis leaves the plate"},
    {"turn_deg", "bent and twisted for good there since it was new"},
    {"stretch_mm", "stretched for good there"},
};

const Keys of_step{
    {"text", "what was done"},
    {"by_hand", "a part is still free and stays where the hand holds it"},
    {"travel_mm", "of the distal fragment's face along the bone in this step; negative closes the gap"},
    {"travel_in_all_mm", "likewise, since before the first step"},
    {"plate_peak_mpa", "largest von Mises stress locked in the plate, over rims and a sample"},
    {"friction_use", "of the plate on the bone: force carried / limit; left out when they do not touch"},
    {"held[].label", "ball-headed screw or clamp that is in"},
    {"held[].axial_n", "its force, tension positive"},
    {"held[].of_pull_out", "force / pull-out strength; left out for clamps"},
    {"held[].of_yield", "force / tension at which the core yields; left out for clamps"},
};

const Keys of_prebend_point{
    {"height_mm",
     "of the plate's bend over the fracture, made before the first step; most_even has least unevenness, "
     "sufficient "
     "is the least of the curve that is within 15 % of it"},
    {"force_n", "across the fracture after the last step, as the next four"},
    {"near_mpa", "mean pressure within 30 degrees of the plate's side"},
    {"far_mpa", "mean pressure within 30 degrees of the opposite side"},
    {"touching", "share of the faces' area that carries pressure"},
    {"unevenness", "standard deviation of the pressure over the face / its mean"},
};

const Keys of_compression{
    {"limits[]", "plain sentences on limits that were passed, worst first"},
    {"passed_limits[].kind",
     "the same as values: pull_out, core_yield, over_yield_by_steps, over_yield_by_load, bent_by_steps, "
     "bent_by_load, preload_lost, gap_gapes, plate_slips, slot_used_up, hold_left_in"},
    {"passed_limits[].label", "of the screw or hold; left out elsewhere"},
    {"passed_limits[].load", "left out when the steps pass it"},
    {"passed_limits[].value", "axial force, share of yield, angle, opening, slip, or travel asked"},
    {"passed_limits[].limit", "what it is held against"},
    {"passed_limits[].unit", "of both; empty: a ratio"},
    {"passed_limits[].touching", "gap_gapes: share of the face that still touches"},
    {"passed_limits[].fragment", "plate_slips: proximal or distal"},
    {"passed_limits[].hole", "slot_used_up: of the slot"},
    {"frictionless_n",
     "force across the fracture after the last step if surfaces slid freely; left out when nothing presses"},
    {"sticking_n", "likewise, if they did not slide at all; left out where that has no answer"},
    {"order.early", "what was put in, or left in, too early; order is left out when the order does no harm"},
    {"order.pressing", "the screw or clamp that presses less for it"},
    {"order.reached_n", "force across the fracture after the last step, as given"},
    {"order.possible_n", "likewise, in the better order"},
    {"order.better_order[]", "the steps of the better order"},
};

const Keys of_peak{
    {"along_mm", "its place along the plate from the proximal end"},
    {"across_mm", "its place from the plate's centre line, towards +y"},
    {"face", "top (away from the bone), middle or bottom"},
    {"hole", "number of the hole whose rim it is on; left out elsewhere"},
};

const Keys of_plate{
    {"share_over_yield", "share of the plate's area over its yield strength"},
};

const Keys of_cycle{
    {"amplitude_mpa", "von Mises stress of half the range between the unloaded construct and the load"},
    {"mean_mpa", "trace of the mean stress, tension positive"},
};

const Keys of_plate_fatigue{
    {"reversed_mpa", "equivalent fully reversed amplitude (Goodman)"},
    {"along_mm", "place of the largest equivalent amplitude, from the proximal end"},
    {"across_mm", "likewise, from the plate's centre line"},
    {"face", "top (away from the bone), middle or bottom"},
    {"hole", "number of the hole whose rim it is on; left out elsewhere"},
};

const Keys of_hole{
    {"hole", "number of the hole, 1 is the most proximal"},
    {"filled", "whether it holds a screw"},
    {"centre_mm", "of its centre, along the plate from the proximal end"},
    {"peak_solid_mpa", "empty round hole: peak after the three-dimensional factors; left out for the others"},
};

const Keys of_screw{
    {"label", "as in the case"},
    {"hole", "number of its plate hole; 0 for a screw beside the plate"},
    {"axial_n", "force in the shaft at the plate's underside, tension positive"},
    {"shear_x_n", "there, along the plate"},
    {"shear_y_n", "there, across the plate"},
    {"bending_y_n_mm", "there, about the direction of shear_y"},
    {"bending_x_n_mm", "there, about the direction of shear_x"},
    {"torsion_n_mm", "there, about the screw"},
    {"peak_core_stress_mpa", "largest fibre stress of the core along the shaft"},
    {"factor_to_yield", "yield strength / peak; left out for a metal without yield strength"},
    {"cortices[].cortex", "near or far: a wall of the bone that the screw passes"},
    {"cortices[].wall_mm", "its thickness along the screw"},
    {"cortices[].pull_n", "what the shaft does to it along the screw, towards the head; negative pushes"},
    {"cortices[].shear_n", "likewise, across the screw"},
};

const Keys of_bone{
    {"peak_strain",
     "largest principal strain on the surface, smoothed over one and a half walls around each place, clear of "
     "screws "
     "by the diameter of their core"},
    {"peak_strain_at_screws", "of any one place nearer to a screw: indicative only"},
    {"factor_to_yield_strain", "left out for bone without yield strain"},
};

const Keys of_variant{
    {"move", "the innermost screws of both fragments moved one hole further_out or further_in"},
    {"unavailable", "why there is no such construct; the figures are then left out"},
    {"working_length_mm", "of the variant"},
    {"change_of_peak_stress", "(variant - construct) / construct"},
    {"change_of_gap_strain", "likewise, of the largest axial strain; left out where strain has no meaning"},
    {"change_of_gap_motion", "likewise"},
    {"change_of_stiffness", "likewise, of load / motion of the loaded end"},
};

Keys of_load() {
  Keys keys{
      {"load", "name of the load case"},
      {"acts[]", "its parts that are not zero, by their keys in the case file"},
      {"supports", "what holds the bone's ends, or the rollers"},
      {"buckling_factor",
       "factor on the load at which the construct buckles, sections taken as elastic from there on: an upper "
       "bound "
       "where parts yield; left out when it cannot"},
      {"second_order.in_figures",
       "whether the load's figures hold for the construct as it is deformed: what its axial forces add to bending "
       "as "
       "parts turn is in them"},
      figure_key("second_order.load_ratio", "axial_load_ratio"),
      figure_key("second_order.amplification", "second_order_amplification"),
      {"second_order.turn_rad",
       "largest turn of a fragment or of a plate at a hole, where parts are followed as they turn; left out where "
       "turns are taken to be small"},
      {"second_order.turn_within_rad", "largest turn that is left linear within a part then"},
      figure_key("plate_clearance", "plate_clearance", "under the load; 0: they touch"),
      figure_key("plate_pressure", "plate_pressure"),
      {"friction_use",
       "of the plate on the bone: force carried / limit, the worse fragment's; left out when they do not touch"},
      {"force_left",
       "share of the force across the fracture after the last step that is left under the load; left out when "
       "there was none"},
      {"gapes", "a place that the steps pressed together opens under the load"},
  };
  append(keys, "gap.", of_gap());
  append(keys, "gap.near.", of_gap_point);
  append(keys, "gap.far.", of_gap_point);
  append(keys, "gap.edge[].", of_gap_point);
  keys.push_back(figure_key("face.force", "force_across", "square to the cut"));
  append(keys, "face.", of_face);
  keys.push_back(figure_key("plate.peak_von_mises", "peak_stress", "here looked for all over the plate"));
  append(keys, "plate.", of_peak);
  keys.push_back(
      figure_key("plate.factor_to_yield", "plate_to_yield", "left out for a metal without yield strength"));
  append(keys, "plate.", of_plate);
  append(keys, "plate.fatigue.", of_cycle);
  append(keys, "plate.fatigue.", of_plate_fatigue);
  append(keys, "plate.holes[].", of_hole);
  keys.push_back({"plate.holes[].peak_von_mises_mpa", "largest von Mises stress at its rim"});
  append(keys, "plate.holes[].", {of_peak.begin(), of_peak.end() - 1});
  append(keys, "screws[].", of_screw);
  append(keys, "screws[].head_cycle.", of_cycle);
  append(keys, "screws[].thread_cycle.", of_cycle);
  append(keys, "bone.", of_bone);
  append(keys, "bent[].", of_bent);
  append(keys, "working_length_effect[].", of_variant);
  return keys;
}

}  // namespace

OutputKeys program_keys() {
  return {
      {"program.name", "gapstrain"},
      {"program.version", "of the program that wrote this"},
      {"program.commit", "of the sources it was built from; -modified: files differed from that commit"},
      {"cautions[]", "what these figures are not"},
      {"files[]", "all files of this folder"},
      {"keys",
       "of every key, by its path: meaning, unit of its number, and figure: what rows.csv, limits and rankings "
       "call it"},
  };
}

OutputKeys findings_keys() {
  Keys keys = program_keys();
  append(keys, "state.", state_keys());
  append(keys, "", of_top);
  append(keys, "", of_construct());
  append(keys, "compression.", of_compression);
  append(keys, "compression.steps[].", of_step);
  append(keys, "compression.steps[].bent[].", of_bent);
  keys.push_back({"compression.steps[].face.force_n", "force across the fracture, square to the cut"});
  append(keys, "compression.steps[].face.", of_face);
  append(keys, "compression.prebend.sufficient.", of_prebend_point);
  append(keys, "compression.prebend.most_even.", of_prebend_point);
  append(keys, "compression.prebend.curve[].", of_prebend_point);
  append(keys, "loads[].", of_load());
  append(keys, "margins[].", margin_keys());
  append(keys, "margins_left_out[].", left_out_keys());
  append(keys, "review[].", review_keys());
  append(keys, "plan.", plan_keys());
  append(keys, "race.", race_keys());
  append(keys, "no_race.", no_race_keys());
  return keys;
}

std::string describe_findings_keys() {
  std::string text =
      "# findings.json: keys by their paths; [name]: what rows.csv, limits and rankings call the figure\n\n";
  for (const auto& key : findings_keys())
    text += fmt::format("{}\n    {}{}\n", key.path, key.meaning,
                        key.figure.empty() ? "" : fmt::format(" [{}]", key.figure));
  return text;
}

}  // namespace gapstrain::cases
