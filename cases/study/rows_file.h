// The file of rows under way: at every moment a prefix of the finished file, whatever ends the process.
#pragma once

#include "cases/files/output_target.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace gapstrain::cases {

// A CSV file that only ever grows by whole lines, locked against a second run. Rows hold no line ends within.
class RowsFile {
 public:
  // Opens the file, or makes it with its heading. Going on, a torn end is cut off: what follows the last line end,
  // and all from the first line with a null byte on (a loss of power may leave such).
  // @param heading without line end; rows under another one are not touched
  // @throw OutputError if another run holds the file, its heading differs or it cannot be written
  RowsFile(const std::filesystem::path& path, const std::string& heading);
  ~RowsFile();
  RowsFile(const RowsFile&) = delete;
  RowsFile& operator=(const RowsFile&) = delete;

  const std::filesystem::path& path() const { return path_; }
  std::size_t rows() const { return rows_; }

  // @param whole_lines ended by '\n' each, as many as `rows`
  // @throw OutputError naming file and reason; the file then holds the rows it held before, and can go on
  void append(std::string_view whole_lines, std::size_t rows);

  // Brings the rows to the disk and gives the file its final name. It stays locked as long as this object lives.
  // @throw OutputError
  void finish(const std::filesystem::path& final_name);

 private:
  void lock();
  void open_whole_lines(const std::string& heading);
  void cut(std::size_t size);
  [[noreturn]] void fail(const char* what, int reason) const;

  std::filesystem::path path_;
  int file_ = -1;
  std::size_t size_ = 0, rows_ = 0;  // of what is whole
};

}  // namespace gapstrain::cases
