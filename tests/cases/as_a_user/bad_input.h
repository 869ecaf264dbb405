// Bad inputs out of a catalogue (tests/cases/bad_inputs/*.txt), given to the program as a user would.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::tests {

struct BadInput {
  std::string title;
  std::string command;                // for a shell; "gapstrain" is the program
  std::string text;                   // of bad.toml; empty where the command line is what is bad
  std::vector<std::string> expected;  // see expected_messages.h; of a command line only the words
};

// @param command of entries that name none
std::vector<BadInput> read_catalogue(const std::filesystem::path& file, const std::string& command);

struct Answer {
  int status = -1;
  std::string out, err;
  std::vector<std::string> left;  // files that were not there before
  double seconds = 0.0;
};

// In a fresh folder with the catalogue's sound files and bad.toml.
Answer answer(const BadInput& input);

}  // namespace gapstrain::tests
