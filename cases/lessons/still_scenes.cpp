#include "cases/lessons/still_scenes.h"

#include "cases/page/encode.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::cases {

namespace {

std::string scene_paragraphs(const Json& texts) {
  std::string html;
  for (const auto& text : texts) html += fmt::format("<p>{}</p>\n", html_text(text.get<std::string>()));
  return html;
}

std::string scene_cell(const Json& json, const char* key) {
  return fmt::format("<td>{}</td>", json.contains(key) ? html_text(json[key].get<std::string>()) : "");
}

std::string scene_figures(const Json& scene) {
  if (scene["figures"].empty()) return "";
  std::vector<std::pair<std::string, std::string>> columns{{"own", "in this scene"}};
  if (scene.contains("beside")) columns.emplace_back("beside", scene["beside"]["title"].get<std::string>());
  if (scene.contains("answer") && scene["answer"].contains("state")) columns.emplace_back("answer", "answer");
  std::string head = "<th scope=\"col\">Figure</th>", rows;
  for (const auto& [key, title] : columns) head += fmt::format("<th scope=\"col\">{}</th>", html_text(title));
  for (const auto& figure : scene["figures"]) {
    rows += fmt::format("<tr><th scope=\"row\">{}</th>", html_text(figure["label"].get<std::string>()));
    for (const auto& [key, title] : columns) rows += scene_cell(figure, key.c_str());
    rows += "</tr>\n";
  }
  return fmt::format(
      "<table><caption>Figures of this scene</caption>\n<thead><tr>{}</tr></thead>\n<tbody>{}</tbody></table>\n",
      head, rows);
}

// What must be known of a state before its figures are used.
std::string scene_head(const Json& state, const std::string& of) {
  std::string html;
  for (const auto& line : state["head"])
    html += fmt::format("<p class=\"head\">{}{}</p>\n", html_text(of), html_text(line["text"].get<std::string>()));
  return html;
}

std::string scene_picture(const std::vector<StillPicture>& pictures, const std::string& id) {
  for (const auto& one : pictures)
    if (one.id == id)
      return fmt::format("<figure><img id=\"still-{}\" alt=\"{}\" src=\"data:image/png;base64,{}\"></figure>\n",
                         id, html_text(one.title), base64(one.png));
  return "";
}

std::string scene_question(const Json& question) {
  std::string html = "<h3>Question</h3>\n" + scene_paragraphs(question["text"]);
  if (question.contains("answers")) {
    html += "<ol>\n";
    for (const auto& answer : question["answers"])
      html += fmt::format("<li>{}</li>\n", html_text(answer.get<std::string>()));
    return html + "</ol>\n";
  }
  for (const auto& goal : question["goals"])
    html += fmt::format("<p>Asked for: {} {}.</p>\n", html_text(goal["label"].get<std::string>()),
                        html_text(goal["words"].get<std::string>()));
  return html;
}

}  // namespace

std::string scene_picture_id(std::size_t scene, const char* part) {
  return fmt::format("scene-{}-{}", scene + 1, part);
}

std::string still_scenes(const Json& lesson, const std::vector<StillPicture>& pictures) {
  const Json& scenes = lesson["scenes"];
  std::string html = fmt::format("<section id=\"scenes\">\n<h1>{}</h1>\n{}",
                                 html_text(lesson["name"].get<std::string>()), scene_paragraphs(lesson["text"]));
  for (std::size_t k = 0; k < scenes.size(); ++k) {
    const Json& scene = scenes[k];
    html += fmt::format("<h2>Scene {} of {}: {}</h2>\n", k + 1, scenes.size(),
                        html_text(scene["title"].get<std::string>()));
    html += scene_paragraphs(scene["text"]) + scene_head(scene, "") +
            scene_picture(pictures, scene_picture_id(k, "own"));
    if (scene.contains("beside")) {
      const std::string title = scene["beside"]["title"];
      html += fmt::format("<p>Beside it: {}</p>\n", html_text(title)) + scene_head(scene["beside"], title + ": ") +
              scene_picture(pictures, scene_picture_id(k, "beside"));
    }
    html += scene_figures(scene);
    if (!scene.contains("question")) continue;
    html += scene_question(scene["question"]) + "<h3>Answer</h3>\n";
    if (scene["question"].contains("right"))
      html += fmt::format("<p>Right is number {}.</p>\n", scene["question"]["right"].get<int>());
    html += scene_paragraphs(scene["answer"]["text"]);
    if (scene["answer"].contains("state")) html += scene_head(scene["answer"], "Answer: ");
  }
  return html + "</section>\n";
}

}  // namespace gapstrain::cases
