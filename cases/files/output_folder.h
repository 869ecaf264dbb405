// The folder of one analysis: complete or not there at all.
#pragma once

#include "cases/files/output_target.h"

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::cases {

// Files are written into a hidden sibling, which takes the folder's name in publish(). Without publish() the
// sibling is removed with this object. An existing folder is replaced only when everything in it is listed in its
// own findings.json, that is, when an analysis wrote all of it.
class OutputFolder {
 public:
  // Refuses an unusable target at once, before any long work. Creates nothing.
  // @throw OutputError
  explicit OutputFolder(const std::filesystem::path& target);
  ~OutputFolder();
  OutputFolder(const OutputFolder&) = delete;
  OutputFolder& operator=(const OutputFolder&) = delete;

  const std::filesystem::path& target() const { return target_; }

  // The sibling to write into, made on first use; those of earlier runs that were killed are cleared away.
  // @throw OutputError
  const std::filesystem::path& workspace();

  // @throw OutputError
  void write(const std::filesystem::path& name, const std::string& text);

  // All files written so far, relative to the folder, sorted.
  std::vector<std::string> files() const;

  // @throw OutputError; the old folder, if any, is then still in place.
  void publish();

 private:
  std::filesystem::path target_, workspace_;
};

}  // namespace gapstrain::cases
