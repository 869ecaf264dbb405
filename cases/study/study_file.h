// A study file: one case, what is varied in it, and the case of each row.
#pragma once

#include "cases/figures/limits_and_charts.h"
#include "cases/reader/read_case.h"
#include "cases/study/study_design.h"
#include "cases/study/variable.h"

#include <filesystem>
#include <functional>
#include <string>
#include <vector>

namespace gapstrain::cases {

// What is found of constructs like this one (its loads give columns their names).
using FindingsOf = std::function<std::vector<StudyFinding>(const models::Construct&)>;

struct StudyFile {
  std::string file;  // as the user wrote it
  std::string text;
  Table tree;  // of the text
  std::string name;
  CaseFile base;  // the case as it stands in its file
  Table base_tree;
  std::vector<Variable> variables;  // at least one
  StudyDesign design;
  std::vector<Limit> limits;
  std::vector<Chart> charts;

  std::size_t rows() const { return rows_of(design); }

  // What a row sets, one setting a variable. Of the row's number alone, in any order and by any thread.
  std::vector<Setting> settings(std::size_t row) const { return settings_of(design, variables, row); }

  // A row's case, with its warnings; problems stand at the places of the case file.
  // @throw CaseError for a wrong construct
  CaseFile at(std::size_t row) const;

  // Of all that rows depend on: study, case and program, in 16 hexadecimal digits. Where the case lies and what
  // the study is called do not count.
  std::string fingerprint() const;

  // The study as a file of its own beside its case, which is there called `case_file`.
  std::string text_beside(const std::string& case_file) const;
};

// @throw CaseError with all problems of the study file. Those of its case are among them, at `case`; what depends
//   on the case is then not checked.
StudyFile read_study(const std::filesystem::path& path, const FindingsOf& findings);

}  // namespace gapstrain::cases
