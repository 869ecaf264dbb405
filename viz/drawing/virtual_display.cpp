#include "viz/drawing/virtual_display.h"

#include <X11/Xlib.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <signal.h>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <cstdlib>
#include <optional>
#include <string>
#include <thread>

namespace gapstrain::viz {

namespace {

constexpr int start_limit_ms = 20000;  // a loaded machine takes seconds to start a server
constexpr int end_limit_ms = 2000;

struct Pipe {
  int read_end = -1, write_end = -1;
  Pipe() {
    int ends[2];
    if (::pipe2(ends, O_CLOEXEC) != 0) throw DisplayError("cannot start a virtual display: no pipe to be had");
    read_end = ends[0];
    write_end = ends[1];
  }
  ~Pipe() {
    ::close(read_end);
    close_write_end();
  }
  void close_write_end() {
    if (write_end >= 0) ::close(write_end);
    write_end = -1;
  }
  Pipe(const Pipe&) = delete;
  Pipe& operator=(const Pipe&) = delete;
};

// VTK ends the process on a display that does not answer, so it is asked beforehand.
bool display_answers() {
  const char* name = std::getenv("DISPLAY");
  if (name == nullptr || *name == '\0') return false;
  ::Display* display = XOpenDisplay(nullptr);
  if (display == nullptr) return false;
  XCloseDisplay(display);
  return true;
}

// The number the server writes once it accepts connections. Empty when it ended or stayed silent.
std::string read_number(int descriptor) {
  std::string text;
  const auto limit = std::chrono::steady_clock::now() + std::chrono::milliseconds(start_limit_ms);
  for (;;) {
    const auto left =
        std::chrono::duration_cast<std::chrono::milliseconds>(limit - std::chrono::steady_clock::now()).count();
    if (left <= 0) return {};
    pollfd ready{descriptor, POLLIN, 0};
    const int answer = ::poll(&ready, 1, static_cast<int>(left));
    if (answer < 0 && errno == EINTR) continue;
    if (answer <= 0) return {};
    char letter = 0;
    const auto count = ::read(descriptor, &letter, 1);
    if (count < 0 && errno == EINTR) continue;
    if (count <= 0) return {};
    if (letter == '\n') return text;
    text += letter;
  }
}

// Between fork and exec only calls that are safe after a fork of a threaded process.
[[noreturn]] void become_server(pid_t parent, int number_pipe, const char* number_text) {
  // The kernel ends the server with us, however we end. Should we be gone already, nobody would tell it.
  ::prctl(PR_SET_PDEATHSIG, SIGTERM);
  if (::getppid() != parent) ::_exit(1);
  // Of its own group, so that an interrupt typed at the terminal reaches us first and pictures fail in order.
  ::setpgid(0, 0);
  sigset_t none;
  ::sigemptyset(&none);
  ::sigprocmask(SIG_SETMASK, &none, nullptr);
  ::signal(SIGTERM, SIG_DFL);
  ::fcntl(number_pipe, F_SETFD, 0);
  const int silence = ::open("/dev/null", O_RDWR);
  if (silence >= 0) {
    ::dup2(silence, STDIN_FILENO);
    ::dup2(silence, STDOUT_FILENO);
    ::dup2(silence, STDERR_FILENO);
  }
  ::execlp("Xvfb", "Xvfb", "-displayfd", number_text, "-screen", "0", "640x480x24", "-nolisten", "tcp", "-noreset",
           static_cast<char*>(nullptr));
  ::_exit(127);
}

}  // namespace

struct VirtualDisplay::Server {
  pid_t process = -1;
  std::optional<std::string> former_display;

  Server() {
    Pipe number_pipe;
    const std::string number_text = std::to_string(number_pipe.write_end);
    const pid_t parent = ::getpid();
    process = ::fork();
    if (process < 0) throw DisplayError("cannot start a virtual display: no further process may be started");
    if (process == 0) become_server(parent, number_pipe.write_end, number_text.c_str());
    number_pipe.close_write_end();
    const std::string number = read_number(number_pipe.read_end);
    if (number.empty()) {
      end();
      throw DisplayError(
          "there is no display to draw on: DISPLAY names none that answers, and the virtual display Xvfb could "
          "not be "
          "started (Debian package xvfb)");
    }
    if (const char* former = std::getenv("DISPLAY")) former_display = former;
    ::setenv("DISPLAY", fmt::format(":{}", number).c_str(), 1);
  }

  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;
  ~Server() {
    if (former_display)
      ::setenv("DISPLAY", former_display->c_str(), 1);
    else
      ::unsetenv("DISPLAY");
    end();
  }

  // Asks the server to end, which also removes its lock file, and insists when it does not.
  void end() {
    if (process <= 0) return;
    ::kill(process, SIGTERM);
    for (int waited = 0; waited < end_limit_ms; waited += 5) {
      const pid_t ended = ::waitpid(process, nullptr, WNOHANG);
      if (ended == process || (ended < 0 && errno == ECHILD)) {
        process = -1;
        return;
      }
      std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    ::kill(process, SIGKILL);
    ::waitpid(process, nullptr, 0);
    process = -1;
  }
};

VirtualDisplay::VirtualDisplay() {
  if (!display_answers()) server_ = std::make_unique<Server>();
}

VirtualDisplay::~VirtualDisplay() = default;

}  // namespace gapstrain::viz
