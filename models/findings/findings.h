// What is read off the solution of a construct: figures and curves, with units. Signs and axes as in
// DEVELOPERS.md: x distal, z from the bone's axis to the plate, y completing a right-handed set; angles round the
// bone from the plate's side (0, the near cortex) towards +y, so that 180 degrees is the far cortex.
#pragma once

#include "models/parts/units.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// Geometry in the trade's own ratios. Gautier & Sommer 2003, Injury 34 Suppl 2 (definitions from memory).
struct ConstructFigures {
  Length working_length;  // along the plate between the innermost screws of both fragments
  std::optional<double>
      plate_span_ratio;              // plate length / fracture length; the gap stands for the fracture length
  double plate_screw_density = 0.0;  // screws / holes
  int screws_proximal = 0, screws_distal = 0;
  int cortices_proximal = 0, cortices_distal = 0;
};

// Stiffness of the construct between its end sections, balls at the end sections' centres.
struct StiffnessFindings {
  AxialStiffness axial;
  AngularStiffness bending_y;  // plate-normal plane: bends the plate on the flat
  AngularStiffness bending_z;  // plate-edge plane: bends the plate on its edge
  AngularStiffness torsion;
};

// Motion across the gap at one place of the fracture edge, at mid-cortex: distal edge minus proximal edge.
struct GapPoint {
  Angle around;
  Length axial_motion;  // along x; negative closes the gap
  Length motion_y, motion_z;
  Length shear_motion;        // in the plane across x
  double axial_strain = 0.0;  // axial motion / gap (Perren's longitudinal strain)
  double shear_strain = 0.0;  // shear motion / gap
};

struct Range {
  double min = 0.0, mean = 0.0, max = 0.0;
};

// Share of the edge in each of Perren's windows by the magnitude of its axial strain.
// Limits 2, 10 and 100 %: Perren & Cordey 1980, as quoted in open surgical texts.
struct PerrenWindows {
  double bone = 0.0, cartilage = 0.0, granulation = 0.0, none = 0.0;
};

struct GapFindings {
  std::vector<GapPoint> edge;  // all round, by rising angle
  GapPoint near, far;          // at 0 and 180 degrees
  Range axial_strain;          // signed
  Range shear_strain;
  PerrenWindows windows;
  bool closes = false;  // edges would pass through each other: the open-gap model does not hold
};

enum class PlateFace { top, middle, bottom };  // top: away from the bone

struct PlatePeak {
  Stress von_mises;
  Length along;   // on the plate from its proximal end
  Length across;  // from the centre line, towards +y
  PlateFace face = PlateFace::top;
  std::optional<int> hole;  // 1-based, when the place is on that hole's rim
};

struct HoleStress {
  int hole = 0;  // 1-based
  bool filled = false;
  Length along;    // of its centre, on the plate from its proximal end
  PlatePeak peak;  // as the shell gives it: high by up to 13 % at a thick plate's rim, so on the safe side
  // Empty round hole: along the rim's tangent after the three-dimensional factors (rim_factors.h), surface or
  // inside.
  std::optional<Stress> peak_solid;
};

// Section forces of the whole width at a place along the plate, about the plate's own centre.
struct PlateStation {
  Length along;
  Force normal;  // tension positive
  Force shear_y, shear_z;
  Moment bending_flat;  // about y: positive stretches the top face
  Moment bending_edge;  // about z
  Moment torsion;
  // On the centre line; beside a hole, at the nearest material: along the plate, and shear in the surface.
  Stress surface_top, surface_bottom;
  Stress surface_shear_top, surface_shear_bottom;
};

struct PlateFindings {
  PlatePeak peak;
  std::optional<double> factor_to_yield;  // yield strength / peak
  double share_over_yield = 0.0;          // of the plate's area
  std::vector<HoleStress> holes;
  std::vector<PlateStation> stations;
};

// Forces in a screw's shaft at a place on its axis, exerted by the head's side on the tip's side.
struct ScrewStation {
  Length depth;  // along the screw from the plate's underside; negative inside the plate
  Force axial;   // tension positive
  Force shear;
  Moment bending;
  Moment torsion;
};

struct ScrewFindings {
  std::string label;
  int hole = 0;
  Force axial;                  // at the plate's underside, as all of the next
  Force shear_x, shear_y;       // along the plate, across it (perpendicular to the screw's axis)
  Moment bending_y, bending_x;  // about the directions of shear_y and shear_x
  Moment torsion;
  Stress peak_bending_stress;  // of the core, largest along the shaft, axial part included
  std::optional<double> factor_to_yield;
  std::vector<ScrewStation> stations;
};

struct BoneFindings {
  double peak_strain = 0.0;  // largest principal strain magnitude on the surface, clear of screws by a wall and of
                             // the ends by a width
  double peak_strain_at_screws = 0.0;  // the same within a wall of a screw: indicative only
  std::optional<double> factor_to_yield_strain;
};

// The same construct with its innermost screws moved one hole: change against the construct, as a share.
struct WorkingLengthVariant {
  bool further_out = true;                 // false: one hole further in
  std::optional<std::string> unavailable;  // why there is no such construct
  Length working_length;
  double peak_stress = 0.0;  // (variant - construct) / construct
  double gap_strain = 0.0;   // of the largest axial strain magnitude
  double gap_motion = 0.0;
  double stiffness = 0.0;  // load / motion of the loaded end along the load
};

struct LoadFindings {
  std::string load;
  GapFindings gap;
  PlateFindings plate;
  std::vector<ScrewFindings> screws;
  BoneFindings bone;
  std::optional<Length> plate_clearance;  // least, underside to bone, under load; negative: they would overlap
  std::vector<WorkingLengthVariant> working_length_effect;
  std::optional<double> buckling_factor;  // smallest positive; absent when the load cannot buckle the construct
};

// Evidence that the figures are a solution, and how good a one.
struct Check {
  std::string name;
  double value = 0.0;
  double limit = 0.0;
  bool passed = true;
  std::string meaning;  // one sentence for a reader who is no engineer
};

struct Trust {
  std::vector<Check> checks;
  double mesh_error_stiffness = 0.0;  // estimated relative error from the mesh
  double mesh_error_peak = 0.0;
  bool passed() const;
};

struct Findings {
  std::string construct;
  ConstructFigures figures;
  StiffnessFindings stiffness;
  std::vector<LoadFindings> loads;
  Trust trust;
  std::vector<std::string> remarks;  // warnings of the construct and limits of the model, worst first
};

}  // namespace gapstrain::models
