#include "cases/figures/limits_and_charts.h"

#include "cases/text/leading_number.h"
#include "cases/text/words.h"
#include "cases/toml/parse_value.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

Kind kind_of(Dimension dimension) {
  switch (dimension) {
    case Dimension::length:
      return Kind::length;
    case Dimension::force:
      return Kind::force;
    case Dimension::stress:
      return Kind::stress;
    case Dimension::moment:
      return Kind::moment;
    case Dimension::angle:
      return Kind::angle;
    case Dimension::mass:
      return Kind::mass;
    case Dimension::stiffness:
      return Kind::stiffness;
    case Dimension::angular_stiffness:
      return Kind::angular_stiffness;
  }
  return Kind::number;
}

// "500 N/mm": a unit that no key of a case has is not converted.
double number_before(const Value& value, const std::string& unit) {
  const auto* text = std::get_if<std::string>(&value.content);
  if (const auto number = text != nullptr ? leading_number(*text) : std::nullopt) {
    const std::string_view rest = std::string_view(*text).substr(number->length);
    const auto behind = std::min(rest.find_first_not_of(' '), rest.size());
    if (std::isfinite(number->value) && rest.substr(behind) == unit) return number->value;
  }
  throw ValueError(fmt::format("found {}; a text with the unit {} is wanted here, such as \"100 {}\"",
                               quote(value), unit, unit));
}

double bound_of(const Value& value, const std::string& unit) {
  const Unit* known = find_unit(unit);
  if (known == nullptr && !unit.empty()) return number_before(value, unit);
  Key key;
  key.kind = known == nullptr ? Kind::number : kind_of(known->dimension);
  return number_of(value, key, unit);
}

std::optional<double> read_bound(const Section& limit, std::string_view key, const StudyFinding& finding) {
  const auto written = limit.measure(key);
  if (!written) return std::nullopt;
  constexpr double largest = 1e12;  // in any unit; charts have the bound on their axis
  try {
    const double bound = bound_of(*written, finding.unit);
    if (std::abs(bound) <= largest) return bound;
    throw ValueError(fmt::format("found {}; no finding comes near, allowed is -1e12 to 1e12", quote(*written)));
  } catch (const ValueError& error) {
    limit.complain(key, error.what());
    return std::nullopt;
  }
}

std::vector<std::string> names_of(const std::vector<StudyFinding>& findings) {
  std::vector<std::string> names;
  for (const auto& finding : findings) names.push_back(finding.name);
  return names;
}

bool contains(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::vector<std::string> names_of(const std::vector<Section>& varies) {
  std::vector<std::string> names;
  for (const auto& vary : varies) {
    const auto keys = vary.texts("keys");
    names.push_back(vary.text("name").value_or(vary.text("key").value_or(keys.empty() ? "" : keys.front())));
  }
  return names;
}

std::string unknown(const std::string& word, const std::string& wanted, const std::vector<std::string>& known) {
  const auto nearest = nearest_word(word, known);
  return fmt::format(
      "found \"{}\", which is no {}; {}", word, wanted,
      nearest ? fmt::format("did you mean \"{}\"?", *nearest) : fmt::format("known: {}", fmt::join(known, ", ")));
}

std::optional<Limit> read_limit(const Section& section, const std::vector<StudyFinding>& findings) {
  if (!section.has_any({"least", "most"})) section.complain("least", "missing; give `least`, `most` or both");
  const auto name = section.text("finding");
  if (!name) return std::nullopt;
  const auto finding =
      std::find_if(findings.begin(), findings.end(), [&](const StudyFinding& f) { return f.name == *name; });
  if (finding == findings.end()) {
    section.complain("finding", unknown(*name, "finding", names_of(findings)));
    return std::nullopt;
  }
  const Limit limit{*name, finding->unit, read_bound(section, "least", *finding),
                    read_bound(section, "most", *finding)};
  if (limit.least && limit.most && *limit.least > *limit.most)
    section.complain("most", "is below `least`, so no row can keep both");
  return limit;
}

}  // namespace

std::vector<Limit> read_limits(const Section& parent, const std::vector<StudyFinding>& findings) {
  std::vector<Limit> limits;
  for (const auto& section : parent.sections("limit"))
    if (const auto limit = read_limit(section, findings)) limits.push_back(*limit);
  return limits;
}

std::vector<Chart> read_charts(const std::vector<Section>& sections, const std::vector<Section>& varies,
                               const std::vector<StudyFinding>& findings) {
  const auto found = names_of(findings);
  const auto varied = names_of(varies);
  auto both = varied;
  both.insert(both.end(), found.begin(), found.end());
  std::vector<Chart> charts;
  for (const auto& section : sections) {
    const Chart chart{section.text("x").value_or(""), section.texts("y"), section.text("series")};
    if (section.text("x") && !contains(both, chart.x))
      section.complain("x", unknown(chart.x, "varied name and no finding", both));
    for (std::size_t i = 0; i < chart.y.size(); ++i)
      if (!contains(found, chart.y[i])) section.complain("y", i, unknown(chart.y[i], "finding", found));
    if (chart.series && !contains(varied, *chart.series))
      section.complain("series", unknown(*chart.series, "varied name", varied));
    if (chart.series && *chart.series == chart.x)
      section.complain("series", "is the same as `x`; every curve would be one point");
    charts.push_back(chart);
  }
  return charts;
}

}  // namespace gapstrain::cases
