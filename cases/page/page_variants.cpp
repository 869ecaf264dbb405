#include "cases/page/page_variants.h"

#include "cases/reader/base_case.h"
#include "cases/reader/case_keys.h"
#include "cases/study/case_path.h"
#include "cases/text/leading_number.h"
#include "cases/toml/parse_value.h"
#include "cases/toml/text_file.h"
#include "models/layouts/hole_choices.h"
#include "models/layouts/ready_screws.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace gapstrain::cases {

namespace {

[[noreturn]] void refuse(const std::string& vary, const std::string& what) {
  throw CaseError("--vary " + vary, {{Place{}, "", what}});
}

// As the case file would write it.
Value value_of(const std::string& text, const Key& key) {
  Value value;
  if (key.kind == Kind::number || key.kind == Kind::count) {
    const auto number = leading_number(text);
    if (number && number->length == text.size()) {
      if (key.kind == Kind::count && number->value == std::floor(number->value))
        value.content = static_cast<std::int64_t>(number->value);
      else
        value.content = number->value;
      return value;
    }
  }
  value.content = text;
  return value;
}

std::vector<std::string> split(const std::string& text) {
  std::vector<std::string> parts(1);
  for (const char letter : text)
    if (letter == ',')
      parts.emplace_back();
    else
      parts.back() += letter;
  return parts;
}

}  // namespace

std::vector<models::Screw> screws_for_page(const CaseFile& file) {
  return file.candidates.empty() ? models::screws_of_all_choices(file.construct)
                                 : models::screws_to_make_ready(file.construct, file.candidates);
}

PageCase read_page_case(const std::string& file, const std::vector<std::string>& vary) {
  const WholeCase whole = whole_case(file, read_text(file, "case"));
  PageCase page{read_case_tree(file, whole.text, whole.tree), to_json(whole.tree), {}, false, {}, {}};
  const Json with_candidates = page.tables;
  if (page.tables.contains("candidate")) page.candidates = page.tables["candidate"];
  page.tables.erase("candidate");
  page.first.loads = page.entered.construct.loads.size();
  page.variants.push_back(
      {"as entered", Json::object(), page.entered.construct, screws_for_page(page.entered), {}});
  for (const auto& one : vary) {
    const auto equals = one.find('=');
    if (equals == std::string::npos || equals == 0 || equals + 1 == one.size())
      refuse(one, "a key and its values are wanted, such as plate.standoff=1mm,2mm");
    const std::string path_text = one.substr(0, equals);
    for (const auto& text : split(one.substr(equals + 1))) {
      Table tree = whole.tree;
      try {
        const CasePath path = find_case_path(path_text, case_keys(), tree);
        set_value(tree, path, value_of(text, *path.key));
      } catch (const ValueError& error) {
        refuse(one, error.what());
      }
      const CaseFile varied = read_case_tree(file, whole.text, tree);
      page.variants.push_back({fmt::format("{} = {}", path_text, text),
                               difference(with_candidates, to_json(tree)),
                               varied.construct,
                               screws_for_page(varied),
                               {}});
    }
  }
  return page;
}

PageCase page_case_on(const CaseFile& file, const Table& tables,
                      std::shared_ptr<const models::PreparedBodies> prepared) {
  PageCase page{file, to_json(tables), {}, false, {}, {}};
  page.tables.erase("candidate");
  page.first.loads = file.construct.loads.size();
  page.variants.push_back(
      {"as entered", Json::object(), file.construct, prepared->candidates, std::move(prepared)});
  return page;
}

PageCase page_case_on(const CaseFile& file, std::shared_ptr<const models::PreparedBodies> prepared) {
  return page_case_on(file, parse_file(file.file, file.text), std::move(prepared));
}

PageCase compared_page(const std::vector<CaseFile>& files,
                       const std::vector<std::shared_ptr<const models::PreparedBodies>>& prepared) {
  const auto named_tables = [](const CaseFile& file) {
    Json tables = to_json(parse_file(file.file, file.text));
    tables.erase("candidate");
    tables["name"] = file.construct.name;  // by which they are told apart
    return tables;
  };
  PageCase page{files.front(), named_tables(files.front()), {}, true, {}, {}};
  page.first.loads = files.front().construct.loads.size();
  for (std::size_t k = 0; k < files.size(); ++k)
    page.variants.push_back({files[k].construct.name, difference(page.tables, named_tables(files[k])),
                             files[k].construct, prepared[k]->candidates, prepared[k]});
  return page;
}

}  // namespace gapstrain::cases
