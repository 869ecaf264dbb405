#include "cases/study/study_file.h"

#include "cases/figures/outcome_table.h"
#include "cases/reader/study_keys.h"
#include "cases/study/named_case.h"
#include "cases/study/read_variable.h"
#include "cases/study/sweep_table.h"
#include "cases/text/text_hash.h"
#include "cases/toml/text_file.h"
#include "cases/version.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <sstream>
#include <utility>

namespace gapstrain::cases {

namespace {

// From the beginning of a key's line to the end of its value, a text on one line.
std::pair<std::size_t, std::size_t> key_and_value(const std::string& text, Place key) {
  std::size_t begin = 0;
  for (int line = 1; line < key.line; ++line) begin = text.find('\n', begin) + 1;
  std::size_t at = text.find_first_of("\"'", text.find('=', begin));
  const char quote = text[at];
  const std::string closing(text.compare(at, 3, std::string(3, quote)) == 0 ? 3 : 1, quote);
  at += closing.size();
  while (text.compare(at, closing.size(), closing) != 0) at += quote == '"' && text[at] == '\\' ? 2 : 1;
  return {begin, at + closing.size()};
}

// A table has one column of a name. @pre one variable a [[vary]]
void check_columns(const std::vector<Section>& varies, const std::vector<Variable>& variables, std::size_t loads) {
  std::map<std::string, std::string> taken;  // column -> whose it is
  std::istringstream heading(outcome_heading({}, loads));
  for (std::string column; std::getline(heading, column, ',');) taken[column] = "of the table itself";
  for (std::size_t i = 0; i < variables.size(); ++i) {
    const std::string column = variable_column(variables[i]);
    const auto [other, is_new] = taken.emplace(column, "of " + varies[i].path());
    if (!is_new)
      varies[i].complain("name",
                         fmt::format("its column in rows.csv would be \"{}\", which is one {}; give another "
                                     "`name`",
                                     column, other->second));
  }
}

// What limits and charts call a finding is no variable.
void check_names(const std::vector<Section>& varies, const std::vector<StudyFinding>& findings) {
  for (const auto& vary : varies)
    for (const auto& finding : findings)
      if (vary.text("name") == finding.name)
        vary.complain("name",
                      fmt::format("found \"{}\", which is the name of a finding; give another one", finding.name));
}

}  // namespace

CaseFile StudyFile::at(std::size_t row) const {
  Table varied = base_tree;
  const auto set = settings(row);
  for (std::size_t i = 0; i < variables.size(); ++i)
    for (const auto& path : variables[i].paths) set_value(varied, path, set[i].value);
  return read_case_tree(base.file, base.text, varied);
}

std::string StudyFile::fingerprint() const {
  Table inputs = tree;
  std::erase_if(inputs.entries, [](const Entry& entry) { return entry.key == "case" || entry.key == "name"; });
  const std::string study = format_toml(inputs);
  const std::string all =
      fmt::format("{} {} {}\n{}{}", program_and_version(), study.size(), base.text.size(), study, base.text);
  return fmt::format("{:016x}", fnv1a64(all));
}

std::string StudyFile::text_beside(const std::string& case_file) const {
  const auto entry_of = [&](const char* key) {
    return std::find_if(tree.entries.begin(), tree.entries.end(), [&](const Entry& e) { return e.key == key; });
  };
  const auto as_line = [](const char* key, const std::string& value) {
    Table line;
    line.entries.push_back({key, {}, {{}, value}});
    return format_toml(line);
  };
  const auto [begin, end] = key_and_value(text, entry_of("case")->place);
  std::string own_name;
  if (entry_of("name") == tree.entries.end()) own_name = as_line("name", name);
  std::string case_line = as_line("case", case_file);
  case_line.pop_back();  // what follows the value on its line stays there
  return text.substr(0, begin) + own_name + case_line + text.substr(end);
}

StudyFile read_study(const std::filesystem::path& path, const FindingsOf& findings) {
  const std::string file = path.string();
  const std::string text = read_text(path, "study");
  const Table tree = parse_file(file, text);
  Reading reading;
  const Section section(tree, study_keys(), reading);
  // Each made once: it then reports its faults.
  const Section design_section = section.section("design");
  const auto varies = section.sections("vary"), chart_sections = section.sections("chart");
  const auto base = read_named_case(section, path.parent_path());
  if (!base) {
    section.sections("limit");
    throw CaseError(file, reading.problems);
  }
  const auto variables = read_variables(varies, base->tree);
  const auto design = read_design(design_section, varies, variables);
  const auto columns = findings(base->file.construct);
  const auto limits = read_limits(section, columns);
  const auto charts = read_charts(chart_sections, varies, columns);
  check_names(varies, columns);
  if (reading.problems.empty()) check_columns(varies, variables, base->file.construct.loads.size());
  if (!reading.problems.empty()) throw CaseError(file, reading.problems);
  return {file,       text,       tree,      section.text("name").value_or(path.stem().string()),
          base->file, base->tree, variables, design.value(),
          limits,     charts};
}

}  // namespace gapstrain::cases
