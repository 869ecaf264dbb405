#include "cases/new_case/new_request.h"

#include "cases/text/words.h"
#include "cases/toml/quantity_text.h"
#include "models/patient/magnification.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace gapstrain::cases {

namespace {

template <class Meaning>
struct Word {
  std::string text;
  Meaning meaning;
};

const std::vector<Word<models::Species>> species_words{{"dog", models::Species::dog},
                                                       {"cat", models::Species::cat}};
const std::vector<Word<models::LongBone>> bone_words{{"humerus", models::LongBone::humerus},
                                                     {"radius", models::LongBone::radius},
                                                     {"femur", models::LongBone::femur},
                                                     {"tibia", models::LongBone::tibia}};
const std::vector<Word<models::FracturePattern>> pattern_words{
    {"simple", models::FracturePattern::simple}, {"comminuted", models::FracturePattern::comminuted}};
const std::vector<Word<models::Treatment>> treatment_words{{"bridging", models::Treatment::bridging},
                                                           {"compression", models::Treatment::compression}};
const std::vector<Word<std::string>> side_words{{"left", "left"}, {"right", "right"}};

std::string in_lower_case(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

// Reads one option after another, so that all faults are found.
class Reader {
 public:
  explicit Reader(std::vector<OptionProblem>& problems) : problems_(problems) {}

  void complain(const std::string& option, const std::string& message) { problems_.push_back({option, message}); }

  template <class Meaning>
  std::optional<Meaning> choice(const std::string& option, const std::string& found,
                                const std::vector<Word<Meaning>>& words) {
    if (found.empty()) return std::nullopt;
    const std::string said = in_lower_case(found);
    std::vector<std::string> allowed;
    for (const auto& word : words) {
      if (word.text == said) return word.meaning;
      allowed.push_back(word.text);
    }
    complain(option,
             fmt::format("found \"{}\"{}; allowed: {}", found, did_you_mean(said, allowed), join_or(allowed)));
    return std::nullopt;
  }

  std::optional<double> quantity(const std::string& option, const std::string& found, Dimension dimension) {
    if (found.empty()) return std::nullopt;
    try {
      return parse_quantity(found, dimension);
    } catch (const QuantityError& error) {
      complain(option, error.what());
      return std::nullopt;
    }
  }

  std::optional<models::Length> length(const std::string& option, const std::string& found) {
    const auto number = quantity(option, found, Dimension::length);
    if (!number) return std::nullopt;
    constexpr double most = 1000.0;  // mm: as of bones in a case file
    if (*number > most) {
      complain(option, fmt::format("found \"{}\"; allowed is above 0 mm to {:.0f} mm", found, most));
      return std::nullopt;
    }
    if (*number > 0.0) return *number * models::mm;
    complain(option, fmt::format("found \"{}\"; it must be above 0 mm. Measure it on the radiograph.", found));
    return std::nullopt;
  }

 private:
  std::vector<OptionProblem>& problems_;
};

std::string without_blanks_around(const std::string& text) {
  const auto first = text.find_first_not_of(" \t"), last = text.find_last_not_of(" \t");
  return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

// "75 mm, 13 mm, 9 mm, 2 mm".
std::optional<models::BoneStation> read_station(const std::string& found, Reader& reader) {
  const std::string option = "--station";
  std::vector<std::string> parts;
  for (std::size_t start = 0; start <= found.size();) {
    const auto comma = std::min(found.find(',', start), found.size());
    parts.push_back(without_blanks_around(found.substr(start, comma - start)));
    start = comma + 1;
  }
  if (parts.size() != 4 ||
      std::any_of(parts.begin(), parts.end(), [](const auto& part) { return part.empty(); })) {
    reader.complain(option,
                    fmt::format("found \"{}\"; four lengths with commas between are wanted: place from the "
                                "bone's proximal end, mediolateral width, craniocaudal width and cortex, such "
                                "as \"75 mm, 13 mm, 9 mm, 2 mm\"",
                                found));
    return std::nullopt;
  }
  std::array<models::Length, 4> sizes;
  bool is_good = true;
  for (std::size_t i = 0; i < 4; ++i) {
    const auto size = reader.length(option, parts[i]);
    is_good &= size.has_value();
    sizes[i] = size.value_or(0.0 * models::mm);
  }
  if (!is_good) return std::nullopt;
  return models::BoneStation{sizes[0], sizes[1], sizes[2], sizes[3], 0.0 * models::mm, 0.0 * models::mm};
}

// In months: "4 years", "10 weeks".
std::optional<double> read_age(const std::string& found, Reader& reader) {
  if (found.empty()) return std::nullopt;
  struct AgeUnit {
    std::string_view one, many;
    double months;
  };
  constexpr AgeUnit units[] = {{"week", "weeks", 12.0 / 52.0}, {"month", "months", 1.0}, {"year", "years", 12.0}};
  double number = 0.0;
  const auto [rest, fault] = std::from_chars(found.data(), found.data() + found.size(), number);
  const std::string unit = in_lower_case(without_blanks_around({rest, found.data() + found.size()}));
  if (fault == std::errc{})
    for (const AgeUnit& known : units)
      if (unit == known.one || unit == known.many) return number * known.months;
  reader.complain("--age", fmt::format("found \"{}\"; an age is a number with weeks, months or years, such as \"7 "
                                       "months\"",
                                       found));
  return std::nullopt;
}

void correct(std::optional<models::Length>& seen, const models::Magnification& magnification) {
  if (seen) seen = models::true_length(*seen, magnification);
}

void read_marker(const NewOptions& options, Reader& reader, NewRequest& request) {
  const auto real = reader.length("--marker", options.marker);
  const auto seen = reader.length("--marker-seen", options.marker_seen);
  if (options.marker.empty() != options.marker_seen.empty()) {
    const bool has_real = options.marker_seen.empty();
    reader.complain(
        has_real ? "--marker-seen" : "--marker",
        fmt::format("missing, with {} given; measure the marker {}", has_real ? "--marker" : "--marker-seen",
                    has_real ? "in the image" : "itself, with a caliper"));
  }
  if (!real || !seen) return;
  const models::Magnification found = models::magnification(*real, *seen);
  request.magnification = found.factor;
  models::DraftRequest& draft = request.draft;
  draft.magnification_spread = found.spread;
  for (auto* length : {&draft.measured.length, &draft.measured.width_mediolateral,
                       &draft.measured.width_craniocaudal, &draft.measured.cortex, &draft.fracture_position})
    correct(*length, found);
  // A comminuted zone is seen on the radiograph; a gap between two fragments is what is wanted of reduction.
  if (draft.pattern == models::FracturePattern::comminuted) correct(draft.gap, found);
  for (models::BoneStation& station : draft.stations)
    for (auto* length :
         {&station.position, &station.width_mediolateral, &station.width_craniocaudal, &station.cortex})
      *length = models::true_length(*length, found);
}

void read_sizes(const NewOptions& options, Reader& reader, models::DraftRequest& draft) {
  draft.measured = {reader.length("--length", options.length),
                    reader.length("--width-mediolateral", options.width_mediolateral),
                    reader.length("--width-craniocaudal", options.width_craniocaudal),
                    reader.length("--cortex", options.cortex)};
  for (const auto& text : options.stations)
    if (const auto station = read_station(text, reader)) draft.stations.push_back(*station);
  std::sort(draft.stations.begin(), draft.stations.end(),
            [](const auto& a, const auto& b) { return a.position < b.position; });
  if (options.stations.empty()) return;
  for (const auto& [option, found] : {std::pair{"--width-mediolateral", options.width_mediolateral},
                                      {"--width-craniocaudal", options.width_craniocaudal},
                                      {"--cortex", options.cortex}})
    if (!found.empty())
      reader.complain(option,
                      "given together with --station, which has widths and cortex of its own; leave one out");
}

void read_patient(const NewOptions& options, Reader& reader, models::DraftRequest& draft) {
  const auto species = reader.choice("--species", options.species, species_words);
  if (options.species.empty()) reader.complain("--species", "missing; allowed: dog or cat");
  const auto bone = reader.choice("--bone", options.bone, bone_words);
  if (options.bone.empty()) reader.complain("--bone", "missing; allowed: humerus, radius, femur or tibia");
  const auto mass = reader.quantity("--mass", options.mass, Dimension::mass);
  if (options.mass.empty())
    reader.complain("--mass", "missing; weigh the patient, loads follow from it: such as --mass \"18 kg\"");
  draft.patient = {species.value_or(models::Species::dog), bone.value_or(models::LongBone::radius),
                   mass.value_or(0.0) * models::kilogram};
  if (species && mass) models::check_mass(*species, draft.patient.mass);
}

void read_fracture(const NewOptions& options, Reader& reader, models::DraftRequest& draft) {
  draft.fracture_position = reader.length("--fracture-position", options.fracture_position);
  draft.gap = reader.length("--gap", options.gap);
  draft.pattern = reader.choice("--pattern", options.pattern, pattern_words).value_or(draft.pattern);
  draft.treatment = reader.choice("--treatment", options.treatment, treatment_words).value_or(draft.treatment);
  const double degree = models::degree.value();
  const double obliquity = reader.quantity("--obliquity", options.obliquity, Dimension::angle).value_or(0.0);
  draft.obliquity = obliquity * models::radian;
  constexpr double most = 65.0;
  if (!(obliquity >= 0.0 && obliquity <= most * degree * (1.0 + 1e-9)))
    reader.complain("--obliquity",
                    fmt::format("found \"{}\"; allowed are 0 deg (transverse) to {:.0f} deg, against the "
                                "bone's cross-section",
                                options.obliquity, most));
}

std::string usual_name(const NewRequest& request) {
  const models::DraftRequest& draft = request.draft;
  std::string name(models::name_of(draft.patient.species));
  name.front() = static_cast<char>(name.front() - 'a' + 'A');
  return fmt::format("{} {:.4g} kg, {}{}{}, {}", name, draft.patient.mass.value(), request.side,
                     request.side.empty() ? "" : " ", models::name_of(draft.patient.bone),
                     draft.treatment == models::Treatment::compression ? "compressed" : "bridged");
}

}  // namespace

std::string options_of(models::Subject subject) {
  switch (subject) {
    case models::Subject::mass:
      return "--mass";
    case models::Subject::marker:
      return "--marker, --marker-seen";
    case models::Subject::age:
      return "--age";
    case models::Subject::length:
      return "--length";
    case models::Subject::widths:
      return "--width-mediolateral, --width-craniocaudal, --cortex, --station";
    case models::Subject::fracture:
      return "--fracture-position, --gap";
    case models::Subject::treatment:
      break;
  }
  return "--treatment";
}

NewRequest read_request(const NewOptions& options, std::vector<OptionProblem>& problems) {
  Reader reader(problems);
  NewRequest request;
  models::DraftRequest& draft = request.draft;
  const auto attempt = [&](const auto& read) {
    try {
      read();
    } catch (const models::PatientError& error) {
      reader.complain(options_of(error.subject), error.what());
    }
  };
  attempt([&] { read_patient(options, reader, draft); });
  draft.age_in_months = read_age(options.age, reader);
  attempt([&] {
    if (draft.age_in_months) models::union_under_plate(*draft.age_in_months);
  });
  request.side = reader.choice("--side", options.side, side_words).value_or("");
  read_sizes(options, reader, draft);
  read_fracture(options, reader, draft);
  attempt([&] { read_marker(options, reader, request); });
  if (std::any_of(options.name.begin(), options.name.end(), [](char c) { return c >= 0 && c < ' '; }))
    reader.complain("--name", "the name has a line break or another control character; write it on one line");
  request.name = options.name.empty() ? usual_name(request) : options.name;
  return request;
}

}  // namespace gapstrain::cases
