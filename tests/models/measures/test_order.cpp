// The same screws in several orders, against a chain of springs worked out by hand.
#include "models/measures/compression.h"
#include "models/measures/order_advice.h"
#include "models/measures/solve.h"
#include "models/preparation/prepare_bodies.h"
#include "tests/models/measures/compression_constructs.h"

#include <Eigen/QR>

#include <catch2/catch.hpp>

#include <algorithm>

namespace gapstrain {

namespace {

using Order = std::vector<std::string>;

class Bench {
 public:
  Bench() : construct_(tests::compression_tube()), assembly_(models::assemble(construct_, construct_.screws)) {
    chosen_ = models::chosen_screws(assembly_, construct_.screws);
  }

  models::Procedure procedure(const Order& order) const {
    models::Construct ordered = construct_;
    ordered.steps = tests::steps_of(order);
    return models::procedure_of(ordered, chosen_);
  }
  double force(const Order& order) const { return models::final_force(assembly_, procedure(order)).value(); }

  std::optional<models::OrderAdvice> advice(const Order& order) const {
    return models::advise_order(assembly_, procedure(order), force(order) * models::newton);
  }

  // Force across the fracture by hand: what holds the sliding fragment to the plate (`seats`, C first) are springs
  // side by side. C's head is slid along and pulled down with its preload; each compliance is measured alone, by
  // one linear solve in which one seat is pulled along (or C's down) and the others are free that way, with what
  // touches at the end of these steps and these proximal screws in. Along the plate the fragment is then in
  // balance.
  double chain(const Order& made, const Order& proximal, const Order& seats) const {
    const auto state = models::carry_out(assembly_, procedure(made)).back();
    const auto& system = *assembly_.system;
    solver::Setting setting;
    setting.links = assembly_.on_the_table.supports;
    for (const auto& label : proximal) add(part(label).links, setting.links);
    for (std::size_t k = 0; k < assembly_.pairs.size(); ++k)
      if (state.pressed.closed[k] != 0) setting.links.push_back(assembly_.pairs[k].normal);
    std::vector<Eigen::Index> rows;
    for (const auto& label : seats) {
      add(part(label).links, setting.links);
      rows.push_back(system.first_row(part(label).head));
    }
    rows.push_back(rows[0] + 2);  // C's axis
    setting.initial = Eigen::VectorXd::Zero(system.rows());
    setting.hands.at = Eigen::VectorXd::Zero(system.rigid().cols());
    const auto count = static_cast<Eigen::Index>(seats.size());
    Eigen::MatrixXd compliance(count, count + 1);
    for (Eigen::Index k = 0; k <= count; ++k) {
      setting.driven.clear();
      for (const Eigen::Index row : rows) setting.driven.push_back({row, 0.0});
      setting.driven[static_cast<std::size_t>(k)].force = 1.0;
      const auto pulled = solver::press(system, {}, setting, system.no_loads(1));
      // The misfit from which a seat would carry what it carries.
      for (Eigen::Index i = 0; i < count; ++i)
        compliance(i, k) = -pulled.initial(rows[static_cast<std::size_t>(i)]);
    }
    Eigen::VectorXd misfit = -part("C").planned.screw.preload->value() * compliance.col(count);
    misfit(0) -= part("C").planned.placement.slide;
    return std::abs(compliance.leftCols(count).colPivHouseholderQr().solve(misfit).sum());
  }

 private:
  const models::CandidateScrew& part(const std::string& label) const {
    if (label == "W") return *assembly_.holds[0].wire;
    for (std::size_t k = 0; k < construct_.screws.size(); ++k)
      if (construct_.screws[k].label == label) return assembly_.screws[static_cast<std::size_t>(chosen_[k])];
    throw std::invalid_argument(label);
  }
  static void add(const std::vector<int>& from, std::vector<int>& to) {
    to.insert(to.end(), from.begin(), from.end());
  }

  models::Construct construct_;
  models::Assembly assembly_;
  std::vector<int> chosen_;
};

}  // namespace

TEST_CASE("force across the fracture follows the order of the screws as a chain of springs does",
          "[models][steps]") {
  const Bench bench;
  const Order right = {"P1", "P2", "C", "L"}, one = {"P1", "C", "P2", "L"}, spoiled = {"P1", "P2", "L", "C"},
              wired = {"P1", "P2", "+W", "C", "L"};
  const double full = bench.force(right);
  CHECK(full == Approx(bench.chain({"P1", "P2", "C"}, {"P1", "P2"}, {"C"})).epsilon(0.03));
  CHECK(bench.force(one) == Approx(bench.chain({"P1", "C"}, {"P1"}, {"C"})).epsilon(0.03));
  // What holds the sliding fragment already takes its share of the slide's force.
  CHECK(bench.force(spoiled) == Approx(bench.chain(spoiled, {"P1", "P2"}, {"C", "L"})).epsilon(0.03));
  CHECK(bench.force(wired) ==
        Approx(bench.chain({"P1", "P2", "+W", "C"}, {"P1", "P2"}, {"C", "W"})).epsilon(0.03));
  // Until the wire is out.
  CHECK(bench.force({"P1", "P2", "+W", "-W", "C", "L"}) == Approx(full).epsilon(1e-6));

  // Nothing holds the proximal fragment yet: nothing presses, and what comes later is free of stress.
  CHECK(bench.force({"C", "P1", "P2", "L"}) < 0.01 * full);
  CHECK(bench.force({"L", "C", "P1", "P2"}) < 0.01 * full);

  for (const auto& other : {one, spoiled, wired}) CHECK(bench.force(other) < 0.9 * full);
}

TEST_CASE("a screw that was tight too early is named, with the force that the better order gives",
          "[models][steps]") {
  const Bench bench;
  const double full = bench.force({"P1", "P2", "C", "L"});
  const auto advice = bench.advice({"P1", "P2", "L", "C"});
  REQUIRE(advice);
  CHECK(advice->early == "L");
  CHECK(advice->pressing == "C");
  CHECK(advice->reached.value() == Approx(bench.force({"P1", "P2", "L", "C"})).epsilon(1e-9));
  CHECK(advice->possible.value() == Approx(full).epsilon(1e-6));

  const auto wired = bench.advice({"P1", "P2", "+W", "C", "L", "-W"});
  REQUIRE(wired);
  CHECK(wired->early == "W");
  CHECK(wired->possible.value() == Approx(full).epsilon(1e-6));

  CHECK_FALSE(bench.advice({"P1", "P2", "C", "L"}));
}

}  // namespace gapstrain
