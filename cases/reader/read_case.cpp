#include "cases/reader/read_case.h"

#include "cases/reader/base_case.h"
#include "cases/reader/case_keys.h"
#include "cases/reader/read_parts.h"
#include "cases/text/words.h"
#include "cases/toml/text_file.h"
#include "models/checks/screw_fault.h"
#include "models/layouts/hole_choices.h"
#include "models/layouts/ready_screws.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace gapstrain::cases {

namespace {

std::vector<models::Estimate> read_estimated(const Section& file) {
  std::vector<models::Estimate> estimated;
  const auto keys = file.texts("estimated");
  for (std::size_t k = 0; k < keys.size(); ++k) {
    const auto estimate = models::find_estimate(keys[k]);
    if (!estimate)
      file.complain("estimated", k,
                    fmt::format("found \"{}\"{}; allowed: {}", keys[k],
                                did_you_mean(keys[k], models::estimate_keys()), join_or(models::estimate_keys())));
    else if (std::find(estimated.begin(), estimated.end(), *estimate) == estimated.end())
      estimated.push_back(*estimate);
  }
  return estimated;
}

// `screws`: [screws], which is looked at once.
models::Construct read_construct(const Section& file, const Section& screws, const std::string& name,
                                 Reading& reading) {
  models::Construct construct;
  construct.name = file.text("name").value_or(name);
  construct.body_mass = file.find<models::Mass>("body_mass");
  construct.bone = read_bone(file.section("bone"), reading);
  construct.fractures = {read_fracture(file.section("fracture"), construct.bone)};
  const Section plate = file.section("plate");
  construct.plates = {read_plate(plate, only(construct.fractures), reading)};
  construct.screws = read_screws(file, screws, only(construct.plates), reading);
  construct.screw_interface = read_interface(screws).value_or(construct.screw_interface);
  construct.interface_course = read_interface_course(screws, construct.screw_interface);
  if (!plate.has("standoff")) only(construct.plates).standoff = default_standoff(construct.screws);
  construct.temporary = read_temporary(file);
  construct.steps = read_steps(file, construct.screws, reading);
  construct.contact = read_contact(file.section("contact"));
  construct.metal_law =
      file.text("metals") == "elastic" ? models::MetalLaw::elastic : models::MetalLaw::elastic_plastic;
  if (const auto second_order = file.text("second_order"); second_order == "on")
    construct.second_order = models::SecondOrderEffects::always;
  else if (second_order == "off")
    construct.second_order = models::SecondOrderEffects::never;
  else if (second_order == "large")
    construct.second_order = models::SecondOrderEffects::large;
  construct.loads = file.has("load") ? read_loads(file, only(construct.plates)) : bench_loads();
  construct.layouts = read_layouts(file.section("layouts"), construct.screws);
  construct.healing = read_healing(file.section("healing"));
  construct.estimated = read_estimated(file);
  construct.stock = read_stock(file.section("stock"));
  const Section mesh = file.section("mesh");
  construct.mesh.refinement = mesh.get<double>("refinement");
  construct.mesh.rim_elements = mesh.count("rim_elements").value_or(construct.mesh.rim_elements);
  return construct;
}

// The construct's problems at their places in the file. One written value may stand for many parts (the pitch of
// ten holes): its first problem is reported, with the number of the others.
std::vector<CaseProblem> locate(const std::vector<models::Problem>& problems, const CasePlaces& places) {
  std::vector<CaseProblem> located;
  std::vector<std::set<std::string>> messages;
  for (const auto& problem : problems) {
    const auto [key, place] = places.find(problem.where);
    const bool warning = problem.severity == models::Severity::warning;
    const auto same =
        std::find_if(located.begin(), located.end(), [&, key = key, place = place](const auto& other) {
          return other.key == key && other.place == place && other.warning == warning;
        });
    const auto index = static_cast<std::size_t>(same - located.begin());
    if (same == located.end()) {
      located.push_back({place, key, problem.message, warning});
      messages.emplace_back();
    }
    messages[index].insert(problem.message);
  }
  for (std::size_t i = 0; i < located.size(); ++i)
    if (messages[i].size() > 1) located[i].message += fmt::format(" (And {} more here.)", messages[i].size() - 1);
  return located;
}

// Each by itself in its place, and those of one hole on one mesh with the construct's own screw there.
void check_candidates(const CaseFile& file, Reading& reading) {
  const auto complain = [&](std::size_t k, const std::string& message) {
    const auto [key, place] = reading.places.find(fmt::format("candidate[{}].hole", k));
    reading.problems.push_back({place, key, message, false});
  };
  for (std::size_t k = 0; k < file.candidates.size(); ++k) {
    const models::Screw& screw = file.candidates[k];
    if (const auto fault = models::fault_of_last(file.construct, {screw})) {
      complain(k, *fault);
      continue;
    }
    const auto fits = [&](const models::Screw& other) {
      return models::fit_one_mesh(file.construct, screw, other);
    };
    if (!std::all_of(file.construct.screws.begin(), file.construct.screws.end(), fits) ||
        !std::all_of(file.candidates.begin(), file.candidates.begin() + static_cast<std::ptrdiff_t>(k), fits))
      complain(k,
               fmt::format("In hole {} two screws pass the bone just beside each other, which one mesh cannot be "
                           "made ready for; leave one of them out.",
                           screw.hole));
  }
}

}  // namespace

std::vector<models::Screw> CaseFile::screws_to_make_ready() const {
  return candidates.empty() ? models::screws_to_make_ready(construct)
                            : models::screws_to_make_ready(construct, candidates);
}

CaseFile read_case_tree(const std::string& file, const std::string& text, const Table& tree) {
  Reading reading;
  const Section section(tree, case_keys(), reading), screws = section.section("screws");
  const std::string name = std::filesystem::path(file).stem().string();
  CaseFile result{file, text, read_construct(section, screws, name, reading), {}, {}, {}};
  result.candidates = read_candidates(section, screws, only(result.construct.plates), reading);
  if (!reading.problems.empty()) throw CaseError(file, reading.problems);

  const auto problems = locate(models::check(result.construct), reading.places);
  for (const auto& problem : problems) (problem.warning ? result.warnings : reading.problems).push_back(problem);
  if (!reading.problems.empty())
    throw CaseError(file, reading.problems);  // a warning may just follow from an error
  check_candidates(result, reading);
  if (!reading.problems.empty()) throw CaseError(file, reading.problems);
  result.assumptions = assumptions_of(section, result.construct);
  if (!result.candidates.empty())
    for (auto& sentence : assumptions_of_candidates(result.construct, result.screws_to_make_ready()))
      result.assumptions.push_back(std::move(sentence));
  return result;
}

CaseFile read_case_text(const std::string& file, const std::string& text) {
  const WholeCase whole = whole_case(file, text);
  return read_case_tree(file, whole.text, whole.tree);
}

CaseFile read_case(const std::filesystem::path& path) {
  return read_case_text(path.string(), read_text(path, "case"));
}

}  // namespace gapstrain::cases
