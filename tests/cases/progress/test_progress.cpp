#include "cases/progress/progress.h"
#include "tests/cases/as_a_user/terminal.h"

#include <unistd.h>
#include <catch2/catch.hpp>

#include <cmath>
#include <csignal>

using namespace gapstrain::cases;
using gapstrain::tests::screen_of;
using gapstrain::tests::Terminal;
using Outlet = ProgressOutlet;

namespace {

const std::vector<Stage> plan{{"meshing", 1.0}, {"factoring", 2.0}, {"drawing", 3.0}};

}  // namespace

TEST_CASE("rows are told with their rate, and time left in the unit that suits it", "[cases][progress]") {
  CHECK(rows_text(12'034, 16'384, 5'200, 1.) == "12 034 of 16 384 rows, 5 200 a second");
  CHECK(rows_text(40, 1'000, 40, 100.) == "40 of 1 000 rows, 0.4 a second");
  CHECK(rows_text(7'000, 16'384, 0, 3.) == "7 000 of 16 384 rows");
  CHECK(rows_text(900'000, 1'000'000, 500, 10.) == "900 000 of 1 000 000 rows, 50 a second");
  CHECK(time_left_text(3.2) == "about 4 s left");
  CHECK(time_left_text(0.) == "about 1 s left");
  CHECK(time_left_text(2'400.) == "about 40 min left");
  CHECK(time_left_text(1e6) == "about 278 h left");
}

TEST_CASE("time left counts down by the plan on a machine that keeps to it", "[cases][progress]") {
  TimeLeft left(plan);
  CHECK_FALSE(left.at(0.));
  left.begin("meshing the plate", 0.);
  CHECK(*left.at(0.) == Approx(6.));
  CHECK(*left.at(0.75) == Approx(5.25));
  left.begin("factoring", 1.);
  CHECK(*left.at(2.) == Approx(4.));
  left.begin("drawing \"axial\"", 3.);
  left.begin("drawing \"bending\"", 4.);  // the same stage goes on
  CHECK(*left.at(4.) == Approx(2.));
}

TEST_CASE("time left learns a machine's pace from the stages that are over and from one that is late",
          "[cases][progress]") {
  TimeLeft left(plan);
  left.begin("meshing", 0.);
  left.begin("factoring", 9.);  // nine times as long as planned
  CHECK(*left.at(9.) == Approx(5. * (9. + 1.) / (1. + 1.)));
  TimeLeft late(plan);
  late.begin("meshing", 0.);
  CHECK(*late.at(5.) > 2. * (2. + 3.));  // and not the five seconds of the plan
}

TEST_CASE("time left is a number and never negative, whatever is told", "[cases][progress]") {
  TimeLeft left(plan);
  left.begin("unheard of", 1.);
  CHECK_FALSE(left.at(1.));
  left.begin("factoring", 2.);
  left.begin("meshing", 3.);  // over before it began: no way back
  left.begin("unheard of", 4.);
  for (const double share : {0., 1e-300, 0.5, 1., 2., -1.}) {
    left.reach(share, 5.);
    for (const double now : {5., 6., 1e9}) {
      CHECK(std::isfinite(*left.at(now)));
      CHECK(*left.at(now) >= 0.);
    }
  }
}

TEST_CASE("a stage that says how far it is goes by its own rate, and leaves the pace of the others alone",
          "[cases][progress]") {
  TimeLeft left(plan);
  left.begin("meshing", 0.);
  left.begin("factoring", 1.);
  left.reach(0.1, 11.);
  CHECK(*left.at(11.) == Approx(90. + 3.));
  CHECK(*left.at(21.) == Approx(80. + 3.));
  left.begin("drawing", 101.);
  CHECK(*left.at(101.) == Approx(3.));
}

TEST_CASE("on a terminal one line is written anew, within its width, and taken away", "[cases][progress]") {
  Outlet outlet(Outlet::Kind::terminal, 20);
  CHECK(outlet.clear().empty());
  std::string written = outlet.show("a line of twenty-six signs", 0.3);
  CHECK(screen_of(written) == "a line of twenty-si");
  CHECK(screen_of(written += outlet.show("short", 0.6)) == "short");
  CHECK(screen_of(written += outlet.clear()).empty());
  CHECK(written.back() == '\r');
  CHECK(outlet.clear().empty());
}

TEST_CASE("in a log there is a line for each minute, and nothing to take away", "[cases][progress]") {
  Outlet outlet(Outlet::Kind::log, 0);
  CHECK(outlet.show("meshing", 59.9).empty());
  CHECK(outlet.show("factoring, about 3 min left", 60.1) == "after 1 min: factoring, about 3 min left\n");
  CHECK(outlet.show("factoring", 119.9).empty());
  CHECK(outlet.show("factoring", 200.) == "after 3 min: factoring\n");
  CHECK(outlet.show("factoring", 201.).empty());
  CHECK(outlet.clear().empty());
}

TEST_CASE("progress on a terminal is shown while work is under way, and gone when it is over",
          "[cases][progress]") {
  Terminal terminal;
  std::string shown;
  {
    const Terminal::AsStderr here(terminal);
    Progress progress(plan, false);
    progress.begin("meshing", "first construct");
    shown = terminal.read_until("about ");
    progress.say("warning: no pictures");
    shown += terminal.read_until("pictures\r\n");
    progress.begin("drawing");
    shown += terminal.read_until("drawing");
  }
  shown += terminal.read_rest();
  CHECK_THAT(shown, Catch::Contains("first construct: meshing, about "));
  CHECK(screen_of(shown) == "warning: no pictures\n");
}

TEST_CASE("silent progress writes nothing, and hears an interrupt all the same", "[cases][progress]") {
  Terminal terminal;
  const Terminal::AsStderr here(terminal);
  Progress progress(plan, true);
  progress.begin("meshing");
  CHECK_FALSE(progress.interrupted());
  std::raise(SIGINT);
  CHECK(progress.interrupted());
  CHECK_THROWS_AS(progress.begin("factoring"), Interrupted);
  progress.end();
  CHECK(terminal.read_rest().empty());
}
