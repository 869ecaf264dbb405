#include "cases/toml/toml_limits.h"

#include "cases/text/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

// The deepest that a file of ours needs: three parts ("bone.cortical_bone.source") and a list in a list.
constexpr int most_key_parts = 16, most_brackets = 16;
constexpr int most_keys = 10'000;  // of a case with everything that its lists may hold: some 4000

// Reads the text as far as brackets, points and texts in quotes go.
class Scan {
 public:
  explicit Scan(std::string_view text) : text_(text) {}

  std::optional<LimitFault> run() {
    while (at_ < text_.size() && !fault_) step();
    return fault_;
  }

 private:
  void step() {
    const char c = text_[at_];
    if (c == '#') return skip_to(std::min(text_.find('\n', at_), text_.size()));
    if (c == '"' || c == '\'') return skip_text(c);
    if (c == '\n' && brackets_ == 0) parts_ = 1;
    if (c == '.' && ++parts_ > most_key_parts)
      report(
          fmt::format("found a key of {} parts; allowed are {}, with a point between each two. No key of this "
                      "program has more than three",
                      parts_in_all(), most_key_parts));
    if (c == '[' && brackets_ == 0) count_key();
    if (c == '=') count_key();
    if (c == '[' || c == '{') ++brackets_;
    if (c == ']' || c == '}') brackets_ = std::max(0, brackets_ - 1);
    if (brackets_ > most_brackets)
      report(
          fmt::format("found brackets in brackets, more than {} deep; allowed are {}. No value of this program "
                      "needs more than two",
                      most_brackets, most_brackets));
    if (std::string_view("=,[]{}").find(c) != std::string_view::npos) parts_ = 1;
    skip_to(at_ + 1);
  }

  void count_key() {
    if (++keys_ > most_keys)
      report(fmt::format("found more than {} keys and tables; allowed are {}. Is this the right file?", most_keys,
                         most_keys));
  }

  // Of the key at hand, as if no part were in quotes.
  std::ptrdiff_t parts_in_all() const {
    const auto line = text_.substr(at_, std::min(text_.find_first_of("=]\n", at_), text_.size()) - at_);
    return most_key_parts + std::count(line.begin(), line.end(), '.');
  }

  // A text that does not end is for the parser to report: nothing behind it is read.
  void skip_text(char quote) {
    const std::string three(3, quote);
    const bool is_long = text_.substr(at_).starts_with(three);
    const std::string_view end = is_long ? std::string_view(three) : std::string_view(three).substr(0, 1);
    std::size_t next = at_ + end.size();
    while (next < text_.size() && !text_.substr(next).starts_with(end)) {
      if (text_[next] == '\n' && !is_long) return skip_to(text_.size());
      next += quote == '"' && text_[next] == '\\' ? 2 : 1;
    }
    skip_to(std::min(next + end.size(), text_.size()));
  }

  void skip_to(std::size_t next) {
    for (; at_ < next; ++at_)
      if (text_[at_] == '\n') {
        ++place_.line;
        line_ = at_ + 1;
      }
    place_.column = static_cast<int>(at_ - line_) + 1;
  }

  void report(const std::string& message) {
    const auto line = text_.substr(line_, std::min(text_.find('\n', line_), text_.size()) - line_);
    constexpr std::size_t enough = 24;
    std::string key(line.substr(0, std::min(line.find_first_of(" =[]{}"), enough)));
    fault_ = {place_, key.empty() || key.size() < enough ? key : key + "...", message};
  }

  std::string_view text_;
  std::size_t at_ = 0, line_ = 0;  // line_: where it begins
  Place place_;
  int parts_ = 1, brackets_ = 0, keys_ = 0;
  std::optional<LimitFault> fault_;
};

}  // namespace

std::optional<LimitFault> find_limit_fault(std::string_view text) { return Scan(text).run(); }

}  // namespace gapstrain::cases
