#include "models/measures/order_advice.h"

#include "models/measures/compression.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace gapstrain::models {

namespace {

enum class Act { fill, place, insert, tighten, remove };

// One thing done to one part; a procedure taken apart.
struct Move {
  Act act;
  std::string label;
  std::optional<Tissue> tissue;
};

std::vector<Move> take_apart(const std::vector<Step>& steps) {
  std::vector<Move> moves;
  for (const auto& step : steps) {
    if (step.tissue) moves.push_back({Act::fill, step.tissue->name, step.tissue});
    for (const auto& label : step.place) moves.push_back({Act::place, label, {}});
    for (const auto& label : step.insert) moves.push_back({Act::insert, label, {}});
    for (const auto& label : step.tighten) moves.push_back({Act::tighten, label, {}});
    for (const auto& label : step.remove) moves.push_back({Act::remove, label, {}});
  }
  return moves;
}

// One step a move; a screw tightened right after it went in is one step.
std::vector<Step> put_together(const std::vector<Move>& moves) {
  std::vector<Step> steps;
  for (std::size_t k = 0; k < moves.size(); ++k) {
    Step step;
    const Move& move = moves[k];
    if (move.act == Act::fill) step.tissue = move.tissue;
    if (move.act == Act::place) step.place = {move.label};
    if (move.act == Act::remove) step.remove = {move.label};
    if (move.act == Act::tighten) step.tighten = {move.label};
    if (move.act == Act::insert) {
      step.insert = {move.label};
      if (k + 1 < moves.size() && moves[k + 1].act == Act::tighten && moves[k + 1].label == move.label) {
        step.tighten = {move.label};
        ++k;
      }
    }
    steps.push_back(std::move(step));
  }
  return steps;
}

class Orders {
 public:
  Orders(const Assembly& assembly, const Procedure& procedure)
      : assembly_(assembly), procedure_(procedure), moves_(take_apart(procedure.steps)) {}

  std::optional<OrderAdvice> better_than(Force reached) const {
    OrderAdvice best;
    best.reached = reached;
    best.possible = reached;
    for (std::size_t pressing = 0; pressing < moves_.size(); ++pressing) {
      if (!presses(moves_[pressing])) continue;
      const auto early = holds_before(pressing);
      if (early.empty()) continue;
      Force most_of_one = reached;
      std::string worst;
      for (const auto& label : early) consider({label}, pressing, label, best, most_of_one, worst);
      if (early.size() > 1) {
        if (worst.empty()) worst = early.front();
        consider(early, pressing, worst, best, most_of_one, worst);
      }
    }
    if (best.possible.value() < 1.1 * reached.value() || best.possible.value() < 1.0) return std::nullopt;
    return best;
  }

 private:
  const CandidateScrew* screw(const std::string& label) const {
    const auto found = procedure_.screws.find(label);
    return found == procedure_.screws.end() ? nullptr : &assembly_.screws[static_cast<std::size_t>(found->second)];
  }
  const Hold* hold(const std::string& label) const {
    const auto found = std::find_if(assembly_.holds.begin(), assembly_.holds.end(),
                                    [&](const Hold& h) { return h.hold.label == label; });
    return found == assembly_.holds.end() ? nullptr : &*found;
  }

  bool presses(const Move& move) const {
    if (move.act == Act::place) {
      const Hold* placed = hold(move.label);
      return placed->hold.kind == HoldKind::fracture_clamp;
    }
    if (move.act != Act::tighten) return false;
    const ScrewKind kind = screw(move.label)->planned.screw.kind;
    return kind == ScrewKind::compression || kind == ScrewKind::lag;
  }

  // What holds a fragment to the plate: locking heads from their insertion, ball heads from their tightening,
  // wires.
  bool holds_plate(const Move& move) const {
    if (move.act == Act::place) return hold(move.label)->wire.has_value();
    const CandidateScrew* in = screw(move.label);
    if (in == nullptr || in->planned.screw.kind == ScrewKind::lag) return false;
    if (move.act == Act::insert) return !is_tightened(in->planned.screw);
    return move.act == Act::tighten;
  }

  bool is_distal(const CandidateScrew& screw) const {
    return screw.planned.placement.bone->near.middle.x() > assembly_.construct.fracture.position.value();
  }
  bool is_distal(const Move& move) const {
    const Hold* held = hold(move.label);
    return is_distal(held != nullptr ? *held->wire : *screw(move.label));
  }

  // Labels of what holds the sliding fragment (for lags and clamps: either fragment) before a move and still does.
  std::vector<std::string> holds_before(std::size_t pressing) const {
    const Move& move = moves_[pressing];
    const bool slides =
        move.act == Act::tighten && screw(move.label)->planned.screw.kind == ScrewKind::compression;
    std::vector<std::string> labels;
    for (std::size_t k = 0; k < pressing; ++k) {
      if (moves_[k].act == Act::remove)
        labels.erase(std::remove(labels.begin(), labels.end(), moves_[k].label), labels.end());
      else if (holds_plate(moves_[k]) && !presses(moves_[k]) &&
               (!slides || is_distal(moves_[k]) == is_distal(*screw(move.label))))
        labels.push_back(moves_[k].label);
    }
    return labels;
  }

  // All moves of the labels that come before `pressing`, behind it; of a wire, its removal before it.
  std::vector<Move> moved(const std::vector<std::string>& labels, std::size_t pressing) const {
    const auto is_early = [&](const Move& move) {
      return std::find(labels.begin(), labels.end(), move.label) != labels.end();
    };
    std::vector<Move> order, behind;
    for (std::size_t k = 0; k < moves_.size(); ++k) {
      const Move& move = moves_[k];
      const bool is_wire = is_early(move) && hold(move.label) != nullptr;
      if (k < pressing && is_early(move) && !is_wire) {
        behind.push_back(move);
        continue;
      }
      if (is_wire && k > pressing && move.act == Act::remove) continue;
      if (k == pressing)
        for (const auto& label : labels)
          if (hold(label) != nullptr) order.push_back({Act::remove, label, {}});
      order.push_back(move);
      if (k == pressing) order.insert(order.end(), behind.begin(), behind.end());
    }
    return order;
  }

  void consider(const std::vector<std::string>& labels, std::size_t pressing, const std::string& blamed,
                OrderAdvice& best, Force& most_of_one, std::string& worst) const {
    Procedure other = procedure_;
    other.steps = put_together(moved(labels, pressing));
    const Force force = final_force(assembly_, other);
    if (labels.size() == 1 && force > most_of_one) {
      most_of_one = force;
      worst = labels.front();
    }
    // Moving more than it takes is no better advice.
    if (force.value() <= 1.01 * best.possible.value()) return;
    best.possible = force;
    best.early = labels.size() == 1 || worst.empty() ? blamed : worst;
    best.pressing = moves_[pressing].label;
    best.better_order.clear();
    for (const auto& step : other.steps) best.better_order.push_back(describe(step, assembly_.construct.screws));
  }

  const Assembly& assembly_;
  const Procedure& procedure_;
  std::vector<Move> moves_;
};

}  // namespace

std::optional<OrderAdvice> advise_order(const Assembly& assembly, const Procedure& procedure, Force reached) {
  return Orders(assembly, procedure).better_than(reached);
}

}  // namespace gapstrain::models
