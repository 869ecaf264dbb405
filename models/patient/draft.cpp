#include "models/patient/draft.h"

#include "models/checks/checks.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

constexpr double adult = 48.0;  // months

Length rounded(Length value, double step) { return std::round(value.value() / step) * step * mm; }

// An estimate is not written finer than it is known. A wall is rounded down, the safe side.
BoneSizes as_written(BoneSizes sizes) {
  sizes.length.value = rounded(sizes.length.value, sizes.length.guess ? 1.0 : 0.01);
  for (BoneSize* width : {&sizes.width_mediolateral, &sizes.width_craniocaudal})
    width->value = rounded(width->value, width->guess ? 0.1 : 0.01);
  constexpr double step = 0.05;
  sizes.cortex.value = sizes.cortex.guess ? std::floor(sizes.cortex.value.value() / step + 1e-9) * step * mm
                                          : rounded(sizes.cortex.value, 0.01);
  return sizes;
}

Bone make_bone(const DraftRequest& request, const BoneSizes& sizes) {
  Bone bone;
  bone.name = name_of(request.patient.bone);
  bone.length = sizes.length.value;
  bone.cortex = find_cortex("canine-femur").value();
  for (BoneStation station : request.stations) {
    for (Length* size :
         {&station.position, &station.width_mediolateral, &station.width_craniocaudal, &station.cortex})
      *size = rounded(*size, 0.01);
    bone.stations.push_back(station);
  }
  if (bone.stations.empty())
    bone.stations.push_back({rounded(0.5 * sizes.length.value, 0.1), sizes.width_mediolateral.value,
                             sizes.width_craniocaudal.value, sizes.cortex.value, 0.0 * mm, 0.0 * mm});
  ProblemList problems;
  check_bone(bone, problems);
  if (problems.error_count() > 0) throw PatientError(Subject::widths, problems.errors_first().front().message);
  return bone;
}

Fracture make_fracture(const DraftRequest& request, const Bone& bone) {
  Fracture fracture;
  fracture.pattern = request.pattern;
  fracture.obliquity = request.obliquity;
  fracture.position = rounded(request.fracture_position.value_or(0.5 * bone.length), 0.1);
  if (!(fracture.position > 0.0 * mm && fracture.position < bone.length))
    throw PatientError(
        Subject::fracture,
        fmt::format("The fracture lies at {:.4g} mm, on a bone {:.4g} mm long; measure its middle from the "
                    "bone's proximal end, above 0 mm and below the length.",
                    fracture.position.value(), bone.length.value()));
  const bool pressed = request.treatment == Treatment::compression;
  if (!request.gap && request.pattern == FracturePattern::comminuted)
    throw PatientError(
        Subject::fracture,
        "The comminuted zone's length is not given; measure it along the bone, from whole bone to whole bone, "
        "on the view that shows it longest, and enter it as the gap.");
  fracture.gap = request.gap ? rounded(*request.gap, 0.01) : (pressed ? 0.5 : 2.0) * mm;
  return fracture;
}

// The middle station's, for what is said about the bone as a whole.
MeasuredBone measured_in_middle(const DraftRequest& request) {
  MeasuredBone measured = request.measured;
  if (request.stations.empty()) return measured;
  const BoneStation& middle = request.stations[request.stations.size() / 2];
  measured.width_mediolateral = middle.width_mediolateral;
  measured.width_craniocaudal = middle.width_craniocaudal;
  measured.cortex = middle.cortex;
  return measured;
}

void doubt_measure(const char* what, const BoneSize& found, const BoneSize& by_mass, Draft& draft) {
  if (found.guess) return;
  const double ratio = found.value / by_mass.value, spread = by_mass.guess->spread;
  if (std::abs(ratio - 1.0) <= spread) return;
  draft.cautions.push_back(
      fmt::format("The {} is measured as {:.4g} mm; the body mass suggests {:.3g} mm, within {:.0f} %. Check "
                  "both (breeds with short bent legs do not follow it).",
                  what, found.value.value(), by_mass.value.value(), 100.0 * spread));
}

void caution(Draft& draft) {
  const DraftRequest& request = draft.request;
  const BoneSizes& sizes = draft.sizes;
  auto& cautions = draft.cautions;
  cautions = draft.plate.cautions;
  const bool is_any_measured = !sizes.length.guess || !sizes.width_mediolateral.guess ||
                               !sizes.width_craniocaudal.guess || !sizes.cortex.guess || request.fracture_position;
  const bool is_any_guessed =
      sizes.length.guess || sizes.width_mediolateral.guess || sizes.width_craniocaudal.guess || sizes.cortex.guess;
  if (is_any_guessed)
    cautions.push_back(
        "Sizes marked ESTIMATE were not measured: no screw or plate may be ordered by them. Breeds with short "
        "bent legs do not follow them at all.");
  if (is_any_measured && !request.magnification_spread)
    cautions.push_back(
        "No marker was given: a radiograph shows bones 5 to 20 % too large (from memory), and the measured "
        "sizes are entered as they are.");
  if (request.magnification_spread)
    cautions.push_back(fmt::format("Measured sizes are corrected by the marker, which leaves {:.1f} % either way.",
                                   100.0 * *request.magnification_spread));
  const BoneSizes by_mass = complete_sizes(request.patient, {});
  doubt_measure("bone's length", sizes.length, by_mass.length, draft);
  doubt_measure("mediolateral width", sizes.width_mediolateral, by_mass.width_mediolateral, draft);
  doubt_measure("craniocaudal width", sizes.width_craniocaudal, by_mass.width_craniocaudal, draft);
  if (request.stations.empty())
    cautions.push_back(
        "The shaft is taken as uniform and straight: enter a station at each end of the plate and at the "
        "fracture, with the bow off the line between the bone's ends.");
  else
    cautions.push_back("The stations have no bow: measure it off the line between the bone's ends.");
  if (request.patient.bone == LongBone::radius)
    cautions.push_back(
        "The ulna is left out: loads are what the radius bears beside a whole one, for they come from its own "
        "strains. With the ulna broken too they are nearer to the upper ends of their bands, or beyond.");
  if (request.patient.bone == LongBone::humerus)
    cautions.push_back(
        "LOADS WITHOUT A SOURCE: no load or strain of a humerus was found; they are likened to the femur's.");
  if (request.patient.species == Species::cat) {
    cautions.push_back("Cortical bone is the dog's: no constants of the cat's are at hand.");
    cautions.push_back(
        "LOADS WITHOUT A SOURCE: no load or strain of a cat's bones was found; they are the dog's over the "
        "bone's diameter.");
  }
  if (const double pull = more_muscle_force(request.patient.mass); pull > 1.0)
    cautions.push_back(
        fmt::format("LOADS MAY BE TOO SMALL below 27 kg: {:.2g} times as large, if leverage goes by weight to the "
                    "power of 0.25 "
                    "(Biewener 2005, J Exp Biol 208:1665, abstract). A margin below that is none.",
                    pull));
  if (!request.fracture_position)
    cautions.push_back("The fracture's place is ASSUMED, the bone's middle: measure it from the proximal end.");
  if (!request.gap)
    cautions.push_back(
        fmt::format("The gap of {:.2g} mm is ASSUMED: what reduction leaves.", draft.fracture.gap.value()));
  if (!request.age_in_months)
    cautions.push_back("The age is not known: the time to union is an adult's, the longest.");
}

// Sections of a bone with stations are measured.
std::vector<Estimate> estimates_of(const DraftRequest& request, const BoneSizes& sizes) {
  std::vector<Estimate> estimated;
  const auto add = [&](bool is_estimated, Estimate estimate) {
    if (is_estimated) estimated.push_back(estimate);
  };
  const bool uniform = request.stations.empty();
  add(sizes.length.guess.has_value(), Estimate::bone_length);
  add(uniform && sizes.width_mediolateral.guess, Estimate::width_mediolateral);
  add(uniform && sizes.width_craniocaudal.guess, Estimate::width_craniocaudal);
  add(uniform && sizes.cortex.guess, Estimate::cortex);
  add(!request.fracture_position, Estimate::fracture_position);
  add(!request.gap, Estimate::gap);
  add(true, Estimate::implants);
  add(!request.age_in_months, Estimate::weeks_to_union);
  return estimated;
}

}  // namespace

Draft make_draft(const DraftRequest& request) {
  Draft draft;
  draft.request = request;
  draft.sizes = as_written(complete_sizes(request.patient, measured_in_middle(request)));
  draft.bone = make_bone(request, draft.sizes);
  draft.fracture = make_fracture(request, draft.bone);
  draft.loads = gait_loads(request.patient, draft.sizes, usual_aspect(request.patient.bone));
  draft.plate =
      choose_plate(request.patient.bone, draft.bone, draft.fracture, request.treatment, draft.loads.back().load);
  draft.healing = union_under_plate(request.age_in_months.value_or(adult));
  draft.estimated = estimates_of(request, draft.sizes);
  caution(draft);
  return draft;
}

Draft with_plate(Draft draft, StartingPlate plate) {
  draft.plate = std::move(plate);
  caution(draft);
  return draft;
}

}  // namespace gapstrain::models
