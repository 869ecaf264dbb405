#include "cases/outputs/write_outputs.h"

#include "cases/files/file_names.h"
#include "cases/outputs/assessment_files.h"
#include "cases/outputs/json/findings_json.h"
#include "cases/outputs/pictures/picture_frame.h"
#include "cases/outputs/pictures/race_charts.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/tables/csv_tables.h"
#include "cases/version.h"
#include "models/margins/part_name.h"
#include "models/parts/words.h"
#include "viz/construct/pictures.h"
#include "viz/construct/write_fields.h"
#include "viz/drawing/display.h"
#include "viz/plan/review_pictures.h"

#include <algorithm>
#include <cassert>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

// Steps that only lock screws, with nothing pressed or held, make no picture worth looking at.
bool steps_tell(const models::CompressionFindings& compression) {
  return std::any_of(compression.steps.begin(), compression.steps.end(),
                     [](const auto& step) { return step.face.force.value() > 0.0 || !step.held.empty(); });
}

bool faces_touch(const models::Findings& findings) {
  const auto touches = [](const auto& state) { return state.face.touching > 0.0; };
  return std::any_of(findings.compression.steps.begin(), findings.compression.steps.end(), touches) ||
         std::any_of(findings.loads.begin(), findings.loads.end(), touches);
}

// The page to print comes as PDF in any case.
void draw_plans(const viz::Display& display, const models::Construct& construct, const models::Plan& plan,
                const CaseOrigin& origin, const fs::path& folder) {
  const viz::PlanFacts facts{{"Bone", plan.bone},
                             {"Side", plan.side ? models::name_of(*plan.side) : "not entered"},
                             {"Date", origin.date},
                             {"Program", program_and_version()}};
  const fs::path picture = display.file(folder / "plan"), page = folder / "plan.pdf";
  viz::draw_plan(display, construct, plan, facts, picture);
  if (picture != page) viz::draw_plan(display, construct, plan, facts, page);
}

void draw_assessment(const viz::Display& display, const models::Construct& construct,
                     const models::Assessment& assessment, const CaseOrigin& origin, const fs::path& folder) {
  draw_plans(display, construct, assessment.plan, origin, folder);
  viz::MarginChart margins{
      "Margins", "strength over demand, the worst part of each kind under its worst load", {}, {}};
  for (const auto& margin : models::worst_of_each_kind(assessment.margins))
    margins.rows.push_back({models::part_name(margin), {margin.factor}, margin.indicative});
  if (!margins.rows.empty()) viz::draw_margins(display, margins, display.file(folder / "margins"));
  if (assessment.race) draw_race(display, *assessment.race, *assessment.history, folder);
}

// Views of bodies last: only they need a display.
void draw_pictures(const viz::Display& display, const models::Construct& construct,
                   const models::AssessedConstruct& assessed, const CaseOrigin& origin, const fs::path& folder,
                   const models::Progress& progress) {
  if (progress) progress("drawing");
  const auto file = [&](const std::string& stem) { return display.file(folder / stem); };
  const models::Analysis& analysis = assessed.analysis;
  draw_assessment(display, construct, assessed.assessment, origin, folder);
  const auto& all = analysis.findings;
  const auto& compression = all.compression;
  viz::draw_gap_strain(display, all, file("gap_strain"));
  if (faces_touch(all)) viz::draw_face_pressure(display, all, file("face_pressure"));
  if (compression.prebend) viz::draw_prebend(display, *compression.prebend, file("prebend"));
  for (std::size_t i = 0; i < all.loads.size(); ++i)
    viz::draw_along_plate(display, all.loads[i], file(load_stem(i, all.loads[i].load) + "_along_plate"));
  if (steps_tell(compression) && compression.steps.size() == analysis.fields.steps.size())
    viz::draw_steps(display, compression, analysis.fields.steps, file("steps"));
  for (std::size_t i = 0; i < analysis.fields.loads.size(); ++i) {
    const auto& fields = analysis.fields.loads[i];
    if (progress) progress("drawing \"" + fields.load + "\"");
    const std::string stem = load_stem(i, fields.load);
    viz::draw_construct(display, fields, all.loads[i], file(stem + "_construct"));
    viz::draw_hottest_hole(display, fields, all.loads[i], file(stem + "_hottest_hole"));
  }
}

// Each row says how far it may be trusted: tables travel alone.
void write_tables(OutputFolder& folder, const models::AssessedConstruct& assessed) {
  const auto& findings = assessed.analysis.findings;
  const auto& assessment = assessed.assessment;
  const auto write = [&](const char* name, const std::string& table) {
    folder.write(name, with_result_column(table, assessment.state));
  };
  write("gap_strain.csv", gap_strain_csv(findings));
  write("steps.csv", steps_csv(findings));
  write("face.csv", face_csv(findings));
  if (findings.compression.prebend) write("prebend.csv", prebend_csv(*findings.compression.prebend));
  write("plate.csv", plate_csv(findings));
  write("screws.csv", screws_csv(findings));
  write("screw_shafts.csv", screw_shafts_csv(findings));
  write("working_length.csv", working_length_csv(findings));
}

fs::path make_folder(OutputFolder& folder, const char* name) {
  fs::path path = folder.workspace() / name;
  std::error_code fault;
  fs::create_directory(path, fault);
  if (fault) throw OutputError("the folder " + path.string() + " cannot be made: " + fault.message());
  return path;
}

}  // namespace

WrittenOutputs write_outputs(OutputFolder& folder, const models::Construct& construct,
                             const models::AssessedConstruct& assessed, const CaseOrigin& origin,
                             const std::optional<PictureStyle>& pictures, const models::Progress& progress) {
  const auto& [analysis, assessment] = assessed;
  const auto& findings = analysis.findings;
  assert(findings.loads.size() == analysis.fields.loads.size());
  if (progress) progress("writing files");
  folder.write("case.toml", origin.text);
  write_tables(folder, assessed);
  write_assessment(folder, "", assessment, construct, origin);
  const viz::PictureFrame frame = picture_frame(pictures.value_or(PictureStyle{}), construct.name, origin.file,
                                                short_alarms_of(assessment.state));
  const fs::path fields = make_folder(folder, "fields");
  for (std::size_t i = 0; i < analysis.fields.loads.size(); ++i)
    viz::write_fields(analysis.fields.loads[i], viz::metadata_of(frame), fields,
                      load_stem(i, analysis.fields.loads[i].load));

  WrittenOutputs written;
  if (pictures) {
    try {
      draw_pictures(viz::Display(frame), construct, assessed, origin, make_folder(folder, "pictures"), progress);
    } catch (const viz::DisplayError& error) {
      written.pictures_missing = error.what();
    }
  }
  auto files = folder.files();
  files.emplace_back("findings.json");
  std::sort(files.begin(), files.end());
  folder.write("findings.json", findings_json(construct, findings, assessment, origin, files));
  return written;
}

}  // namespace gapstrain::cases
