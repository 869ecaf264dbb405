#include "cases/outputs/sentences/comparison_report.h"

#include "cases/cautions.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/text/columns.h"
#include "cases/text/csv_cell.h"
#include "cases/text/digits.h"
#include "models/words/interface_words.h"
#include "models/words/preference_words.h"
#include "models/words/rule_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

using Lines = std::vector<std::string>;

constexpr std::size_t value_width = 9, ratio_width = 9;
constexpr std::string_view better = "  better";
// Beyond these a factor says no more than that it is large, and a wide figure would break the columns.
constexpr double largest_times = 10000.0, largest_ratio = 1000.0;

void add_wrapped(Lines& lines, const std::string& bullet, const std::string& text) {
  for (const auto& line : wrap(bullet + text, screen_columns, 2)) lines.push_back(line);
}

std::string name_and_unit(const models::ComparedFigure& figure) {
  return figure.unit.empty() ? figure.name : figure.name + ", " + figure.unit;
}

std::string number(const models::ComparedFigure& figure, const std::optional<double>& value) {
  if (!value) return "-";
  return figure.unit == "times" ? three_digits_up_to(largest_times, *value) : three_digits(*value);
}

std::string ratio_text(const models::ComparedFigure& figure) {
  const auto ratio = figure.ratio();
  if (!ratio) return "-";
  return std::isfinite(*ratio) ? "x " + three_digits_up_to(largest_ratio, *ratio) : "all";
}

std::string figure_line(const models::ComparedFigure& figure, std::size_t name_width) {
  std::string line = pad(name_and_unit(figure), name_width);
  for (const auto& value : figure.values) line += fmt::format("{:>{}}", number(figure, value), value_width);
  line += fmt::format("{:>{}}", ratio_text(figure), ratio_width);
  if (const auto best = figure.best()) line += fmt::format("{:>{}}", letter_of(*best), better.size());
  return line;
}

void add_figures(Lines& lines, const models::Comparison& comparison, std::size_t constructs) {
  const std::string name = "Figure, worst of all loads";
  const std::size_t most = screen_columns - constructs * value_width - ratio_width - better.size();
  std::size_t name_width = name.size();
  for (const auto& figure : comparison.figures) name_width = std::max(name_width, columns(name_and_unit(figure)));
  name_width = std::min(name_width, most);
  std::string heading = pad(name, name_width);
  for (std::size_t k = 0; k < constructs; ++k) heading += fmt::format("{:>{}}", letter_of(k), value_width);
  lines.push_back(fmt::format("{}{:>{}}{}", heading, "differ", ratio_width, better));
  bool is_apart = true;
  for (const auto& figure : comparison.figures) {
    if (is_apart && !figure.is_told_apart()) {
      lines.emplace_back("Not told apart: alike, known of one only, or within what the model may be off by:");
      is_apart = false;
    }
    lines.push_back(figure_line(figure, name_width));
  }
}

void add_rules(Lines& lines, const std::vector<ComparedCase>& cases) {
  for (std::size_t k = 0; k < cases.size(); ++k)
    for (const auto& rule : cases[k].assessed.assessment.review)
      if (rule.verdict == models::Verdict::broken)
        add_wrapped(lines, fmt::format("{}: ", letter_of(k)),
                    fmt::format("{}: {} (rule: {}; {}). {}", rule.rule, models::figure_text(rule),
                                models::bound_text(rule), rule.source, models::advice_text(rule)));
}

}  // namespace

std::string letter_of(std::size_t index) { return std::string(1, static_cast<char>('A' + index)); }

std::vector<std::string> names_of(const std::vector<ComparedCase>& cases) {
  std::vector<std::string> names;
  for (const auto& one : cases) names.push_back(one.construct.name);
  return names;
}

std::vector<models::ComparedConstruct> compared(const std::vector<ComparedCase>& cases) {
  std::vector<models::ComparedConstruct> all;
  for (const auto& one : cases) all.push_back({one.construct, one.assessed});
  return all;
}

std::string comparison_text(const std::vector<ComparedCase>& cases, const models::Comparison& comparison,
                            const models::Preference& preference) {
  Lines lines;
  const auto add_line = [&](const std::string& text) { lines.push_back(clip(text, screen_columns)); };
  const auto names = names_of(cases);
  add_line(models::preference_sentence(preference, names));
  for (const auto& reason : models::preference_reasons(preference, names)) add_line("- " + reason);
  lines.emplace_back();
  for (std::size_t k = 0; k < cases.size(); ++k) {
    const auto& state = cases[k].assessed.assessment.state;
    add_line(fmt::format("{}  {} ({}): {}{}{}{}", letter_of(k), cases[k].construct.name, cases[k].file,
                         standing_word(state.standing()),
                         state.second_order.empty() ? "" : ", with second-order effects",
                         state.turned.empty() ? "" : ", with large turns",
                         state.softening.empty() ? "" : ", screws soften in bone as stated"));
    if (state.interface && state.not_trusted.empty())
      add_wrapped(lines, "   ", models::bounds_sentence(*state.interface));
    for (const auto& alarm : alarms_of(state)) add_line("   " + alarm);
  }
  lines.emplace_back();
  add_figures(lines, comparison, cases.size());
  lines.emplace_back();
  for (const auto& sentence : models::comparison_verdict(compared(cases), comparison))
    add_wrapped(lines, "- ", sentence);
  Lines rules;
  add_rules(rules, cases);
  if (!rules.empty()) {
    lines.emplace_back();
    lines.push_back("Rules of the trade that are broken:");
    lines.insert(lines.end(), rules.begin(), rules.end());
  }
  lines.emplace_back();
  lines.insert(lines.end(), cautions.begin(), cautions.end());
  std::string text;
  for (const auto& line : lines) text += line + "\n";
  return text;
}

std::string comparison_csv(const std::vector<ComparedCase>& cases, const models::Comparison& comparison) {
  std::string text = "figure,unit";
  for (std::size_t k = 0; k < cases.size(); ++k) text += "," + letter_of(k);
  text += ",ratio,model_error,told_apart,best\r\n";
  for (const auto& figure : comparison.figures) {
    text += fmt::format("{},{}", csv_cell(figure.name), figure.unit);
    for (const auto& value : figure.values) text += value ? fmt::format(",{:.9g}", *value) : ",";
    const auto ratio = figure.ratio();
    text += ratio && std::isfinite(*ratio) ? fmt::format(",{:.9g}", *ratio) : ",";
    const auto best = figure.best();
    text += fmt::format(",{:.3g},{},{}\r\n", figure.model_error, figure.is_told_apart() ? "yes" : "no",
                        best ? letter_of(*best) : "");
  }
  text += "result,";
  for (const auto& one : cases) text += "," + csv_cell(state_cell(one.assessed.assessment.state));
  return text + ",,,,\r\n";
}

}  // namespace gapstrain::cases
