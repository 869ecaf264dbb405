// What a lesson's states differ by from its case, put together and held against the case reader.
#pragma once

#include "cases/lessons/lesson_file.h"
#include "cases/toml/section.h"

namespace gapstrain::cases {

class SceneStates {
 public:
  // All must outlive this. `page` has its case and gets the variants.
  SceneStates(const std::string& file, PageCase& page, Reading& reading)
      : file_(&file), page_(&page), reading_(&reading) {}

  // [[variant]]; `tables`: the section's, as parsed. Faults are reported.
  void add_variant(const Section& section, const Table& tables);

  // Nothing that can be used where a fault was reported.
  std::optional<SceneState> read(const Section& section, const Table& tables) const;

 private:
  // The case with the variant's bodies, without [[candidate]].
  Json variant_tables(std::size_t number) const;
  std::optional<Json> changed(const Section& section, const Table& tables, Json from) const;
  std::optional<CaseFile> checked(const Section& section, Json tables) const;

  const std::string* file_;
  PageCase* page_;
  Reading* reading_;
};

// The table of that key; null where there is none.
const Table* table_in(const Table& table, std::string_view key);
// Those of a list of tables.
std::vector<const Table*> tables_in(const Table& table, std::string_view key);

}  // namespace gapstrain::cases
