#include "models/checks/checks.h"

#include <fmt/format.h>

#include <map>

namespace gapstrain::models {

namespace {

// Follows the steps as they are done: what is in, what is tight, what ever was.
class Operation {
 public:
  // @pre every label is there once
  Operation(const Construct& construct, ProblemList& problems) : construct_(construct), problems_(problems) {}

  void run() {
    find_labels();
    for (std::size_t i = 0; i < construct_.steps.size(); ++i) {
      const Step& step = construct_.steps[i];
      const std::string where = fmt::format("step[{}]", i);
      check_is_something(step, where);
      each(step.place, where + ".place", [this](const auto& label, const auto& at) { place(label, at); });
      each(step.insert, where + ".insert", [this](const auto& label, const auto& at) { insert(label, at); });
      each(step.tighten, where + ".tighten", [this](const auto& label, const auto& at) { tighten(label, at); });
      each(step.remove, where + ".remove", [this](const auto& label, const auto& at) { remove(label, at); });
    }
    check_screws_at_end();
    check_holds_at_end();
  }

 private:
  template <class Do>
  static void each(const std::vector<std::string>& labels, const std::string& where, Do act) {
    for (std::size_t i = 0; i < labels.size(); ++i) act(labels[i], fmt::format("{}[{}]", where, i));
  }

  void find_labels() {
    for (const Screw& screw : construct_.screws) {
      screws_.try_emplace(screw.label, &screw);
      labels_.push_back(screw.label);
    }
    for (const TemporaryHold& hold : construct_.temporary) {
      holds_.try_emplace(hold.label, &hold);
      labels_.push_back(hold.label);
    }
  }

  void check_is_something(const Step& step, const std::string& where) {
    const bool is_empty = step.place.empty() && step.insert.empty() && step.tighten.empty() && step.remove.empty();
    if (is_empty && !step.tissue)
      problems_.error(where,
                      "The step does nothing; name what is placed, inserted, tightened or taken out, or "
                      "remove the step.");
    if (!step.tissue) return;
    check_tissue(*step.tissue, where + ".tissue", problems_);
    if (only(construct_.fractures).gap == 0.0 * mm)
      problems_.error(where + ".tissue",
                      "The gap is 0 mm and leaves no room for a tissue; remove the tissue or open the gap.");
  }

  bool is_known(const std::string& label, const std::string& where) {
    if (screws_.contains(label) || holds_.contains(label)) return true;
    problems_.error(where, fmt::format("No screw, wire or clamp is called \"{}\"; known are {}.", label,
                                       fmt::join(labels_, ", ")));
    return false;
  }

  void place(const std::string& label, const std::string& where) {
    if (!is_known(label, where)) return;
    if (!holds_.contains(label))
      problems_.error(where,
                      fmt::format("\"{}\" is a screw; screws are inserted, only wires and clamps placed. Write "
                                  "it under `insert`.",
                                  label));
    else
      put_in(label, where);
  }

  void insert(const std::string& label, const std::string& where) {
    if (!is_known(label, where)) return;
    if (!screws_.contains(label))
      problems_.error(where,
                      fmt::format("\"{}\" is a wire or clamp; these are placed, only screws inserted. Write it "
                                  "under `place`.",
                                  label));
    else
      put_in(label, where);
  }

  void put_in(const std::string& label, const std::string& where) {
    ever_in_.insert(label);
    if (!in_.insert(label).second)
      problems_.error(where, fmt::format("\"{}\" is in already; take it out first, or remove it here.", label));
  }

  void tighten(const std::string& label, const std::string& where) {
    if (!is_known(label, where)) return;
    const auto screw = screws_.find(label);
    if (screw == screws_.end())
      problems_.error(where,
                      fmt::format("\"{}\" is a wire or clamp and not tightened; a clamp is closed when it is "
                                  "placed. Remove it here.",
                                  label));
    else if (!is_tightened(*screw->second))
      problems_.error(where,
                      fmt::format("The locking screw \"{}\" is not tightened: it locks as it goes in. Remove it "
                                  "here.",
                                  label));
    else if (!in_.contains(label))
      problems_.error(
          where,
          fmt::format("The screw \"{}\" is not in at this moment; insert it in this step or before.", label));
    else if (!tight_.insert(label).second)
      problems_.error(where, fmt::format("The screw \"{}\" is tight already; remove it here.", label));
    ever_tight_.insert(label);
  }

  void remove(const std::string& label, const std::string& where) {
    if (!is_known(label, where)) return;
    tight_.erase(label);
    if (in_.erase(label) == 0)
      problems_.error(where,
                      fmt::format("\"{}\" is not in at this moment, so it cannot be taken out; put it in before "
                                  "or remove it here.",
                                  label));
  }

  void check_screws_at_end() {
    for (std::size_t i = 0; i < construct_.screws.size(); ++i) {
      const Screw& screw = construct_.screws[i];
      if (!ever_in_.contains(screw.label))
        problems_.error(
            path_of_screw(i),
            fmt::format("The screw {} is never inserted; name it in a step, or remove it.", name_of(screw)));
      else if (is_tightened(screw) && !ever_tight_.contains(screw.label))
        problems_.warning(path_of_screw(i),
                          fmt::format("The screw {} is inserted but never tightened, so its head holds nothing; "
                                      "tighten it in a step.",
                                      name_of(screw)));
    }
  }

  void check_holds_at_end() {
    for (std::size_t i = 0; i < construct_.temporary.size(); ++i) {
      const TemporaryHold& hold = construct_.temporary[i];
      if (!ever_in_.contains(hold.label))
        problems_.warning(path_of_hold(i),
                          fmt::format("The {} is never placed; name it in a step, or remove it.", name_of(hold)));
      else if (in_.contains(hold.label))
        problems_.warning(path_of_hold(i),
                          fmt::format("The {} is still in after the last step and carries load with "
                                      "the rest; take it out in a step.",
                                      name_of(hold)));
    }
  }

  const Construct& construct_;
  ProblemList& problems_;
  std::map<std::string, const Screw*> screws_;
  std::map<std::string, const TemporaryHold*> holds_;
  std::vector<std::string> labels_;  // as the construct lists them
  std::set<std::string> in_, tight_, ever_in_, ever_tight_;
};

// Where a part is, as far as its label does not say.
std::string place_of(const Screw& screw) {
  return screw.entry ? fmt::format("beside the plate at {}", text(screw.entry->position))
                     : fmt::format("in hole {}", screw.hole);
}

std::string place_of(const TemporaryHold& hold) {
  return hold.kind == HoldKind::wire ? fmt::format("a wire in hole {}", hold.hole) : "a clamp";
}

// Each label belongs to one part.
class Labels {
 public:
  Labels(bool are_needed, ProblemList& problems) : are_needed_(are_needed), problems_(problems) {}

  template <class Part>
  void add(const Part& part, const std::string& path) {
    if (part.label.empty()) {
      if (are_needed_)
        problems_.error(path + ".label",
                        "Steps call screws and holds by their labels, but this one has none; give it one.");
      return;
    }
    const auto [other, is_new] = places_.try_emplace(part.label, place_of(part));
    const bool in_one_hole = part.hole > 0 && other->second == place_of(part);  // reported as such
    if (!is_new && !in_one_hole)
      problems_.error(
          path + ".label",
          fmt::format("The label \"{}\" is given twice, to the part {} and to the one {}, so tables and "
                      "steps cannot tell the two apart; change one.",
                      part.label, other->second, place_of(part)));
  }

 private:
  bool are_needed_;
  ProblemList& problems_;
  std::map<std::string, std::string> places_;  // of each label's part
};

}  // namespace

bool check_labels(const Construct& construct, ProblemList& problems) {
  const auto before = problems.error_count();
  Labels labels(!construct.steps.empty(), problems);
  for (std::size_t i = 0; i < construct.screws.size(); ++i) labels.add(construct.screws[i], path_of_screw(i));
  for (std::size_t i = 0; i < construct.temporary.size(); ++i) labels.add(construct.temporary[i], path_of_hold(i));
  return problems.error_count() == before;
}

void check_steps(const Construct& construct, ProblemList& problems) {
  if (!check_labels(construct, problems)) return;  // what steps mean is not known then
  if (!construct.steps.empty()) {
    Operation(construct, problems).run();
    return;
  }
  for (std::size_t i = 0; i < construct.temporary.size(); ++i)
    problems.warning(path_of_hold(i),
                     fmt::format("The {} is never placed: there are no steps that name it. List the "
                                 "steps, or remove it.",
                                 name_of(construct.temporary[i])));
}

std::set<std::string> taken_out(const Construct& construct) {
  std::set<std::string> out;
  for (const Step& step : construct.steps) {
    for (const auto* labels : {&step.place, &step.insert})
      for (const std::string& label : *labels) out.erase(label);
    out.insert(step.remove.begin(), step.remove.end());
  }
  return out;
}

}  // namespace gapstrain::models
