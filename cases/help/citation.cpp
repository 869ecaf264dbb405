#include "cases/help/citation.h"

#include "cases/cautions.h"
#include "cases/help/method_sources.h"
#include "cases/text/columns.h"
#include "cases/version.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <set>

namespace gapstrain::cases {

namespace {

constexpr std::string_view program_title = "gapstrain: finite-element analysis of plated long bones";
constexpr std::string_view authors = "The gapstrain authors";
constexpr std::string_view licence = "GPL-3.0-or-later";

// "2026-01-31"; empty where the commit is unknown.
std::string date() { return commit_date(); }

std::string reference_of(const MethodSource& source) {
  return fmt::format("{}{}", source.reference, source.from_memory ? " (from memory)" : "");
}

// First name of some length and year, such as Farhat1991; told apart by a letter where that is taken.
std::string key_of(const std::string& reference, std::set<std::string>& taken) {
  std::string word, name, year;
  for (const char c : reference + ' ') {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
      word += c;
      continue;
    }
    const bool is_number =
        std::all_of(word.begin(), word.end(), [](unsigned char d) { return std::isdigit(d) != 0; });
    if (name.empty() && word.size() > 2 && !is_number) name = word;
    if (year.empty() && word.size() == 4 && is_number && (word.starts_with("19") || word.starts_with("20")))
      year = word;
    word.clear();
  }
  std::string key = name + year;
  for (char letter = 'b'; !taken.insert(key).second; ++letter) key = name + year + letter;
  return key;
}

std::string tex(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (c == '&' || c == '%' || c == '_') safe += '\\';
    safe += c;
  }
  return safe;
}

}  // namespace

std::string citation_text() {
  const std::string when = date().empty() ? "" : fmt::format(", {}", date());
  std::string text = "To cite the program:\n";
  for (const auto& line : wrap(fmt::format("{}. {}, version {}, commit {}{}. Free software, {}.", authors,
                                           program_title, version(), commit(), when, licence),
                               screen_columns, 2))
    text += line + '\n';
  text +=
      "\nPublished sources that the method rests on (rules of the trade and figures of materials carry theirs in "
      "the\n"
      "outputs, beside each figure):\n";
  for (const auto& source : method_sources())
    for (const auto& line : wrap(fmt::format("{}: {}", source.of, reference_of(source)), screen_columns, 2))
      text += line + '\n';
  text += "\n";
  for (const auto& caution : cautions) text += fmt::format("{}\n", caution);
  return text;
}

std::string citation_bibtex() {
  std::string text =
      fmt::format("@software{{gapstrain,\n  author = {{{{{}}}}},\n  title = {{{}}},\n  version = {{{}}},\n",
                  authors, program_title, version());
  if (!date().empty()) text += fmt::format("  year = {{{}}},\n  date = {{{}}},\n", date().substr(0, 4), date());
  text += fmt::format("  license = {{{}}},\n  note = {{Commit {}}}\n}}\n", licence, commit());
  std::set<std::string> taken;
  for (const auto& source : method_sources()) {
    const std::string reference = reference_of(source);
    text += fmt::format("\n@misc{{{},\n  howpublished = {{{}}},\n  note = {{In gapstrain: {}}}\n}}\n",
                        key_of(reference, taken), tex(reference), source.of);
  }
  return text;
}

std::string citation_cff() {
  std::string text = fmt::format(
      "# The published sources that the method rests on: gapstrain cite\n"
      "cff-version: 1.2.0\n"
      "message: \"If you use this program, please cite it as below.\"\n"
      "type: software\n"
      "title: \"{}\"\n"
      "authors:\n"
      "  - name: \"{}\"\n"
      "version: \"{}\"\n"
      "commit: \"{}\"\n",
      program_title, authors, version(), commit());
  if (!date().empty()) text += fmt::format("date-released: \"{}\"\n", date());
  return text + fmt::format("license: {}\n", licence);
}

}  // namespace gapstrain::cases
