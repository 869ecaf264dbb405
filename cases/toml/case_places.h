// Where each part of a construct stands in its case file.
#pragma once

#include "cases/toml/document.h"

#include <map>
#include <string>
#include <string_view>

namespace gapstrain::cases {

class CasePlaces {
 public:
  struct Located {
    std::string key;  // as the file writes it
    Place place;
  };

  void add(const std::string& path, Place place);

  // A part of the construct that the file writes elsewhere: "plate.section[0]" as "plate", for a uniform plate.
  void alias(const std::string& construct_path, const std::string& file_path);

  // Likewise for the part as a whole and for what it holds that is written nowhere: "screw[3]" is the fourth
  // number of "screw[0].holes", whereas its size still stands at "screw[0].size".
  void stand_in(const std::string& construct_path, const std::string& file_path);

  // The place of a construct's path; of the nearest enclosing part when the path itself is not written in the
  // file.
  Located find(std::string_view path) const;

 private:
  std::map<std::string, Place, std::less<>> places_;
  std::map<std::string, std::string, std::less<>> aliases_, stand_ins_;
};

}  // namespace gapstrain::cases
