// Studies as a user starts, ends and goes on with them: on coarse meshes, since figures are proved elsewhere.
#pragma once

#include "tests/cases/as_a_user/run_program.h"
#include "tests/cases/as_a_user/texts.h"

#include <sys/types.h>

#include <cstddef>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::tests {

// The text of a case that is solved within a second: a round tube with a gap at its middle, a plate of so many
// round holes 11 mm apart, and screws in these of them.
std::string coarse_tube(int plate_holes, const std::string& holes_with_screw);

// The text with its only piece `from` replaced. @pre it is there once
std::string replaced(std::string text, const std::string& from, const std::string& to);

// The rows of a study are written up to so many bytes, and no further before the file `release` is there.
struct RowHold {
  std::size_t bytes = 0;
  std::filesystem::path release;
};

// The real program beside the test, in the given working directory.
class Started {
 public:
  Started(const std::vector<std::string>& arguments, const std::filesystem::path& directory,
          const std::optional<RowHold>& hold = {});
  // Ends what still runs.
  ~Started();
  Started(const Started&) = delete;
  Started& operator=(const Started&) = delete;

  void send(int signal) const;
  bool is_running();
  // Until the rows in the folder `out` are as far as they are let. @returns false if the program ended before
  bool wait_for_hold(const std::filesystem::path& out);
  // Its end; status -1 when a signal ended it.
  Run wait();

 private:
  ScratchFolder streams_;
  std::size_t held_ = 0;
  pid_t process_ = -1;
  int code_ = 0;
  bool has_ended_ = false;
};

// Ended after ten minutes: two mpiruns have been seen to keep each other from starting.
Run run_under_mpirun(int ranks, const std::vector<std::string>& arguments, const std::filesystem::path& directory);

// Starts the study twelve times and kills it each time after a byte of its rows chosen at random. Requires each
// time that the kill hit, and that what is left of the rows is a beginning of `expected`.
void kill_twelve_times(const std::vector<std::string>& arguments, const std::filesystem::path& directory,
                       const std::filesystem::path& out, const std::string& expected);

// Checks all figures of a row of rows.csv that findings.json of an analysis has as well, to 1e-8.
void check_row_is_analysis(const std::filesystem::path& rows, std::size_t row,
                           const std::filesystem::path& findings);

std::vector<double> column(const std::filesystem::path& table, const std::string& name);

// Every file below a folder, with its bytes.
std::map<std::string, std::string> contents(const std::filesystem::path& folder);

}  // namespace gapstrain::tests
