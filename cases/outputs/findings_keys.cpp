#include "cases/outputs/findings_keys.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

using Keys = std::vector<FindingsKey>;

const Keys top{
    {"program.name", "gapstrain"},
    {"program.version", "of the program that wrote this"},
    {"case.file", "the case file as it was named on the command line"},
    {"case.text_fnv1a64", "64-bit FNV-1a hash of the case file's text; a copy of the text is case.toml"},
    {"cautions[]", "what these figures are not"},
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
    {"construct.name", "of the case"},
    {"construct.working_length_mm", "along the plate between the innermost screws of both fragments"},
    {"construct.plate_span_ratio", "plate length / fracture length; left out without a gap"},
    {"construct.plate_screw_density", "screws / holes"},
    {"construct.screws_proximal", "screws in the proximal fragment"},
    {"construct.screws_distal", "screws in the distal fragment"},
    {"construct.cortices_proximal", "cortices held by the screws of the proximal fragment"},
    {"construct.cortices_distal", "cortices held by the screws of the distal fragment"},
    {"stiffness.axial_n_per_mm", "between balls at the centres of the end sections, as the next three"},
    {"stiffness.bending_y_n_mm_per_rad", "bending the plate on the flat"},
    {"stiffness.bending_z_n_mm_per_rad", "bending the plate on its edge"},
    {"stiffness.torsion_n_mm_per_rad", "about the bone"},
    {"files[]", "all files of this folder"},
    {"keys", "the meaning of every key, by its path"},
    {"not_finite[]",
     "paths of figures that came out as no finite number and are left out; empty unless something is "
     "wrong with the calculation"},
};

const Keys gap_point{
    {"around_deg", "place on the fracture edge round the bone: 0 is the plate's side, 180 the far cortex"},
    {"axial_motion_mm", "distal minus proximal edge along the bone at mid-cortex; negative closes the gap"},
    {"motion_y_mm", "likewise across the plate"},
    {"motion_z_mm", "likewise towards the plate"},
    {"shear_motion_mm", "magnitude in the plane across the bone"},
    {"axial_strain", "axial motion / gap (Perren's longitudinal strain)"},
    {"shear_strain", "shear motion / gap"},
};

const Keys gap{
    {"closes", "the edges would pass through each other: the open-gap model does not hold"},
    {"axial_strain.min", "round the edge, signed"},
    {"axial_strain.mean", "round the edge, signed"},
    {"axial_strain.max", "round the edge, signed"},
    {"shear_strain.min", "round the edge"},
    {"shear_strain.mean", "round the edge"},
    {"shear_strain.max", "round the edge"},
    {"share_of_edge.bone", "share with an axial strain of up to 2 % (windows of Perren & Cordey 1980)"},
    {"share_of_edge.cartilage", "share from 2 to 10 %"},
    {"share_of_edge.granulation", "share from 10 to 100 %"},
    {"share_of_edge.none", "share above 100 %"},
};

const Keys peak{
    {"peak_von_mises_mpa", "largest von Mises stress"},
    {"along_mm", "its place along the plate from the proximal end"},
    {"across_mm", "its place from the plate's centre line, towards +y"},
    {"face", "top (away from the bone), middle or bottom"},
    {"hole", "number of the hole whose rim it is on; left out elsewhere"},
};

const Keys plate{
    {"factor_to_yield", "yield strength / peak; left out for a metal without yield strength"},
    {"share_over_yield", "share of the plate's area over its yield strength"},
};

const Keys hole{
    {"hole", "number of the hole, 1 is the most proximal"},
    {"filled", "whether it holds a screw"},
    {"centre_mm", "of its centre, along the plate from the proximal end"},
    {"peak_solid_mpa", "empty round hole: peak after the three-dimensional factors; left out for the others"},
};

const Keys screw{
    {"label", "as in the case"},
    {"hole", "number of its plate hole"},
    {"axial_n", "force in the shaft at the plate's underside, tension positive"},
    {"shear_x_n", "there, along the plate"},
    {"shear_y_n", "there, across the plate"},
    {"bending_y_n_mm", "there, about the direction of shear_y"},
    {"bending_x_n_mm", "there, about the direction of shear_x"},
    {"torsion_n_mm", "there, about the screw"},
    {"peak_core_stress_mpa", "largest fibre stress of the core along the shaft"},
    {"factor_to_yield", "yield strength / peak; left out for a metal without yield strength"},
};

const Keys bone{
    {"peak_strain", "largest principal strain on the surface, clear of screws by a wall's thickness"},
    {"peak_strain_at_screws", "the same near screws: indicative only"},
    {"factor_to_yield_strain", "left out for bone without yield strain"},
};

const Keys variant{
    {"move", "the innermost screws of both fragments moved one hole further_out or further_in"},
    {"unavailable", "why there is no such construct; the figures are then left out"},
    {"working_length_mm", "of the variant"},
    {"change_of_peak_stress", "(variant - construct) / construct"},
    {"change_of_gap_strain", "likewise, of the largest axial strain"},
    {"change_of_gap_motion", "likewise"},
    {"change_of_stiffness", "likewise, of load / motion of the loaded end"},
};

void append(Keys& keys, const std::string& prefix, const Keys& more) {
  for (const auto& key : more) keys.push_back({prefix + key.path, key.meaning});
}

}  // namespace

std::vector<FindingsKey> findings_keys() {
  Keys keys = top;
  keys.push_back({"loads[].load", "name of the load case"});
  keys.push_back(
      {"loads[].buckling_factor", "factor on the load at which the construct buckles; left out when it cannot"});
  keys.push_back({"loads[].plate_clearance_mm",
                  "least distance of the plate's underside from the bone; negative: they would overlap"});
  append(keys, "loads[].gap.", gap);
  append(keys, "loads[].gap.near.", gap_point);
  append(keys, "loads[].gap.far.", gap_point);
  append(keys, "loads[].gap.edge[].", gap_point);
  append(keys, "loads[].plate.", peak);
  append(keys, "loads[].plate.", plate);
  append(keys, "loads[].plate.holes[].", hole);
  append(keys, "loads[].plate.holes[].", {peak.begin(), peak.end() - 1});
  append(keys, "loads[].screws[].", screw);
  append(keys, "loads[].bone.", bone);
  append(keys, "loads[].working_length_effect[].", variant);
  return keys;
}

std::string describe_findings_keys() {
  std::string text;
  for (const auto& key : findings_keys()) text += fmt::format("{}\n    {}\n", key.path, key.meaning);
  return text;
}

}  // namespace gapstrain::cases
