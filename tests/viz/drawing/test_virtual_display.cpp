#include "viz/drawing/virtual_display.h"

#include "tests/viz/picture_file.h"
#include "tests/viz/sample.h"
#include "viz/construct/pictures.h"
#include "viz/plan/review_pictures.h"

#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <thread>
#include <vector>

using namespace gapstrain;

namespace {

struct Process {
  std::string name;
  char state = '?';
  pid_t parent = 0;
};

// From /proc/PID/stat: "PID (name) state parent ..."; proc(5).
std::optional<Process> process(pid_t pid) {
  std::ifstream file("/proc/" + std::to_string(pid) + "/stat");
  const std::string text((std::istreambuf_iterator<char>(file)), {});
  const auto open = text.find('('), close = text.rfind(')');
  if (open == std::string::npos || close == std::string::npos) return std::nullopt;
  Process found;
  found.name = text.substr(open + 1, close - open - 1);
  found.state = text.at(close + 2);
  found.parent = static_cast<pid_t>(std::stol(text.substr(close + 4)));
  return found;
}

bool runs(pid_t pid) {
  const auto found = process(pid);
  return found && found->state != 'Z' && found->state != 'X';
}

std::vector<pid_t> servers_of(pid_t parent) {
  std::vector<pid_t> servers;
  for (const auto& entry : std::filesystem::directory_iterator("/proc")) {
    const std::string name = entry.path().filename();
    if (name.find_first_not_of("0123456789") != std::string::npos) continue;
    const auto pid = static_cast<pid_t>(std::stol(name));
    const auto found = process(pid);
    if (found && found->parent == parent && found->name == "Xvfb") servers.push_back(pid);
  }
  return servers;
}

// One that never ends fails as a test that never ends.
void wait_for_end(pid_t pid) {
  while (runs(pid)) std::this_thread::sleep_for(std::chrono::milliseconds(20));
}

// Sets or, when empty, clears a variable of the environment for as long as it lives.
class Variable {
 public:
  Variable(const char* name, const std::optional<std::string>& value) : name_(name) {
    if (const char* former = std::getenv(name)) former_ = former;
    set(value);
  }
  ~Variable() { set(former_); }
  Variable(const Variable&) = delete;
  Variable& operator=(const Variable&) = delete;

 private:
  void set(const std::optional<std::string>& value) {
    if (value)
      ::setenv(name_.c_str(), value->c_str(), 1);
    else
      ::unsetenv(name_.c_str());
  }
  std::string name_;
  std::optional<std::string> former_;
};

}  // namespace

TEST_CASE("without DISPLAY a display is started, and ended with its object", "[viz][display]") {
  const Variable none("DISPLAY", std::nullopt);
  const auto before = servers_of(::getpid());
  pid_t server = 0;
  {
    const viz::VirtualDisplay display;
    REQUIRE(std::getenv("DISPLAY") != nullptr);
    const auto now = servers_of(::getpid());
    REQUIRE(now.size() == before.size() + 1);
    for (const pid_t pid : now)
      if (std::find(before.begin(), before.end(), pid) == before.end()) server = pid;
  }
  CHECK_FALSE(runs(server));
  CHECK(std::getenv("DISPLAY") == nullptr);
}

TEST_CASE("a display that answers is used as it is", "[viz][display]") {
  const Variable none("DISPLAY", std::nullopt);
  const viz::VirtualDisplay first;
  const std::string name = std::getenv("DISPLAY");
  const auto before = servers_of(::getpid());
  const viz::VirtualDisplay second;
  CHECK(servers_of(::getpid()).size() == before.size());
  CHECK(std::getenv("DISPLAY") == name);
}

TEST_CASE("a DISPLAY that does not answer is set aside meanwhile", "[viz][display]") {
  const Variable dead("DISPLAY", ":63917");
  {
    const viz::VirtualDisplay display;
    CHECK(std::string(std::getenv("DISPLAY")) != ":63917");
  }
  CHECK(std::string(std::getenv("DISPLAY")) == ":63917");
}

TEST_CASE("without DISPLAY and without a virtual server there is a fault in words", "[viz][display]") {
  const Variable none("DISPLAY", std::nullopt), no_programs("PATH", "/nowhere");
  CHECK_THROWS_WITH(viz::VirtualDisplay{}, Catch::Contains("Xvfb"));
  CHECK_THROWS_AS(viz::VirtualDisplay{}, viz::DisplayError);
}

TEST_CASE("charts need no display, views of bodies do", "[viz][display]") {
  const Variable none("DISPLAY", std::nullopt), no_programs("PATH", "/nowhere");
  const tests::OwnFolder folder;
  const viz::Display display;
  viz::draw_margins(display, {"Margins", "", {{"plate", {1.7}}}, {}}, folder.path / "margins.png");
  CHECK(tests::read_picture(folder.path / "margins.png").width == 2000);
  const auto fields = tests::sample_fields();
  CHECK_THROWS_AS(viz::draw_construct(display, fields, tests::sample_load_findings(fields), folder.path / "c.png"),
                  viz::DisplayError);
  CHECK_FALSE(std::filesystem::exists(folder.path / "c.png"));
}

TEST_CASE("the server ends with a process that is killed", "[viz][display]") {
  const int signal = GENERATE(SIGKILL, SIGTERM, SIGINT);
  const Variable none("DISPLAY", std::nullopt);
  int ready[2];
  REQUIRE(::pipe(ready) == 0);
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    ::signal(SIGTERM, SIG_DFL);  // Catch2 has handlers of its own
    ::signal(SIGINT, SIG_DFL);
    const viz::VirtualDisplay display;
    const char mark = '!';
    if (::write(ready[1], &mark, 1) != 1) ::_exit(1);
    for (;;) ::pause();
  }
  char mark = 0;
  REQUIRE(::read(ready[0], &mark, 1) == 1);
  const auto servers = servers_of(child);
  CHECK(servers.size() == 1);
  ::kill(child, signal);
  ::waitpid(child, nullptr, 0);
  for (const pid_t server : servers) wait_for_end(server);
  ::close(ready[0]);
  ::close(ready[1]);
}
