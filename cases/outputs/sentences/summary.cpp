#include "cases/outputs/sentences/summary.h"

#include "cases/cautions.h"
#include "cases/outputs/sentences/assessment_lines.h"
#include "cases/outputs/sentences/compression_sentences.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/sentences/worst_things.h"
#include "cases/text/columns.h"
#include "models/parts/figure_unit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::cases {

namespace {

using Lines = std::vector<std::string>;

// Texts as a list, wrapped, in at most `room` lines; the last of them says how many texts were left out.
Lines fit(const Lines& texts, std::size_t room, const std::string& bullet) {
  Lines lines;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const Lines wrapped = wrap(bullet + texts[i], screen_columns, bullet.size() + 2);
    const bool last = i + 1 == texts.size();
    if (lines.size() + wrapped.size() + (last ? 0 : 1) > room) {
      if (room > lines.size())
        lines.push_back(fmt::format("{}{} more in findings.json", bullet, texts.size() - i));
      break;
    }
    lines.insert(lines.end(), wrapped.begin(), wrapped.end());
  }
  return lines;
}

Lines stiffness_lines(const models::StiffnessFindings& stiffness) {
  const auto [unit, scale] = models::shown_in(models::FigureUnit::angular_stiffness);
  Lines lines{fmt::format("Stiffness: axial {:.4g} {}; bending flat {:.3g}, on edge {:.3g}, torsion {:.3g} {}",
                          stiffness.axial.value(), models::unit_text(models::FigureUnit::axial_stiffness),
                          stiffness.bending_y.value() * scale, stiffness.bending_z.value() * scale,
                          stiffness.torsion.value() * scale, unit)};
  if (stiffness.with_contact)
    lines.push_back(
        fmt::format("  told under {:.3g} N of axial load, with what then touches", stiffness.force.value()));
  for (auto& line : lines) line = clip(line, screen_columns);
  return lines;
}

std::string or_dash(const std::optional<double>& value) { return value ? fmt::format("{:.2f}", *value) : "-"; }

// In per cent to two decimals; what rounds to nothing has no sign.
std::string percent(const std::optional<models::Range>& range, double models::Range::*which) {
  if (!range) return "-";
  return fmt::format("{:.2f}", std::round(1e4 * (*range).*which) / 100.0 + 0.0);
}

std::string load_row(const models::LoadFindings& load) {
  const auto screw = std::max_element(load.screws.begin(), load.screws.end(), [](const auto& a, const auto& b) {
    return a.peak_bending_stress < b.peak_bending_stress;
  });
  const bool has_screw = screw != load.screws.end();
  return fmt::format("{} {:>8} {:>8} {:>7} {:>9.0f} {} {:>6} {:>9} {} {:>9.3f}", pad(load.load, 22),
                     percent(load.gap.axial_strain, &models::Range::min),
                     percent(load.gap.axial_strain, &models::Range::max),
                     percent(load.gap.shear_strain, &models::Range::max), load.plate.peak.von_mises.value(),
                     pad(load.plate.peak.hole ? fmt::format("hole {}", *load.plate.peak.hole) : "", 7),
                     or_dash(load.plate.factor_to_yield),
                     has_screw ? fmt::format("{:.0f}", screw->peak_bending_stress.value()) : "-",
                     pad(has_screw ? screw->label : "", 5), 100 * load.bone.peak_strain);
}

// How much of what plate, screws and bone bear the load uses, the part that is used most.
double used_by(const models::LoadFindings& load) {
  double used = 0.0;
  const auto consider = [&](const std::optional<double>& factor) {
    if (factor && *factor > 0.0) used = std::max(used, 1.0 / *factor);
  };
  consider(load.plate.factor_to_yield);
  consider(load.bone.factor_to_yield_strain);
  consider(load.buckling_factor);
  for (const auto& screw : load.screws) consider(screw.factor_to_yield);
  return used;
}

// The hardest loads first where not all have a row.
Lines load_table(const models::Findings& findings, std::size_t most_rows) {
  Lines lines{fmt::format("{} {:>8} {:>8} {:>7} {:>9} {} {:>6} {:>9} {} {:>9}", pad("Load", 22), "gap min%",
                          "gap max%", "shear%", "plate MPa", pad("at", 7), "factor", "screw MPa", pad("of", 5),
                          "bone %")};
  const std::size_t rows = findings.loads.size() <= most_rows ? findings.loads.size() : most_rows - 1;
  std::vector<const models::LoadFindings*> loads;
  for (const auto& load : findings.loads) loads.push_back(&load);
  if (rows < loads.size())
    std::stable_sort(loads.begin(), loads.end(),
                     [](const auto* a, const auto* b) { return used_by(*a) > used_by(*b); });
  for (std::size_t i = 0; i < rows; ++i) lines.push_back(clip(load_row(*loads[i]), screen_columns));
  if (rows < findings.loads.size())
    lines.push_back(fmt::format("{} that ask less in findings.json", findings.loads.size() - rows));
  return lines;
}

// A heading and a text a variant.
Lines working_length_texts(const models::Findings& findings) {
  if (findings.loads.empty()) return {};
  const auto& load = hottest_load(findings);
  Lines texts;
  for (const auto& variant : load.working_length_effect) {
    if (texts.empty())
      texts.push_back(
          clip(fmt::format("With the innermost screws moved, under \"{}\":", load.load), screen_columns));
    const std::string move = fmt::format("one hole further {}", variant.further_out ? "out" : "in");
    const std::string gap = variant.gap_strain ? fmt::format("gap strain {:+.0f} %", 100 * *variant.gap_strain)
                                               : fmt::format("gap motion {:+.0f} %", 100 * variant.gap_motion);
    texts.push_back(
        move + (variant.unavailable
                    ? ": " + *variant.unavailable
                    : fmt::format(" (working length {:.3g} mm): plate stress {:+.0f} %, {}, stiffness {:+.0f} %",
                                  variant.working_length.value(), 100 * variant.peak_stress, gap,
                                  100 * variant.stiffness)));
  }
  return texts;
}

std::string figures_line(const models::Findings& findings) {
  const auto& figures = findings.figures;
  return fmt::format(
      "{} + {} screws{}, {} + {} cortices; working length {:.3g} mm; plate span ratio {}; screw density "
      "{:.2f}",
      figures.fragments.front().screws, figures.fragments.back().screws,
      figures.screws_across > 0 ? fmt::format(" + {} lag", figures.screws_across) : std::string{},
      figures.fragments.front().cortices, figures.fragments.back().cortices, figures.working_length.value(),
      or_dash(figures.plate_span_ratio), figures.plate_screw_density);
}

void append_block(Lines& lines, const Lines& block) {
  if (block.empty()) return;
  if (!lines.empty()) lines.emplace_back();
  lines.insert(lines.end(), block.begin(), block.end());
}

// Lines of the screen for one part of it.
struct Room {
  std::size_t least = 0, wanted = 0;
  std::size_t lines = 0;  // that it gets
};

Room room_for(std::size_t least, std::size_t wanted) { return {std::min(least, wanted), wanted, 0}; }

// To each what it cannot do without, then what it wants, the first one first.
void share_out(std::size_t lines, std::initializer_list<Room*> rooms) {
  for (Room* room : rooms) {
    room->lines = std::min(room->least, lines);
    lines -= room->lines;
  }
  for (Room* room : rooms) {
    const std::size_t more = std::min(room->wanted - room->lines, lines);
    room->lines += more;
    lines -= more;
  }
}

// What must be seen before all else.
Lines alarm_lines(const models::Findings& findings, const models::ResultState& state) {
  constexpr std::size_t most = 8, most_of_order = 2;
  Lines lines = fit(alarms_of(state), most, "");
  const Lines order = fit(order_sentences(findings), most_of_order, "ORDER: ");
  lines.insert(lines.end(), order.begin(), order.end());
  return lines;
}

}  // namespace

std::string summarise(const models::Construct& construct, const models::Findings& findings,
                      const models::Assessment& assessment, const CaseOrigin& origin, const std::string& folder) {
  Lines remarks = origin.assumptions;
  remarks.insert(remarks.end(), findings.remarks.begin(), findings.remarks.end());

  const Lines alarms = alarm_lines(findings, assessment.state);
  const Lines title{clip(fmt::format("{} ({})", findings.construct, origin.file), screen_columns)};
  Lines figures = wrap(figures_line(findings), screen_columns, 2);
  for (auto& line : stiffness_lines(findings.stiffness)) figures.push_back(std::move(line));
  Lines tail(cautions.begin(), cautions.end());
  tail.push_back(fmt::format("Files: {}", folder));
  for (auto& line : tail) line = clip(line, screen_columns);

  const Lines worst = worst_things(findings), in_hand = assessment_sentences(construct, assessment);
  const Lines steps = compression_sentences(findings, 2 * (screen_columns - 4));
  const Lines lengths = working_length_texts(findings);
  const auto wanted = [](const Lines& texts, std::size_t most) { return fit(texts, most, "").size(); };
  Room for_worst = room_for(8, wanted(worst, 12)), for_in_hand = room_for(6, wanted(in_hand, 10));
  Room for_steps = room_for(5, wanted(steps, 5)), for_lengths = room_for(2, wanted(lengths, screen_lines));
  Room for_loads = room_for(3, findings.loads.empty() ? 0 : findings.loads.size() + 1);
  Room for_remarks = room_for(1, fit(remarks, screen_lines, "- ").size());
  // With a blank line after each part that is there.
  std::size_t taken = alarms.size() + title.size() + figures.size() + 1 + tail.size();
  for (const bool is_there : {!alarms.empty(), !figures.empty(), !worst.empty() || !steps.empty(),
                              !in_hand.empty(), !findings.loads.empty(), !lengths.empty(), !remarks.empty()})
    taken += is_there ? 1 : 0;
  share_out(screen_lines - taken, {&for_loads, &for_in_hand, &for_steps, &for_worst, &for_lengths, &for_remarks});

  Lines lines = alarms;
  append_block(lines, title);
  const Lines verdict = fit(in_hand, for_in_hand.lines, "");
  lines.insert(lines.end(), verdict.begin(), verdict.end());
  append_block(lines, figures);
  Lines found = fit(worst, for_worst.lines, "");
  const Lines stepwise = fit(steps, for_steps.lines, "");
  found.insert(found.end(), stepwise.begin(), stepwise.end());
  append_block(lines, found);
  if (for_loads.lines > 1) append_block(lines, load_table(findings, for_loads.lines - 1));
  append_block(lines, fit(lengths, for_lengths.lines, ""));
  append_block(lines, fit(remarks, for_remarks.lines, "- "));
  append_block(lines, tail);

  std::string text;
  for (const auto& line : lines) text += line + "\n";
  return text;
}

}  // namespace gapstrain::cases
