// One table of a file, held against the keys it may have: all its faults are reported when it is made, after which
// its values are there for the asking.
#pragma once

#include "cases/toml/case_places.h"
#include "cases/toml/key_table.h"
#include "cases/toml/problems.h"
#include "models/parts/units.h"

#include <array>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace gapstrain::cases {

// What the sections of one file gather.
struct Reading {
  std::vector<CaseProblem> problems;
  CasePlaces places;
};

class Section {
 public:
  // The whole file. All three must outlive this and the sections below.
  Section(const Table& file, const KeyTable& keys, Reading& reading);

  // Whether the file has this table at all.
  bool present() const { return table_ != nullptr; }
  // Whether the key is written here, be it usable or not; also when it is only misspelt, which is reported once.
  bool has(std::string_view key) const;
  bool has_any(const std::vector<std::string_view>& keys) const;
  const std::string& path() const { return path_; }
  std::string path_of(std::string_view key) const;

  // The written value, else the literal default. Nothing when it is absent or was reported.
  template <class Quantity>
  std::optional<Quantity> find(std::string_view key) const;
  // Zero where there is nothing: the fault is reported then, and the construct is not used.
  template <class Quantity>
  Quantity get(std::string_view key) const {
    return find<Quantity>(key).value_or(Quantity{});
  }
  // The three components of a vector; nothing when it is absent or was reported.
  template <class Quantity>
  std::optional<std::array<Quantity, 3>> vector(std::string_view key) const;
  std::optional<std::string> text(std::string_view key) const;
  std::optional<int> count(std::string_view key) const;
  std::vector<int> counts(std::string_view key) const;
  std::vector<std::string> texts(std::string_view key) const;
  std::optional<Value> measure(std::string_view key) const;
  std::vector<Value> values(std::string_view key) const;

  Section section(std::string_view key) const;                // [table]; not present() when absent
  std::vector<Section> sections(std::string_view key) const;  // [[table]]

  // Reports a fault of a key, or of the table itself for an empty key, at its place.
  void complain(std::string_view key, const std::string& message) const;
  // Reports a fault of one value of a list.
  void complain(std::string_view key, std::size_t index, const std::string& message) const;
  // Reports each key as missing that is not written.
  void require(const std::vector<std::string_view>& keys, std::string_view why) const;

 private:
  Section(const Table* table, std::string path, std::string schema, const KeyTable& keys, Reading& reading);
  void check_entry(const Entry& entry);
  const Value* written(std::string_view key) const;
  const ParsedValue* parsed(std::string_view key) const;
  template <class Content>
  std::optional<Content> content(std::string_view key) const;
  std::optional<double> number(std::string_view key, std::optional<Dimension> dimension) const;
  std::vector<double> components(std::string_view key) const;

  const Table* table_;
  std::string path_;    // "screw[2]"
  std::string schema_;  // "screw"
  const KeyTable* keys_;
  Reading* reading_;
  std::map<std::string, ParsedValue, std::less<>> values_;
  std::set<std::string, std::less<>> misspelt_;  // known keys that unknown ones come nearest to
};

template <class Quantity>
std::optional<Quantity> Section::find(std::string_view key) const {
  constexpr auto dimension = []() -> std::optional<Dimension> {
    if constexpr (std::is_same_v<Quantity, models::Length>)
      return Dimension::length;
    else if constexpr (std::is_same_v<Quantity, models::Force>)
      return Dimension::force;
    else if constexpr (std::is_same_v<Quantity, models::Stress>)
      return Dimension::stress;
    else if constexpr (std::is_same_v<Quantity, models::Moment>)
      return Dimension::moment;
    else if constexpr (std::is_same_v<Quantity, models::Angle>)
      return Dimension::angle;
    else if constexpr (std::is_same_v<Quantity, models::Mass>)
      return Dimension::mass;
    else if constexpr (std::is_same_v<Quantity, models::AxialStiffness>)
      return Dimension::stiffness;
    else if constexpr (std::is_same_v<Quantity, models::AngularStiffness>)
      return Dimension::angular_stiffness;
    else {
      static_assert(std::is_same_v<Quantity, double>, "a quantity of models/parts/units.h or a plain ratio");
      return std::nullopt;
    }
  }();
  const auto value = number(key, dimension);
  if (!value) return std::nullopt;
  if constexpr (std::is_same_v<Quantity, double>)
    return *value;
  else
    return Quantity::from_value(*value);
}

template <class Quantity>
std::optional<std::array<Quantity, 3>> Section::vector(std::string_view key) const {
  const auto values = components(key);
  if (values.size() != 3) return std::nullopt;
  return std::array{Quantity::from_value(values[0]), Quantity::from_value(values[1]),
                    Quantity::from_value(values[2])};
}

}  // namespace gapstrain::cases
