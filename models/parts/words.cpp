#include "models/parts/words.h"

#include <array>
#include <utility>

namespace gapstrain::models {

namespace {

constexpr std::array<std::pair<ScrewKind, std::string_view>, 4> kind_words{
    {{ScrewKind::locking, "locking"},
     {ScrewKind::cortical, "cortical"},
     {ScrewKind::compression, "compression"},
     {ScrewKind::lag, "lag"}}};
constexpr std::array<std::pair<Aspect, std::string_view>, 4> aspect_words{{{Aspect::cranial, "cranial"},
                                                                           {Aspect::caudal, "caudal"},
                                                                           {Aspect::medial, "medial"},
                                                                           {Aspect::lateral, "lateral"}}};

constexpr std::array<std::pair<EndHold, std::string_view>, 5> end_words{{{EndHold::ball, "ball"},
                                                                         {EndHold::held, "held"},
                                                                         {EndHold::guided, "guided"},
                                                                         {EndHold::elastic, "elastic"},
                                                                         {EndHold::free, "free"}}};

template <class Table, class Choice>
std::string word_for(const Table& table, Choice choice) {
  for (const auto& [value, word] : table)
    if (value == choice) return std::string(word);
  return {};
}

template <class Choice, std::size_t count>
std::optional<Choice> value_of(const std::array<std::pair<Choice, std::string_view>, count>& table,
                               std::string_view name) {
  for (const auto& [value, word] : table)
    if (word == name) return value;
  return std::nullopt;
}

template <class Table>
std::vector<std::string> words_of(const Table& table) {
  std::vector<std::string> names;
  for (const auto& [value, word] : table) names.emplace_back(word);
  return names;
}

}  // namespace

std::string name_of(ScrewKind kind) { return word_for(kind_words, kind); }
std::string name_of(Aspect aspect) { return word_for(aspect_words, aspect); }

std::string name_of(EndHold hold) { return word_for(end_words, hold); }
std::string name_of(BoneEnd end) { return end == BoneEnd::proximal ? "proximal" : "distal"; }

std::string listed(const std::vector<std::string>& names, std::string_view last) {
  if (names.empty()) return "";
  std::string text = names.front();
  for (std::size_t i = 1; i < names.size(); ++i)
    text += (i + 1 < names.size() ? ", " : " " + std::string(last) + " ") + names[i];
  return text;
}

std::string name_of(Side side) { return side == Side::left ? "left" : "right"; }

std::optional<ScrewKind> find_screw_kind(std::string_view name) { return value_of(kind_words, name); }
std::vector<std::string> screw_kind_names() { return words_of(kind_words); }

std::optional<EndHold> find_end_hold(std::string_view name) { return value_of(end_words, name); }
std::vector<std::string> end_hold_names() { return words_of(end_words); }

}  // namespace gapstrain::models
