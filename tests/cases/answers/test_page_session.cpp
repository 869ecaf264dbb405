// A page's answers against analyses of the case that they hand out for copying: the same figures from the same
// screws made ready.
#include "cases/answers/page_session.h"
#include "cases/outputs/json/findings_json.h"
#include "cases/page/make_page.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace gapstrain {

using namespace cases;  // NOLINT: this file is nothing but cases

namespace {

namespace fs = std::filesystem;

class OpenPage {
 public:
  explicit OpenPage(const std::string& example, const std::vector<std::string>& vary = {},
                    const std::string& mesh = "\n[mesh]\nrefinement = 0.5\nrim_elements = 32\n") {
    const fs::path file = scratch_.path() / "case.toml";
    tests::write_file(file, tests::read_file(fs::path(GAPSTRAIN_EXAMPLES) / example) + mesh);
    content_ = make_page(read_page_case(file.string(), vary), false, "", [](const std::string&) {});
    session_ = std::make_unique<PageSession>(content_.pack);
  }
  Json ask(const std::string& request) {
    answer_ = session_->ask(request);
    return Json::parse(answer_.text);
  }
  const PageContent& content() const { return content_; }
  const Answer& answer() const { return answer_; }

 private:
  tests::ScratchFolder scratch_;
  PageContent content_;
  std::unique_ptr<PageSession> session_;
  Answer answer_;
};

// As `gapstrain analyse` finds it, without the race.
Json analysed(const std::string& case_text, models::Extent extent = models::Extent::whole) {
  const CaseFile file = read_case_text("case.toml", case_text);
  const auto screws = file.screws_to_make_ready();
  const auto prepared = models::prepare_bodies(file.construct, screws);
  auto assessed = models::assess(models::analyse(models::assemble(prepared, file.construct, screws), {}, extent),
                                 prepared, file.construct, false);
  doubt_not_finite(file.construct, assessed);
  return findings_document(file.construct, assessed.analysis.findings, assessed.assessment,
                           {"case.toml", case_text, file.assumptions, {}});
}

// Paths of what differs: numbers by more than 1e-9 of the larger one, or of `least`.
void differences(const Json& one, const Json& other, const std::string& path, std::vector<std::string>& found) {
  constexpr double tolerance = 1e-9, least = 1e-3;
  if (path == "/case" || path == "/program") return;
  if (one.is_number() && other.is_number()) {
    const double a = one.get<double>(), b = other.get<double>();
    if (!(std::abs(a - b) <= tolerance * std::max({std::abs(a), std::abs(b), least})))
      found.push_back(path + ": " + one.dump() + " against " + other.dump());
  } else if (one.is_structured() && one.type() == other.type() && one.size() == other.size()) {
    for (const auto& [key, value] : one.items()) {
      if (one.is_object() && !other.contains(key))
        found.push_back(path + "/" + key + ": missing");
      else
        differences(value, one.is_object() ? other[key] : other[std::stoul(key)], path + "/" + key, found);
    }
  } else if (one != other) {
    found.push_back(path + ": " + one.dump().substr(0, 200) + " against " + other.dump().substr(0, 200));
  }
}

std::vector<std::string> differences(const Json& one, const Json& other) {
  std::vector<std::string> found;
  differences(one, other, "", found);
  return found;
}

double figure(const Json& answer, const std::string& name) {
  for (const auto& one : answer["figures"])
    if (one["name"] == name && !one.contains("load")) return one["value"];
  FAIL("there is no figure " << name);
  return 0.0;
}

}  // namespace

TEST_CASE("a page answers each state of a case as an analysis of it does", "[answers]") {
  struct Example {
    std::string example;
    std::vector<std::string> edits;  // one on the other
  };
  const auto [example, edits] = GENERATE(
      Example{"comminuted_radius.toml",
              {R"({"do":"as_entered"})", R"({"do":"move_screw","label":"S4","hole":3})",
               R"({"do":"change_screw","label":"S7","cortices":1})", R"({"do":"fill_gap","modulus_mpa":3})",
               R"({"do":"scale_load","load":0,"factor":1.7})", R"({"do":"put_screw","hole":4})"}},
      Example{"transverse_radius.toml",
              {R"({"do":"as_entered"})", R"({"do":"order_steps","order":[1,0,2,3,4,5]})",
               R"({"do":"remove_screw","label":"S8"})", R"({"do":"put_screw","hole":7})"}});
  CAPTURE(example);
  OpenPage page(example);
  Json changes = Json::object();
  for (const auto& edit : edits) {
    CAPTURE(edit);
    const Json answer =
        page.ask(Json{{"changes", changes}, {"edit", Json::parse(edit)}, {"detail", "whole"}}.dump());
    INFO(answer.value("error", Json()).dump());
    REQUIRE_FALSE(page.answer().is_fault);
    changes = answer["changes"];
    CHECK(differences(answer["findings"], analysed(answer["case_text"])) == std::vector<std::string>{});
    // What is quick is as exact.
    const Json quick = page.ask(Json{{"changes", changes}, {"detail", "quick"}}.dump());
    CHECK(quick["case_text"] == answer["case_text"]);
    const auto& load = quick["quick"]["loads"][0];
    CHECK(differences(load["gap"], answer["findings"]["loads"][0]["gap"]) == std::vector<std::string>{});
    CHECK(differences(quick["quick"]["stiffness"], answer["findings"]["stiffness"]) == std::vector<std::string>{});
    Json steps = answer["findings"]["compression"]["steps"];
    for (auto& step : steps) step.erase("plate_peak_mpa");  // stress comes with the margins
    CHECK(differences(quick["quick"]["steps"], steps) == std::vector<std::string>{});
  }
}

TEST_CASE("a verdict that is reached piece by piece is that of one analysis", "[answers]") {
  OpenPage page("comminuted_radius.toml", {}, "");  // its own mesh: bounds are not tried of what is not trusted
  const Json margins = page.ask(R"({"detail":"margins"})");
  CHECK(margins["findings"]["loads"][0].count("buckling_factor") == 0);
  CHECK(margins["findings"]["state"].count("screws_in_bone") == 0);
  const std::size_t loads = margins["loads"].size();
  Json answer;
  for (std::size_t left = loads; left > 0; --left) {
    answer = page.ask(R"({"detail":"verdict","piecewise":true})");
    CHECK(answer["left"] == left);
    CHECK(answer.count("findings") == 0);
  }
  answer = page.ask(R"({"detail":"verdict","piecewise":true})");
  CHECK(answer.count("left") == 0);
  CHECK(answer["findings"]["loads"][0].count("buckling_factor") == 1);
  CHECK(answer["findings"]["state"].count("screws_in_bone") == 1);
  CHECK(answer["findings"]["margins"] == margins["findings"]["margins"]);
  CHECK(differences(answer["findings"], analysed(answer["case_text"], models::Extent::verdict)) ==
        std::vector<std::string>{});
}

TEST_CASE("a page says why a state cannot be, and what it was not made ready for", "[answers]") {
  OpenPage page("comminuted_radius.toml", {"plate.standoff=2mm"});
  const auto kind = [&](const std::string& request) {
    const Json answer = page.ask(request);
    return answer.contains("error") ? answer["error"]["kind"].get<std::string>() : "none";
  };
  CHECK(kind(R"({"changes":{"fracture":{"gap":"13 mm"}}})") == "not_prepared");
  CHECK(kind(R"({"changes":{"plate":{"standoff":"2 mm"}}})") == "not_prepared");
  CHECK(kind(R"({"variant":1})") == "none");
  CHECK(kind(R"({"changes":{"plate":{"thicknes":"2 mm"}}})") == "case");
  CHECK(kind(R"({"changes":{"screw":[{"hole":1}]}})") == "case");
  CHECK(kind(R"({"edit":{"do":"put_screw","hole":1}})") == "request");
  CHECK(kind(R"({"variant":7})") == "request");
  CHECK(kind("[") == "request");
  CHECK(kind(R"({"changes":{"plate":{"material":"titanium-cp4"}}})") != "none");
  // After all that it still answers.
  CHECK(kind("{}") == "none");
}

TEST_CASE("fields of a page are those of the bodies that it draws", "[answers]") {
  OpenPage page("comminuted_radius.toml");
  const Json opened = Json::parse(page.content().opened.text);
  const auto& drawing = opened["drawing"][0];
  const Json answer = page.ask(R"({"detail":"quick","fields":[{"load":0},{"step":5}]})");
  REQUIRE_FALSE(page.answer().is_fault);
  const std::size_t vertices = drawing["thickness"]["count"];
  for (const auto& field : answer["fields"]) CHECK(field["positions"]["count"] == 3 * vertices);
  const auto& field = answer["fields"][0];
  CHECK(field["colours"]["count"] == vertices);
  CHECK(page.answer().bytes.size() == 4 * (3 + 1 + 3) * vertices);
  float largest = 0.0F;
  const auto* colours =
      reinterpret_cast<const float*>(page.answer().bytes.data() + field["colours"]["offset"].get<std::size_t>());
  for (std::size_t k = 0; k < vertices; ++k) largest = std::max(largest, colours[k]);
  CHECK(largest == Approx(field["peak_mpa"].get<double>()).epsilon(1e-6));
  // The catalogue's largest plate stress is the field's.
  const Json verdict = page.ask(R"({"detail":"verdict"})");
  CHECK(figure(verdict, "peak_stress") > 0.0);
  // Triangles name vertices of their own body.
  const auto* indices = reinterpret_cast<const std::uint32_t*>(page.content().opened.bytes.data() +
                                                               drawing["indices"]["offset"].get<std::size_t>());
  for (const auto& body : drawing["bodies"]) {
    const std::uint32_t first = body["first_vertex"], end = first + body["vertices"].get<std::uint32_t>();
    const std::size_t from = body["first_index"], count = body["indices"];
    CHECK(count > 1000);
    for (std::size_t k = from; k < from + count; ++k)
      if (indices[k] < first || indices[k] >= end) FAIL_CHECK("vertex " << indices[k] << " is none of the body's");
  }
}

}  // namespace gapstrain
