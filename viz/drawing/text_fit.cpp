#include "viz/drawing/text_fit.h"

#include <algorithm>
#include <sstream>

namespace gapstrain::viz {

namespace {

bool starts_letter(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }  // UTF-8

double widest_word(Canvas& canvas, const std::string& text, const TextStyle& style) {
  double widest = 0.0;
  std::istringstream words(text);
  for (std::string word; words >> word;) widest = std::max(widest, canvas.text_size(word, style).x());
  return widest;
}

}  // namespace

double kept_between(double wanted, double low, double high) { return std::min(std::max(wanted, low), high); }

TextStyle fitted(Canvas& canvas, const std::string& text, TextStyle style, double width, int smallest) {
  while (style.size > smallest && canvas.text_size(text, style).x() > width) style.size -= 2;
  return style;
}

std::string shortened(Canvas& canvas, const std::string& text, const TextStyle& style, double width) {
  if (canvas.text_size(text, style).x() <= width) return text;
  std::string kept = text, marked;
  do {
    while (!kept.empty() && !starts_letter(kept.back())) kept.pop_back();
    if (!kept.empty()) kept.pop_back();
    while (!kept.empty() && kept.back() == ' ') kept.pop_back();
    marked = kept + "\u2026";
  } while (!kept.empty() && canvas.text_size(marked, style).x() > width);
  return marked;
}

std::vector<std::string> wrapped(Canvas& canvas, const std::string& text, const TextStyle& style, double width,
                                 std::size_t lines) {
  std::vector<std::string> all{""};
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    std::string& line = all.back();
    const std::string longer = line.empty() ? word : line + ' ' + word;
    if (line.empty() || all.size() == lines || canvas.text_size(longer, style).x() <= width)
      line = longer;
    else
      all.push_back(word);
  }
  for (auto& line : all) line = shortened(canvas, line, style, width);
  return all;
}

FittedLines fitted_lines(Canvas& canvas, const std::string& text, TextStyle style, double width, std::size_t lines,
                         int smallest) {
  const auto fits = [&] {
    return widest_word(canvas, text, style) <= width &&
           wrapped(canvas, text, style, width, text.size() + 1).size() <= lines;
  };
  while (style.size > smallest && !fits()) style.size -= 2;
  return {wrapped(canvas, text, style, width, lines), style};
}

void draw_lines(Canvas& canvas, const Pixel& middle, const std::vector<std::string>& lines, TextStyle style) {
  style.upright = Upright::centre;
  const double apart = 1.12 * style.size;
  double y = middle.y() + 0.5 * apart * (static_cast<double>(lines.size()) - 1.0);
  for (const auto& line : lines) {
    canvas.text({middle.x(), y}, line, style);
    y -= apart;
  }
}

}  // namespace gapstrain::viz
