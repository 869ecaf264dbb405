// Collects what is wrong with a construct, in sentences.
#pragma once

#include "models/parts/construct.h"

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

class ProblemList {
 public:
  void error(std::string where, std::string message);
  void warning(std::string where, std::string message);

  // Each reports an error when its condition is not met and says whether it is. `found` is put into the sentence
  // with its unit, `subject` begins it: "The bone's length is -3 mm; ...".
  bool positive(const std::string& where, std::string_view subject, Length found);
  bool positive(const std::string& where, std::string_view subject, Stress found);
  bool positive(const std::string& where, std::string_view subject, Force found);
  bool positive(const std::string& where, std::string_view subject, Moment found);
  bool not_negative(const std::string& where, std::string_view subject, Length found);
  bool finite(const std::string& where, std::string_view subject, Length found);
  bool finite(const std::string& where, std::string_view subject, Angle found);
  bool finite(const std::string& where, std::string_view subject, Force found);
  bool finite(const std::string& where, std::string_view subject, Moment found);
  bool within(const std::string& where, std::string_view subject, Length found, Length from, Length to);

  std::size_t error_count() const { return error_count_; }
  std::vector<Problem> errors_first() const;

 private:
  std::vector<Problem> problems_;
  std::size_t error_count_ = 0;
};

// A quantity as text with its unit, to four digits; angles in degrees.
std::string text(Length value);
std::string text(Stress value);
std::string text(Angle value);
std::string text(Force value);
std::string text(Moment value);

}  // namespace gapstrain::models
