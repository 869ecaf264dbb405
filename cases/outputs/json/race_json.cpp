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

const OutputKeys of_weight{
    {"input", "what the governed course's life factor, or a ratio of two, hangs on, the heaviest first"},
    {"first.value", "share of its logarithm's variance that the input accounts for alone"},
    {"first.low", "lower end of its 95 % interval"},
    {"first.high", "upper end"},
    {"total.value", "the same with what it does together with others"},
    {"total.low", "lower end of its 95 % interval"},
    {"total.high", "upper end"},
};

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
  put(json, "tested_factor", course.tested_factor);
  put(json, "tested_weeks", course.tested_weeks);
  json["damage"] = Json::array();
  for (const auto& week : course.damage) json["damage"].push_back(band(week));
  return json;
}

const char* no_race_key(models::NoRace::Reason reason) {
  using Reason = models::NoRace::Reason;
  switch (reason) {
    case Reason::no_healing:
      return "no_healing";
    case Reason::no_daily_cycles:
      return "no_daily_cycles";
    case Reason::no_gap:
      return "no_gap";
    case Reason::filled_by_step:
      return "filled_by_step";
    case Reason::unknown_strength:
      return "unknown_strength";
    case Reason::not_asked:
      return "not_asked";
    case Reason::without_an_answer:
      break;
  }
  return "without_an_answer";
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
  if (race.hangs_on_loads) json["hangs_on_loads"] = *race.hangs_on_loads;
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

Json no_race_json(const models::NoRace& no_race) {
  Json json{{"reason", no_race_key(no_race.reason)}, {"sentence", models::no_race_sentence(no_race)}};
  if (!no_race.metal.empty()) json["metal"] = no_race.metal;
  if (!no_race.error.empty()) json["error"] = no_race.error;
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

OutputKeys race_keys() {
  OutputKeys keys{
      {"verdict[]", "who wins, in plain sentences, the one that matters most first"},
      {"samples", "over which the bands are taken: 5th, 50th and 95th percentile as low, middle, high"},
      {"weeks[]", "since the operation, to the latest week of union"},
      {"courses[].course",
       "steady: the gap stiffens all over; governed: only where the next tissue bears the strain; none: not at "
       "all"},
      {"courses[].sentence", "how it ends"},
      {"courses[].life_factor.low", "how many times over the plate lasts until union is due"},
      figure_key("courses[].life_factor.middle", "plate_life", "of the other courses likewise"),
      {"courses[].life_factor.high", "the same, 95th percentile"},
      {"courses[].united.low", "share of the gap's area that has reached the tissue of union when it is due"},
      {"courses[].united.middle", "the same, 50th percentile"},
      {"courses[].united.high", "the same, 95th percentile"},
      {"courses[].breaks_before_union", "share of the samples in which the plate breaks before union is due"},
      {"courses[].breaks_in_five_years", "share in which it breaks at all"},
      {"courses[].screws.label",
       "of the screw with the shortest fatigue life; left out where no metal's fatigue is known"},
      {"courses[].screws.life_factor.low",
       "how many times over the worst screw of a sample lasts until union is due"},
      figure_key("courses[].screws.life_factor.middle", "screw_life", "of the other courses likewise"),
      {"courses[].screws.life_factor.high", "the same, 95th percentile"},
      {"courses[].screws.breaks_before_union", "share of the samples in which a screw breaks before union is due"},
      {"courses[].screws.breaks_in_five_years", "share in which one breaks at all"},
      {"courses[].screws.sentence", "how it ends for screws"},
      {"courses[].breaks_weeks.low", "week of the break; left out beyond five years"},
      {"courses[].breaks_weeks.middle", "the same, 50th percentile"},
      {"courses[].breaks_weeks.high", "the same, 95th percentile"},
      {"courses[].tested_factor",
       "life factors above it, of plate and screws, are estimates: more cycles than the 10^7 that metals are "
       "tested "
       "to"},
      {"courses[].tested_weeks", "breaks later than that are estimates likewise"},
      {"courses[].damage[].low", "at the end of each of weeks; 1 is failure"},
      {"courses[].damage[].middle", "the same, 50th percentile"},
      {"courses[].damage[].high", "the same, 95th percentile"},
  };
  append(keys, "hangs_on[].", of_weight);
  append(
      keys, "",
      {
          {"hangs_on_loads",
           "share of that variance that sizes of loads account for alone; left out where no part of a load has a "
           "band"},
          {"inputs[].name", "what is uncertain"},
          {"inputs[].unit", "of its spread"},
          {"inputs[].spread.low", "5th percentile"},
          {"inputs[].spread.middle", "50th percentile"},
          {"inputs[].spread.high", "95th percentile"},
          {"inputs[].source", "how it is distributed, and where that is from"},
          {"at_the_end.united",
           "the governed course under the loads as entered, when union is due: share of the gap's area that has "
           "united"},
          {"at_the_end.held", "share that is strained along the bone more than its next tissue bears"},
          {"at_the_end.fibrous", "share that stays fibrous by the windows of Claes and Heigele"},
          {"at_the_end.modulus_mpa", "of the tissue, geometric mean over the area"},
          {"at_the_end.largest_strain", "along the bone, magnitude"},
          {"at_the_end.largest_shear", "across it"},
          {"assumptions.corrosion_from",
           "taken for granted: what corrosion and fretting leave at least of strength"},
          {"assumptions.corrosion_to", "and at most"},
          {"assumptions.stress_error", "standard deviation of the true stress over the model's"},
          {"assumptions.cycles_a_day", "of all loads"},
          {"assumptions.activity_factor", "times or over which they may be more or fewer"},
      });
  return keys;
}

OutputKeys race_comparison_keys() {
  OutputKeys keys{
      {"course", "steady, governed or none, of both"},
      {"sentence", "who outlasts whom, and by how much"},
      {"ratio.low", "life factor of the first over the second's, sample by sample: 5th percentile"},
      {"ratio.middle", "the same, 50th percentile"},
      {"ratio.high", "the same, 95th percentile"},
      {"first_outlasts", "share of the samples in which the first lasts longer"},
  };
  append(keys, "hangs_on[].", of_weight);
  return keys;
}

}  // namespace gapstrain::cases
