#include "cases/page/still_html.h"

#include "cases/page/encode.h"
#include "cases/text/digits.h"

#include <fmt/format.h>

namespace gapstrain::cases {

std::string still_table(const std::string& caption, const std::vector<std::string>& heading,
                        const std::vector<std::vector<StillCell>>& rows) {
  std::string html =
      fmt::format("<div class=\"wide\"><table><caption>{}</caption>\n<thead><tr>", html_text(caption));
  for (const auto& head : heading)
    html += head.empty() ? "<td></td>" : fmt::format("<th scope=\"col\">{}</th>", html_text(head));
  html += "</tr></thead>\n<tbody>";
  for (const auto& row : rows) {
    html += "<tr>";
    for (std::size_t k = 0; k < row.size(); ++k) {
      const StillCell& cell = row[k];
      const std::string name = k == 0 ? "th" : "td", scope = k == 0 ? " scope=\"row\"" : "";
      html += fmt::format("<{0}{1}{2}{3}>{4}</{0}>", name, scope, cell.is_number ? " class=\"number\"" : "",
                          cell.attributes, html_text(cell.text));
    }
    html += "</tr>\n";
  }
  return html + "</tbody></table></div>\n";
}

std::string still_paragraph(const std::string& text, const std::string& attributes) {
  return text.empty() ? "" : fmt::format("<p{}>{}</p>\n", attributes, html_text(text));
}

StillCell found_at(const Json& findings, const std::string& pointer, const std::string& unit, double scale) {
  const Json::json_pointer place(pointer);
  if (!findings.contains(place)) return {};
  const Json& value = findings[place];
  const std::string at = fmt::format(" data-at=\"{}\"", html_text(pointer));
  if (value.is_number()) {
    const std::string shown = three_digits(scale * value.get<double>());
    const std::string scaled = scale == 1.0 ? "" : fmt::format(" data-scale=\"{}\"", scale);
    return {unit.empty() ? shown : shown + " " + unit, at + scaled, true};
  }
  if (value.is_boolean()) return {value.get<bool>() ? "yes" : "no", at};
  return {value.is_string() ? value.get<std::string>() : value.dump(), at};
}

std::string still_comparison(const Json& comparison) {
  std::string html = "<h2>Which construct?</h2>\n";
  html += still_paragraph(comparison["preference"]["verdict"].get<std::string>(), " class=\"lead\"");
  for (const auto& reason : comparison["preference"]["reasons"])
    html += still_paragraph(reason.get<std::string>());
  std::vector<std::string> heads{"Figure, worst of all loads", "Unit"};
  std::vector<std::vector<StillCell>> states;
  for (const auto& one : comparison["constructs"]) {
    const std::string letter = one["letter"];
    heads.push_back(letter);
    states.push_back({{letter}, {one["name"].get<std::string>()}, {one["state"]["standing"].get<std::string>()}});
  }
  heads.insert(heads.end(), {"Widest over least", "Better"});
  std::vector<std::vector<StillCell>> rows;
  for (const auto& figure : comparison["figures"]) {
    std::vector<StillCell> row{{figure["figure"].get<std::string>()}, {figure["unit"].get<std::string>()}};
    for (const auto& value : figure["values"])
      row.push_back({value.is_null() ? "not known" : three_digits(value.get<double>()), {}, true});
    row.push_back({figure.contains("ratio") ? "x " + three_digits(figure["ratio"].get<double>()) : "", {}, true});
    row.push_back({figure.contains("best")            ? figure["best"].get<std::string>()
                   : figure["told_apart"].get<bool>() ? ""
                                                      : "not told apart"});
    rows.push_back(row);
  }
  html += still_table("The constructs", {"", "Name", "State"}, states) +
          still_table("Figures side by side, the widest difference first", heads, rows);
  for (const auto& sentence : comparison["verdict"]) html += still_paragraph(sentence.get<std::string>());
  return html + still_paragraph("What follows is of construct A.");
}

}  // namespace gapstrain::cases
