#include "cases/outputs/json/race_json.h"

#include "models/words/race_words.h"

namespace gapstrain::cases {

namespace {

Json band(const models::Band& band) { return {{"low", band.low}, {"middle", band.middle}, {"high", band.high}}; }

Json estimate(const models::IndexEstimate& estimate) {
  return {{"value", estimate.value}, {"low", estimate.low}, {"high", estimate.high}};
}

Json weights(const std::vector<models::InputWeight>& weights) {
  Json json = Json::array();
  for (const auto& weight : weights)
    json.push_back(
        {{"input", weight.input}, {"first", estimate(weight.first)}, {"total", estimate(weight.total)}});
  return json;
}

Json course(const models::RaceCourse& course) {
  Json json{{"course", course_name(course.course)},
            {"sentence", models::course_sentence(course)},
            {"life_factor", band(course.life_factor)},
            {"united", band(course.united)},
            {"breaks_before_union", course.breaks_before_union},
            {"breaks_in_five_years", course.breaks_in_five_years}};
  if (course.screws)
    json["screws"] = {{"label", course.screws->label},
                      {"life_factor", band(course.screws->life_factor)},
                      {"breaks_before_union", course.screws->breaks_before_union},
                      {"breaks_in_five_years", course.screws->breaks_in_five_years},
                      {"sentence", models::screw_sentence(*course.screws, course.course)}};
  Json breaks = Json::object();
  put(breaks, "low", course.breaks_low);
  put(breaks, "middle", course.breaks_middle);
  put(breaks, "high", course.breaks_high);
  json["breaks_weeks"] = breaks;
  json["damage"] = Json::array();
  for (const auto& week : course.damage) json["damage"].push_back(band(week));
  return json;
}

Json at_the_end(const models::GapState& gap) {
  return {{"united", gap.united},
          {"held", gap.held},
          {"fibrous", gap.claes.fibrous},
          {"modulus_mpa", gap.modulus.value()},
          {"largest_strain", gap.largest_strain},
          {"largest_shear", gap.largest_shear}};
}

}  // namespace

std::string course_name(models::HealingCourse course) {
  switch (course) {
    case models::HealingCourse::steady:
      return "steady";
    case models::HealingCourse::governed:
      return "governed";
    case models::HealingCourse::none:
      return "none";
  }
  return {};
}

Json race_json(const models::Race& race) {
  Json json{{"verdict", models::race_verdict(race)}, {"samples", race.samples}, {"weeks", race.weeks}};
  json["courses"] = Json::array();
  for (const auto& entry : race.courses) json["courses"].push_back(course(entry));
  json["hangs_on"] = weights(race.hangs_on);
  json["inputs"] = Json::array();
  for (const auto& input : race.inputs)
    json["inputs"].push_back(
        {{"name", input.name}, {"unit", input.unit}, {"spread", band(input.spread)}, {"source", input.source}});
  json["at_the_end"] = at_the_end(race.at_the_end);
  json["assumptions"] = {{"corrosion_from", race.assumptions.corrosion_from},
                         {"corrosion_to", race.assumptions.corrosion_to},
                         {"stress_error", race.assumptions.stress_error},
                         {"cycles_a_day", race.cycles_a_day},
                         {"activity_factor", race.activity_factor}};
  return json;
}

Json race_comparison_json(const models::RaceComparison& comparison, const std::string& first,
                          const std::string& second) {
  return {{"course", course_name(comparison.course)},
          {"sentence", models::comparison_sentence(comparison, first, second)},
          {"ratio", band(comparison.ratio)},
          {"first_outlasts", comparison.first_outlasts},
          {"hangs_on", weights(comparison.hangs_on)}};
}

std::vector<FindingsKey> race_keys() {
  return {
      {"race.verdict[]", "who wins, in plain sentences, the one that matters most first"},
      {"race.samples", "over which the bands are taken: 5th, 50th and 95th percentile as low, middle, high"},
      {"race.weeks[]", "since the operation, to the latest week of union"},
      {"race.courses[].course",
       "steady: the gap stiffens all over; governed: only where the next tissue bears the strain; none: not at "
       "all"},
      {"race.courses[].sentence", "how it ends"},
      {"race.courses[].life_factor.low", "how many times over the plate lasts until union is due"},
      {"race.courses[].life_factor.middle", "the same, 50th percentile"},
      {"race.courses[].life_factor.high", "the same, 95th percentile"},
      {"race.courses[].united.low", "share of the gap's area that has reached the tissue of union when it is due"},
      {"race.courses[].united.middle", "the same, 50th percentile"},
      {"race.courses[].united.high", "the same, 95th percentile"},
      {"race.courses[].breaks_before_union", "share of the samples in which the plate breaks before union is due"},
      {"race.courses[].breaks_in_five_years", "share in which it breaks at all"},
      {"race.courses[].screws.label",
       "of the screw whose head has the shortest fatigue life; left out where no metal's fatigue is known"},
      {"race.courses[].screws.life_factor.low",
       "how many times over the worst screw of a sample lasts until union is due"},
      {"race.courses[].screws.life_factor.middle", "the same, 50th percentile"},
      {"race.courses[].screws.life_factor.high", "the same, 95th percentile"},
      {"race.courses[].screws.breaks_before_union",
       "share of the samples in which a screw breaks before union is due"},
      {"race.courses[].screws.breaks_in_five_years", "share in which one breaks at all"},
      {"race.courses[].screws.sentence", "how it ends for screws"},
      {"race.courses[].breaks_weeks.low", "week of the break; left out beyond five years"},
      {"race.courses[].breaks_weeks.middle", "the same, 50th percentile"},
      {"race.courses[].breaks_weeks.high", "the same, 95th percentile"},
      {"race.courses[].damage[].low", "at the end of each of race.weeks; 1 is failure"},
      {"race.courses[].damage[].middle", "the same, 50th percentile"},
      {"race.courses[].damage[].high", "the same, 95th percentile"},
      {"race.hangs_on[].input", "what the governed course's life factor hangs on, the heaviest first"},
      {"race.hangs_on[].first.value", "share of its logarithm's variance that the input accounts for alone"},
      {"race.hangs_on[].first.low", "lower end of its 95 % interval"},
      {"race.hangs_on[].first.high", "upper end"},
      {"race.hangs_on[].total.value", "the same with what it does together with others"},
      {"race.hangs_on[].total.low", "lower end of its 95 % interval"},
      {"race.hangs_on[].total.high", "upper end"},
      {"race.inputs[].name", "what is uncertain"},
      {"race.inputs[].unit", "of its spread"},
      {"race.inputs[].spread.low", "5th percentile"},
      {"race.inputs[].spread.middle", "50th percentile"},
      {"race.inputs[].spread.high", "95th percentile"},
      {"race.inputs[].source", "how it is distributed, and where that is from"},
      {"race.at_the_end.united",
       "the governed course under the loads as entered, when union is due: share of the gap's area that has "
       "united"},
      {"race.at_the_end.held", "share that is strained along the bone more than its next tissue bears"},
      {"race.at_the_end.fibrous", "share that stays fibrous by the windows of Claes and Heigele"},
      {"race.at_the_end.modulus_mpa", "of the tissue, geometric mean over the area"},
      {"race.at_the_end.largest_strain", "along the bone, magnitude"},
      {"race.at_the_end.largest_shear", "across it"},
      {"race.assumptions.corrosion_from",
       "taken for granted: what corrosion and fretting leave at least of strength"},
      {"race.assumptions.corrosion_to", "and at most"},
      {"race.assumptions.stress_error", "standard deviation of the true stress over the model's"},
      {"race.assumptions.cycles_a_day", "of all loads"},
      {"race.assumptions.activity_factor", "times or over which they may be more or fewer"},
  };
}

}  // namespace gapstrain::cases
