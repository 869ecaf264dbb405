// Texts with marks in braces, which stand for figures: "the plate bears {peak_stress} here".
#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

// A brace without its other one, or a mark that stands for nothing: a sentence.
struct MarkError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// What stands between braces, in order. @throw MarkError
std::vector<std::string> marks_of(std::string_view text);

// Each mark replaced by what `value` gives for it; "{{" and "}}" by one brace. @throw MarkError, what `value`
// throws
std::string fill_marks(std::string_view text, const std::function<std::string(const std::string& mark)>& value);

}  // namespace gapstrain::cases
