#include "tests/cases/outputs/sample_findings.h"

#include <fmt/format.h>

namespace gapstrain::tests {

namespace {

using namespace gapstrain::models;

GapPoint gap_point(double degrees, double motion) {
  return {degrees * degree,   motion * mm,  0.11 * motion * mm, 0.23 * motion * mm,
          0.25 * motion * mm, motion / 3.0, 0.25 * motion / 3.0};
}

FaceFindings face(double size) {
  FaceFindings face;
  face.force = 793.0 * size * newton;
  face.friction = 21.7 * size * newton;
  face.touching = 0.38;
  face.near = 9.13 * size * mpa;
  face.far = 0.27 * size * mpa;
  face.peak = 14.9 * size * mpa;
  face.largest_slip = 0.0043 * size * mm;
  face.points = {{2.5 * degree, true, 14.9 * size * mpa, Length{}, 0.0043 * size * mm},
                 {2.5 * degree, false, 8.6 * size * mpa, Length{}, 0.0011 * size * mm},
                 {181.0 * degree, true, Stress{}, 0.071 * size * mm, Length{}}};
  return face;
}

StepFindings step(const std::string& text, double size) {
  StepFindings step;
  step.text = text;
  if (size > 0.0) step.face = face(size);
  step.travel = -0.61 * size * mm;
  step.travel_in_all = -0.83 * size * mm;
  step.bent = {{ScrewId{4}, "S4", 2.3 * mm, 3.1 * size * degree, 0.02 * mm}};
  step.held = {{"S4", 531.0 * size * newton, 0.41 * size, 0.33 * size}, {"C1", 217.0 * newton, {}, {}}};
  step.plate_peak = 61.0 * size * mpa;
  step.friction_use = 0.72 * size;
  step.by_hand = size == 0.0;
  return step;
}

PassedLimit used_slot() {
  PassedLimit slot{LimitKind::slot_used_up, ScrewId{4}, "S4", {}, 1.3, 0.9, FigureUnit::length};
  slot.hole = 4;
  return slot;
}

CompressionFindings sample_compression() {
  CompressionFindings compression;
  compression.steps = {step("insert S1", 0.0), step("insert and tighten S4", 1.0), step("insert S2", 0.97)};
  compression.frictionless = 701.0 * newton;
  compression.sticking = 838.0 * newton;
  compression.order = OrderAdvice{"S2", "S4", 143.0 * newton, 812.0 * newton, {"insert S1", "tighten S4"}};
  const PrebendPoint flat{0.0 * mm, 812.0 * newton, 9.4 * mpa, 0.0 * mpa, 0.36, 1.31};
  const PrebendPoint bent{1.2 * mm, 779.0 * newton, 3.9 * mpa, 3.6 * mpa, 0.98, 0.22};
  const PrebendPoint even{1.4 * mm, 771.0 * newton, 3.8 * mpa, 3.7 * mpa, 1.0, 0.21};
  compression.prebend = PrebendFindings{{flat, bent}, even, bent};
  PassedLimit gapes{.kind = LimitKind::gap_gapes, .load = "load 1", .value = 0.034, .limit = 0.01};
  gapes.touching = 0.57;
  PassedLimit slips{.kind = LimitKind::plate_slips, .load = "load 0", .value = 0.027, .limit = 0.01};
  slips.fragment = 1;
  compression.limits = {used_slot(), gapes, slips};
  return compression;
}

LoadFindings sample_load(int number) {
  const double size = 1.0 + 0.37 * number;
  LoadFindings load;
  load.load = fmt::format("load {}", number);
  load.gap.edge = {gap_point(0.0, -0.031 * size), gap_point(120.0, -0.127 * size), gap_point(240.0, 0.019 * size)};
  load.gap.near = load.gap.edge[0];
  load.gap.far = gap_point(180.0, -0.141 * size);
  load.gap.axial_strain = Range{-0.047 * size, -0.017 * size, 0.006 * size};
  load.gap.shear_strain = Range{0.001 * size, 0.004 * size, 0.012 * size};
  load.gap.windows = {0.25, 0.22, 0.15, 0.0, 0.38};
  load.gap.largest_motion = 0.146 * size * mm;
  load.face = face(0.93 - 0.11 * number);
  load.force_left = 0.96 - 0.11 * number;
  load.gapes = false;
  load.friction_use = 0.37 * size;
  load.plate_pressure = 318.0 * size * newton;
  load.plate.peak = {213.0 * size * mpa, 41.3 * mm, -1.7 * mm, PlateFace::bottom, 5};
  load.plate.factor_to_yield = 690.0 / 213.0 / size;
  load.plate.share_over_yield = 0.0013;
  load.plate.fatigue = PlateFatigue{
      {106.0 * size * mpa, 107.0 * size * mpa}, 121.0 * size * mpa, 41.4 * mm, -1.6 * mm, PlateFace::bottom, 5};
  load.plate.holes.push_back({4, true, 29.0 * mm, {187.0 * mpa, 30.2 * mm, 1.6 * mm, PlateFace::top, 4}, {}});
  load.plate.holes.push_back({5, false, 40.0 * mm, load.plate.peak, Stress(201.0 * mpa)});
  for (int i = 0; i < 4; ++i) {
    PlateStation station;
    station.along = 11.3 * i * mm;
    station.bending_flat = -310.0 * size * newton_mm;
    load.plate.stations.push_back(station);
  }
  for (const int hole : {1, 4}) {
    ScrewFindings screw;
    screw.screw = ScrewId{hole};
    screw.label = fmt::format("S{}", hole);
    screw.hole = hole;
    screw.axial = 13.7 * hole * newton;
    screw.bending_x = 55.1 * hole * newton_mm;
    screw.peak_bending_stress = 31.9 * hole * size * mpa;
    screw.factor_to_yield = 21.6 / (hole * size);
    screw.head_cycle = {15.3 * hole * mpa, 16.4 * hole * mpa};
    screw.thread_cycle = {5.3 * hole * mpa, 6.4 * hole * mpa};
    screw.cortices = {{false, 2.1 * mm, 9.2 * hole * newton, 41.0 * hole * newton},
                      {true, 2.2 * mm, 4.5 * hole * newton, 33.0 * hole * newton}};
    screw.stations.resize(5);
    load.screws.push_back(screw);
  }
  load.bone = {0.00071 * size, 0.0019 * size, 10.3 / size};
  load.working_length_effect = {{true, std::nullopt, 66.0 * mm, 0.12, 0.41, 0.39, -0.28},
                                {false, "the next hole lies over the gap", Length{}, 0.0, 0.0, 0.0, 0.0}};
  load.buckling_factor = 31.7 / size;
  load.second_order = {0.061 * size, 1.072 * size, 3e-12,
                       LargeTurnFindings{0.21 * size * radian, 0.031 * size * radian, 2e-12, true}};
  load.plate_clearance = 0.83 * mm;
  load.bent = {{ScrewId::none, "plate", 41.0 * mm, 1.7 * degree, 0.01 * mm}};
  return load;
}

GapState gap_state(double modulus, double stress, double share) {
  GapState gap;
  gap.modulus = modulus * mpa;
  gap.plate_peak = stress * mpa;
  gap.largest_strain = 0.17 * share;
  gap.largest_shear = 0.023 * share;
  gap.perren = {0.9 - 0.8 * share, 0.03 + 0.5 * share, 0.02 + 0.2 * share, 0.01, 0.04 + 0.1 * share};
  gap.claes = {0.7 - 0.6 * share, 0.2, 0.06 + 0.5 * share, 0.04 + 0.1 * share};
  gap.united = 1.0 - share;
  gap.held = 0.3 * share;
  return gap;
}

// Of a race whose union comes in week 1.6: moments in weeks 0, 0.8 and 1.6.
StressHistory sample_history() {
  StressHistory history;
  history.progress = {0.0, 0.5, 1.0};
  history.load_factors = {1.0};
  history.loads = {0};
  StressHistory::Course governed, none;
  governed.course = HealingCourse::governed;
  governed.gap = {gap_state(0.2, 213.0, 1.0), gap_state(20.0, 107.0, 0.6), gap_state(2000.0, 11.0, 0.0)};
  none.course = HealingCourse::none;
  none.gap = {gap_state(0.2, 213.0, 1.0), gap_state(0.2, 213.0, 1.0), gap_state(0.2, 213.0, 1.0)};
  StressHistory::Course steady = none;
  steady.course = HealingCourse::steady;
  history.courses = {governed, none, steady};
  return history;
}

}  // namespace

Findings sample_findings(int loads) {
  Findings findings;
  findings.construct = "Sample";
  findings.figures = {44.0 * mm, 39.3, 0.6, {{3, 6}, {2, 4}}, 1};
  findings.stiffness = {812.0 * newton / mm,
                        7.1e4 * newton_mm / radian,
                        5.3e5 * newton_mm / radian,
                        6.7e4 * newton_mm / radian,
                        130.0 * newton,
                        true};
  findings.compression = sample_compression();
  for (int number = 0; number < loads; ++number) findings.loads.push_back(sample_load(number));
  findings.trust.checks = {{"residual", 3e-13, 1e-7, true, "forces at every node of the mesh balance"}};
  findings.trust.mesh_error_stiffness = 0.004;
  findings.trust.mesh_error_peak = 0.031;
  findings.remarks = {"a remark of the construct"};
  return findings;
}

Construct sample_construct() {
  Construct construct;
  construct.name = "Sample";
  construct.bone.cortex = find_cortex("human-femur").value();
  only(construct.plates).material = find_metal("stainless-steel-cold-worked").value();
  for (const int number : {0, 1, 2}) {
    LoadCase& load = construct.loads.emplace_back();
    load.name = fmt::format("load {}", number);
    load.axial_compression = (90.0 + number) * newton;
  }
  for (const int hole : {1, 4}) {
    Screw screw;
    screw.label = fmt::format("S{}", hole);
    screw.hole = hole;
    screw.id = ScrewId{hole};
    screw.material = only(construct.plates).material;
    construct.screws.push_back(screw);
  }
  return construct;
}

Assessment sample_assessment() {
  Assessment assessment;
  const PlateLocation rim{5, 40.0 * mm, PlateFace::bottom};
  assessment.margins = {
      {MarginKind::screw_fatigue, "load 1", 0.83, "a textbook", false, ScrewId{4},
       FatigueBasis{{106.0 * mpa, 107.0 * mpa}, 121.0 * mpa, 98.0 * mpa, 1e6, {0.74, 0.83, 0.91}, {}}, "S4"},
      {MarginKind::bone_yield_at_screws, "load 2", 0.97, "a paper", true, ScrewId::none,
       StrainBasis{0.0075, 0.0073}},
      {MarginKind::plate_yield, "load 2", 2.37, "a standard", false, ScrewId::none,
       YieldBasis{291.0 * mpa, 690.0 * mpa, rim}}};
  assessment.margins_left_out = {LoadOutsideDay{"load 0"}, UnknownStrength{MarginKind::bone_yield, "own bone"},
                                 NotStrained{MarginKind::screw_hold, ScrewId{1}, "S1"}};
  RuleFinding span{"plate span ratio", Verdict::broken, "from memory"};
  span.value = 5.2;
  span.least = 8.0;
  span.ample = 10.0;
  span.basis = SpanBasis{true, false, 86.0 * mm, 16.5 * mm, 160.0 * mm, 132.0 * mm};
  RuleFinding count{"screws in the distal fragment", Verdict::kept, "common practice, no source",
                    FigureUnit::count};
  count.value = 3.0;
  count.least = 3.0;
  count.ample = 4.0;
  count.basis = CountBasis{true, true, 3, 3};
  RuleFinding tilt{"tilt of the locking screws", Verdict::kept, "a paper", FigureUnit::angle};
  tilt.value = 3.0;
  tilt.most = 12.0;
  tilt.basis = TiltBasis{{ScrewId{1}, "S1", 1}};
  assessment.review = {span, count, tilt};
  Plan& plan = assessment.plan;
  plan.bone = "radius";
  plan.side = Side::left;
  plan.fracture_position = 71.0 * mm;
  plan.plate_length = 86.0 * mm;
  plan.plate_width = 8.5 * mm;
  plan.plate_thickness = 2.6 * mm;
  plan.holes = 8;
  plan.metal = "stainless-steel-cold-worked";
  plan.proximal_end = 31.0 * mm;
  plan.standoff = 1.1 * mm;
  plan.bends = {{0, 1, 2.0 * mm, 0.4 * degree}, {1, 2, 10.0 * mm, 1.3 * degree}};
  plan.prebend = PlannedPrebend{1.4 * mm, 43.0 * mm, 3.7 * degree};
  OrderedScrew screw;
  screw.label = "S4";
  screw.hole = 4;
  screw.size = "HA 2.7";
  screw.metal = plan.metal;
  screw.measured = 15.3 * mm;
  screw.length = 18.0 * mm;
  screw.drill = 2.0 * mm;
  screw.gliding = 2.7 * mm;
  plan.screws = {screw};
  plan.steps = {"insert and tighten S4"};
  const RulePart s4{ScrewId{4}, "S4", 4};
  plan.notes = {BendAtLockingHole{4, 6.3 * degree},
                *plan.prebend,
                FreeEntryNote{s4, 62.0 * mm, 91.0 * degree, plan.aspect},
                AimNote{s4, 7.0 * degree, -4.0 * degree, plan.aspect, true},
                OffCentreNote{s4, 0.7 * mm},
                GlidingHoleNote{s4, 2.7 * mm},
                UnknownDrills{{s4}},
                OtherMetals{{{s4, "titanium"}}, plan.metal},
                LengthsNote{2.0 * mm, 2.5 * mm}};
  RaceCourse governed;
  governed.course = HealingCourse::governed;
  governed.damage = {{0.0, 0.0, 0.0}, {0.011, 0.023, 0.047}, {0.013, 0.029, 0.059}};
  governed.life_factor = {3.7, 8.1, 17.3};
  governed.united = {0.83, 0.91, 0.99};
  governed.breaks_before_union = 0.013;
  governed.breaks_in_five_years = 0.29;
  governed.breaks_low = 41.0;
  governed.breaks_middle = 103.0;
  governed.breaks_high = 207.0;
  governed.tested_factor = 221.0;
  governed.tested_weeks = 408.0;
  ScrewRace screws;
  screws.label = "S4";
  screws.damage = {{0.0, 0.0, 0.0}, {0.021, 0.053, 0.087}, {0.023, 0.069, 0.13}};
  screws.life_factor = {2.3, 5.9, 11.7};
  screws.breaks_before_union = 0.021;
  screws.breaks_in_five_years = 0.31;
  screws.screw = ScrewId{4};
  governed.screws = screws;
  RaceCourse none;
  none.course = HealingCourse::none;
  none.damage = {{0.0, 0.0, 0.0}, {0.37, 0.71, 1.1}, {0.74, 1.42, 2.2}};
  none.life_factor = {0.43, 0.69, 1.9};
  RaceCourse steady = none;
  steady.course = HealingCourse::steady;
  Race race;
  race.weeks = {0.0, 1.0, 2.0};
  race.union_week = {1.1, 1.6, 1.9};
  race.courses = {governed, none, steady};
  race.inputs = {{"size of the loads", {0.71, 0.97, 1.43}, "times nominal", "lognormal"}};
  race.hangs_on = {{"size of the loads", {0.61, 0.52, 0.69}, {0.66, 0.59, 0.74}}};
  race.hangs_on_loads = 0.61;
  race.at_the_end = gap_state(2000.0, 11.0, 0.0);
  race.cycles_a_day = 3500.0;
  race.activity_factor = 1.5;
  race.samples = 2048;
  assessment.race = race;
  assessment.history = sample_history();
  assessment.state.fails = {{assessment.margins.front(), {FailureTime::Kind::in_race, 1.4, 4.2}}};
  assessment.state.limits = {used_slot()};
  assessment.state.estimated = {Estimate::cortex, Estimate::gap};
  assessment.state.second_order = {{"axial 130 N", 0.061, 1.072}};
  assessment.state.turned = {{"axial 130 N", 0.21 * radian, 0.031 * radian}};
  const auto day = [&](double factor, double gap_strain) {
    Margin least = assessment.margins.front();
    least.factor = factor;
    return FirstDay{Standing::fails, least, gap_strain};
  };
  assessment.state.interface =
      InterfaceBounds{bonded_interface, {bonded_interface, day(0.83, 0.041)}, {soft_interface, day(0.79, 0.047)}};
  assessment.state.softening = {{0.0, {bonded_interface, day(0.83, 0.041)}}, {8.0, {0.6, day(0.81, 0.045)}}};
  assessment.no_race = NoRace{NoRace::Reason::no_healing};  // where there is no race; for its key
  return assessment;
}

}  // namespace gapstrain::tests
