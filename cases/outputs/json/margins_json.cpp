#include "cases/outputs/json/margins_json.h"

#include "cases/outputs/sentences/face_name.h"
#include "models/words/margin_words.h"

#include <variant>

namespace gapstrain::cases {

namespace {

void put_location(Json& json, const std::optional<models::PlateLocation>& location) {
  if (!location) return;
  put(json, "hole", location->hole);
  json["along_mm"] = location->along.value();
  json["face"] = face_name(location->face);
}

void put_range(Json& json, const models::FactorRange& range) {
  json["factor_low"] = range.low;
  json["factor_high"] = range.high;
}

void put_notch(Json& json, const models::NotchBasis& notch, bool is_screw) {
  if (!is_screw) return;
  json["notch"] = notch.factor;
  json["at"] = notch.in_bone ? "thread in bone" : "head";
}

struct BasisJson {
  bool is_screw = false;

  Json operator()(const std::monostate&) const { return Json::object(); }
  Json operator()(const models::YieldBasis& basis) const {
    Json json{{"stress_mpa", basis.stress.value()}, {"yield_mpa", basis.yield.value()}};
    put_location(json, basis.location);
    return json;
  }
  Json operator()(const models::PreloadBasis& basis) const {
    return {{"axial_n", basis.axial.value()}, {"limit_n", basis.limit.value()}};
  }
  Json operator()(const models::FatigueBasis& basis) const {
    Json json{{"amplitude_mpa", basis.cycle.amplitude.value()},
              {"mean_mpa", basis.cycle.mean.value()},
              {"reversed_mpa", basis.reversed.value()},
              {"strength_mpa", basis.strength.value()},
              {"cycles", basis.cycles}};
    put_range(json, basis.range);
    put_location(json, basis.location);
    put_notch(json, basis.notch, is_screw);
    return json;
  }
  Json operator()(const models::DamageBasis& basis) const {
    Json json{{"damage", basis.damage}, {"weeks", basis.weeks}};
    put_range(json, basis.range);
    put_notch(json, basis.notch, is_screw);
    return json;
  }
  Json operator()(const models::HoldBasis& basis) const {
    return {{"pull_n", basis.pull.value()},
            {"pull_out_n", basis.pull_out.value()},
            {"wall", basis.far ? "far" : "near"},
            {"shear_n", basis.shear.value()},
            {"bearing_n", basis.bearing.value()}};
  }
  Json operator()(const models::StrainBasis& basis) const {
    return {{"strain", basis.strain}, {"yield_strain", basis.yield}};
  }
};

// What has no margin, by its kind and its screw.
template <class Part>
Json part_json(const char* reason, const Part& part) {
  Json json{{"reason", reason}, {"part", models::part_name(part.kind, part.label)}};
  if (!part.label.empty()) json["screw"] = part.label;
  return json;
}

struct LeftOutJson {
  Json operator()(const models::LoadOutsideDay& outside) const {
    return {{"reason", "outside_the_day"}, {"load", outside.load}};
  }
  Json operator()(const models::UnknownStrength& unknown) const {
    Json json = part_json("unknown_strength", unknown);
    json["material"] = unknown.material;
    return json;
  }
  Json operator()(const models::NotStrained& idle) const { return part_json("not_strained", idle); }
};

}  // namespace

Json left_out_json(const std::vector<models::LeftOutMargin>& left_out) {
  Json json = Json::array();
  for (const auto& one : left_out) {
    json.push_back(std::visit(LeftOutJson{}, one));
    json.back()["sentence"] = models::left_out_sentence(one);
  }
  return json;
}

Json margins_json(const models::Construct& construct, const std::vector<models::Margin>& margins) {
  Json json = Json::array();
  for (const auto& margin : margins)
    json.push_back({{"part", models::part_name(margin)},
                    {"load", margin.load},
                    {"factor", margin.factor},
                    {"basis", std::visit(BasisJson{margin.screw != models::ScrewId::none}, margin.basis)},
                    {"sentence", models::margin_sentence(construct, margin)},
                    {"assumed", models::margin_assumptions(construct, margin)},
                    {"source", margin.source},
                    {"indicative", margin.indicative}});
  return json;
}

}  // namespace gapstrain::cases
