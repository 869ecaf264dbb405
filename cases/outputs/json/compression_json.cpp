#include "cases/outputs/json/compression_json.h"

#include "cases/outputs/json/state_json.h"
#include "models/words/limit_words.h"

namespace gapstrain::cases {

namespace {

Json step(const models::StepFindings& step) {
  Json json{{"text", step.text},
            {"by_hand", step.by_hand},
            {"travel_mm", step.travel.value()},
            {"travel_in_all_mm", step.travel_in_all.value()},
            {"plate_peak_mpa", step.plate_peak.value()}};
  put(json, "friction_use", step.friction_use);
  json["held"] = Json::array();
  for (const auto& held : step.held) {
    Json entry{{"label", held.label}, {"axial_n", held.axial.value()}};
    put(entry, "of_pull_out", held.of_pull_out);
    put(entry, "of_yield", held.of_yield);
    json["held"].push_back(entry);
  }
  json["bent"] = bent_json(step.bent);
  json["face"] = face_json(step.face);
  return json;
}

Json order(const models::OrderAdvice& advice) {
  return {{"early", advice.early},
          {"pressing", advice.pressing},
          {"reached_n", advice.reached.value()},
          {"possible_n", advice.possible.value()},
          {"better_order", advice.better_order}};
}

Json prebend_point(const models::PrebendPoint& point) {
  return {{"height_mm", point.height.value()}, {"force_n", point.force.value()}, {"near_mpa", point.near.value()},
          {"far_mpa", point.far.value()},      {"touching", point.touching},     {"unevenness", point.unevenness}};
}

Json prebend(const models::PrebendFindings& prebend) {
  Json json{{"sufficient", prebend_point(prebend.sufficient)},
            {"most_even", prebend_point(prebend.most_even)},
            {"curve", Json::array()}};
  for (const auto& point : prebend.curve) json["curve"].push_back(prebend_point(point));
  return json;
}

}  // namespace

Json face_json(const models::FaceFindings& face) {
  Json json{{"force_n", face.force.value()},
            {"friction_n", face.friction.value()},
            {"touching", face.touching},
            {"near_mpa", face.near.value()},
            {"far_mpa", face.far.value()},
            {"peak_mpa", face.peak.value()},
            {"largest_slip_mm", face.largest_slip.value()},
            {"points", Json::array()}};
  for (const auto& point : face.points)
    json["points"].push_back({{"around_deg", (point.around / models::degree).value()},
                              {"wall", point.outer ? "outer" : "inner"},
                              {"pressure_mpa", point.pressure.value()},
                              {"opening_mm", point.opening.value()},
                              {"slip_mm", point.slip.value()}});
  return json;
}

Json bent_json(const std::vector<models::BentPart>& parts) {
  Json json = Json::array();
  for (const auto& part : parts)
    json.push_back({{"label", part.label},
                    {"along_mm", part.along.value()},
                    {"turn_deg", models::in_degrees(part.turn)},
                    {"stretch_mm", part.stretch.value()}});
  return json;
}

Json compression_json(const models::CompressionFindings& compression) {
  Json json;
  json["limits"] = models::limit_sentences(compression.limits);
  json["passed_limits"] = passed_limits_json(compression.limits);
  put(json, "frictionless_n", compression.frictionless);
  put(json, "sticking_n", compression.sticking);
  if (compression.order) json["order"] = order(*compression.order);
  json["steps"] = Json::array();
  for (const auto& entry : compression.steps) json["steps"].push_back(step(entry));
  if (compression.prebend) json["prebend"] = prebend(*compression.prebend);
  return json;
}

}  // namespace gapstrain::cases
