#include "models/patient/starting_plate.h"

#include "models/geometry/bone_shape.h"
#include "models/parts/tightening.h"
#include "models/rules/bounds.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::models {

namespace {

constexpr double most_length_share = 0.8;    // of the bone; a choice of this program
constexpr double least_thread_share = 0.25;  // of what is customary, 25 to 30 % of the bone's width
constexpr double middle_share = 1.3;         // of a compression plate's solid middle, in pitches
constexpr int least_holes = 6, most_holes = 20, usual_bridging = 12, usual_compressing = 8;

// The shaft where it is broken, in mm.
struct Site {
  double length, width;      // of the bone; across the screws
  double depth;              // half the bone along the screws
  double fracture, reaches;  // middle; to either side of it along the bone
  bool compress, simple;
};

bool is_of_use(const GenericPlate& row, const Site& site) {
  return !(site.compress ? row.cortical : row.locking).empty();
}

double thread_share(const GenericPlate& row, const Site& site) { return row.thread / site.width; }

const GenericPlate& usual_row(const Site& site) {
  const GenericPlate* chosen = nullptr;
  const GenericPlate* smallest = nullptr;
  for (const GenericPlate& row : generic_plates()) {
    if (!is_of_use(row, site)) continue;
    if (smallest == nullptr) smallest = &row;
    if (thread_share(row, site) <= usual_thread_share && row.width <= site.width) chosen = &row;
  }
  if (chosen == nullptr && thread_share(*smallest, site) <= most_thread_share) chosen = smallest;
  if (chosen == nullptr)
    throw PatientError(
        Subject::widths,
        fmt::format(
            "The bone is {:.3g} mm wide across the screws; the smallest screw known here, {:.3g} mm, needs "
            "{:.3g} mm. Measure the widths, or write the case by hand.",
            site.width, smallest->thread, smallest->thread / most_thread_share));
  return *chosen;
}

void tell_row(const GenericPlate& row, const Site& site, StartingPlate& plate) {
  if (thread_share(row, site) > usual_thread_share)
    plate.cautions.push_back(
        fmt::format("The screw of {:.3g} mm takes {:.0f} % of a bone {:.3g} mm wide; customary are 25 to 30 %.",
                    row.thread, 100.0 * thread_share(row, site), site.width));
  plate.reasons.push_back(
      fmt::format("Thread {:.3g} mm: {:.0f} % of the bone's width of {:.3g} mm across it; at most about 30 % "
                  "(from memory; 33 % "
                  "cost a cat's femur at most 20 % of its strength, Hoon et al. 2021, Vet Comp Orthop Traumatol).",
                  row.thread, 100.0 * thread_share(row, site), site.width));
}

// Of a section without what holes leave out, N / A + M / W flat and on edge, and torsion of a strip, 3 T / w t^2,
// together as von Mises: what a bridged fracture leaves to the plate alone. The force runs along the line of the
// balls, which passes the plate at the distances that bend it.
double nominal_stress(const GenericPlate& row, const Site& site, double width, double thickness,
                      const LoadCase& load) {
  const double net = width - row.hole;
  const double flat_lever = site.depth + row.standoff + 0.5 * thickness - load.ball_offset_z.value();
  const double edge_lever = load.ball_offset_y.value();
  const double force = load.axial_compression.value();
  const double edge_modulus = thickness * (std::pow(width, 3) - std::pow(row.hole, 3)) / (6.0 * width);
  const double bending = force / (net * thickness) +
                         6.0 * force * std::abs(flat_lever) / (net * thickness * thickness) +
                         force * std::abs(edge_lever) / edge_modulus;
  const double shear = 3.0 * load.torsion.value() / (width * thickness * thickness);
  return std::hypot(bending, std::sqrt(3.0) * shear);
}

Metal plate_metal() { return find_metal("stainless-steel-cold-worked").value(); }
double allowed_stress() { return 0.5 * plate_metal().yield_strength.value().value(); }

double nominal_stress(const PlateChoice& choice, const Site& site, const LoadCase& load) {
  const GenericPlate& row = *choice.row;
  return choice.strong ? nominal_stress(row, site, row.strong_width, row.strong_thickness, load)
                       : nominal_stress(row, site, row.width, row.thickness, load);
}

// The usual section if that is strong enough, else the strong one where the bone is wide enough. Pressed, the bone
// bears its part.
PlateChoice usual_section(const GenericPlate& row, const Site& site, const LoadCase& load) {
  return {&row, !site.compress && nominal_stress({&row, false}, site, load) > allowed_stress() &&
                    row.strong_width <= site.width};
}

void set_section(const PlateChoice& choice, const Site& site, const LoadCase& load, StartingPlate& plate) {
  plate.width = (choice.strong ? choice.row->strong_width : choice.row->width) * mm;
  plate.thickness = (choice.strong ? choice.row->strong_thickness : choice.row->thickness) * mm;
  if (site.compress) return;
  const double allowed = allowed_stress(), stress = nominal_stress(choice, site, load);
  const std::string found = fmt::format(
      "nominal stress of its net section under \"{}\" {:.0f} MPa, customary half its yield strength at most, "
      "{:.0f} MPa, "
      "for holes raise it (a choice of this program)",
      load.name, stress, allowed);
  if (stress > allowed)
    plate.cautions.push_back(
        "The plate is weak for this patient while the fracture is open: " + found +
        ". Keep the patient from it, choose a stronger plate, or add a rod or a second plate.");
  else
    plate.reasons.push_back(
        fmt::format("Section {:.3g} x {:.2g} mm: {}.", plate.width.value(), plate.thickness.value(), found));
}

double middle_spacing(const GenericPlate& row, bool compress) {
  return (compress ? middle_share : 1.0) * row.pitch;
}

double plate_length(const GenericPlate& row, const Site& site, int holes) {
  return (holes - 1) * row.pitch + middle_spacing(row, site.compress) - row.pitch + 1.2 * row.pitch;
}

// As long as customary, longer where the span asks for it, as far as the bone lets it.
int choose_holes(const GenericPlate& row, const Site& site, StartingPlate& plate) {
  const double span_ratio = site.simple ? begin_with_simple_span : begin_with_comminuted_span;
  const double wanted = span_ratio * 2.0 * site.reaches;
  const int usual = site.compress ? usual_compressing : usual_bridging;
  int holes = 0;
  for (int count = least_holes; count <= most_holes; count += 2) {
    if (plate_length(row, site, count) > most_length_share * site.length) break;
    if (count > usual && plate_length(row, site, count - 2) >= wanted) break;
    holes = count;
  }
  if (holes == 0)
    throw PatientError(
        Subject::length,
        fmt::format("The bone is {:.4g} mm long; the shortest plate here, {} holes in {:.4g} mm, must not take "
                    "more than {:.0f} % "
                    "of it. Measure the bone's length, or write the case by hand.",
                    site.length, least_holes, plate_length(row, site, least_holes), 100.0 * most_length_share));
  const double ratio = plate_length(row, site, holes) / (2.0 * site.reaches);
  const std::string rule =
      fmt::format("at least {} for a {} (Gautier & Sommer 2003, Injury 34 Suppl 2, from memory)", span_ratio,
                  site.simple ? "simple fracture"
                              : fmt::format("comminuted fracture, the upper end of {} to {}",
                                            comminuted_span.least, comminuted_span.ample));
  if (ratio < span_ratio)
    plate.cautions.push_back(
        fmt::format("The plate is only {:.2g} times as long as the fracture reaches along the bone; {}. The bone "
                    "leaves no more "
                    "room.",
                    ratio, rule));
  else
    plate.reasons.push_back(
        fmt::format("Length {:.4g} mm: {:.3g} times the fracture's {:.3g} mm along the bone; {}.",
                    plate_length(row, site, holes), ratio, 2.0 * site.reaches, rule));
  return holes;
}

// Of the hole along the bone; numbers from 1.
double hole_place(const GenericPlate& row, const Site& site, const StartingPlate& plate, int hole) {
  const double middle = plate.proximal_end.value() + 0.5 * plate.length.value();
  const double from_middle = (hole - 0.5 * (plate.holes + 1)) * row.pitch;
  const double widened = 0.5 * (middle_spacing(row, site.compress) - row.pitch);
  return middle + from_middle + (from_middle > 0.0 ? widened : -widened);
}

// Holes of one fragment clear of the fracture, from it outward. Bridging a simple fracture leaves those next to it
// empty as well: two or three holes over the fracture (from memory).
std::vector<int> clear_holes(const GenericPlate& row, const Site& site, const StartingPlate& plate, bool distal) {
  const double clear = site.reaches + least_edge_clearance * row.thread;
  const double empty = !site.compress && site.simple ? std::max(clear, 1.01 * row.pitch) : clear;
  std::vector<int> holes;
  for (int hole = 1; hole <= plate.holes; ++hole) {
    const double beyond = hole_place(row, site, plate, hole) - site.fracture;
    if ((distal ? beyond : -beyond) >= empty) holes.push_back(hole);
  }
  if (!distal) std::reverse(holes.begin(), holes.end());
  return holes;
}

// The two next to the fracture, which bear most of the bending between them, and the outermost.
std::vector<int> choose_three(const std::vector<int>& holes) {
  if (holes.size() <= 3) return holes;
  return {holes[0], holes[1], holes.back()};
}

void choose_screws(const GenericPlate& row, const Site& site, const std::optional<ScrewHoles>& own,
                   StartingPlate& plate) {
  const std::size_t least = site.compress ? 2 : 3;
  for (const bool distal : {false, true}) {
    const auto holes = clear_holes(row, site, plate, distal);
    if (holes.size() < least)
      throw PatientError(
          Subject::fracture,
          fmt::format("The {} fragment gets {} hole{} clear of the fracture on a plate of {} holes, {:.4g} mm "
                      "long; {} needs {} at "
                      "least. The fracture reaches from {:.4g} to {:.4g} mm along a bone of {:.4g} mm: enter a "
                      "fracture nearer to "
                      "the middle or a shorter one, or write the case by hand.",
                      distal ? "distal" : "proximal", holes.size(), holes.size() == 1 ? "" : "s", plate.holes,
                      plate.length.value(), site.compress ? "pressing" : "bridging", least,
                      site.fracture - site.reaches, site.fracture + site.reaches, site.length));
    (distal ? plate.distal : plate.proximal) = choose_three(holes);
  }
  if (own) {
    plate.proximal = own->proximal;
    plate.distal = own->distal;
  }
  const auto count = plate.proximal.size() + plate.distal.size();
  const double density = static_cast<double>(count) / plate.holes;
  plate.reasons.push_back(fmt::format(
      "Screws: {} + {} (customary are 3 a fragment), {}; {}.", plate.proximal.size(), plate.distal.size(),
      own ? "in the holes that a search found" : "the two holes next to the fracture and the outermost",
      site.compress ? "each at least 1.5 thread diameters from the fracture's edge"
                    : fmt::format("{:.2g} of the holes filled (0.5 at most when bridging, "
                                  "open surgical texts), those over the fracture empty",
                                  density)));
  if (!site.compress && density > 0.5 + 1e-9)
    plate.cautions.push_back(
        fmt::format("{:.2g} of the plate's holes are filled; customary when bridging is half at most. The bone "
                    "leaves no room for a "
                    "longer plate.",
                    density));
}

// The compression screw slides as far as the gap is open and a little more, which presses: nothing gives way in
// the calculation but the parts themselves, so a slide to the end of its travel would bend the screw for good.
void press(const GenericPlate& row, const Fracture& fracture, StartingPlate& plate) {
  constexpr double beyond = 0.05;  // mm; a choice of this program
  Screw screw;
  screw.size = plate.screw_size;
  const Length travel = tightened_slide(screw);
  plate.slide = std::min(fracture.gap + beyond * mm, travel);
  const Length most = travel - beyond * mm, left = fracture.gap - plate.slide;
  const std::string advice = fmt::format(
      "A gap of {:.3g} mm is more than one screw of {:.2g} mm presses together: it travels {:.2g} mm (from "
      "memory). "
      "Reduce the fragments by hand or with a clamp until {:.2g} mm or less are left and enter that as the gap, "
      "or "
      "bridge the fracture.",
      fracture.gap.value(), row.thread, travel.value(), most.value());
  if (left > largest_pressed_gap) throw PatientError(Subject::fracture, advice);
  if (fracture.gap.value() > most.value() + 1e-9) plate.cautions.push_back("NOTHING IS PRESSED here. " + advice);
  plate.prebend = least_prebend;
  plate.compression_hole = plate.distal.front();
}

// Why the plate lies where it does, against where bending stretches the bone.
std::string aspect_reason(LongBone bone) {
  switch (bone) {
    case LongBone::radius:
      return "The face is the one that bending stretches (published, see the loads).";
    case LongBone::femur:
      return "The face is lateral, away from the side that is compressed (published, see the loads).";
    case LongBone::tibia:
      return "The face is medial, where least muscle covers the bone (common practice, no source); it is NOT the "
             "side "
             "that bending stretches, which is cranial or lateral (published, see the loads).";
    case LongBone::humerus:
      break;
  }
  return "The face is lateral (common practice, no source); which side bending stretches is not known.";
}

}  // namespace

Aspect usual_aspect(LongBone bone) {
  switch (bone) {
    case LongBone::radius:
      return Aspect::cranial;
    case LongBone::tibia:
      return Aspect::medial;
    case LongBone::humerus:
    case LongBone::femur:
      break;
  }
  return Aspect::lateral;
}

namespace {

Site site_of(LongBone name, const Bone& bone, const Fracture& fracture, Treatment treatment) {
  const bool compress = treatment == Treatment::compression;
  const bool simple = fracture.pattern == FracturePattern::simple;
  if (!compress && treatment != Treatment::bridging)
    throw PatientError(Subject::treatment,
                       "Only bridging and compression can be begun from here; enter lag screws by hand.");
  if (compress && !simple)
    throw PatientError(Subject::treatment, "A comminuted zone cannot be pressed together; bridge it.");
  const Angle most_oblique = 30.0 * degree;
  if (compress && fracture.obliquity > most_oblique)
    throw PatientError(
        Subject::treatment,
        fmt::format(
            "A cut {:.3g} deg from transverse slides when a plate alone presses it; allowed for compression is "
            "up to 30 deg (a choice of this program). Bridge it, or press it with a lag screw entered by hand.",
            (fracture.obliquity / degree).value()));
  const BoneSection section = BoneShape(bone, usual_aspect(name)).section(fracture.position.value());
  // As the case's direction of 0 deg has it: the cut reaches furthest on the plate's side.
  const double reach = std::tan(fracture.obliquity.value()) * section.semi_z;
  return {bone.length.value(),
          2.0 * section.semi_y,
          section.semi_z,
          fracture.position.value(),
          0.5 * fracture.gap.value() + reach,
          compress,
          simple};
}

StartingPlate plate_of(LongBone name, const Site& site, const Fracture& fracture, const LoadCase& hardest,
                       const PlateChoice& choice, const std::optional<ScrewHoles>& holes) {
  const GenericPlate& row = *choice.row;
  const bool compress = site.compress;
  StartingPlate plate;
  plate.aspect = usual_aspect(name);
  plate.material = plate_metal();
  tell_row(row, site, plate);
  plate.holes = choose_holes(row, site, plate);
  set_section(choice, site, hardest, plate);
  plate.pitch = row.pitch * mm;
  plate.middle_spacing = middle_spacing(row, compress) * mm;
  plate.hole_diameter = (compress ? row.slot : row.hole) * mm;
  plate.slot_length = (compress ? row.slot_length : row.hole) * mm;
  plate.length = plate_length(row, site, plate.holes) * mm;
  plate.standoff = (compress ? 0.0 : row.standoff) * mm;
  plate.screw_size = screw_of(row, compress);
  plate.kind = compress ? ScrewKind::cortical : ScrewKind::locking;
  // Over the fracture, but a twentieth of the bone away from its ends.
  const double margin = 0.05 * site.length, length = plate.length.value();
  plate.proximal_end = std::clamp(site.fracture - 0.5 * length, margin, site.length - margin - length) * mm;
  choose_screws(row, site, holes, plate);
  plate.reasons.push_back(aspect_reason(name));
  if (compress) press(row, fracture, plate);
  return plate;
}

}  // namespace

StartingPlate choose_plate(LongBone name, const Bone& bone, const Fracture& fracture, Treatment treatment,
                           const LoadCase& hardest) {
  const Site site = site_of(name, bone, fracture, treatment);
  return plate_of(name, site, fracture, hardest, usual_section(usual_row(site), site, hardest), std::nullopt);
}

StartingPlate choose_plate(LongBone name, const Bone& bone, const Fracture& fracture, Treatment treatment,
                           const LoadCase& hardest, const PlateChoice& plate,
                           const std::optional<ScrewHoles>& holes) {
  return plate_of(name, site_of(name, bone, fracture, treatment), fracture, hardest, plate, holes);
}

std::vector<PlateChoice> plates_to_try(LongBone name, const Bone& bone, const Fracture& fracture,
                                       const LoadCase& hardest) {
  const Site site = site_of(name, bone, fracture, Treatment::bridging);
  const GenericPlate& usual = usual_row(site);
  std::vector<const GenericPlate*> rows;
  for (const GenericPlate& row : generic_plates()) {
    if (!is_of_use(row, site) || (&row != &usual && row.width > site.width)) continue;
    const double share = thread_share(row, site);
    if (share > most_thread_share) continue;
    if (share <= least_thread_share) rows.clear();  // there is a larger one below what is customary
    rows.push_back(&row);
  }
  std::vector<PlateChoice> choices;
  for (const GenericPlate* row : rows) {
    std::vector<PlateChoice> sections{{row, false}};
    if (row->strong_width <= site.width) sections.push_back({row, true});
    while (sections.size() > 1 && nominal_stress(sections.front(), site, hardest) > allowed_stress())
      sections.erase(sections.begin());
    choices.insert(choices.end(), sections.begin(), sections.end());
  }
  return choices;
}

}  // namespace gapstrain::models
