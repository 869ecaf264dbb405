#include "models/checks/problem_list.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

template <class Quantity>
bool is_positive(Quantity found) {
  return std::isfinite(found.value()) && found.value() > 0.0;
}

template <class Quantity>
std::string must(std::string_view subject, Quantity found, std::string_view condition) {
  return fmt::format("{} is {}; it must be {}.", subject, text(found), condition);
}

}  // namespace

void ProblemList::error(std::string where, std::string message) {
  problems_.push_back({Severity::error, std::move(where), std::move(message)});
  ++error_count_;
}

void ProblemList::warning(std::string where, std::string message) {
  problems_.push_back({Severity::warning, std::move(where), std::move(message)});
}

bool ProblemList::positive(const std::string& where, std::string_view subject, Length found) {
  if (!is_positive(found)) error(where, must(subject, found, "above 0 mm"));
  return is_positive(found);
}

bool ProblemList::positive(const std::string& where, std::string_view subject, Stress found) {
  if (!is_positive(found)) error(where, must(subject, found, "above 0 MPa"));
  return is_positive(found);
}

bool ProblemList::positive(const std::string& where, std::string_view subject, Force found) {
  if (!is_positive(found)) error(where, must(subject, found, "above 0 N"));
  return is_positive(found);
}

bool ProblemList::positive(const std::string& where, std::string_view subject, Moment found) {
  if (!is_positive(found)) error(where, must(subject, found, "above 0 N mm"));
  return is_positive(found);
}

bool ProblemList::not_negative(const std::string& where, std::string_view subject, Length found) {
  const bool is_good = std::isfinite(found.value()) && found.value() >= 0.0;
  if (!is_good) error(where, must(subject, found, "0 mm or more"));
  return is_good;
}

bool ProblemList::finite(const std::string& where, std::string_view subject, Length found) {
  if (!std::isfinite(found.value())) error(where, must(subject, found, "an ordinary number"));
  return std::isfinite(found.value());
}

bool ProblemList::finite(const std::string& where, std::string_view subject, Angle found) {
  if (!std::isfinite(found.value())) error(where, must(subject, found, "an ordinary number"));
  return std::isfinite(found.value());
}

bool ProblemList::finite(const std::string& where, std::string_view subject, Force found) {
  if (!std::isfinite(found.value())) error(where, must(subject, found, "an ordinary number"));
  return std::isfinite(found.value());
}

bool ProblemList::finite(const std::string& where, std::string_view subject, Moment found) {
  if (!std::isfinite(found.value())) error(where, must(subject, found, "an ordinary number"));
  return std::isfinite(found.value());
}

bool ProblemList::within(const std::string& where, std::string_view subject, Length found, Length from,
                         Length to) {
  const bool is_good = found >= from && found <= to;
  if (!is_good) error(where, must(subject, found, fmt::format("from {} to {}", text(from), text(to))));
  return is_good;
}

std::vector<Problem> ProblemList::errors_first() const {
  std::vector<Problem> sorted = problems_;
  std::stable_partition(sorted.begin(), sorted.end(),
                        [](const Problem& problem) { return problem.severity == Severity::error; });
  return sorted;
}

std::string text(Length value) { return fmt::format("{:.4g} mm", value.value()); }

std::string text(Stress value) { return fmt::format("{:.4g} MPa", value.value()); }

std::string text(Angle value) { return fmt::format("{:.4g} deg", (value / degree).value()); }

std::string text(Force value) { return fmt::format("{:.4g} N", value.value()); }

std::string text(Moment value) { return fmt::format("{:.4g} N mm", value.value()); }

}  // namespace gapstrain::models
