// A terminal that a test looks at.
#pragma once

#include <string>

namespace gapstrain::tests {

class Terminal {
 public:
  Terminal();
  ~Terminal();
  Terminal(const Terminal&) = delete;
  Terminal& operator=(const Terminal&) = delete;

  // The end that a program writes to.
  int end() const { return end_; }

  // What was written since the last call, up to and with `text`: waits for it.
  std::string read_until(const std::string& text);
  // What was written since, without waiting.
  std::string read_rest();

  // Stands in for stderr while it lives.
  class AsStderr {
   public:
    explicit AsStderr(const Terminal& terminal);
    ~AsStderr();
    AsStderr(const AsStderr&) = delete;
    AsStderr& operator=(const AsStderr&) = delete;

   private:
    int former_;
  };

 private:
  int watcher_ = -1, end_ = -1;
};

// What is to be seen once a terminal got `text`: lines, the blanks at their ends left out. Knows '\r' and '\n'.
std::string screen_of(const std::string& text);

}  // namespace gapstrain::tests
