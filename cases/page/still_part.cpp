#include "cases/page/still_part.h"

#include "cases/cautions.h"
#include "cases/page/encode.h"
#include "cases/page/figure_trust.h"
#include "cases/page/still_html.h"
#include "cases/text/digits.h"
#include "cases/version.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

using Row = std::vector<StillCell>;

std::string heading(const char* text) { return fmt::format("<h2>{}</h2>\n", text); }

std::string paragraphs(const Json& sentences) {
  std::string html;
  for (const auto& sentence : sentences) html += still_paragraph(sentence.get<std::string>());
  return html;
}

// Of the list, the first that begins so; empty: there is none.
std::string sentence_on(const Json& sentences, const std::string& beginning) {
  for (const auto& sentence : sentences)
    if (auto text = sentence.get<std::string>(); text.starts_with(beginning)) return text;
  return "";
}

// Whether it holds, what that means for the fracture, and what it rests on; then the others.
std::string in_short(const Json& first) {
  const Json &verdict = first["verdict"], &worst = first["worst"];
  std::vector<std::string> lead;
  const auto add = [&](const std::string& text) {
    if (!text.empty() && std::find(lead.begin(), lead.end(), text) == lead.end()) lead.push_back(text);
  };
  const auto add_all_but = [&](const std::vector<std::string>& beginnings, std::size_t most) {
    for (const auto& text : verdict) {
      const auto sentence = text.get<std::string>();
      const bool is_left_out = std::any_of(beginnings.begin(), beginnings.end(),
                                           [&](const auto& start) { return sentence.starts_with(start); });
      if (!is_left_out && lead.size() < most) add(sentence);
    }
  };
  add(sentence_on(verdict, "Verdict:"));
  if (first["findings"].contains("race")) {
    add(sentence_on(verdict, "Healing:"));
  } else {
    const auto gap = sentence_on(worst, "Gap:");
    add(gap.empty() ? sentence_on(first["pressing"], "Fracture") : gap);
  }
  constexpr std::size_t sentences = 3;
  add_all_but({"Healing:", "In hand", "Rules:"}, sentences);
  add_all_but({"Healing:"}, sentences);
  std::string html = heading("In short");
  for (const auto& sentence : lead) html += still_paragraph(sentence, " class=\"lead\"");
  for (const auto* list : {&verdict, &worst, &first["order"], &first["pressing"]})
    for (const auto& text : *list)
      if (std::find(lead.begin(), lead.end(), text.get<std::string>()) == lead.end())
        html += still_paragraph(text.get<std::string>());
  return html;
}

// What a reader must know beside each figure of this result.
std::string doubt_of(const Json& findings) {
  const Json& state = findings["state"];
  if (!state["not_trusted"].empty()) return "NOT TO BE TRUSTED";
  if (state["estimated"].empty()) return "";
  std::vector<std::string> names;
  for (const auto& name : state["estimated"]) names.push_back(name);
  return fmt::format("rests on an ESTIMATE ({})", fmt::join(names, ", "));
}

std::string joined(const std::vector<std::string>& words) {
  std::vector<std::string> said;
  for (const auto& word : words)
    if (!word.empty()) said.push_back(word);
  return fmt::format("{}", fmt::join(said, "; "));
}

// Texts that several rows share, each once and by its number.
class SharedNotes {
 public:
  explicit SharedNotes(const Json& findings) : findings_(findings) {}

  // "[3]"; empty for a text that is not there.
  std::string number_of(const std::string& pointer) {
    const StillCell note = found_at(findings_, pointer);
    if (note.text.empty()) return "";
    auto found =
        std::find_if(notes_.begin(), notes_.end(), [&](const auto& one) { return one.text == note.text; });
    if (found == notes_.end()) found = notes_.insert(found, note);
    return fmt::format("[{}]", found - notes_.begin() + 1);
  }

  std::string list() const {
    std::string html = "<ol class=\"notes\">";
    for (const auto& note : notes_) html += fmt::format("<li{}>{}</li>\n", note.attributes, html_text(note.text));
    return html + "</ol>\n";
  }

 private:
  const Json& findings_;
  std::vector<StillCell> notes_;
};

std::string margins(const Json& findings) {
  std::vector<Row> rows;
  const std::string doubt = doubt_of(findings);
  SharedNotes notes(findings);
  for (std::size_t k = 0; k < findings["margins"].size(); ++k) {
    const Json& margin = findings["margins"][k];
    const auto pointer = [&](const char* key) { return fmt::format("/margins/{}/{}", k, key); };
    const auto at = [&](const char* key) { return found_at(findings, pointer(key)); };
    const bool fails = !(margin["factor"].get<double>() >= 1.0);
    rows.push_back(
        {at("part"),
         at("load"),
         at("factor"),
         {joined({fails ? "fails" : "holds", margin["indicative"].get<bool>() ? "indicative" : "", doubt})},
         at("sentence"),
         {notes.number_of(pointer("assumed")) + " " + notes.number_of(pointer("source"))}});
  }
  std::string html = still_table("Margins, worst first: strength over demand; below 1 a part fails",
                                 {"Part", "Load", "Margin", "Result", "From", "Notes"}, rows) +
                     "<h3>What is assumed, and sources</h3>\n" + notes.list();
  for (std::size_t k = 0; k < findings["margins_left_out"].size(); ++k)
    html +=
        still_paragraph("Not known: " + found_at(findings, fmt::format("/margins_left_out/{}/sentence", k)).text);
  const Json& limits = findings["state"]["limits"];
  if (!limits.empty()) html += "<h3>Limits passed</h3>\n" + paragraphs(limits);
  return html;
}

std::string figures(const Json& first) {
  const Json trust = figure_trust();
  const std::string doubt = doubt_of(first["findings"]);
  std::vector<Row> rows;
  for (const auto& figure : first["figures"]) {
    if (figure["name"].get<std::string>().starts_with("breaks_")) continue;  // the rules have a table of their own
    const std::string name = figure["name"], load = figure.value("load", ""), unit = figure["shown_unit"];
    const Json known = trust.value(name, Json::object());
    const std::string source = known.value("source", "");
    const std::string error =
        known.contains("error")
            ? fmt::format("within some {} %", three_digits(100.0 * known["error"].get<double>()))
            : "";
    const std::string where = fmt::format(" data-figure=\"{}\"", html_text(name)) +
                              (load.empty() ? "" : fmt::format(" data-load=\"{}\"", html_text(load)));
    rows.push_back({{figure["label"].get<std::string>()},
                    {load},
                    {figure["shown"].get<std::string>(), where, true},
                    {unit},
                    {figure["meaning"].get<std::string>()},
                    {joined({source, error, source.starts_with("counted") ? "" : doubt})}});
  }
  return still_table("All figures: of the construct, of the worst of all loads, and under each load",
                     {"Figure", "Load", "Value", "Unit", "Meaning", "Source and trust"}, rows);
}

std::string trust_table(const Json& findings) {
  std::vector<Row> rows;
  for (std::size_t k = 0; k < findings["trust"]["checks"].size(); ++k) {
    const auto at = [&](const char* key) {
      return found_at(findings, fmt::format("/trust/checks/{}/{}", k, key));
    };
    const bool passed = findings["trust"]["checks"][k]["passed"].get<bool>();
    rows.push_back({at("name"), {passed ? "passed" : "FAILED"}, at("value"), at("limit"), at("meaning")});
  }
  std::string html =
      still_table("Checks of this solution", {"Check", "Result", "Value", "Limit", "Meaning"}, rows);
  const std::vector<Row> errors{{{"stiffness"}, found_at(findings, "/trust/mesh_error_stiffness", "%", 100.0)},
                                {{"largest stress"}, found_at(findings, "/trust/mesh_error_peak", "%", 100.0)}};
  return html + still_table("Estimated error of the mesh", {"Of", "Share"}, errors);
}

std::string rules(const Json& findings) {
  std::vector<Row> rows;
  for (std::size_t k = 0; k < findings["review"].size(); ++k) {
    const auto at = [&](const char* key) { return found_at(findings, fmt::format("/review/{}/{}", k, key)); };
    rows.push_back({at("rule"), at("verdict"), at("bound"), at("figure"), at("advice"), at("source")});
  }
  return still_table("Rules of the trade, broken ones first",
                     {"Rule", "Verdict", "Asked", "Here", "Advice", "Source"}, rows);
}

std::string plan(const Json& findings) {
  const auto at = [&](const std::string& key, const char* unit = "") {
    return found_at(findings, "/plan/" + key, unit);
  };
  std::vector<Row> facts{{{"bone"}, at("bone")},
                         {{"fracture, from the proximal end"}, at("fracture_position_mm", "mm")},
                         {{"plate, length"}, at("plate/length_mm", "mm")},
                         {{"plate, width"}, at("plate/width_mm", "mm")},
                         {{"plate, thickness"}, at("plate/thickness_mm", "mm")},
                         {{"holes"}, at("plate/holes")},
                         {{"of these slots"}, at("plate/slots")},
                         {{"metal"}, at("plate/metal")},
                         {{"aspect"}, at("plate/aspect")},
                         {{"plate's proximal end, from the bone's"}, at("plate/proximal_end_mm", "mm")},
                         {{"off the bone"}, at("plate/standoff_mm", "mm")}};
  std::vector<Row> screws;
  for (std::size_t k = 0; k < findings["plan"]["screws"].size(); ++k) {
    const auto of = [&](const char* key) { return at(fmt::format("screws/{}/{}", k, key)); };
    screws.push_back({of("label"), of("hole"), of("kind"), of("size"), of("cortices"), of("length_mm"),
                      of("measured_mm"), of("drill_mm")});
  }
  std::string html =
      still_table("Plate and bone", {"What", "Here"}, facts) +
      still_table("Screws: length to order, length measured in the model, drill",
                  {"Screw", "Hole", "Kind", "Size", "Cortices", "Length, mm", "Measured, mm", "Drill, mm"},
                  screws);
  html += "<h3>Order</h3>\n<ol>";
  for (std::size_t k = 0; k < findings["plan"]["steps"].size(); ++k) {
    const StillCell step = at(fmt::format("steps/{}", k));
    html += fmt::format("<li{}>{}</li>", step.attributes, html_text(step.text));
  }
  html += "</ol>\n";
  for (std::size_t k = 0; k < findings["plan"]["notes"].size(); ++k) {
    const StillCell note = at(fmt::format("notes/{}/sentence", k));
    html += still_paragraph(note.text, note.attributes);
  }
  return html;
}

}  // namespace

std::string still_part(const PageContent& content) {
  const Json first = Json::parse(content.first.text);
  const Json& findings = first["findings"];
  std::string html = fmt::format("<main id=\"still\">\n<h1>{}</h1>\n", html_text(content.title));
  for (const auto& line : first["head"])
    html += still_paragraph(line["text"].get<std::string>(), " class=\"head\"");
  html += still_paragraph(std::string(*std::begin(cautions)));
  if (!content.comparison.is_null()) html += still_comparison(content.comparison);
  html += in_short(first);
  for (const auto& picture : content.pictures)
    html += fmt::format("<figure><img id=\"still-{}\" alt=\"{}\" src=\"data:image/png;base64,{}\"></figure>\n",
                        picture.id, html_text(picture.title), base64(picture.png));
  html += heading("Margins") + margins(findings);
  html += heading("Figures") + figures(first);
  html += heading("Trust") + trust_table(findings);
  html += heading("Rules of the trade") + rules(findings);
  html += "<div class=\"still-plan\">\n" + heading("Plan") + plan(findings) + "</div>\n";
  const auto notes = [&](const char* key) {
    std::string text;
    for (const auto& sentence : first[key]) text += still_paragraph(sentence.get<std::string>());
    return text;
  };
  if (!first["warnings"].empty() || !first["assumptions"].empty())
    html += heading("Warnings and what is assumed") + notes("warnings") + notes("assumptions");
  html += "<div class=\"still-case\">\n" + heading("Case") +
          still_paragraph("Run it with gapstrain analyse for the same figures.") +
          fmt::format("<pre id=\"still-case\" tabindex=\"0\">{}</pre>\n</div>\n",
                      html_text(first["case_text"].get<std::string>()));
  for (const auto& caution : cautions) html += still_paragraph(std::string(caution));
  return html + still_paragraph(fmt::format("{}, {}.", program_and_version(), content.date)) + "</main>";
}

}  // namespace gapstrain::cases
