#include "cases/files/output_folder.h"

#include "cases/files/leftovers.h"

#include <fmt/format.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <set>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr const char* old_suffix = ".old";

std::vector<std::string> files_in(const fs::path& folder) {
  std::vector<std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (!entry.is_directory() || entry.is_symlink())
      files.push_back(fs::relative(entry.path(), folder).generic_string());
  std::sort(files.begin(), files.end());
  return files;
}

// What an earlier analysis says it wrote; empty when the folder is not from one.
std::set<std::string> listed_files(const fs::path& folder) {
  std::ifstream stream(folder / "findings.json");
  const auto findings = nlohmann::json::parse(stream, nullptr, false);
  std::set<std::string> listed;
  if (!findings.is_object() || !findings.contains("files") || !findings["files"].is_array()) return listed;
  if (findings.value(nlohmann::json::json_pointer("/program/name"), "") != "gapstrain") return listed;
  for (const auto& file : findings["files"])
    if (file.is_string()) listed.insert(file.get<std::string>());
  return listed;
}

void refuse_foreign(const fs::path& folder) {
  const auto present = files_in(folder);
  const bool vacant = fs::is_empty(folder);
  const auto listed = vacant ? std::set<std::string>{} : listed_files(folder);
  if (!vacant && listed.empty())
    throw OutputError(
        fmt::format("the folder {} is not empty and was not written by gapstrain; choose another with "
                    "--out, or empty it yourself",
                    folder.string()));
  for (const auto& file : present)
    if (!listed.contains(file))
      throw OutputError(
          fmt::format("the folder {} holds {}, which gapstrain did not write; move that file, or choose "
                      "another folder with --out",
                      folder.string(), file));
}

}  // namespace

OutputFolder::OutputFolder(const fs::path& target) try : target_(usable_target(target)) {
  if (fs::exists(target_)) refuse_foreign(target_);
} catch (const fs::filesystem_error& error) {
  throw OutputError(fmt::format("the folder {} cannot be used: {}; choose another with --out", target.string(),
                                error.code().message()));
}

OutputFolder::~OutputFolder() {
  std::error_code ignored;  // a destructor can do no more than try
  if (!workspace_.empty()) fs::remove_all(workspace_, ignored);
}

const fs::path& OutputFolder::workspace() {
  if (!workspace_.empty()) return workspace_;
  const std::string name = fmt::format(".{}.unfinished-", target_.filename().string());
  std::error_code fault;
  // A run that was killed between its two renamings left the former folder under the other name only.
  for (const auto& old : find_leftovers(target_.parent_path(), name, old_suffix))
    if (fs::exists(target_))
      fs::remove_all(old, fault);
    else
      fs::rename(old, target_, fault);
  for (const auto& unfinished : find_leftovers(target_.parent_path(), name, "")) fs::remove_all(unfinished, fault);
  const fs::path sibling = target_.parent_path() / fmt::format("{}{}", name, getpid());
  fs::remove_all(sibling, fault);
  fs::create_directories(sibling, fault);
  if (fault) throw OutputError(fmt::format("the folder {} cannot be made: {}", sibling.string(), fault.message()));
  return workspace_ = sibling;
}

void OutputFolder::write(const fs::path& name, const std::string& text) {
  const fs::path path = workspace() / name;
  std::error_code fault;
  fs::create_directories(path.parent_path(), fault);
  std::ofstream stream(path, std::ios::binary);
  stream << text;
  stream.close();
  if (!stream)
    throw OutputError(fmt::format("{} cannot be written; is there room on the disk?", (target_ / name).string()));
}

std::vector<std::string> OutputFolder::files() const {
  return workspace_.empty() ? std::vector<std::string>{} : files_in(workspace_);
}

void OutputFolder::publish() try {
  const fs::path old = workspace().string() + old_suffix;
  const bool replaces = fs::exists(target_);
  if (replaces) {
    refuse_foreign(target_);  // once more: hours may have passed
    fs::rename(target_, old);
  }
  std::error_code fault;
  fs::rename(workspace_, target_, fault);
  if (fault) {
    if (replaces) fs::rename(old, target_);
    throw OutputError(fmt::format("the folder {} cannot be made: {}", target_.string(), fault.message()));
  }
  workspace_.clear();
  if (replaces) fs::remove_all(old);
} catch (const fs::filesystem_error& error) {
  throw OutputError(fmt::format("the folder {} cannot be made: {}", target_.string(), error.code().message()));
}

}  // namespace gapstrain::cases
