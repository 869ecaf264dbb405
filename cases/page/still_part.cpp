#include "cases/page/still_part.h"

#include "cases/page/encode.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

std::string text_of(const Json& json, const char* key) {
  return json.contains(key) ? json[key].get<std::string>() : "";
}

std::string row(const std::vector<std::string>& cells, const char* tag) {
  std::string html = "<tr>";
  for (const auto& cell : cells) html += fmt::format("<{0}>{1}</{0}>", tag, html_text(cell));
  return html + "</tr>\n";
}

std::string table(const std::string& title, const std::vector<std::string>& heading, const std::string& rows) {
  return fmt::format("<table><caption>{}</caption>\n<thead>{}</thead>\n<tbody>{}</tbody></table>\n",
                     html_text(title), row(heading, "th"), rows);
}

std::string figures(const Json& first) {
  std::string rows;
  for (const auto& figure : first["figures"])
    rows += row({figure["label"], figure.value("load", ""),
                 fmt::format("{} {}", figure["shown"].get<std::string>(), figure["shown_unit"].get<std::string>()),
                 figure["meaning"]},
                "td");
  return table("Figures", {"Figure", "Load", "Value", "Meaning"}, rows);
}

std::string margins(const Json& findings) {
  std::string rows;
  for (const auto& margin : findings["margins"])
    rows += row(
        {margin["part"], margin["load"], fmt::format("{:.3g}", margin["factor"].get<double>()),
         margin["factor"].get<double>() < 1.0 ? "fails" : "holds", margin["sentence"], text_of(margin, "source")},
        "td");
  return table("Margins, worst first", {"Part", "Load", "Strength over demand", "Verdict", "From", "Source"},
               rows);
}

std::string rules(const Json& findings) {
  std::string rows;
  for (const auto& rule : findings["review"])
    rows += row(
        {rule["rule"], rule["verdict"], rule["bound"], rule["figure"], text_of(rule, "advice"), rule["source"]},
        "td");
  return table("Rules of the trade", {"Rule", "Verdict", "Asked", "Here", "Advice", "Source"}, rows);
}

}  // namespace

std::string still_part(const PageContent& content) {
  const Json first = Json::parse(content.first.text);
  std::string html = fmt::format("<main id=\"still\">\n<h1>{}</h1>\n", html_text(content.title));
  for (const auto& line : first["head"])
    html += fmt::format("<p class=\"head\">{}</p>\n", html_text(text_of(line, "text")));
  html += fmt::format("<pre tabindex=\"0\">{}</pre>\n", html_text(content.summary));
  for (const auto& picture : content.pictures)
    html += fmt::format("<figure><img id=\"still-{}\" alt=\"{}\" src=\"data:image/png;base64,{}\"></figure>\n",
                        picture.id, html_text(picture.title), base64(picture.png));
  html += margins(first["findings"]) + rules(first["findings"]) + figures(first);
  html +=
      fmt::format("<h2>Case</h2>\n<pre tabindex=\"0\">{}</pre>\n</main>", html_text(text_of(first, "case_text")));
  return html;
}

}  // namespace gapstrain::cases
