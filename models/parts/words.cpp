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

template <class Table, class Choice>
std::string word_for(const Table& table, Choice choice) {
  for (const auto& [value, word] : table)
    if (value == choice) return std::string(word);
  return {};
}

}  // namespace

std::string name_of(ScrewKind kind) { return word_for(kind_words, kind); }
std::string name_of(Aspect aspect) { return word_for(aspect_words, aspect); }

std::string listed(const std::vector<std::string>& names, std::string_view last) {
  if (names.empty()) return "";
  std::string text = names.front();
  for (std::size_t i = 1; i < names.size(); ++i)
    text += (i + 1 < names.size() ? ", " : " " + std::string(last) + " ") + names[i];
  return text;
}

std::string name_of(Side side) { return side == Side::left ? "left" : "right"; }

std::optional<ScrewKind> find_screw_kind(std::string_view name) {
  for (const auto& [kind, word] : kind_words)
    if (word == name) return kind;
  return std::nullopt;
}

std::vector<std::string> screw_kind_names() {
  std::vector<std::string> names;
  for (const auto& [kind, word] : kind_words) names.emplace_back(word);
  return names;
}

}  // namespace gapstrain::models
