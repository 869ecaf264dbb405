#include "cases/page/still_pictures.h"

#include "cases/files/output_target.h"
#include "cases/outputs/pictures/picture_frame.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/sentences/worst_things.h"
#include "viz/construct/pictures.h"
#include "viz/drawing/display.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr int width_px = 1200;  // of a picture in a page: as much as a screen shows at a time
constexpr int scene_px = 900;   // of one of many

class TemporaryFolder {
 public:
  TemporaryFolder() {
    std::string name = (fs::temp_directory_path() / "gapstrain-page-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr)
      throw OutputError("no folder can be made for pictures; is the disk full?");
    path_ = name;
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

std::string bytes_of(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

}  // namespace

void draw_still_pictures(PageContent& content, const SolvedState& state, const std::vector<std::string>& alarms) {
  const models::Findings& findings = state.found().analysis.findings;
  const models::Fields& fields = state.found().analysis.fields;
  if (findings.loads.empty()) return;
  const TemporaryFolder folder;
  PictureStyle style;
  style.width_px = width_px;
  const viz::Display display(picture_frame(style, state.construct().name, state.file().file, alarms));
  const auto add = [&](const std::string& id, const std::string& title, const auto& draw) {
    const fs::path file = display.file(folder.path() / id);
    draw(file);
    content.pictures.push_back({id, title, bytes_of(file)});
  };
  const auto hottest = static_cast<std::size_t>(&hottest_load(findings) - findings.loads.data());
  const auto& load = findings.loads[hottest];
  try {
    add("gap-strain", "Strain round the fracture's edge under each load",
        [&](const fs::path& file) { viz::draw_gap_strain(display, findings, file); });
    add("along-plate", fmt::format("Force, moment and stress along the plate under \"{}\"", load.load),
        [&](const fs::path& file) { viz::draw_along_plate(display, load, file); });
    if (hottest < fields.loads.size())
      add("construct", fmt::format("The construct under \"{}\", deformed, coloured by stress", load.load),
          [&](const fs::path& file) { viz::draw_construct(display, fields.loads[hottest], load, file); });
  } catch (const viz::DisplayError& error) {
    content.pictures_missing = error.what();
  }
}

void draw_scene_picture(PageContent& content, std::vector<StillPicture>& pictures, const SolvedState& state,
                        std::size_t load, const std::string& id, const std::string& of) {
  const auto& findings = state.found().analysis.findings;
  if (load >= findings.loads.size()) return;
  // A verdict has no fields: the same state once more, on bodies that outlive it.
  SolvedState drawn(state.file(), {std::shared_ptr<void>(), &state.prepared()});
  const TemporaryFolder folder;
  PictureStyle style;
  style.width_px = scene_px;
  const auto alarms = short_alarms_of(state.found().assessment.state);
  const viz::Display display(picture_frame(style, state.construct().name, state.file().file, alarms));
  try {
    const fs::path file = display.file(folder.path() / id);
    viz::draw_construct(display, drawn.load_fields(load), findings.loads[load], file);
    pictures.push_back({id,
                        fmt::format("{}: the construct under \"{}\", deformed, coloured by stress", of,
                                    findings.loads[load].load),
                        bytes_of(file)});
  } catch (const viz::DisplayError& error) {
    content.pictures_missing = error.what();
  }
}

}  // namespace gapstrain::cases
