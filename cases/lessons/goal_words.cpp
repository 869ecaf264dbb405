#include "cases/lessons/goal_words.h"

#include "cases/lessons/solved_lesson.h"
#include "cases/text/digits.h"
#include "models/catalogue/outcome_figures.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

std::string bounds(const Limit& limit, const models::ShownIn& shown) {
  std::vector<std::string> parts;
  const std::string unit = shown.unit.empty() ? "" : " " + shown.unit;
  if (limit.least) parts.push_back(fmt::format("at least {}{}", three_digits(shown.scale * *limit.least), unit));
  if (limit.most) parts.push_back(fmt::format("at most {}{}", three_digits(shown.scale * *limit.most), unit));
  return fmt::format("{}", fmt::join(parts, " and "));
}

// As the catalogue compares by it, else its name with blanks.
std::string plain_label(const std::string& figure) {
  for (const auto& entry : models::construct_figures())
    if (entry.name == figure && !entry.compared.label.empty()) return entry.compared.label;
  for (const auto& entry : models::load_figures())
    if (entry.name == figure && !entry.compared.label.empty()) return entry.compared.label;
  std::string label = figure;
  std::replace(label.begin(), label.end(), '_', ' ');
  return label;
}

}  // namespace

std::string shown_text(const Json& figure) {
  const std::string shown = figure["shown"], unit = figure["shown_unit"];
  return unit.empty() ? shown : shown + " " + unit;
}

std::string label_of(const std::string& text) {
  const FigureReference reference = read_reference(text);
  const std::string label = plain_label(reference.figure);
  return reference.load ? fmt::format("{} under \"{}\"", label, *reference.load) : label;
}

std::string bounds_as_entered(const Limit& limit) { return bounds(limit, {limit.unit, 1.0}); }

std::string bounds_as_read(const Limit& limit) {
  return bounds(limit, models::shown_in(models::find_figure(read_reference(limit.finding).figure)->unit));
}

std::string goals_as_found(const std::vector<Limit>& goals, const Json& answer) {
  std::vector<std::string> parts;
  for (const auto& goal : goals) {
    const Json* figure = find_figure_in(answer, read_reference(goal.finding));
    parts.push_back(fmt::format("{} {} ({})", label_of(goal.finding),
                                figure == nullptr ? "-" : shown_text(*figure), bounds_as_read(goal)));
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

}  // namespace gapstrain::cases
