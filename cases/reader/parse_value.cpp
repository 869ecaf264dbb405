#include "cases/reader/parse_value.h"

#include "cases/reader/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

constexpr std::int64_t largest_count = 1'000'000;  // far beyond any sensible one, far below an int's end

[[noreturn]] void fail(const Value& value, const std::string& wanted) {
  throw ValueError(fmt::format("found {}; {}", quote(value), wanted));
}

std::string parse_text(const Value& value) {
  const auto* text = std::get_if<std::string>(&value.content);
  if (text == nullptr) fail(value, "a text in double quotes is wanted here");
  if (text->find_first_not_of(" \t\r\n") == std::string::npos) fail(value, "the text must not be empty");
  return *text;
}

// A single text is a list of one.
std::vector<std::string> parse_texts(const Value& value) {
  if (std::holds_alternative<std::string>(value.content)) return {parse_text(value)};
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  if (items == nullptr || items->empty())
    fail(value, "a text in double quotes, or a list of texts such as [\"S1\", \"S4\"], is wanted here");
  std::vector<std::string> texts;
  for (const auto& item : *items) texts.push_back(parse_text(item));
  return texts;
}

std::string parse_choice(const Value& value, const std::vector<std::string>& choices) {
  const auto* text = std::get_if<std::string>(&value.content);
  if (text != nullptr && std::find(choices.begin(), choices.end(), *text) != choices.end()) return *text;
  std::vector<std::string> quoted;
  for (const auto& choice : choices) quoted.push_back(fmt::format("\"{}\"", choice));
  const std::string hint = text == nullptr ? "" : did_you_mean(*text, choices);
  throw ValueError(fmt::format("found {}{}; allowed: {}", quote(value), hint, join_or(quoted)));
}

double parse_number(const Value& value) {
  double number = 0.0;
  if (const auto* whole = std::get_if<std::int64_t>(&value.content))
    number = static_cast<double>(*whole);
  else if (const auto* real = std::get_if<double>(&value.content))
    number = *real;
  else
    fail(value, "a plain number without quotes and unit is wanted here");
  if (!std::isfinite(number)) fail(value, "a finite number is wanted here");
  return number;
}

int parse_count(const Value& value) {
  const auto* whole = std::get_if<std::int64_t>(&value.content);
  if (whole == nullptr) fail(value, "a whole number without quotes is wanted here");
  if (*whole < 1 || *whole > largest_count) fail(value, fmt::format("allowed are 1 to {}", largest_count));
  return static_cast<int>(*whole);
}

std::vector<int> parse_counts(const Value& value) {
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  if (items == nullptr || items->empty())
    fail(value, "a list of whole numbers, such as [1, 2, 4], is wanted here");
  std::vector<int> counts;
  for (const auto& item : *items) counts.push_back(parse_count(item));
  return counts;
}

Value parse_measure(const Value& value) {
  if (std::holds_alternative<std::string>(value.content)) {
    parse_text(value);
    return value;
  }
  if (!std::holds_alternative<double>(value.content) && !std::holds_alternative<std::int64_t>(value.content))
    fail(value, "a plain number, or a quantity as a text with its unit, is wanted here");
  parse_number(value);
  return value;
}

std::vector<Value> parse_values(const Value& value) {
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  if (items == nullptr || items->empty()) fail(value, "a list of values in [square brackets] is wanted here");
  return *items;
}

double parse_dimensioned(const Value& value, Dimension dimension) {
  const auto* text = std::get_if<std::string>(&value.content);
  const bool plain =
      std::holds_alternative<double>(value.content) || std::holds_alternative<std::int64_t>(value.content);
  if (text == nullptr)
    fail(value, fmt::format("{}{} is written as a text with a unit ({}), such as \"{}\"",
                            plain ? "a plain number has no unit: " : "", with_article(dimension),
                            units_of(dimension), example_of(dimension)));
  try {
    return parse_quantity(*text, dimension);
  } catch (const QuantityError& error) {
    throw ValueError(error.what());
  }
}

}  // namespace

std::string quote(const Value& value) {
  struct Quoter {
    std::string operator()(bool flag) const { return flag ? "true" : "false"; }
    std::string operator()(std::int64_t whole) const { return fmt::format("{}", whole); }
    std::string operator()(double number) const {
      const std::string text = fmt::format("{}", number);
      return text.find_first_not_of("-0123456789") == std::string::npos ? text + ".0" : text;
    }
    std::string operator()(const std::string& text) const { return fmt::format("\"{}\"", text); }
    std::string operator()(DateOrTime) const { return "a date or time"; }
    std::string operator()(const std::vector<Value>&) const { return "a list"; }
    std::string operator()(const Table&) const { return "a table"; }
  };
  return std::visit(Quoter{}, value.content);
}

ParsedValue parse_value(const Value& value, const Key& key) {
  if (const auto dimension = dimension_of(key.kind)) return parse_dimensioned(value, *dimension);
  switch (key.kind) {
    case Kind::choice:
      return parse_choice(value, key.choices);
    case Kind::number:
      return parse_number(value);
    case Kind::count:
      return parse_count(value);
    case Kind::counts:
      return parse_counts(value);
    case Kind::texts:
      return parse_texts(value);
    case Kind::measure:
      return parse_measure(value);
    case Kind::values:
      return parse_values(value);
    default:
      return parse_text(value);
  }
}

ParsedValue parse_fallback(const Key& key) {
  if (key.need != Need::literal) return {};
  const std::string text(key.fallback);
  if (key.kind == Kind::count) return parse_value({{}, std::int64_t{std::stoll(text)}}, key);
  if (key.kind == Kind::number) return parse_value({{}, std::stod(text)}, key);
  return parse_value({{}, text}, key);
}

}  // namespace gapstrain::cases
