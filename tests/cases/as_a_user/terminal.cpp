#include "tests/cases/as_a_user/terminal.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <stdexcept>

namespace gapstrain::tests {

Terminal::Terminal() {
  watcher_ = posix_openpt(O_RDWR | O_NOCTTY);
  if (watcher_ < 0 || grantpt(watcher_) != 0 || unlockpt(watcher_) != 0)
    throw std::runtime_error("no terminal can be made");
  end_ = open(ptsname(watcher_), O_RDWR | O_NOCTTY);
  if (end_ < 0) throw std::runtime_error("no terminal can be opened");
}

Terminal::~Terminal() {
  close(end_);
  close(watcher_);
}

std::string Terminal::read_until(const std::string& text) {
  std::string all;
  for (char c = 0; all.find(text) == std::string::npos && read(watcher_, &c, 1) == 1;) all += c;
  return all;
}

std::string Terminal::read_rest() {
  const int flags = fcntl(watcher_, F_GETFL);
  fcntl(watcher_, F_SETFL, flags | O_NONBLOCK);
  std::string all;
  for (char c = 0; read(watcher_, &c, 1) == 1;) all += c;
  fcntl(watcher_, F_SETFL, flags);
  return all;
}

Terminal::AsStderr::AsStderr(const Terminal& terminal) : former_(dup(STDERR_FILENO)) {
  dup2(terminal.end(), STDERR_FILENO);
}

Terminal::AsStderr::~AsStderr() {
  dup2(former_, STDERR_FILENO);
  close(former_);
}

std::string screen_of(const std::string& text) {
  std::string screen, line;
  std::size_t column = 0;
  const auto end_line = [&] {
    line.erase(line.find_last_not_of(' ') + 1);
    screen += line;
    line.clear();
  };
  for (const char c : text) {
    if (c == '\r') {
      column = 0;
    } else if (c == '\n') {
      end_line();
      screen += c;
    } else {
      line.resize(std::max(line.size(), column + 1), ' ');
      line[column++] = c;
    }
  }
  end_line();
  return screen;
}

}  // namespace gapstrain::tests
