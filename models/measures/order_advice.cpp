#include "models/measures/order_advice.h"

#include "models/geometry/fracture_cut.h"
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
  Part part;  // nothing of `fill`
  std::optional<Tissue> tissue;
};

std::vector<Move> take_apart(const std::vector<ProcedureStep>& steps) {
  std::vector<Move> moves;
  for (const auto& step : steps) {
    if (step.tissue) moves.push_back({Act::fill, {}, step.tissue});
    for (const int hold : step.place) moves.push_back({Act::place, {Part::Kind::hold, hold}, {}});
    for (const int screw : step.insert) moves.push_back({Act::insert, {Part::Kind::screw, screw}, {}});
    for (const int screw : step.tighten) moves.push_back({Act::tighten, {Part::Kind::screw, screw}, {}});
    for (const auto& part : step.remove) moves.push_back({Act::remove, part, {}});
  }
  return moves;
}

// One step a move; a screw tightened right after it went in is one step.
std::vector<ProcedureStep> put_together(const std::vector<Move>& moves) {
  std::vector<ProcedureStep> steps;
  for (std::size_t k = 0; k < moves.size(); ++k) {
    ProcedureStep step;
    const Move& move = moves[k];
    if (move.act == Act::fill) step.tissue = move.tissue;
    if (move.act == Act::place) step.place = {move.part.index};
    if (move.act == Act::remove) step.remove = {move.part};
    if (move.act == Act::tighten) step.tighten = {move.part.index};
    if (move.act == Act::insert) {
      step.insert = {move.part.index};
      if (k + 1 < moves.size() && moves[k + 1].act == Act::tighten && moves[k + 1].part == move.part) {
        step.tighten = {move.part.index};
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
      std::optional<Part> worst;
      for (const auto& part : early) consider({part}, pressing, part, best, most_of_one, worst);
      if (early.size() > 1) {
        if (!worst) worst = early.front();
        consider(early, pressing, *worst, best, most_of_one, worst);
      }
    }
    if (best.possible.value() < 1.1 * reached.value() || best.possible.value() < 1.0) return std::nullopt;
    return best;
  }

 private:
  const CandidateScrew& screw(const Part& part) const {
    return assembly_.screws[static_cast<std::size_t>(part.index)];
  }
  const Hold& hold(const Part& part) const { return assembly_.holds[static_cast<std::size_t>(part.index)]; }
  static bool is_hold(const Move& move) { return move.part.kind == Part::Kind::hold; }

  const std::string& label_of(const Part& part) const {
    return part.kind == Part::Kind::hold ? hold(part).hold.label : screw(part).planned.screw.label;
  }

  bool presses(const Move& move) const {
    if (move.act == Act::place) return hold(move.part).hold.kind == HoldKind::fracture_clamp;
    if (move.act != Act::tighten) return false;
    const ScrewKind kind = screw(move.part).planned.screw.kind;
    return kind == ScrewKind::compression || kind == ScrewKind::lag;
  }

  // What holds a fragment to the plate: locking heads from their insertion, ball heads from their tightening,
  // wires.
  bool holds_plate(const Move& move) const {
    if (move.act == Act::fill) return false;
    if (is_hold(move)) return move.act == Act::place && hold(move.part).wire.has_value();
    const Screw& in = screw(move.part).planned.screw;
    if (in.kind == ScrewKind::lag) return false;
    if (move.act == Act::insert) return !is_tightened(in);
    return move.act == Act::tighten;
  }

  std::size_t fragment_of(const CandidateScrew& screw) const {
    return fragment_at(assembly_.construct.fractures, screw.planned.placement.bone->near.middle.x() * mm);
  }
  std::size_t fragment_of(const Move& move) const {
    return fragment_of(is_hold(move) ? *hold(move.part).wire : screw(move.part));
  }

  // What holds the sliding fragment (for lags and clamps: either fragment) before a move and still does.
  std::vector<Part> holds_before(std::size_t pressing) const {
    const Move& move = moves_[pressing];
    const bool slides = move.act == Act::tighten && screw(move.part).planned.screw.kind == ScrewKind::compression;
    std::vector<Part> parts;
    for (std::size_t k = 0; k < pressing; ++k) {
      if (moves_[k].act == Act::remove)
        std::erase(parts, moves_[k].part);
      else if (holds_plate(moves_[k]) && !presses(moves_[k]) &&
               (!slides || fragment_of(moves_[k]) == fragment_of(screw(move.part))))
        parts.push_back(moves_[k].part);
    }
    return parts;
  }

  // All moves of the parts that come before `pressing`, behind it; of a wire, its removal before it.
  std::vector<Move> moved(const std::vector<Part>& parts, std::size_t pressing) const {
    const auto is_early = [&](const Move& move) {
      return move.act != Act::fill && std::find(parts.begin(), parts.end(), move.part) != parts.end();
    };
    std::vector<Move> order, behind;
    for (std::size_t k = 0; k < moves_.size(); ++k) {
      const Move& move = moves_[k];
      const bool is_wire = is_early(move) && is_hold(move);
      if (k < pressing && is_early(move) && !is_wire) {
        behind.push_back(move);
        continue;
      }
      if (is_wire && k > pressing && move.act == Act::remove) continue;
      if (k == pressing)
        for (const auto& part : parts)
          if (part.kind == Part::Kind::hold) order.push_back({Act::remove, part, {}});
      order.push_back(move);
      if (k == pressing) order.insert(order.end(), behind.begin(), behind.end());
    }
    return order;
  }

  void consider(const std::vector<Part>& parts, std::size_t pressing, const Part& blamed, OrderAdvice& best,
                Force& most_of_one, std::optional<Part>& worst) const {
    Procedure other = procedure_;
    other.steps = put_together(moved(parts, pressing));
    const Force force = final_force(assembly_, other);
    if (parts.size() == 1 && force > most_of_one) {
      most_of_one = force;
      worst = parts.front();
    }
    // Moving more than it takes is no better advice.
    if (force.value() <= 1.01 * best.possible.value()) return;
    best.possible = force;
    best.early = label_of(parts.size() == 1 || !worst ? blamed : *worst);
    best.pressing = label_of(moves_[pressing].part);
    best.better_order.clear();
    for (const auto& step : other.steps) best.better_order.push_back(describe(step, other, assembly_.construct));
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
