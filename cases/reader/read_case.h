// A case file becomes a construct, or a list of everything that is wrong with it.
#pragma once

#include "cases/toml/problems.h"
#include "models/parts/construct.h"

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct CaseFile {
  std::string file;  // as the user wrote it
  std::string text;
  models::Construct construct;            // checked: it has no error
  std::vector<models::Screw> candidates;  // that its mesh is to be made ready for; empty: nobody asks
  std::vector<CaseProblem> warnings;      // of the construct, at their places in the file
  std::vector<std::string>
      assumptions;  // what the reader took where the case is silent and the figures depend on it

  // What `assess` makes the bodies ready for.
  std::vector<models::Screw> screws_to_make_ready() const;
};

// What follows for the construct's screws from sharing a mesh with these candidates, in sentences.
std::vector<std::string> assumptions_of_candidates(const models::Construct& construct,
                                                   const std::vector<models::Screw>& ready);

// @throw CaseError with all problems of the file; a file that is no TOML has one.
CaseFile read_case(const std::filesystem::path& path);
CaseFile read_case_text(const std::string& file, const std::string& text);
// Of a text that is parsed already, and perhaps changed since.
CaseFile read_case_tree(const std::string& file, const std::string& text, const Table& tree);

}  // namespace gapstrain::cases
