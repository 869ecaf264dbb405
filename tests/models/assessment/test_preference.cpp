// Which construct is preferred follows from what holds, what lasts, what is in hand and what is customary, in that
// order; what is not trusted never takes part.
#include "models/assessment/preference.h"
#include "models/words/preference_words.h"

#include <catch2/catch.hpp>

using namespace gapstrain::models;

namespace {

struct Field {
  std::vector<Construct> constructs;
  std::vector<AssessedConstruct> assessed;
  Comparison comparison;

  Preference preference() const { return find_preference(assessed, comparison); }
  std::vector<std::string> names() const {
    std::vector<std::string> all;
    for (const auto& construct : constructs) all.push_back(construct.name);
    return all;
  }
  std::string sentence() const { return preference_sentence(preference(), names()); }
  std::vector<std::string> reasons() const { return preference_reasons(preference(), names()); }
};

// Constructs "A", "B" and so on with one margin each.
Field field(const std::vector<double>& margins) {
  Field all;
  for (std::size_t k = 0; k < margins.size(); ++k) {
    all.constructs.emplace_back().name = std::string(1, static_cast<char>('A' + k));
    auto& assessment = all.assessed.emplace_back().assessment;
    assessment.margins = {{MarginKind::plate_yield, "trot", margins[k], ""}};
    if (margins[k] < 1.0) assessment.state.fails = {{assessment.margins.front()}};
  }
  return all;
}

RuleFinding broken_rule() { return {"a rule", Verdict::broken}; }

Check failed(const std::string& name) { return {name, 1.0, 1e-8, false, ""}; }

}  // namespace

TEST_CASE("the one that holds alone is preferred", "[models][review]") {
  const auto all = field({0.8, 1.1});
  const auto found = all.preference();
  CHECK(found.preferred == 1);
  CHECK(found.ground == PreferenceGround::holds_alone);
  REQUIRE(found.standings.size() == 2);
  CHECK(found.standings[0].construct == 0);
  CHECK(found.standings[0].failure->factor() == 0.8);
  CHECK(found.standings[1].least->factor == 1.1);
  CHECK(all.sentence() == "Prefer \"B\": it alone holds.");
  const auto reasons = all.reasons();
  REQUIRE(reasons.size() == 3);
  CHECK(reasons[0] == "\"A\" FAILS: plate, yield; it would bear 80 % of \"trot\".");
  CHECK(reasons[1] == "\"B\" holds: least margin 1.1, plate, yield.");
}

TEST_CASE("where none holds none is preferred, and each says what it would bear", "[models][review]") {
  const auto all = field({0.8, 0.5});
  CHECK_FALSE(all.preference().preferred.has_value());
  CHECK(all.sentence() == "Prefer none: none holds.");
  CHECK(all.reasons()[1] == "\"B\" FAILS: plate, yield; it would bear 50 % of \"trot\".");
}

TEST_CASE("what is not to be trusted is not preferred, however much it seems to have in hand",
          "[models][review]") {
  auto all = field({9.0, 1.2});
  all.assessed[0].assessment.state.not_trusted = {failed("energy balance")};
  auto found = all.preference();
  CHECK(found.preferred == 1);
  CHECK(all.reasons()[0] == "\"A\" is NOT TO BE TRUSTED.");
  all.assessed[1].assessment.state.not_trusted = {failed("residual")};
  found = all.preference();
  CHECK_FALSE(found.preferred.has_value());
  CHECK(found.ground == PreferenceGround::none_is_trusted);
  CHECK(all.sentence() == "Prefer none: no construct's figures are to be trusted.");
}

TEST_CASE("of those that hold the one that outlasts the other in 95 % of the samples is preferred",
          "[models][review]") {
  auto all = field({1.1, 9.0});
  RaceComparison race;
  race.first_outlasts = 0.96;
  all.comparison.pairs = {{0, 1, {race}}};
  CHECK(all.preference().preferred == 0);
  CHECK(all.preference().outlasts == 0.96);
  CHECK(all.sentence() == "Prefer \"A\": its implants outlast the others' in 96 % of the samples.");
  all.comparison.pairs[0].races[0].first_outlasts = 0.04;
  CHECK(all.preference().preferred == 1);
  all.assessed[1].assessment.margins[0].factor = 1.1;
  all.comparison.pairs[0].races[0].first_outlasts = 0.6;
  CHECK_FALSE(all.preference().preferred.has_value());
}

TEST_CASE("margins decide only beyond the model's own error, then the rules", "[models][review]") {
  CHECK(field({1.5, 2.0}).preference().preferred == 1);
  auto all = field({1.5, 1.6});
  CHECK_FALSE(all.preference().preferred.has_value());
  all.assessed[1].assessment.review = {broken_rule()};
  const auto found = all.preference();
  CHECK(found.preferred == 0);
  CHECK(found.broken_rules == std::vector<std::size_t>{0, 1});
  CHECK(all.reasons().back() == "Rules of the trade broken: \"A\" 0, \"B\" 1.");
}

TEST_CASE("no figure is called better against one that is not trusted", "[models][review]") {
  ComparedFigure figure{"stress", "MPa", false, {100.0, 300.0}, 0.1};
  CHECK(figure.best() == 0);
  figure.trusted = {true, false};
  CHECK_FALSE(figure.best().has_value());
  CHECK_FALSE(figure.is_told_apart());
  figure.values.push_back(200.0);
  figure.trusted = {true, false, true};
  CHECK(figure.best() == 0);
}
