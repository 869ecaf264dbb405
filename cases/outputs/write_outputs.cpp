#include "cases/outputs/write_outputs.h"

#include "cases/outputs/csv_tables.h"
#include "cases/outputs/file_names.h"
#include "cases/outputs/findings_json.h"
#include "viz/display.h"
#include "viz/pictures.h"
#include "viz/write_fields.h"

#include <algorithm>
#include <cassert>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

void draw_pictures(const models::Analysis& analysis, const fs::path& folder, const models::Progress& progress) {
  const viz::Display display;
  viz::draw_gap_strain(display, analysis.findings, folder / "gap_strain.png");
  for (std::size_t i = 0; i < analysis.fields.loads.size(); ++i) {
    const auto& fields = analysis.fields.loads[i];
    const auto& findings = analysis.findings.loads[i];
    if (progress) progress("drawing \"" + fields.load + "\"");
    const std::string stem = load_stem(i, fields.load);
    viz::draw_construct(display, fields, findings, folder / (stem + "_construct.png"));
    viz::draw_hottest_hole(display, fields, findings, folder / (stem + "_hottest_hole.png"));
    viz::draw_along_plate(display, findings, folder / (stem + "_along_plate.png"));
  }
}

fs::path make_folder(OutputFolder& folder, const char* name) {
  const fs::path path = folder.workspace() / name;
  std::error_code fault;
  fs::create_directory(path, fault);
  if (fault) throw OutputError("the folder " + path.string() + " cannot be made: " + fault.message());
  return path;
}

}  // namespace

WrittenOutputs write_outputs(OutputFolder& folder, const models::Analysis& analysis, const CaseOrigin& origin,
                             bool with_pictures, const models::Progress& progress) {
  const auto& findings = analysis.findings;
  assert(findings.loads.size() == analysis.fields.loads.size());
  if (progress) progress("writing files");
  folder.write("case.toml", origin.text);
  folder.write("gap_strain.csv", gap_strain_csv(findings));
  folder.write("plate.csv", plate_csv(findings));
  folder.write("screws.csv", screws_csv(findings));
  folder.write("screw_shafts.csv", screw_shafts_csv(findings));
  folder.write("working_length.csv", working_length_csv(findings));
  const fs::path fields = make_folder(folder, "fields");
  for (std::size_t i = 0; i < analysis.fields.loads.size(); ++i)
    viz::write_fields(analysis.fields.loads[i], fields, load_stem(i, analysis.fields.loads[i].load));

  WrittenOutputs written;
  if (with_pictures) {
    try {
      draw_pictures(analysis, make_folder(folder, "pictures"), progress);
    } catch (const viz::DisplayError& error) {
      written.pictures_missing = error.what();
    }
  }
  auto files = folder.files();
  files.emplace_back("findings.json");
  std::sort(files.begin(), files.end());
  auto json = make_findings_json(findings, origin, files);
  folder.write("findings.json", json.text);
  written.not_finite = std::move(json.not_finite);
  return written;
}

}  // namespace gapstrain::cases
