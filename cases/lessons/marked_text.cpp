#include "cases/lessons/marked_text.h"

namespace gapstrain::cases {

std::string fill_marks(std::string_view text, const std::function<std::string(const std::string& mark)>& value) {
  std::string filled;
  for (std::size_t k = 0; k < text.size(); ++k) {
    const char letter = text[k];
    if (letter != '{' && letter != '}') {
      filled += letter;
    } else if (k + 1 < text.size() && text[k + 1] == letter) {
      filled += letter;
      ++k;
    } else {
      const auto close = letter == '{' ? text.find('}', k) : std::string::npos;
      if (close == std::string::npos)
        throw MarkError("a brace stands alone; a figure is written {peak_stress}, and a brace itself {{ or }}");
      filled += value(std::string(text.substr(k + 1, close - k - 1)));
      k = close;
    }
  }
  return filled;
}

std::vector<std::string> marks_of(std::string_view text) {
  std::vector<std::string> marks;
  fill_marks(text, [&](const std::string& mark) {
    marks.push_back(mark);
    return std::string();
  });
  return marks;
}

}  // namespace gapstrain::cases
