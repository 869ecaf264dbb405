// What is read off the solution of a construct: figures and curves, with units. Signs and axes as in
// DEVELOPERS.md: x distal, z from the bone's axis to the plate, y completing a right-handed set; angles round the
// bone from the plate's side (0, the near cortex) towards +y, so that 180 degrees is the far cortex.
#pragma once

#include "models/parts/figure_unit.h"
#include "models/parts/screw.h"
#include "models/parts/units.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// Plate screws of one fragment.
struct FragmentScrews {
  int screws = 0, cortices = 0;
};

// Geometry in the trade's own ratios. Gautier & Sommer 2003, Injury 34 Suppl 2 (definitions from memory).
struct ConstructFigures {
  Length working_length;  // along the plate between the innermost screws of both fragments
  std::optional<double>
      plate_span_ratio;              // plate length / fracture length along the bone, its gap and its obliquity
  double plate_screw_density = 0.0;  // screws / holes
  std::vector<FragmentScrews> fragments;  // from proximal to distal
  int screws_across = 0;                  // lag screws, which hold both fragments
};

int plate_screws(const ConstructFigures& figures);  // of all fragments

// Stiffness of the construct between its end sections, balls at the end sections' centres, in the state that an
// axial load on the construct as the steps left it brings about, with all that meets, parts and slides
// (models/measures/stiffness.h): the axial one is that load over its motion, the others small moments on top of it
// over theirs, in the sense that gives way more. Metals are elastic.
struct StiffnessFindings {
  AxialStiffness axial;
  AngularStiffness bending_y;  // plate-normal plane: bends the plate on the flat
  AngularStiffness bending_z;  // plate-edge plane: bends the plate on its edge
  AngularStiffness torsion;
  Force force{};              // the axial load; an open gap that stays open answers alike to any
  bool with_contact = false;  // surfaces touch, without the load or under it
};

// Motion across the gap at one place of the fracture edge, at mid-cortex: distal edge minus proximal edge, under
// the load against the unloaded construct after the last step.
struct GapPoint {
  Angle around;
  Length axial_motion;  // along x; negative closes the gap
  Length motion_y, motion_z;
  Length shear_motion;  // in the plane across x
  // Perren's longitudinal strain, axial motion over the gap that the steps left there, and shear motion over it.
  // Nothing where the faces touch, before the load or under it: change over gap has no meaning there.
  std::optional<double> axial_strain, shear_strain;
};

struct Range {
  double min = 0.0, mean = 0.0, max = 0.0;
};

// Share of the edge in each of Perren's windows by the magnitude of its axial strain, and the closed rest.
// Limits 2, 10 and 100 %: Perren & Cordey 1980, as quoted in open surgical texts.
struct PerrenWindows {
  double bone = 0.0, cartilage = 0.0, granulation = 0.0, none = 0.0, closed = 0.0;
};

struct GapFindings {
  std::vector<GapPoint> edge;  // all round, by rising angle
  GapPoint near, far;          // at 0 and 180 degrees
  // Over the places where strain has a meaning; nothing when there is none.
  std::optional<Range> axial_strain;  // signed
  std::optional<Range> shear_strain;
  PerrenWindows windows;
  Length largest_motion;  // of any place of the edge, magnitude
};

// One spot of the cut's faces; two a place round the bone, through the wall.
struct FacePoint {
  Angle around;
  bool outer = true;  // the half of the wall towards the bone's surface
  Stress pressure;    // 0 where the faces do not touch
  Length opening;     // 0 where they touch
  Length slip;        // sideways, since the faces met there; 0 where they do not touch
};

// How the fracture's faces bear on each other.
struct FaceFindings {
  Force force;            // across the fracture, square to the cut
  Force friction;         // resultant in the cut's plane, what the proximal face does to the distal one
  double touching = 0.0;  // share of the faces' area that carries pressure
  Stress near, far;       // mean pressure within 30 degrees of the plate's side, and opposite
  Stress peak;
  Length largest_slip;
  std::vector<FacePoint> points;
};

enum class PlateFace { top, middle, bottom };  // top: away from the bone

// The stress cycle of a load at a place, between the construct as it was made and under the load.
struct StressCycle {
  Stress amplitude;  // von Mises stress of half the range
  Stress mean;  // trace of the mean stress tensor, as damage by mean stress goes (G. Sines 1959, in Metal Fatigue,
                // ed. G. Sines and J. L. Waisman; from memory): the stress itself where it is uniaxial
  Stress at_rest{};  // what of the mean is there without the load: trace of the stress that the steps locked in
};

// Where a load's equivalent fully reversed amplitude is largest in the plate.
struct PlateFatigue {
  StressCycle cycle;
  Stress reversed;  // equivalent fully reversed amplitude, see models/stress/fatigue.h
  Length along, across;
  PlateFace face = PlateFace::top;
  std::optional<int> hole;  // 1-based, when the place is on that hole's rim
};

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
  std::optional<PlateFatigue> fatigue;    // nothing for a metal without fatigue strength
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

// What a shaft does to a wall of the bone that it passes.
struct CortexForce {
  bool far = false;
  Length wall;  // along the screw
  Force pull;   // along the screw towards its head; negative pushes
  Force shear;  // across it
};

struct ScrewFindings {
  ScrewId screw = ScrewId::none;
  std::string label;
  int hole = 0;
  Force axial;                  // where the head sits (the plate's underside), as all of the next
  Force shear_x, shear_y;       // along the plate, across it (perpendicular to the screw's axis)
  Moment bending_y, bending_x;  // about the directions of shear_y and shear_x
  Moment torsion;
  Stress peak_bending_stress;  // of the core, largest along the shaft, axial part included
  std::optional<double> factor_to_yield;
  StressCycle head_cycle;             // nominal, of the core where it leaves the plate
  StressCycle thread_cycle;           // likewise where it enters or leaves a cortex, the worst of these places
  std::vector<CortexForce> cortices;  // near, far; a lag screw's far one only
  std::vector<ScrewStation> stations;
};

struct BoneFindings {
  // Largest principal strain magnitude on the surface, smoothed over a wall and a half around each place, a core's
  // diameter clear of screws and a width clear of the ends (models/stress/bone_strain.h).
  double peak_strain = 0.0;
  double peak_strain_at_screws = 0.0;  // of any one node nearer to a screw: indicative only, it follows the mesh
  std::optional<double> factor_to_yield_strain;
};

// The same construct with its innermost screws moved one hole: change against the construct, as a share.
struct WorkingLengthVariant {
  bool further_out = true;                 // false: one hole further in
  std::optional<std::string> unavailable;  // why there is no such construct
  Length working_length;
  double peak_stress = 0.0;          // (variant - construct) / construct
  std::optional<double> gap_strain;  // of the largest axial strain magnitude; nothing where strain has no meaning
  double gap_motion = 0.0;
  double stiffness = 0.0;  // load / motion of the loaded end along the load
};

// A part that stays bent, at its worst section.
struct BentPart {
  ScrewId screw = ScrewId::none;  // none: the plate
  std::string label;
  Length along;    // of the section: on the plate, or along the screw from where its axis leaves the plate
  Angle turn;      // bent and twisted for good since it was new
  Length stretch;  // likewise, along the bar
};

// How far parts turn under a load whose turns are followed as large.
struct LargeTurnFindings {
  Angle turn;             // largest, of any fragment or hole of a plate
  Angle within;           // largest that is left linear within a part, and so the error's measure
  double residual = 0.0;  // relative change of what was added in the last round
  bool settled = false;   // else the figures are those of small turns
};

// What the load's axial forces do as the construct gives way under them.
struct SecondOrderFindings {
  // Axial load over that at which the construct gives way in the shape into which the load bends it; nothing where
  // axial forces do next to nothing, or was not looked for.
  std::optional<double> load_ratio;
  // By which slopes of plate and bone grow; nothing: second-order effects are not in the figures.
  std::optional<double> amplification;
  double residual = 0.0;  // relative change of the added forces in the last round
  std::optional<LargeTurnFindings> large{};
};

struct LoadFindings {
  std::string load;
  GapFindings gap;
  FaceFindings face;
  // Of the force across the fracture after the last step, what is left under the load; nothing when there was
  // none.
  std::optional<double> force_left;
  bool gapes = false;  // a place that the steps pressed together opens by more than 0.01 mm under the load
  std::optional<double> friction_use;  // of the plate on the bone: force carried / limit, the worse fragment's
  PlateFindings plate;
  std::vector<ScrewFindings> screws;
  BoneFindings bone;
  std::optional<Length> plate_clearance;  // least, underside to bone, under load; 0: they touch
  Force plate_pressure;                   // of the plate's underside on the bone, in all
  std::vector<WorkingLengthVariant> working_length_effect;
  SecondOrderFindings second_order;
  std::optional<double> buckling_factor;  // smallest positive; absent when the load cannot buckle the construct
  std::vector<BentPart> bent;             // once the load has acted, by steps and load together
};

// A ball-headed screw, or a clamp, at the end of a step.
struct HeldForce {
  std::string label;
  Force axial;                        // tension positive
  std::optional<double> of_pull_out;  // axial / pull-out strength (screws)
  std::optional<double> of_yield;     // axial / tension at which the core yields (screws)
  ScrewId screw = ScrewId::none;      // none: a clamp
};

// The construct at the end of one step, unloaded.
struct StepFindings {
  std::string text;  // such as "insert and tighten S4"
  FaceFindings face;
  Length travel;         // of the distal fragment's face along the bone in this step; negative closes the gap
  Length travel_in_all;  // since before the first step
  std::vector<HeldForce> held;
  Stress plate_peak;                   // locked in: largest von Mises stress over rims and a sample
  std::optional<double> friction_use;  // of the plate on the bone, the worse fragment's; nothing untouched
  bool by_hand = false;        // a part is still free: until a link holds it, it stays where the hand holds it
  std::vector<BentPart> bent;  // since before the first step
};

// An earlier step that keeps a later one from pressing, and what the other order gives.
struct OrderAdvice {
  std::string early;                      // what was put in, or left in, too early
  std::string pressing;                   // the screw or clamp that then presses less
  Force reached, possible;                // across the fracture at the end: as given, and in the better order
  std::vector<std::string> better_order;  // its steps' texts
};

struct PrebendPoint {
  Length height;
  Force force;  // across the fracture
  Stress near, far;
  double touching = 0.0;
  double unevenness = 0.0;  // standard deviation of the pressure over the face / its mean
};

// The same steps with the plate bent more or less over the fracture beforehand.
struct PrebendFindings {
  std::vector<PrebendPoint> curve;  // by rising height
  PrebendPoint most_even;           // of least unevenness
  PrebendPoint sufficient;          // the least bend of the curve that is within 15 % of it, or that one itself
};

enum class LimitKind {
  pull_out,             // axial force of a tightened screw over what its thread bears
  core_yield,           // the same over what its core bears
  over_yield_by_steps,  // times a shaft is strained to its yield by the steps alone, metals taken as elastic
  over_yield_by_load,   // the same under a load
  bent_by_steps,        // how far a part stays bent by the steps alone
  bent_by_load,         // how much more by a load
  preload_lost,         // axial force of a tightened screw that no longer pulls
  gap_gapes,            // opening of what the steps pressed together
  plate_slips,          // on a fragment
  slot_used_up,         // travel asked of a compression screw, over what its slot leaves
  hold_left_in          // a wire or clamp, after the last step
};

// A limit that was passed while a construct is made or under a load. Words are made of it by
// models/words/limit_words.h.
struct PassedLimit {
  LimitKind kind = LimitKind::hold_left_in;
  ScrewId screw = ScrewId::none;        // none: of plate, gap or hold
  std::string label{};                  // of the screw or hold
  std::optional<std::string> load{};    // nothing: in the steps
  double value = 0.0, limit = 0.0;      // left out of a hold
  FigureUnit unit = FigureUnit::ratio;  // of both
  double times = 0.0;                   // value over limit; 0 where that says nothing
  double touching = 0.0;                // gap_gapes: share of the face
  std::size_t fragment = 0;             // plate_slips
  int hole = 0;                         // slot_used_up
};

// What the steps did.
struct CompressionFindings {
  std::vector<StepFindings> steps;
  // Force across the fracture after the last step with surfaces that slide freely, and that do not slide; nothing
  // when nothing presses, or where not sliding at all has no answer.
  std::optional<Force> frictionless, sticking;
  std::optional<OrderAdvice> order;
  std::optional<PrebendFindings> prebend;  // when a plate screw presses
  std::vector<PassedLimit> limits;         // worst first
};

// Evidence that the figures are a solution, and how good a one.
struct Check {
  std::string name;
  double value = 0.0;
  double limit = 0.0;
  bool passed = true;
  std::string meaning;  // one sentence for a reader who is no engineer
  bool operator==(const Check&) const = default;
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
  CompressionFindings compression;
  std::vector<LoadFindings> loads;
  Trust trust;
  std::vector<std::string> remarks;  // warnings of the construct and limits of the model, worst first
};

}  // namespace gapstrain::models
