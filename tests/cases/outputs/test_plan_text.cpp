#include "cases/cautions.h"
#include "cases/outputs/json/plan_json.h"
#include "cases/outputs/json/review_json.h"
#include "cases/outputs/sentences/plan_text.h"
#include "cases/outputs/sentences/review_text.h"
#include "cases/text/columns.h"
#include "models/words/rule_words.h"
#include "tests/cases/as_a_user/texts.h"
#include "tests/models/constructs.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gapstrain;
using namespace gapstrain::cases;

using gapstrain::tests::lines_of;

namespace {

bool holds(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

// Line breaks and indents as blanks.
std::string flat(const std::string& text) {
  std::string result;
  for (const char c : text)
    if (c != '\n' && c != ' ')
      result += c;
    else if (!result.empty() && result.back() != ' ')
      result += ' ';
  return result;
}

void check_page(const std::string& text) {
  const auto lines = lines_of(text);
  CHECK(lines.size() <= page_lines);
  for (const auto& line : lines) CHECK(columns(line) <= page_columns);
  for (const auto caution : cautions) CHECK(holds(flat(text), std::string(caution)));
}

}  // namespace

TEST_CASE("a plan is one page that names case, plate, every screw, the order and the cautions",
          "[cases][outputs]") {
  const auto plan = models::make_plan(tests::plated_tube());
  const std::string text = plan_text(plan, {}, "Rex, left radius", {"rex.toml", "", {}, "2026-01-31"});
  check_page(text);
  CHECK(holds(text, "Rex, left radius"));
  CHECK(holds(text, "112 mm long, 10 round holes"));
  for (const auto& screw : plan.screws) CHECK(holds(text, "\n" + screw.label + " "));
  CHECK(holds(text, "18.0    20"));  // measured, to order
  CHECK(holds(text, "6. lock S10"));
}

TEST_CASE("a plan says what the analysis said, and orders nothing by an estimate", "[cases][outputs]") {
  auto construct = tests::plated_tube();
  construct.bone.side = models::Side::left;
  construct.estimated = {models::Estimate::cortex, models::Estimate::fracture_position};
  models::ResultState state;
  state.not_trusted = {models::Check{"force balance", 0.02, 1e-8, false, "it is in balance"}};
  models::Margin margin{models::MarginKind::screw_fatigue, "trot", 0.62, ""};
  margin.label = "S4";
  state.fails = {{margin, {models::FailureTime::Kind::in_race, 1.4, 4.2}}};
  state.estimated = construct.estimated;
  const auto plan = models::make_plan(construct);
  const std::string text = plan_text(plan, state, "Rex", {"rex.toml", "", {}, "2026-01-31"});
  check_page(text);
  CHECK(
      flat(text).starts_with("NOT TO BE TRUSTED: force balance: 0.02, limit 1e-08; it should hold that it is in "
                             "balance. FAILS: screw S4, "
                             "fatigue"));
  CHECK(holds(flat(text), "ESTIMATE, not measured: cortex, place of the fracture. Order nothing by them."));
  CHECK(holds(text, "Side: left."));
  CHECK(holds(text, "2026-01-31"));
  CHECK(holds(text, "mm from the bone's proximal end (ESTIMATE)"));
  CHECK(holds(text, "ESTIMATE ORDER"));
  for (const auto& screw : plan.screws) CHECK_FALSE(screw.length.has_value());
  CHECK(holds(text, "~18.0     -"));
  CHECK_FALSE(holds(text, " 20 "));
  CHECK_FALSE(plan_json(plan)["screws"][0].contains("length_mm"));
  CHECK(plan_json(plan)["side"] == "left");
}

TEST_CASE("a plan with many screws and notes is still one page", "[cases][outputs]") {
  tests::TubeSizes sizes;
  sizes.holes_a_side = 12;
  sizes.pitch = 6.0;
  sizes.plate_length = 160.0;
  sizes.length = 200.0;
  sizes.screws = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11};
  sizes.tilt = 3.0;
  const auto plan = models::make_plan(tests::plated_tube(sizes));
  const std::string text = plan_text(plan, {}, std::string(300, 'x'), {std::string(300, 'y'), "", {}, ""});
  check_page(text);
  for (const auto& screw : plan.screws) CHECK(holds(text, "\n" + screw.label + " "));
  CHECK(holds(text, "more notes in findings.json"));
}

TEST_CASE("a review begins with the broken rules and fits the screen", "[cases][outputs]") {
  const auto findings = models::review(tests::plated_tube());  // ten holes, six screws, a gap of 3 mm
  const std::string text = review_text(findings);
  for (const auto& line : lines_of(text)) CHECK(columns(line) <= screen_columns);
  CHECK(text.starts_with("BROKEN"));
  CHECK(holds(text, "Choose a plate with at least 12 holes"));
  for (const auto& finding : findings) CHECK(holds(flat(text), finding.rule));
  CHECK(review_sentence(findings).starts_with(
      "2 of 14 rules of the trade are broken: gap of a bridged simple fracture; plate screw density."));
}

TEST_CASE("review and plan go into JSON whole", "[cases][outputs]") {
  const auto construct = tests::plated_tube();
  const auto findings = models::review(construct);
  const Json review = review_json(findings);
  REQUIRE(review.size() == findings.size());
  CHECK(review[0]["verdict"] == "broken");
  CHECK(review[0]["advice"] == advice_text(findings[0]));
  // The gap of 3 mm that is bridged, as a number beside its bound.
  CHECK(review[0]["value"] == findings[0].value);
  CHECK(review[0]["value"].get<double>() == Approx(3.0));
  CHECK(review[0]["most"] == 2.0);
  CHECK(review[0]["unit"] == "mm");
  CHECK_FALSE(review[0].contains("least"));
  CHECK_FALSE(review.back().contains("advice"));

  const auto plan = models::make_plan(construct);
  const Json json = plan_json(plan);
  CHECK(json["plate"]["length_mm"] == 112.0);
  CHECK(json["plate"]["aspect"] == "cranial");
  CHECK(json["screws"].size() == 6);
  CHECK(json["screws"][0]["length_mm"] == 20.0);
  CHECK(json["bends"].size() == 11);
  CHECK_FALSE(json.contains("prebend"));
  CHECK(json["steps"].size() == 6);
}
