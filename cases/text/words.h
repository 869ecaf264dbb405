// Words in messages: lists, the nearest known word to a misspelt one, and texts that show all they hold.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

// "a, b or c".
std::string join_or(const std::vector<std::string>& words);

// Insertions, deletions, substitutions and swaps of neighbours that turn one word into the other, letter case
// ignored (optimal string alignment distance, after Damerau 1964, Commun. ACM 7:171).
std::size_t edit_distance(std::string_view a, std::string_view b);

// The known word at the smallest distance, when that is at most a third of the word's length (at least 1).
std::optional<std::string> nearest_word(std::string_view word, const std::vector<std::string>& known);

// ` (did you mean "thickness"?)`, or nothing.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& known);

// A line break, a tab and their like.
bool is_control(char c);

// The text as a message can show it: control characters and blanks other than the ordinary one as "\\u00a0", a
// long text cut off.
std::string visible(std::string_view text);

}  // namespace gapstrain::cases
