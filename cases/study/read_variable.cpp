#include "cases/study/read_variable.h"

#include "cases/reader/case_keys.h"
#include "cases/text/words.h"
#include "cases/toml/describe_keys.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace gapstrain::cases {

namespace {

const std::vector<std::string_view> range_keys{"from", "to", "steps", "spacing"};
const std::vector<std::string_view> distribution_keys{"distribution", "mean", "sd",    "low",
                                                      "mode",         "high", "least", "most"};

struct Shape {
  std::string_view word;
  std::vector<std::string_view> needed;
};

const std::vector<Shape> shapes{{"uniform", {"low", "high"}},
                                {"normal", {"mean", "sd"}},
                                {"lognormal", {"mean", "sd"}},
                                {"triangular", {"low", "mode", "high"}}};

// The keys of one [[vary]], as many as can be found; each fault at its place.
std::vector<CasePath> read_paths(const Section& vary, const Table& tree) {
  std::vector<CasePath> paths;
  const auto add = [&](const std::string& text, const auto& complain) {
    try {
      const CasePath path = find_case_path(text, case_keys(), tree);
      if (path.text == "base" || path.text == "without")
        throw ValueError(
            fmt::format("found \"{}\", which stands in a case file and cannot be varied; vary the keys "
                        "that differ",
                        path.text));
      paths.push_back(path);
    } catch (const ValueError& error) {
      complain(std::string(error.what()));
    }
  };
  if (vary.has("key") && vary.has("keys")) vary.complain("keys", "given together with `key`; remove one of them");
  if (!vary.has_any({"key", "keys"}))
    vary.complain("key", "missing; name the key of the case file that is varied, such as \"plate.standoff\"");
  if (const auto text = vary.text("key")) add(*text, [&](const auto& message) { vary.complain("key", message); });
  const auto texts = vary.texts("keys");
  for (std::size_t i = 0; i < texts.size(); ++i)
    add(texts[i], [&](const auto& message) { vary.complain("keys", i, message); });
  for (std::size_t i = 1; i < paths.size(); ++i)
    if (paths[i].key->kind != paths.front().key->kind) {
      vary.complain("keys", fmt::format("\"{}\" takes {}, \"{}\" {}; keys that are set together take the same",
                                        paths.front().text, allowed_values(*paths.front().key), paths[i].text,
                                        allowed_values(*paths[i].key)));
      return {};
    }
  return paths;
}

// The unit of a quantity's key: as the case writes it, else its default, else as the study writes its first value.
std::string unit_of(const std::vector<CasePath>& paths, const Section& vary, const Table& tree) {
  const Key& key = *paths.front().key;
  const auto dimension = dimension_of(key.kind);
  if (!dimension) return {};
  std::vector<Value> candidates;
  for (const auto& path : paths)
    if (const Value* written = value_at(tree, path)) candidates.push_back(*written);
  if (key.need == Need::literal) candidates.push_back({{}, std::string(key.fallback)});
  const auto values = vary.values("values");
  candidates.insert(candidates.end(), values.begin(), values.end());
  for (const auto* measure : {"from", "mean", "mode", "low"})
    if (const auto value = vary.measure(measure)) candidates.push_back(*value);
  for (const auto& value : candidates)
    if (const auto* text = std::get_if<std::string>(&value.content)) try {
        return std::string(split_quantity(*text, *dimension).unit.text);
      } catch (const QuantityError&) {  // reported when the value itself is read
      }
  return std::string(split_quantity(example_of(*dimension), *dimension).unit.text);
}

std::vector<Setting> read_list(const Section& vary, const Variable& variable) {
  std::vector<Setting> settings;
  const auto values = vary.values("values");
  for (std::size_t i = 0; i < values.size(); ++i) try {
      for (const auto& path : variable.paths) parse_value(values[i], *path.key);  // choices may differ
      settings.push_back(listed(values[i], variable.key(), variable.unit));
    } catch (const ValueError& error) {
      vary.complain("values", i, error.what());
    }
  return settings.size() == values.size() ? settings : std::vector<Setting>{};
}

// A number in the variable's unit; nothing where there is none or it is reported. A whole number's mean need not
// be whole, and a standard deviation is a width rather than a value.
std::optional<double> read_number(const Section& vary, std::string_view name, const Variable& variable) {
  const auto written = vary.measure(name);
  if (!written) return std::nullopt;
  Key key = variable.key();
  if (key.kind == Kind::count && name != "from" && name != "to") key.kind = Kind::number;
  if (name == "sd") key.range = {};
  try {
    return number_of(*written, key, variable.unit);
  } catch (const ValueError& error) {
    vary.complain(name, error.what());
    return std::nullopt;
  }
}

std::vector<Setting> read_range(const Section& vary, const Variable& variable) {
  vary.require({"from", "to", "steps"}, "a range needs `from`, `to` and `steps`");
  const auto from = read_number(vary, "from", variable), to = read_number(vary, "to", variable);
  const auto steps = vary.count("steps");
  if (!from || !to || !steps) return {};
  if (*from == *to) vary.complain("to", "found the same as `from`; a range has two different ends");
  const bool logarithmic = vary.text("spacing") == "logarithmic";
  if (logarithmic && (*from <= 0.0 || *to <= 0.0)) {
    vary.complain("spacing", "\"logarithmic\" needs `from` and `to` above zero");
    return {};
  }
  if (*from == *to) return {};
  std::vector<Setting> settings;
  for (int i = 0; i < *steps; ++i) {
    const double share = static_cast<double>(i) / (*steps - 1);
    const double between = logarithmic ? *from * std::pow(*to / *from, share) : *from + (*to - *from) * share;
    settings.push_back(numeric(i + 1 == *steps ? *to : between, variable.key(), variable.unit));
    if (i > 0 && settings[settings.size() - 2].number == settings.back().number) {
      vary.complain("steps",
                    fmt::format("found {}; between the ends there are not as many different values: {} comes "
                                "twice",
                                *steps, settings.back().text));
      return {};
    }
  }
  return settings;
}

models::Distribution make_distribution(const std::string& word, std::map<std::string_view, double>& value) {
  models::Distribution distribution;
  if (word == "uniform") distribution.shape = models::Uniform{value["low"], value["high"]};
  if (word == "normal") distribution.shape = models::Normal{value["mean"], value["sd"]};
  if (word == "lognormal") distribution.shape = models::Lognormal{value["mean"], value["sd"]};
  if (word == "triangular") distribution.shape = models::Triangular{value["low"], value["mode"], value["high"]};
  if (value.contains("least")) distribution.least = value["least"];
  if (value.contains("most")) distribution.most = value["most"];
  return distribution;
}

// One that lies mostly out of its key's range can only be a slip: each row would fail by itself.
void check_quarters(const models::Distribution& distribution, const Section& vary, const Variable& variable) {
  for (const double probability : {0.25, 0.75}) try {
      parse_value(numeric(models::quantile(distribution, probability), variable.key(), variable.unit).value,
                  variable.key());
    } catch (const ValueError& error) {
      vary.complain("distribution", fmt::format("a quarter of its values are out of range: {}", error.what()));
      return;
    }
}

std::optional<models::Distribution> read_distribution(const Section& vary, const Variable& variable) {
  const auto word = vary.text("distribution");
  if (!vary.has("distribution")) vary.complain("distribution", "missing; say which one the other keys belong to");
  if (!word) return std::nullopt;
  const auto shape = std::find_if(shapes.begin(), shapes.end(), [&](const Shape& s) { return s.word == *word; });
  vary.require(shape->needed, fmt::format("the distribution \"{}\" needs it", *word));
  std::map<std::string_view, double> numbers;
  bool usable = true;
  for (const std::string_view name : {"mean", "sd", "low", "mode", "high", "least", "most"}) {
    const bool cuts = name == "least" || name == "most";
    const bool needed = std::find(shape->needed.begin(), shape->needed.end(), name) != shape->needed.end();
    if (vary.has(name) && !needed && !cuts)
      vary.complain(name, fmt::format("the distribution \"{}\" has no such key; remove it", *word));
    const auto number = needed || cuts ? read_number(vary, name, variable) : std::nullopt;
    if (number) numbers[name] = *number;
    usable = usable && (number || !(needed || vary.has(name)));
  }
  if (numbers.contains("sd") && numbers["sd"] <= 0.0) {
    vary.complain("sd", "a standard deviation above zero is wanted here");
    usable = false;
  }
  if (!usable) return std::nullopt;
  const auto distribution = make_distribution(*word, numbers);
  try {
    models::check_distribution(distribution);
    check_quarters(distribution, vary, variable);
    return distribution;
  } catch (const std::invalid_argument& error) {
    vary.complain("distribution", error.what());
    return std::nullopt;
  }
}

// Reports all that is wrong with the choice between a list, a range and a distribution.
bool names_one_form(const Section& vary, const Variable& variable) {
  const bool list = vary.has("values"), range = vary.has_any(range_keys);
  const bool distribution = vary.has_any(distribution_keys);
  const std::string forms = "`values`, a range (`from`, `to`, `steps`) or a `distribution`";
  if (!list && !range && !distribution) vary.complain("values", fmt::format("missing; give {}", forms));
  if (list + range + distribution > 1)
    vary.complain("", fmt::format("takes its values from more than one of {}; remove all but one", forms));
  if (list + range + distribution != 1) return false;
  if (list || variable.is_numeric()) return true;
  const auto& names = range ? range_keys : distribution_keys;
  const auto first =
      std::find_if(names.begin(), names.end(), [&](std::string_view name) { return vary.has(name); });
  vary.complain(*first, fmt::format("\"{}\" takes {}, which has no range or distribution; list its `values`",
                                    variable.paths.front().text, allowed_values(variable.key())));
  return false;
}

std::optional<Variable> read_variable(const Section& vary, const Table& tree) {
  Variable variable;
  variable.paths = read_paths(vary, tree);
  if (variable.paths.empty()) return std::nullopt;
  variable.name = vary.text("name").value_or(variable.paths.front().text);
  variable.unit = unit_of(variable.paths, vary, tree);
  if (!names_one_form(vary, variable)) return std::nullopt;
  if (vary.has("values") || vary.has_any(range_keys)) {
    auto settings = vary.has("values") ? read_list(vary, variable) : read_range(vary, variable);
    if (settings.empty()) return std::nullopt;
    variable.takes = std::move(settings);
    return variable;
  }
  const auto distribution = read_distribution(vary, variable);
  if (!distribution) return std::nullopt;
  variable.takes = *distribution;
  return variable;
}

// What two [[vary]] may not share: keys, and headings of columns.
void check_distinct(const Section& vary, const Variable& variable, std::map<std::string, std::string>& varied,
                    std::map<std::string, std::string>& named) {
  const std::string_view key = vary.has("keys") ? "keys" : "key";
  bool shares = false;
  for (const auto& path : variable.paths) {
    const auto [other, is_new] = varied.emplace(path.text, vary.path());
    if (!is_new)
      vary.complain(key, fmt::format("\"{}\" is set by {} already; remove one", path.text, other->second));
    shares = shares || !is_new;
  }
  const auto [other, is_new] = named.emplace(variable.name, vary.path());
  if (!is_new && !shares)
    vary.complain(vary.has("name") ? "name" : key,
                  fmt::format("\"{}\" is the name of {} too; give another `name`", variable.name, other->second));
}

}  // namespace

std::vector<Variable> read_variables(const std::vector<Section>& varies, const Table& tree) {
  std::vector<Variable> variables;
  std::map<std::string, std::string> varied, named;  // to the [[vary]] that does
  for (const auto& vary : varies) {
    const auto variable = read_variable(vary, tree);
    if (!variable) continue;
    check_distinct(vary, *variable, varied, named);
    variables.push_back(*variable);
  }
  return variables;
}

}  // namespace gapstrain::cases
