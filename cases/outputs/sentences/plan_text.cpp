#include "cases/outputs/sentences/plan_text.h"

#include "cases/cautions.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/text/columns.h"
#include "models/parts/words.h"
#include "models/words/plan_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

using Lines = std::vector<std::string>;
using models::degree;

constexpr auto entered_by_hand = "own";  // what the reader calls a metal that a case enters by its figures

void add(Lines& lines, const Lines& more) { lines.insert(lines.end(), more.begin(), more.end()); }

Lines on_page(const std::string& text, std::size_t indent = 2) { return wrap(text, page_columns, indent); }

std::string interval_name(const models::PlateBend& bend, int holes) {
  if (bend.from_hole == 0) return "end-1";
  if (bend.to_hole > holes) return fmt::format("{}-end", holes);
  return fmt::format("{}-{}", bend.from_hole, bend.to_hole);
}

// To a tenth of a degree, which no hand bends to; what is less is no bend.
std::string bends_text(const models::Plan& plan) {
  constexpr double least = 0.05;
  if (plan.bends.empty()) return "Bends: none, the plate stays straight.";
  double sum = 0.0;
  std::vector<std::string> told;
  for (const auto& bend : plan.bends) {
    const double angle = models::in_degrees(bend.bend);
    sum += angle;
    if (std::abs(angle) >= least)
      told.push_back(fmt::format("{} {:+.1f}", interval_name(bend, plan.holes), angle));
  }
  if (told.empty()) return "Bends: none, the bone is straight under the plate.";
  return fmt::format("Bends between the holes, degrees, + brings the ends to the bone: {}. In all {:+.1f}.",
                     fmt::join(told, "; "), sum + 0.0);
}

std::string holes_text(const models::Plan& plan) {
  if (plan.slots == 0) return fmt::format("{} round holes", plan.holes);
  if (plan.slots == plan.holes) return fmt::format("{} slots", plan.holes);
  return fmt::format("{} holes, {} of them slots", plan.holes, plan.slots);
}

std::string metal_text(const models::Plan& plan) {
  return plan.metal == entered_by_hand ? "metal as entered by hand" : plan.metal;
}

bool is_estimated(const models::Plan& plan, models::Estimate estimate) {
  return std::find(plan.estimated.begin(), plan.estimated.end(), estimate) != plan.estimated.end();
}

std::string mark(const models::Plan& plan, models::Estimate estimate) {
  return is_estimated(plan, estimate) ? " (ESTIMATE)" : "";
}

Lines patient_lines(const models::Plan& plan) {
  const std::string side = plan.side ? models::name_of(*plan.side) : "not entered: MARK IT BEFORE SURGERY";
  return on_page(fmt::format("Bone: {}. Side: {}. Fracture: {:.4g} mm from the bone's proximal end{}.", plan.bone,
                             side, plan.fracture_position.value(),
                             mark(plan, models::Estimate::fracture_position)));
}

Lines plate_lines(const models::Plan& plan) {
  Lines lines{"PLATE" + mark(plan, models::Estimate::implants)};
  add(lines, on_page(fmt::format("{:.4g} mm long, {}, {:.3g} mm wide, {:.3g} mm thick, {}.",
                                 plan.plate_length.value(), holes_text(plan), plan.plate_width.value(),
                                 plan.plate_thickness.value(), metal_text(plan))));
  add(lines, on_page(fmt::format(
                 "On the {} side, its proximal end {:.3g} mm from the bone's{}, {}.", models::name_of(plan.aspect),
                 plan.proximal_end.value(), mark(plan, models::Estimate::bone_length),
                 plan.standoff > models::Length() ? fmt::format("{:.2g} mm off the bone", plan.standoff.value())
                                                  : "on the bone")));
  add(lines, on_page(bends_text(plan)));
  return lines;
}

std::string drill_text(const std::optional<models::Length>& drill) {
  return drill ? fmt::format("{:.1f}", drill->value()) : "-";
}

std::string tilt_text(const models::OrderedScrew& screw) {
  if (screw.tilt_along == models::Angle() && screw.tilt_across == models::Angle()) return "square";
  return fmt::format("{:+.3g}/{:+.3g}", models::in_degrees(screw.tilt_along),
                     models::in_degrees(screw.tilt_across));
}

// Nothing to order by where the measure is an estimate.
std::string screw_row(const models::OrderedScrew& screw) {
  return fmt::format("{} {:>4} {} {} {} {:>8} {:>5} {:>5} {:>7} {}", pad(screw.label, 6),
                     screw.hole > 0 ? fmt::format("{}", screw.hole) : "-", pad(models::name_of(screw.kind), 11),
                     pad(screw.size, 11), pad(screw.cortices == 2 ? "both" : "near", 5),
                     fmt::format("{}{:.1f}", screw.length ? "" : "~", screw.measured.value()),
                     screw.length ? fmt::format("{:.4g}", screw.length->value()) : "-", drill_text(screw.drill),
                     drill_text(screw.gliding), tilt_text(screw));
}

Lines screw_lines(const models::Plan& plan) {
  Lines lines{fmt::format("{} {:>4} {} {} {} {:>8} {:>5} {:>5} {:>7} {}", pad("SCREWS", 6), "hole",
                          pad("kind", 11), pad("size", 11), pad("walls", 5),
                          models::screw_lengths_rest_on(plan.estimated) ? "ESTIMATE" : "measured", "ORDER",
                          "drill", "gliding", "tilt")};
  bool tilted = false;
  for (const auto& screw : plan.screws) {
    lines.push_back(clip(screw_row(screw), page_columns - 1));
    tilted = tilted || tilt_text(screw) != "square";
  }
  lines.push_back(fmt::format("Lengths, drill and gliding hole in mm{}.",
                              tilted ? "; tilt of the tip in degrees, distal/side" : ""));
  return lines;
}

// One a line, or run on where that saves the page.
Lines step_lines(const models::Plan& plan, bool run_on) {
  Lines told;
  for (std::size_t i = 0; i < plan.steps.size(); ++i) told.push_back(fmt::format("{}. {}", i + 1, plan.steps[i]));
  Lines lines{"ORDER OF INSERTION"};
  if (run_on)
    add(lines, on_page(fmt::format("{}", fmt::join(told, "  "))));
  else
    for (const auto& step : told) add(lines, on_page(step, 4));
  return lines;
}

// Whole texts in at most `room` lines; the last line counts what was left out.
Lines fit_paragraphs(const Lines& paragraphs, std::size_t room, const std::string& what) {
  Lines lines;
  for (std::size_t i = 0; i < paragraphs.size(); ++i) {
    const Lines more = on_page(paragraphs[i]);
    const std::size_t kept_free = i + 1 < paragraphs.size() ? 1 : 0;
    if (lines.size() + more.size() + kept_free > room) {
      if (lines.size() < room)
        lines.push_back(fmt::format("{} more {} in findings.json", paragraphs.size() - i, what));
      break;
    }
    add(lines, more);
  }
  return lines;
}

Lines caution_lines() {
  Lines lines;
  for (const auto caution : cautions) add(lines, on_page(std::string(caution)));
  return lines;
}

}  // namespace

std::string plan_text(const models::Plan& plan, const models::ResultState& state, const std::string& name,
                      const CaseOrigin& origin) {
  Lines lines = split_lines(result_head(state, "PLAN: " + name, origin, page_columns));
  add(lines, patient_lines(plan));
  lines.emplace_back();
  add(lines, plate_lines(plan));
  lines.emplace_back();
  add(lines, screw_lines(plan));
  lines.emplace_back();
  const Lines cautions_below = caution_lines();
  const auto room = [&] {
    const std::size_t used = lines.size() + cautions_below.size() + 1;
    return used < page_lines ? page_lines - used : 0;
  };
  Lines notes{"- " + std::string("none")};
  if (!plan.notes.empty()) notes.clear();
  for (const auto& note : models::note_sentences(plan.notes)) notes.push_back("- " + note);
  std::size_t lines_of_notes = 0;
  for (const auto& note : notes) lines_of_notes += on_page(note).size();
  constexpr std::size_t around_notes = 2;  // a blank line and the heading
  const Lines one_a_line = step_lines(plan, false);
  const bool run_on = one_a_line.size() + lines_of_notes + around_notes > room();
  add(lines, run_on ? step_lines(plan, true) : one_a_line);
  lines.emplace_back();
  lines.emplace_back("NOTES");
  add(lines, fit_paragraphs(notes, room(), "notes"));
  lines.emplace_back();
  add(lines, cautions_below);
  return fmt::format("{}\n", fmt::join(lines, "\n"));
}

}  // namespace gapstrain::cases
