#include "cases/study/merge.h"

#include "cases/study/study_folder.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <functional>
#include <map>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

struct FoundPart {
  fs::path folder;
  Study study;
};

FoundPart find_part(const fs::path& folder) {
  const auto study = read_run(folder);
  if (!study) throw OutputError(fmt::format("the folder {} holds no study of gapstrain", folder.string()));
  if (!fs::exists(folder / StudyFolder::final_name))
    throw OutputError(
        fmt::format("part {} in {} is not complete; start its run again, which goes on from where it "
                    "ended",
                    part_text(study->part), folder.string()));
  return {folder, *study};
}

void refuse_different(const FoundPart& first, const FoundPart& other) {
  Study same_part = other.study;
  same_part.part.number = first.study.part.number;
  if (same_part == first.study) return;
  throw OutputError(
      fmt::format("the folders {} and {} hold parts of different studies, or of one split differently",
                  first.folder.string(), other.folder.string()));
}

// By number, all of one study.
std::map<std::size_t, FoundPart> find_parts(const std::vector<fs::path>& folders) {
  if (folders.empty()) throw OutputError("there are no parts to merge; name their folders");
  std::map<std::size_t, FoundPart> parts;
  for (const auto& folder : folders) {
    const FoundPart part = find_part(folder);
    if (!parts.empty()) refuse_different(parts.begin()->second, part);
    const auto [present, is_new] = parts.emplace(part.study.part.number, part);
    if (!is_new)
      throw OutputError(fmt::format("part {} is there twice, in {} and in {}", part_text(part.study.part),
                                    present->second.folder.string(), folder.string()));
  }
  const std::size_t of = parts.begin()->second.study.part.of;
  for (std::size_t number = 1; number <= of; ++number)
    if (!parts.contains(number))
      throw OutputError(fmt::format("part {} is missing; name its folder as well", part_text({number, of})));
  return parts;
}

std::string heading_of(const fs::path& rows) {
  std::ifstream stream(rows, std::ios::binary);
  std::string heading;
  std::getline(stream, heading);
  return heading;
}

// Appends what is missing of one part, some rows at a time, and calls `appended` each time.
void append_part(StudyFolder& merged, const FoundPart& part, const std::string& heading,
                 const std::function<void()>& appended) {
  const fs::path path = part.folder / StudyFolder::final_name;
  std::ifstream stream(path, std::ios::binary);
  std::string line, lines;
  std::getline(stream, line);
  if (line != heading) throw OutputError(fmt::format("{} has another heading than part 1", path.string()));
  const RowRange range = rows_of_part(part.study.part, part.study.rows);
  std::size_t row = range.first, held = 0;
  const auto append_held = [&] {
    merged.append(lines, held);
    lines.clear();
    held = 0;
    appended();
  };
  for (; std::getline(stream, line); ++row) {
    if (row >= range.end || stream.eof()) {
      row = range.end + 1;  // more rows than belong there, or half a row
      break;
    }
    if (row < merged.missing().first + held) continue;  // there from an earlier call
    lines.append(line).push_back('\n');
    ++held;
    if (lines.size() >= 1 << 20) append_held();
  }
  if (row != range.end)
    throw OutputError(fmt::format("{} does not hold the {} rows of part {}; remove its folder and make it again",
                                  path.string(), range.end - range.first, part_text(part.study.part)));
  append_held();
}

}  // namespace

void merge_rows(const std::vector<fs::path>& folders, const fs::path& out, Progress& progress) {
  const auto parts = find_parts(folders);
  const FoundPart& first = parts.begin()->second;
  Study whole = first.study;
  whole.part = {};
  const std::string heading = heading_of(first.folder / StudyFolder::final_name);
  StudyFolder merged(out, whole, heading);
  if (merged.complete()) return;
  const std::size_t there = merged.rows();
  const auto appended = [&] {
    if (progress.interrupted()) throw Interrupted{};
    progress.count(merged.rows(), whole.rows, merged.rows() - there, whole.rows - there);
  };
  for (const auto& [number, part] : parts) append_part(merged, part, heading, appended);
  merged.finish();
}

}  // namespace gapstrain::cases
