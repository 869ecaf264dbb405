// What gapstrain new proposes for twenty generic patients of whom only the body mass is known, as a table for
// reading (run the program alone to see it), and whether it says of each proposal what an analysis of the file
// finds. It is no test of how well the proposals hold.
#include "tests/cases/as_a_user/run_program.h"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>

using namespace gapstrain::tests;

namespace {

using Json = nlohmann::json;

// Text between two words; empty where there is none.
std::string between(const std::string& text, const std::string& from, const std::string& to) {
  const auto start = text.find(from);
  if (start == std::string::npos) return "";
  const auto end = text.find(to, start + from.size());
  return text.substr(start + from.size(), end - start - from.size());
}

std::string in_one_line(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  for (auto at = text.find("  "); at != std::string::npos; at = text.find("  ")) text.erase(at, 1);
  return text;
}

// "1.29 0.71": in hand at the middle of the loads and over their bands, of the plate taken by the search.
std::string in_hand(const std::string& screen) {
  const auto taken = screen.find("  TAKEN\n");
  if (taken == std::string::npos) return "none";
  const auto start = screen.rfind('\n', taken) + 1;
  constexpr std::size_t before = 49, width = 18;  // columns of the table of what was tried
  return in_one_line(screen.substr(start + before, width));
}

// "NOT TO BE TRUSTED", "FAILS" or "HOLDS".
std::string verdict_of(const Json& findings) {
  const auto fails = [](const Json& margin) { return !margin["indicative"] && margin["factor"] < 1.0; };
  if (!findings["trustworthy"]) return "NOT TO BE TRUSTED";
  const auto& margins = findings["margins"];
  return std::any_of(margins.begin(), margins.end(), fails) ? "FAILS" : "HOLDS";
}

// "screw fatigue 0.62, screw yield 1.1": of each kind of part the least, worst first.
std::string least_margins(const Json& findings, std::size_t most) {
  std::vector<std::string> kinds, texts;
  for (const auto& margin : findings["margins"]) {
    if (margin["indicative"]) continue;
    std::string part = margin["part"];
    if (const auto all = part.find(" under all loads"); all != std::string::npos) part.resize(all);
    const auto comma = part.rfind(',');  // none in "bone clear of the screws"
    const std::string kind =
        comma == std::string::npos ? part : part.substr(0, part.find(' ')) + part.substr(comma);
    if (std::find(kinds.begin(), kinds.end(), kind) != kinds.end() || kinds.size() == most) continue;
    kinds.push_back(kind);
    texts.push_back(fmt::format("{} {:.2g}", kind, margin["factor"].get<double>()));
  }
  return fmt::format("{}", fmt::join(texts, "; "));
}

std::string broken_rules(const Json& findings) {
  std::vector<std::string> broken;
  for (const auto& rule : findings["review"])
    if (rule["verdict"] == "broken") broken.push_back(rule["rule"]);
  return broken.empty() ? "none" : fmt::format("{}", fmt::join(broken, "; "));
}

}  // namespace

TEST_CASE("a proposal for a generic patient is told with what its analysis finds", "[cases][as-a-user]") {
  struct Patient {
    const char *species, *mass;
  };
  fmt::print("{:<18} {:<48} {:<16} {:<44} {:<18} {}\n", "patient", "proposed: plate; screws", "search: in hand",
             "least margins", "verdict", "rules broken");
  for (const Patient& patient :
       {Patient{"dog", "4 kg"}, {"dog", "9 kg"}, {"dog", "25 kg"}, {"cat", "4 kg"}, {"cat", "9 kg"}})
    for (const char* bone : {"humerus", "radius", "femur", "tibia"}) {
      const ScratchFolder scratch;
      const Run made = run_program(
          {"new", "--species", patient.species, "--bone", bone, "--mass", patient.mass, "--out", "case.toml"},
          scratch.path());
      const std::string name = fmt::format("{} {} {}", patient.species, patient.mass, bone);
      INFO(name << "\n" << made.out << made.err);
      REQUIRE(made.status < 2);
      run_program({"analyse", "case.toml", "--no-pictures", "--quiet", "--out", "out"}, scratch.path());
      const auto findings = Json::parse(read_file(scratch.path() / "out" / "findings.json"));
      const std::string verdict = verdict_of(findings);
      fmt::print("{:<18} {:<48} {:<16} {:<44} {:<18} {}\n", name,
                 between(in_one_line(made.out), "Plate, generic: ", ". "), in_hand(made.out),
                 least_margins(findings, 2), verdict, broken_rules(findings));
      CHECK_THAT(made.out, Catch::StartsWith(verdict));
      CHECK_THAT(in_one_line(between(read_file(scratch.path() / "case.toml"), "\n# - ", "\n#\n")),
                 Catch::StartsWith(verdict));
      CHECK((made.status == 1) == (verdict == "NOT TO BE TRUSTED"));
    }
}
