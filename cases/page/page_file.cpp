#include "cases/page/page_file.h"

#include "cases/cautions.h"
#include "cases/files/output_target.h"
#include "cases/files/program_json.h"
#include "cases/page/embedded_files.h"
#include "cases/page/encode.h"
#include "cases/page/figure_trust.h"
#include "cases/page/still_part.h"
#include "cases/version.h"

#include <fmt/format.h>

#include <map>

namespace gapstrain::cases {

namespace {

// Of all files of that ending, in their order.
std::string joined(std::string_view ending, const std::vector<std::string_view>& but) {
  std::string text;
  for (const auto& file : embedded_files())
    if (file.name.ends_with(ending) && std::find(but.begin(), but.end(), file.name) == but.end())
      text += fmt::format("{}\n", file.bytes);
  return text;
}

// No text of a case ends a script.
std::string in_script(std::string_view json) {
  std::string safe;
  for (const char letter : json)
    if (letter == '<')
      safe += "\\u003c";
    else
      safe += letter;
  return safe;
}

std::string packed(std::string_view bytes) { return base64(deflated(bytes)); }

std::string hash_of(std::string_view text) { return "'sha256-" + base64(sha256(text)) + "'"; }

std::string facts(const PageContent& content) {
  Json json{
      {"program", program_json()}, {"date", content.date}, {"cautions", cautions}, {"summary", content.summary}};
  json["opened"] = Json::parse(content.opened.text);
  json["first"] = Json::parse(content.first.text);
  json["first_bytes_at"] = content.opened.bytes.size();  // within first-bytes
  json["figure_trust"] = figure_trust();
  if (!content.comparison.is_null()) json["comparison"] = content.comparison;
  json["beside"] = Json::array();
  std::size_t bytes_at = content.opened.bytes.size() + content.first.bytes.size();
  for (const auto& answer : content.beside) {
    json["beside"].push_back({{"answer", Json::parse(answer.text)}, {"bytes_at", bytes_at}});
    bytes_at += answer.bytes.size();
  }
  json["pictures"] = Json::array();
  for (const auto& picture : content.pictures)
    json["pictures"].push_back({{"id", picture.id}, {"title", picture.title}});
  return in_script(json.dump(-1, ' ', false, Json::error_handler_t::replace));
}

std::string data(const char* type, const char* id, std::string_view text) {
  return fmt::format("<script type=\"{}\" id=\"{}\">{}</script>\n", type, id, text);
}

std::string lesson_data(const PageContent& content) {
  return content.lesson.empty() ? "" : data("application/json", "page-lesson", in_script(content.lesson));
}

std::string all_data(const PageContent& content) {
  const std::string worker = fmt::format("{}\n{}", embedded_file("core_host.js"), embedded_file("core_worker.js"));
  std::string bytes = content.opened.bytes + content.first.bytes;
  for (const auto& answer : content.beside) bytes += answer.bytes;
  return data("application/json", "page-facts", facts(content)) + lesson_data(content) +
         data("text/plain", "core-wasm", packed(embedded_file("core.wasm"))) +
         data("text/plain", "core-pack", packed(content.pack)) + data("text/plain", "first-bytes", packed(bytes)) +
         (content.cloud.is_null() ? "" : data("text/plain", "cloud", packed(content.cloud.dump()))) +
         data("text/plain", "worker-source", packed(worker));
}

}  // namespace

void require_page_core() {
  if (embedded_file("core.wasm").empty())
    throw OutputError(
        "this program was built without cases/page/core/core.wasm, so it can write no page; build it where that "
        "file "
        "is");
}

std::string page_html(const PageContent& content) {
  const std::string style = joined(".css", {});
  const std::string script = "'use strict';\n" + joined(".js", {"core_host.js", "core_worker.js"});
  const std::string policy = fmt::format(
      "default-src 'none'; script-src {} 'wasm-unsafe-eval'; worker-src blob:; style-src {}; img-src data: blob:; "
      "base-uri 'none'; form-action 'none'",
      hash_of(script), hash_of(style));
  const std::map<std::string_view, std::string> parts{
      {"<!--page:policy-->",
       fmt::format("<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">", html_text(policy))},
      {"<!--page:title-->", fmt::format("<title>{}</title>", html_text(content.title))},
      {"<!--page:style-->", "<style>" + style + "</style>"},
      {"<!--page:still-->", content.scenes + still_part(content)},
      {"<!--page:data-->", all_data(content)},
      {"<!--page:script-->", "<script>" + script + "</script>"}};
  std::string html;
  std::string_view page = embedded_file("page.html");
  while (!page.empty()) {
    const auto end = std::min(page.find('\n'), page.size() - 1);
    const std::string_view line = page.substr(0, end + 1);
    page.remove_prefix(end + 1);
    const auto mark = line.find("<!--page:");
    const auto close = mark == std::string_view::npos ? std::string_view::npos : line.find("-->", mark);
    const auto part =
        close == std::string_view::npos ? parts.end() : parts.find(line.substr(mark, close + 3 - mark));
    html += part == parts.end() ? std::string(line) : part->second + "\n";
  }
  return html;
}

}  // namespace gapstrain::cases
