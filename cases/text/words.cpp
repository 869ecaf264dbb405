#include "cases/text/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace gapstrain::cases {

namespace {

// Blanks of Unicode that look like the ordinary one or like nothing, in UTF-8.
constexpr std::array unseen{
    std::pair{"\u00a0", "\\u00a0"}, std::pair{"\u00ad", "\\u00ad"}, std::pair{"\u2002", "\\u2002"},
    std::pair{"\u2003", "\\u2003"}, std::pair{"\u2007", "\\u2007"}, std::pair{"\u2009", "\\u2009"},
    std::pair{"\u200a", "\\u200a"}, std::pair{"\u200b", "\\u200b"}, std::pair{"\u202f", "\\u202f"},
    std::pair{"\u2060", "\\u2060"}, std::pair{"\u3000", "\\u3000"}, std::pair{"\ufeff", "\\ufeff"}};

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

}  // namespace

std::string join_or(const std::vector<std::string>& words) {
  std::string result;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) result += i + 1 == words.size() ? " or " : ", ";
    result += words[i];
  }
  return result;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> distance(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        distance[i][j] = i + j;
        continue;
      }
      const bool same = lower(a[i - 1]) == lower(b[j - 1]);
      distance[i][j] =
          std::min({distance[i - 1][j] + 1, distance[i][j - 1] + 1, distance[i - 1][j - 1] + (same ? 0 : 1)});
      if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1]))
        distance[i][j] = std::min(distance[i][j], distance[i - 2][j - 2] + 1);
    }
  }
  return distance[a.size()][b.size()];
}

std::optional<std::string> nearest_word(std::string_view word, const std::vector<std::string>& known) {
  constexpr std::size_t longest = 64;  // no misspelt key is longer; keeps the cost bounded
  if (word.size() > longest) return std::nullopt;
  std::optional<std::string> nearest;
  std::size_t smallest = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const auto& candidate : known) {
    const std::size_t distance = edit_distance(word, candidate);
    if (distance >= smallest) continue;
    smallest = distance;
    nearest = candidate;
  }
  return nearest;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known) {
  const auto nearest = nearest_word(word, known);
  return nearest ? fmt::format(" (did you mean \"{}\"?)", *nearest) : std::string{};
}

bool is_control(char c) { return (c >= 0 && c < ' ') || c == '\x7f'; }

std::string visible(std::string_view text) {
  constexpr std::size_t longest = 80;
  std::string shown;
  while (!text.empty() && shown.size() < longest) {
    const auto blank = std::find_if(unseen.begin(), unseen.end(),
                                    [&](const auto& candidate) { return text.starts_with(candidate.first); });
    if (blank != unseen.end()) {
      shown += blank->second;
      text.remove_prefix(std::string_view(blank->first).size());
      continue;
    }
    shown += is_control(text.front()) ? fmt::format("\\u{:04x}", text.front()) : std::string(1, text.front());
    text.remove_prefix(1);
  }
  while (!text.empty() && (static_cast<unsigned char>(text.front()) & 0xc0U) == 0x80U) {  // the rest of a letter
    shown += text.front();
    text.remove_prefix(1);
  }
  return text.empty() ? shown : shown + "...";
}

}  // namespace gapstrain::cases
