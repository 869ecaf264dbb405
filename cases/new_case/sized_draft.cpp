#include "cases/new_case/sized_draft.h"

#include "cases/new_case/new_case_text.h"
#include "cases/progress/analysis_plan.h"
#include "cases/progress/progress.h"
#include "cases/reader/read_case.h"
#include "cases/text/columns.h"
#include "cases/text/digits.h"
#include "mesh/gmsh_session.h"
#include "models/findings/model_error.h"
#include "models/layouts/ready_screws.h"
#include "models/preparation/prepare_bodies.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <functional>
#include <utility>

namespace gapstrain::cases {

namespace {

// Of the default mesh. Least margins then are within some 2 % of the default's (three patients, measured).
constexpr double try_refinement = 0.5;

models::StartingPlate plate_for(const models::Draft& draft, const models::PlateChoice& choice,
                                const std::optional<models::ScrewHoles>& holes = std::nullopt) {
  const models::DraftRequest& request = draft.request;
  return models::choose_plate(request.patient.bone, draft.bone, draft.fracture, request.treatment,
                              draft.loads.back().load, choice, holes);
}

// Nothing where the plate has no room on the bone or no answer.
std::optional<models::FoundLayout> try_plate(const NewRequest& request, const models::Draft& draft,
                                             const models::PlateChoice& choice, const std::string& file,
                                             const std::function<void(const std::string&)>& progress) {
  try {
    const auto text = new_case_text(request, models::with_plate(draft, plate_for(draft, choice)));
    models::Construct construct = read_case_text(file, text).construct;
    construct.mesh.refinement = try_refinement;
    construct.layouts = models::layouts_to_size(construct);
    const models::Layouts layouts(construct);
    const auto screws = models::screws_to_make_ready(construct, layouts);
    return models::find_layout(models::prepare_bodies(construct, screws, progress), construct, screws, layouts);
  } catch (const models::PatientError&) {
  } catch (const models::ModelError&) {
  } catch (const mesh::MeshError&) {
  } catch (const CaseError&) {
  }
  return std::nullopt;
}

std::string wanted_text() { return fmt::format("{:.2g}", models::wanted_margin); }

std::string part_of(models::MarginKind kind) {
  switch (kind) {
    case models::MarginKind::plate_yield:
      return "plate, yield";
    case models::MarginKind::plate_fatigue:
      return "plate, fatigue";
    case models::MarginKind::screw_yield:
      return "screws, yield";
    case models::MarginKind::screw_fatigue:
      return "screws, fatigue";
    default:
      break;
  }
  return "screws, pull-out";
}

std::string holes_text(const models::ScrewHoles& holes) {
  std::vector<int> all = holes.proximal;
  all.insert(all.end(), holes.distal.begin(), holes.distal.end());
  std::sort(all.begin(), all.end());
  return fmt::format("{}", fmt::join(all, " "));
}

std::string plate_text(const models::PlateChoice& choice) {
  const models::GenericPlate& row = *choice.row;
  return fmt::format("{:.3g} x {:.2g}, {}", choice.strong ? row.strong_width : row.width,
                     choice.strong ? row.strong_thickness : row.thickness, row.locking);
}

}  // namespace

SizedDraft size_draft(const NewRequest& request, models::Draft draft, const std::string& file) {
  if (draft.request.treatment != models::Treatment::bridging) return {std::move(draft), std::nullopt};
  const auto choices =
      models::plates_to_try(draft.request.patient.bone, draft.bone, draft.fracture, draft.loads.back().load);
  const std::string sizing_stage = "sizing plate and screws";
  constexpr double of_a_plate = 3.0;  // s
  Progress progress({{sizing_stage, of_a_plate * static_cast<double>(choices.size())}}, false);
  std::size_t tried = 0;
  models::Sizing sizing = models::size_plates(choices, [&](const models::PlateChoice& choice) {
    progress.begin(fmt::format("{}, {} of at most {}", sizing_stage, ++tried, choices.size()));
    return try_plate(request, draft, choice, file, [&](const std::string&) { progress.begin(sizing_stage); });
  });
  if (sizing.taken) {
    const models::TriedPlate& taken = sizing.tried[*sizing.taken];
    models::StartingPlate plate = plate_for(draft, taken.plate, taken.found->holes);
    plate.reasons.push_back(sizing_reason(sizing));
    draft = models::with_plate(std::move(draft), std::move(plate));
  }
  return {std::move(draft), std::move(sizing)};
}

std::optional<std::string> sizing_alarm(const models::Sizing& sizing) {
  if (sizing.is_wanted()) return std::nullopt;
  const std::string known = fmt::format("{} plate{} and {} choices of screws were tried", sizing.tried.size(),
                                        sizing.tried.size() == 1 ? "" : "s", sizing.solved());
  if (!sizing.taken) return fmt::format("NOTHING KNOWN HERE COULD BE TRIED: {}, none with an answer.", known);
  const models::FoundLayout& found = *sizing.tried[*sizing.taken].found;
  return fmt::format(
      "NOTHING KNOWN HERE HAS {} IN HAND{} at the middle of these loads: {}, the best of which bears {} of what "
      "it "
      "is asked. Enter a stronger implant, add a rod or a second plate, or keep the patient from these loads.",
      wanted_text(), found.margin < 1.0 ? ", OR HOLDS," : "", known, three_digits(found.margin));
}

std::vector<std::string> sizing_table(const SizedDraft& sized) {
  const models::Sizing& sizing = *sized.sizing;
  std::vector<std::string> lines{fmt::format("{} {} {:>7} {:>10}  {} {}", pad("Tried, mm and screw", 23),
                                             pad("screws in holes", 24), "in hand", "over bands", pad("of", 16),
                                             "rules broken")};
  for (std::size_t k = 0; k < sizing.tried.size(); ++k) {
    const auto& [plate, found] = sizing.tried[k];
    const std::string name = pad(plate_text(plate), 23);
    if (!found) {
      lines.push_back(name + " no room on this bone, or no answer");
      continue;
    }
    lines.push_back(
        fmt::format("{} {} {:>7} {:>10}  {} {:>5}{}", name, pad(holes_text(found->holes), 24),
                    three_digits(found->margin), found->over_bands ? three_digits(*found->over_bands) : "unknown",
                    pad(part_of(found->least), 16), found->broken.size(), sizing.taken == k ? "  TAKEN" : ""));
  }
  return lines;
}

std::string sizing_reason(const models::Sizing& sizing) {
  const models::FoundLayout& found = *sizing.tried[*sizing.taken].found;
  const std::string why =
      models::is_enough(found)
          ? fmt::format(
                "the first plate, from the smallest on, that has {} in hand at the middle of the loads{}, and "
                "breaks no rule",
                wanted_text(),
                models::holds_over_bands(found)
                    ? " and holds at each end of each part's band"
                    : "; none that keeps all rules holds at each end of each part's band as well")
      : sizing.is_wanted()
          ? fmt::format(
                "none that has {} in hand keeps all rules; of those that break the fewest "
                "({}) {}",
                wanted_text(), fmt::join(found.broken, "; "),
                models::holds_over_bands(found) ? "the first that holds at each end of each part's band"
                                                : "the smallest")
          : "none has what is wanted in hand; this is the best of them";
  return fmt::format(
      "Sized by search: {} plate{}, {} choices of screws, on a mesh half as fine: {}, with {} in hand. {} is "
      "wanted "
      "since the low end of the metal's published fatigue strength takes 0.15 of it (a choice of this program).",
      sizing.tried.size(), sizing.tried.size() == 1 ? "" : "s", sizing.solved(), why, three_digits(found.margin),
      wanted_text());
}

}  // namespace gapstrain::cases
