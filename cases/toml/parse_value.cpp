#include "cases/toml/parse_value.h"

#include "cases/text/leading_number.h"
#include "cases/text/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace gapstrain::cases {

namespace {

constexpr std::size_t longest_text = 500;      // names, labels, sources: a line or two
constexpr std::size_t longest_list = 100'000;  // of values that a study takes one by one

[[noreturn]] void fail(const Value& value, const std::string& wanted) {
  throw ValueError(fmt::format("found {}; {}", quote(value), wanted));
}

std::string parse_text(const Value& value) {
  const auto* text = std::get_if<std::string>(&value.content);
  if (text == nullptr) fail(value, "a text in double quotes is wanted here");
  if (text->find_first_not_of(" \t\r\n") == std::string::npos) fail(value, "the text must not be empty");
  if (text->size() > longest_text)
    fail(value, fmt::format("a text of at most {} characters is wanted here, this one has {}", longest_text,
                            text->size()));
  if (std::any_of(text->begin(), text->end(), is_control))
    fail(value, "the text has a line break or another control character; write it on one line");
  return *text;
}

// The items of a list that is not empty; `wanted` says which list.
const std::vector<Value>& items_of(const Value& value, std::size_t most, const std::string& wanted) {
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  if (items == nullptr || items->empty()) fail(value, wanted);
  if (items->size() > most) fail(value, fmt::format("it has {} items; allowed are 1 to {}", items->size(), most));
  return *items;
}

// A single text is a list of one.
std::vector<std::string> parse_texts(const Value& value) {
  constexpr std::size_t most_texts = 200;
  if (std::holds_alternative<std::string>(value.content)) return {parse_text(value)};
  std::vector<std::string> texts;
  for (const auto& item : items_of(value, most_texts,
                                   "a text in double quotes, or a list of texts such as [\"S1\", \"S4\"], is "
                                   "wanted here"))
    texts.push_back(parse_text(item));
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

double finite_number(const Value& value) {
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

double bound(std::string_view text) {
  const auto number = leading_number(text);
  return number ? number->value : 0.0;
}

std::string allowed(const Key& key) {
  return fmt::format(
      "allowed {} {}{}{}",
      dimension_of(key.kind) || dimension_of_components(key.kind) || key.kind == Kind::number ? "is" : "are",
      range_text(key), key.meaning.empty() ? "" : ": ", key.meaning);
}

void check_range(const Value& value, double number, const Key& key) {
  if (has_range(key) && (number < bound(key.range.least) || number > bound(key.range.most)))
    fail(value, allowed(key));
}

double parse_number(const Value& value, const Key& key) {
  const double number = finite_number(value);
  check_range(value, number, key);
  return number;
}

int parse_count(const Value& value, const Key& key) {
  const auto* whole = std::get_if<std::int64_t>(&value.content);
  if (whole == nullptr) fail(value, "a whole number without quotes is wanted here");
  check_range(value, static_cast<double>(*whole), key);
  return static_cast<int>(*whole);
}

// Each number once: no more than there are.
std::vector<int> parse_counts(const Value& value, const Key& key) {
  std::vector<int> counts;
  for (const auto& item : items_of(value, static_cast<std::size_t>(bound(key.range.most)),
                                   "a list of whole numbers, such as [1, 2, 4], is wanted here"))
    counts.push_back(parse_count(item, key));
  return counts;
}

Value parse_measure(const Value& value) {
  if (std::holds_alternative<std::string>(value.content)) {
    parse_text(value);
    return value;
  }
  if (!std::holds_alternative<double>(value.content) && !std::holds_alternative<std::int64_t>(value.content))
    fail(value, "a plain number, or a quantity as a text with its unit, is wanted here");
  finite_number(value);
  return value;
}

std::vector<Value> parse_values(const Value& value) {
  return items_of(value, longest_list, "a list of values in [square brackets] is wanted here");
}

// The unit in which the same number would be allowed; nothing where there is none.
std::optional<std::string> unit_that_fits(const Quantity& found, double least, double most) {
  for (const auto& unit : units())
    if (unit.dimension == found.unit.dimension && found.number * unit.factor >= least &&
        found.number * unit.factor <= most)
      return fmt::format("{} {}", found.number, unit.text);
  return std::nullopt;
}

double parse_dimensioned(const Value& value, Dimension dimension, const Key& key) {
  const auto* text = std::get_if<std::string>(&value.content);
  const bool plain =
      std::holds_alternative<double>(value.content) || std::holds_alternative<std::int64_t>(value.content);
  if (text == nullptr)
    fail(value, fmt::format("{}{} is written as a text with a unit ({}), such as \"{}\"",
                            plain ? "a plain number has no unit: " : "", with_article(dimension),
                            units_of(dimension), example_of(dimension)));
  try {
    const Quantity quantity = split_quantity(*text, dimension);
    const double number = quantity.number * quantity.unit.factor;
    if (!has_range(key)) return number;
    const double least = parse_quantity(key.range.least, dimension);
    const double most = parse_quantity(key.range.most, dimension);
    if (number >= least && number <= most) return number;
    const auto fitting = unit_that_fits(quantity, least, most);
    fail(value, allowed(key) + (fitting ? fmt::format("; did you mean \"{}\"?", *fitting) : ""));
  } catch (const QuantityError& error) {
    throw ValueError(error.what());
  }
}

std::vector<double> parse_vector(const Value& value, Dimension dimension, const Key& key) {
  const std::string example = example_of(dimension);
  const std::string wanted =
      fmt::format("{} along each of x, y and z is wanted here, such as [\"{}\", \"{}\", \"{}\"]",
                  with_article(dimension), example, example, example);
  const auto* items = std::get_if<std::vector<Value>>(&value.content);
  if (items == nullptr || items->size() != 3) fail(value, wanted);
  std::vector<double> components;
  for (const auto& item : *items) components.push_back(parse_dimensioned(item, dimension, key));
  return components;
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
    std::string operator()(const std::string& text) const { return fmt::format("\"{}\"", visible(text)); }
    std::string operator()(DateOrTime) const { return "a date or time"; }
    std::string operator()(const std::vector<Value>& items) const {
      return items.empty() ? "an empty list" : "a list";
    }
    std::string operator()(const Table&) const { return "a table"; }
  };
  return std::visit(Quoter{}, value.content);
}

std::optional<std::string> fault_of_number_of_tables(std::size_t number, const Key& key) {
  if (static_cast<double>(number) <= bound(key.range.most)) return std::nullopt;
  return fmt::format("found {} of them; allowed are {}", number, range_text(key));
}

ParsedValue parse_value(const Value& value, const Key& key) {
  if (const auto dimension = dimension_of(key.kind)) return parse_dimensioned(value, *dimension, key);
  if (const auto dimension = dimension_of_components(key.kind)) return parse_vector(value, *dimension, key);
  switch (key.kind) {
    case Kind::choice:
      return parse_choice(value, key.choices);
    case Kind::number:
      return parse_number(value, key);
    case Kind::count:
      return parse_count(value, key);
    case Kind::counts:
      return parse_counts(value, key);
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

bool is_numeric(const Key& key) {
  return key.kind == Kind::number || key.kind == Kind::count || dimension_of(key.kind).has_value();
}

double number_of(const Value& value, const Key& key, const std::string& unit) {
  const ParsedValue parsed = parse_value(value, key);
  if (const auto dimension = dimension_of(key.kind))
    return number_in(split_quantity(std::get<std::string>(value.content), *dimension), *find_unit(unit));
  if (const auto* whole = std::get_if<int>(&parsed)) return *whole;
  return std::get<double>(parsed);
}

}  // namespace gapstrain::cases
