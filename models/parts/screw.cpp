#include "models/parts/screw.h"

#include <algorithm>
#include <set>

namespace gapstrain::models {

namespace {

struct SizeRow {
  std::string_view designation;
  double thread, core, pitch, drill, root;  // mm
  std::string_view source;
};

// HA: shallow asymmetric thread for cortex; HB: deep thread for cancellous bone. A locking screw has a larger core
// for the same thread; no standard gives its dimensions. Drills from memory. Root: the lesser of the two fillets
// of the thread's root, that on its steep flank (ISO 5835 and ASTM F543, annex 5, from memory); of locking screws
// taken as that of the HA thread of the next smaller size.
constexpr SizeRow size_rows[] = {
    {"HA 1.5", 1.5, 1.1, 0.5, 1.1, 0.1, "ISO 5835, from memory"},
    {"HA 2.0", 2.0, 1.3, 0.6, 1.5, 0.1, "ISO 5835, from memory"},
    {"HA 2.7", 2.7, 1.9, 1.0, 2.0, 0.2, "ISO 5835, from memory"},
    {"HA 3.5", 3.5, 2.4, 1.25, 2.5, 0.2, "ISO 5835; pitch from memory"},
    {"HA 4.5", 4.5, 3.0, 1.75, 3.2, 0.3, "ISO 5835, from memory"},
    {"HA 5.0", 5.0, 3.5, 1.75, 3.6, 0.3, "ISO 5835, from memory"},
    {"HB 4.0", 4.0, 1.9, 1.75, 2.5, 0.3, "ISO 5835, from memory"},
    {"HB 6.5", 6.5, 3.0, 2.75, 3.2, 0.8, "ISO 5835; pitch from memory"},
    {"locking 2.0", 2.0, 1.5, 0.6, 1.5, 0.1,
     "from memory, no standard: core taken as its 1.5 mm drill; pitch not known, that of HA 2.0 entered"},
    {"locking 2.4", 2.4, 1.8, 0.6, 1.8, 0.1,
     "from memory, no standard: core taken as its 1.8 mm drill; pitch not known, that of HA 2.0 entered"},
    {"locking 3.5", 3.5, 2.8, 1.25, 2.8, 0.2,
     "from memory, no standard: core 2.8 to 2.9 mm; pitch not known, that of HA 3.5 entered"},
};

}  // namespace

Length thread_root_radius(const ScrewSize& size) { return size.root_radius.value_or(0.16 * size.pitch); }

std::optional<ScrewSize> find_screw_size(std::string_view designation) {
  for (const SizeRow& row : size_rows)
    if (row.designation == designation)
      return ScrewSize{std::string(designation), row.thread * mm, row.core * mm, row.pitch * mm,
                       std::string(row.source),  row.drill * mm,  row.root * mm};
  return std::nullopt;
}

std::vector<std::string> screw_size_designations() {
  std::vector<std::string> list;
  for (const SizeRow& row : size_rows) list.emplace_back(row.designation);
  return list;
}

double interface_in_week(double first, const std::vector<InterfaceStage>& course, double week) {
  InterfaceStage before{0.0, first};
  for (const InterfaceStage& stage : course) {
    if (stage.stiffness != before.stiffness && week < stage.week)
      return before.stiffness +
             (stage.stiffness - before.stiffness) * (week - before.week) / (stage.week - before.week);
    if (week < stage.week) return before.stiffness;
    before = stage;
  }
  return before.stiffness;
}

void number_screws(std::vector<Screw>& screws) {
  int highest = 0;
  for (const auto& screw : screws) highest = std::max(highest, static_cast<int>(screw.id));
  for (auto& screw : screws)
    if (screw.id == ScrewId::none) screw.id = ScrewId{++highest};
}

bool are_numbered(const std::vector<Screw>& screws) {
  std::set<ScrewId> ids;
  for (const auto& screw : screws) ids.insert(screw.id);
  return ids.size() == screws.size() && !ids.contains(ScrewId::none);
}

const Screw* find_screw(const std::vector<Screw>& screws, ScrewId id) {
  const auto found =
      std::find_if(screws.begin(), screws.end(), [&](const Screw& screw) { return screw.id == id; });
  return id == ScrewId::none || found == screws.end() ? nullptr : &*found;
}

}  // namespace gapstrain::models
