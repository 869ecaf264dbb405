#include "cases/study/study_file.h"

#include "cases/outputs/text_hash.h"
#include "cases/reader/base_case.h"
#include "cases/reader/study_keys.h"
#include "cases/reader/text_file.h"
#include "cases/study/read_variable.h"
#include "cases/version.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

struct Base {
  CaseFile file;
  Table tree;
};

// The case that the study names; its faults are reported at `case`, with their own places.
std::optional<Base> read_base(const Section& study, const std::filesystem::path& folder) {
  const auto named = study.text("case");
  if (!named) return std::nullopt;
  const std::filesystem::path path = (folder / *named).lexically_normal();
  try {
    const WholeCase whole = whole_case(path.string(), read_text(path, "case"));
    return Base{read_case_tree(path.string(), whole.text, whole.tree), whole.tree};
  } catch (const CaseError& error) {
    for (const auto& problem : error.problems) {
      const std::string line = format_problems(path.string(), {problem});
      study.complain("case", fmt::format("in the case file: {}", line.substr(0, line.size() - 1)));
    }
    return std::nullopt;
  }
}

// A table has one column of a name.
void check_names(const std::vector<Section>& varies, const std::vector<StudyFinding>& findings) {
  for (const auto& vary : varies)
    for (const auto& finding : findings)
      if (vary.text("name") == finding.name)
        vary.complain("name",
                      fmt::format("found \"{}\", which is the name of a finding; give another one", finding.name));
}

}  // namespace

CaseFile StudyFile::at(std::size_t row) const {
  Table tree = base_tree;
  const auto set = settings(row);
  for (std::size_t i = 0; i < variables.size(); ++i)
    for (const auto& path : variables[i].paths) set_value(tree, path, set[i].value);
  return read_case_tree(base.file, base.text, tree);
}

std::string StudyFile::fingerprint() const {
  const std::string all = fmt::format("{} {} {}\n{}{}", version, text.size(), base.text.size(), text, base.text);
  return fmt::format("{:016x}", fnv1a64(all));
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
  const auto base = read_base(section, path.parent_path());
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
  if (!reading.problems.empty()) throw CaseError(file, reading.problems);
  return {file,           text,       section.text("name").value_or(path.stem().string()),
          base->file,     base->tree, variables,
          design.value(), limits,     charts};
}

}  // namespace gapstrain::cases
