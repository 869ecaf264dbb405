#include "cases/study/variable.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

std::string plain_text(const Value& value) {
  if (const auto* text = std::get_if<std::string>(&value.content)) return *text;
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  if (items == nullptr) return quote(value);
  std::string joined;
  for (const auto& item : *items) joined += (joined.empty() ? "" : " ") + plain_text(item);
  return joined;
}

}  // namespace

bool Variable::is_numeric() const { return cases::is_numeric(key()); }

Setting listed(const Value& value, const Key& key, const std::string& unit) {
  if (!is_numeric(key)) {
    parse_value(value, key);
    return {value, std::nullopt, plain_text(value)};
  }
  const double number = number_of(value, key, unit);
  return {value, number, fmt::format("{}", number)};
}

Setting numeric(double number, const Key& key, const std::string& unit) {
  constexpr double largest = 1e15;  // beyond any key's range, and a whole number still
  if (key.kind == Kind::count) number = std::round(std::clamp(number, -largest, largest));
  Setting setting{{{}, number}, number, fmt::format("{}", number)};
  if (key.kind == Kind::count) setting.value.content = static_cast<std::int64_t>(number);
  if (dimension_of(key.kind)) setting.value.content = fmt::format("{} {}", number, unit);
  return setting;
}

Setting at_probability(const Variable& variable, double probability) {
  if (const auto* distribution = std::get_if<models::Distribution>(&variable.takes))
    return numeric(models::quantile(*distribution, probability), variable.key(), variable.unit);
  const auto& settings = std::get<std::vector<Setting>>(variable.takes);
  const auto index = static_cast<std::size_t>(probability * static_cast<double>(settings.size()));
  return settings[std::min(index, settings.size() - 1)];
}

}  // namespace gapstrain::cases
