// One HTML file with the core, its bodies, the case as entered and what is seen without scripts.
#pragma once

#include "cases/answers/page_session.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct StillPicture {
  std::string id, title;
  std::string png;  // the file's bytes
};

struct PageContent {
  std::string title;
  std::string summary;  // as on the screen
  std::string pack;     // write_pack
  Answer opened, first;
  std::vector<StillPicture> pictures;
  std::optional<std::string> pictures_missing;  // why some are
  std::string date;                             // of the run
  bool is_trusted = true;
  std::vector<Answer> beside;  // states shown beside the first: one a variant after the first, or none
  Json comparison;             // of these; null: there is none
  Json cloud;                  // rows of a study, each a point (cloud_json.h); null: there are none
  std::string lesson;          // what lesson_panel.js shows, as JSON; empty: no lesson
  std::string scenes;          // of a lesson, where scripts are off: HTML
};

// A program that was built without core.wasm writes no page. @throw OutputError
void require_page_core();

// @pre the program holds core.wasm (embedded_file)
std::string page_html(const PageContent& content);

}  // namespace gapstrain::cases
