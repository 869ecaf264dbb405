// The folder of a study: it grows row by row, and a run that was ended goes on in it.
#pragma once

#include "cases/study/rows_file.h"
#include "cases/study/run_file.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace gapstrain::cases {

// Unlike an analysis's folder (`OutputFolder`), which appears when all is done, it is there from the start:
// run.json, rows.csv.part while rows are missing, then rows.csv and what is written beside it. One run at a time.
class StudyFolder {
 public:
  static constexpr const char* final_name = "rows.csv";

  // Makes the folder or goes on in it.
  // @param heading of the table of rows, without line end
  // @throw OutputError if the folder holds anything but this study, another run is at work in it or it cannot be
  //   written; what it held is then untouched
  StudyFolder(const std::filesystem::path& target, const Study& study, const std::string& heading);

  const std::filesystem::path& target() const { return target_; }

  // Of this part, there so far.
  std::size_t rows() const { return file_->rows(); }

  // Rows of this part that are missing, as numbers of the whole study.
  RowRange missing() const { return {range_.first + file_->rows(), range_.end}; }

  // rows.csv is there and final.
  bool complete() const;

  // The rows that follow. @throw OutputError as RowsFile::append
  void append(std::string_view whole_lines, std::size_t rows) { file_->append(whole_lines, rows); }

  // Makes the rows final. @pre none are missing
  // @throw OutputError
  void finish();

  // A file beside the rows, whole or as it was before.
  // @throw OutputError
  void write(const std::filesystem::path& name, const std::string& text);

 private:
  void open_file(const std::string& heading);

  std::filesystem::path target_;
  RowRange range_;
  std::optional<RowsFile> file_;
};

}  // namespace gapstrain::cases
