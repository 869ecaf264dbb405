#include "cases/commands/new.h"

#include "cases/files/file_names.h"
#include "cases/files/output_file.h"
#include "cases/new_case/new_case_findings.h"
#include "cases/new_case/new_case_screen.h"
#include "cases/new_case/new_case_text.h"
#include "cases/new_case/new_request.h"
#include "cases/new_case/sized_draft.h"
#include "cases/progress/analysis_plan.h"
#include "cases/progress/progress.h"
#include "cases/reader/read_case.h"
#include "mesh/gmsh_session.h"
#include "models/findings/model_error.h"
#include "models/layouts/ready_screws.h"
#include "models/patient/load_doubt.h"
#include "models/patient/measured_strain.h"
#include "models/preparation/prepare_bodies.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <memory>

namespace gapstrain::cases {

namespace {

Status refuse(const std::vector<OptionProblem>& problems) {
  for (const auto& problem : problems)
    fmt::print(stderr, "gapstrain new: {}: {}\n", problem.option, problem.message);
  return Status::bad_input;
}

std::string usual_file(const NewRequest& request) {
  std::string stem = file_stem(request.name);
  if (stem.empty() || stem == "_" || stem.front() == '.') stem = "case";
  return stem + ".toml";
}

struct OwnAnalysis {
  std::vector<std::string> found;  // paragraphs
  bool is_trusted = false;
};

// That a case has no answer is for its user to know, not to stop it from being written. Bodies are made once:
// other loads act on the same.
OwnAnalysis analyse_draft(const models::Construct& construct, const models::Patient& patient) {
  try {
    const std::string trying = "trying loads within their bands";
    constexpr double of_trying = 6.0;  // s, by the loads' number some more
    Progress progress(first_day_plan(construct) + std::vector<Stage>{{trying, of_trying}}, false);
    const auto screws = models::screws_to_make_ready(construct);
    const auto prepared = models::prepare_bodies(construct, screws, progress.stages());
    const auto assessed = models::assess(prepared, construct, screws, false, progress.stages());
    const bool is_trusted = assessed.analysis.findings.trust.passed();
    models::LoadDoubts doubts;
    doubts.taken = assessed.assessment.state.standing();
    if (doubts.taken != models::Standing::not_trusted)
      doubts = models::doubt_loads(patient, construct, doubts.taken, [&](const models::Construct& other) {
        progress.begin(trying);
        return models::standing_of(prepared, other, screws);
      });
    return {draft_findings(construct, assessed.assessment, patient, doubts), is_trusted};
  } catch (const models::ModelError& error) {
    return {draft_without_findings(error.what()), false};
  } catch (const mesh::MeshError& error) {
    return {draft_without_findings(error.what()), false};
  }
}

IntactFindings find_intact(const models::Construct& construct, const models::Draft& draft) {
  const models::Aspect aspect = only(construct.plates).aspect;
  const auto under = [&](models::Activity activity) {
    return models::intact_strain(construct.bone, aspect, draft.loads.at(static_cast<std::size_t>(activity)).load);
  };
  return {under(models::Activity::walk), under(models::Activity::trot),
          models::check_intact(draft.request.patient, construct.bone, aspect, draft.loads)};
}

Status run(const NewOptions& options) {
  std::vector<OptionProblem> problems;
  const NewRequest request = read_request(options, problems);
  if (!problems.empty()) return refuse(problems);
  const std::string file = options.out.empty() ? usual_file(request) : options.out;
  refuse_unusable_file(file, options.force);
  try {
    const SizedDraft sized = size_draft(request, models::make_draft(request.draft), file);
    const models::Draft& draft = sized.draft;
    OwnAnalysis analysis =
        analyse_draft(read_case_text(file, new_case_text(request, draft)).construct, draft.request.patient);
    if (const auto alarm = sized.sizing ? sizing_alarm(*sized.sizing) : std::nullopt)
      analysis.found.insert(analysis.found.begin() + 1, *alarm);
    const std::string text = new_case_text(request, draft, analysis.found);
    const CaseFile made = read_case_text(file, text);
    write_file_whole(file, text);
    fmt::print(stderr, "{}", format_problems(file, made.warnings));
    fmt::print("{}", new_case_screen(request, sized, find_intact(made.construct, draft), analysis.found, file));
    return analysis.is_trusted ? Status::done : Status::does_not_hold;
  } catch (const models::PatientError& error) {
    return refuse({{options_of(error.subject), error.what()}});
  } catch (const CaseError& error) {  // places in a text that is not written help nobody
    for (const auto& problem : error.problems)
      fmt::print(stderr, "gapstrain new: what was given makes no usable case, {}: {}\n", problem.key,
                 problem.message);
    return Status::bad_input;
  }
}

}  // namespace

void add_new(CLI::App& program, Job& job) {
  CLI::App* command = program.add_subcommand(
      "new", "Write a case to begin from: sizes, plate, loads and healing out of what is known of a patient");
  const auto options = std::make_shared<NewOptions>();
  const auto add = [&](const char* name, std::string& value, const char* what, const char* type) {
    command->add_option(name, value, what)->type_name(type);
  };
  add("--species", options->species, "dog or cat", "SPECIES");
  add("--bone", options->bone, "humerus, radius, femur or tibia", "BONE");
  add("--mass", options->mass, "Body mass, such as \"18 kg\"", "MASS");
  add("--side", options->side, "left or right", "SIDE");
  add("--age", options->age, "Such as \"7 months\"; sets the time to union", "AGE");
  add("--name", options->name, "Of the case", "TEXT");
  add("--length", options->length, "Of the whole bone, joint to joint", "LENGTH");
  add("--width-mediolateral", options->width_mediolateral, "Outer, mid-shaft, on the craniocaudal view", "LENGTH");
  add("--width-craniocaudal", options->width_craniocaudal, "Outer, mid-shaft, on the mediolateral view", "LENGTH");
  add("--cortex", options->cortex, "Wall, mid-shaft", "LENGTH");
  command
      ->add_option("--station", options->stations,
                   "A section in place of the three above, as often as wanted: place from the proximal end, both "
                   "widths, cortex; such as \"75 mm, 13 mm, 9 mm, 2 mm\"")
      ->type_name("SIZES")
      ->allow_extra_args(false);
  add("--marker", options->marker, "True length of a marker on the radiograph", "LENGTH");
  add("--marker-seen", options->marker_seen, "Its length in the image: all lengths given are corrected by it",
      "LENGTH");
  add("--fracture-position", options->fracture_position, "From the proximal end; default: the middle", "LENGTH");
  add("--gap", options->gap,
      "Wanted between the fragments, as it is; of a comminuted fracture the zone's length, corrected by the "
      "marker",
      "LENGTH");
  add("--obliquity", options->obliquity, "Of the cut against the cross-section; default: 0 deg", "ANGLE");
  add("--pattern", options->pattern, "simple or comminuted; default: simple", "PATTERN");
  add("--treatment", options->treatment, "bridging or compression; default: bridging", "TREATMENT");
  add("--out", options->out, "File to write; default: the case's name, here", "FILE");
  command->add_flag("--force", options->force, "Replace a file that is there already");
  command->footer(
      "To bridge a fracture, generic plates and choices of screws are tried from the smallest on.\n"
      "What is not measured is estimated from the body mass and marked so, with what to measure.\n"
      "The case is analysed before it is written; what that found comes first, on the screen and in the file.\n"
      "Exit status: 0 written, also when the construct fails under its loads; 1 written, but the model does not "
      "hold\n"
      "or a check failed; 2 bad input, and nothing written; 3 interrupted.");
  command->callback([&job, options] { job = [options] { return run(*options); }; });
}

}  // namespace gapstrain::cases
