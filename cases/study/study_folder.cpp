#include "cases/study/study_folder.h"

#include "cases/files/leftovers.h"
#include "viz/drawing/replace_file.h"

#include <fmt/format.h>

#include <cassert>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr const char* part_name = "rows.csv.part";

void refuse_other(const fs::path& folder, const Study& found, const Study& wanted) {
  if (found == wanted) return;
  Study same_part = found;
  same_part.part = wanted.part;
  if (same_part == wanted)
    throw OutputError(fmt::format("the folder {} holds part {} of this study, not part {}; choose another --out",
                                  folder.string(), part_text(found.part), part_text(wanted.part)));
  throw OutputError(
      fmt::format("the folder {} holds another study ({}, {} rows, from other inputs or another "
                  "version); choose another --out, or remove it",
                  folder.string(), found.command, found.rows));
}

// What a study leaves that was ended before its run.json was there.
bool may_be_begun(const fs::path& file) {
  const std::string name = file.filename().string();
  return name == part_name || name.starts_with(std::string(run_file_name) + '.');
}

void refuse_foreign(const fs::path& folder, const Study& study) {
  if (const auto found = read_run(folder)) return refuse_other(folder, *found, study);
  for (const auto& entry : fs::directory_iterator(folder))
    if (!may_be_begun(entry.path()))
      throw OutputError(fmt::format("the folder {} holds {}, and no study of gapstrain; choose another --out",
                                    folder.string(), entry.path().filename().string()));
}

}  // namespace

StudyFolder::StudyFolder(const fs::path& target, const Study& study, const std::string& heading) try
    : target_(usable_target(target)), range_(rows_of_part(study.part, study.rows)) {
  fs::create_directories(target_);
  refuse_foreign(target_, study);
  open_file(heading);
  // From here on no other run changes the folder.
  clear_leftovers_in(target_);
  if (const auto found = read_run(target_)) {
    refuse_other(target_, *found, study);
  } else if (file_->rows() > 0) {
    throw OutputError(fmt::format(
        "the folder {} holds rows of an unknown study; choose another --out, or remove it", target_.string()));
  } else {
    write(run_file_name, run_text(study));
  }
  const std::size_t wanted = range_.end - range_.first;
  if (file_->rows() > wanted || (complete() && file_->rows() < wanted))
    throw OutputError(fmt::format("{} holds {} rows where {} belong; choose another --out, or remove its folder",
                                  file_->path().string(), file_->rows(), wanted));
} catch (const fs::filesystem_error& error) {
  throw OutputError(fmt::format("the folder {} cannot be used: {}; choose another with --out", target.string(),
                                error.code().message()));
}

void StudyFolder::open_file(const std::string& heading) {
  const fs::path part = target_ / part_name, whole = target_ / final_name;
  if (!fs::exists(whole)) {
    file_.emplace(part, heading);
    if (!fs::exists(whole)) return;
    fs::remove(part);  // another run finished between both questions: this one was made just now
  }
  file_.emplace(whole, heading);
}

bool StudyFolder::complete() const { return file_->path().filename() == final_name; }

void StudyFolder::finish() {
  assert(missing().first == missing().end);
  file_->finish(target_ / final_name);
}

void StudyFolder::write(const fs::path& name, const std::string& text) try {
  const fs::path path = target_ / name;
  fs::create_directories(path.parent_path());
  viz::replace_file(path, text);
} catch (const fs::filesystem_error& error) {
  throw OutputError(fmt::format("{} cannot be written: {}; is there room on the disk?", (target_ / name).string(),
                                error.code().message()));
}

}  // namespace gapstrain::cases
