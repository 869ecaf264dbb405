#include "cases/reader/read_case.h"

#include "cases/reader/read_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>

namespace gapstrain::cases {

namespace {

constexpr std::uintmax_t largest_file = 1
                                        << 20;  // a case is a page or two; this keeps a wrong file from being read

std::string read_text(const std::filesystem::path& path) {
  const auto fail = [&](const std::string& message) { throw CaseError(path.string(), {{Place{}, "", message}}); };
  std::error_code fault;
  if (!std::filesystem::exists(path, fault)) fail("there is no such file");
  if (!std::filesystem::is_regular_file(path, fault)) fail("this is no ordinary file; a case file is a TOML text");
  if (std::filesystem::file_size(path, fault) > largest_file)
    fail("this file is larger than 1 MB; a case file is a TOML text of a page or two");
  std::ifstream stream(path, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(stream), {}};
  if (!stream) fail("this file cannot be read; check its permissions");
  return text;
}

models::Construct read_construct(const Section& file, const std::string& name, Reading& reading) {
  models::Construct construct;
  construct.name = file.text("name").value_or(name);
  construct.body_mass = file.find<models::Mass>("body_mass");
  construct.bone = read_bone(file.section("bone"), reading);
  construct.fracture = read_fracture(file.section("fracture"));
  const Section plate = file.section("plate");
  construct.plate = read_plate(plate, construct.fracture, reading);
  construct.screws = read_screws(file, construct.plate, reading);
  if (!plate.has("standoff")) construct.plate.standoff = default_standoff(construct.screws);
  construct.temporary = read_temporary(file);
  construct.steps = read_steps(file, construct.screws, reading);
  construct.contact = read_contact(file.section("contact"));
  construct.loads = file.has("load") ? read_loads(file) : bench_loads();
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

}  // namespace

CaseFile read_case_text(const std::string& file, const std::string& text) {
  Table tree;
  try {
    tree = parse_toml(text);
  } catch (const SyntaxError& error) {
    throw CaseError(file,
                    {{error.place, "",
                      fmt::format("this is no TOML: {}; texts and quantities stand in double quotes, such as "
                                  "gap = \"2.5 mm\"",
                                  error.what())}});
  }
  Reading reading;
  const Section section(tree, reading);
  CaseFile result{
      file, text, read_construct(section, std::filesystem::path(file).stem().string(), reading), {}, {}};
  if (!reading.problems.empty()) throw CaseError(file, reading.problems);

  const auto problems = locate(models::check(result.construct), reading.places);
  for (const auto& problem : problems) (problem.warning ? result.warnings : reading.problems).push_back(problem);
  if (!reading.problems.empty())
    throw CaseError(file, reading.problems);  // a warning may just follow from an error
  result.assumptions = assumptions_of(section, result.construct);
  return result;
}

CaseFile read_case(const std::filesystem::path& path) { return read_case_text(path.string(), read_text(path)); }

}  // namespace gapstrain::cases
