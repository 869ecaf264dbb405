#include "cases/lessons/lesson_file.h"

#include "cases/figures/figure_words.h"
#include "cases/lessons/lesson_keys.h"
#include "cases/lessons/marked_text.h"
#include "cases/lessons/reference_fault.h"
#include "cases/lessons/scene_state.h"
#include "cases/study/named_case.h"
#include "cases/text/words.h"
#include "cases/toml/text_file.h"
#include "models/catalogue/outcome_figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gapstrain::cases {

namespace {

constexpr std::size_t fewest_scenes = 3, fewest_answers = 2;

// A scene's tables, each held against its keys once.
struct SceneSections {
  SceneSections(const Section& scene, const Table& parsed)
      : own(scene),
        beside(scene.section("beside")),
        question(scene.section("question")),
        answer(scene.section("answer")),
        tables(&parsed) {}
  Section own, beside, question, answer;
  const Table* tables;
};

class LessonReader {
 public:
  LessonReader(const Section& file, Lesson& lesson, const Table& tree)
      : file_(&file), lesson_(&lesson), tree_(&tree) {}

  // What a state differs by, before any text is looked at: texts name figures of all states.
  void read_states(SceneStates& states) {
    const auto variants = file_->sections("variant");
    const auto variant_tables = tables_in(*tree_, "variant");
    for (std::size_t k = 0; k < variants.size(); ++k) states.add_variant(variants[k], *variant_tables[k]);
    const auto found = file_->sections("scene");
    const auto tables = tables_in(*tree_, "scene");
    if (file_->has("scene") && found.size() < fewest_scenes)
      file_->complain("scene", fmt::format("a lesson has 3 to 8 scenes, this one has {}", found.size()));
    for (std::size_t k = 0; k < found.size(); ++k) {
      const SceneSections& sections = sections_.emplace_back(found[k], *tables[k]);
      Scene& scene = lesson_->scenes.emplace_back();
      scene.title = sections.own.text("title").value_or("");
      if (const auto state = states.read(sections.own, *tables[k])) scene.own = *state;
      if (const auto* one = table_in(*tables[k], "beside"))
        if (const auto state = states.read(sections.beside, *one))
          scene.beside = {sections.beside.text("title").value_or(""), *state};
      if (sections.answer.present()) scene.answer = SceneAnswer{sections.answer.texts("text"), {}};
      if (sections.answer.has_any({"variant", "without", "case"}))
        scene.answer->state = states.read(sections.answer, *table_in(*tables[k], "answer"));
    }
  }

  void read_words() {
    for (std::size_t k = 0; k < sections_.size(); ++k) read_words(k);
    lesson_->text = file_->texts("text");
    for (std::size_t k = 0; k < lesson_->text.size(); ++k)
      if (lesson_->text[k].find_first_of("{}") != std::string::npos)
        file_->complain("text", k, "has a brace; figures are of scenes, and stand in their texts");
  }

 private:
  void read_words(std::size_t k) {
    const SceneSections& sections = sections_[k];
    Scene& scene = lesson_->scenes[k];
    scene.text = read_text_of(sections.own, "text", k);
    if (sections.answer.present()) scene.answer->text = read_text_of(sections.answer, "text", k);
    if (const auto load = sections.own.text("load")) {
      const auto& loads = scene.own.loads;
      const auto found = std::find(loads.begin(), loads.end(), *load);
      if (found == loads.end())
        sections.own.complain("load", fmt::format("found \"{}\"{}; loads of this scene: {}", visible(*load),
                                                  did_you_mean(*load, loads), join_or(loads)));
      scene.load = static_cast<std::size_t>(found - loads.begin());
    }
    read_look_at(sections.own, scene, k);
    scene.limits = read_limits(sections.own, findings_in(*sections.tables, k, false));
    if (sections.question.present()) scene.question = read_question(sections, k);
    if (sections.question.present() && !sections.answer.present())
      sections.own.complain("answer", "missing; a question is answered: add [scene.answer] with its text");
    if (!sections.question.present() && sections.answer.present())
      sections.own.complain("question", "missing; there is an answer: add [scene.question] with its text");
  }

  std::vector<std::string> read_text_of(const Section& section, std::string_view key, std::size_t scene) const {
    auto texts = section.texts(key);
    for (std::size_t t = 0; t < texts.size(); ++t) {
      try {
        for (const auto& mark : marks_of(texts[t]))
          if (const auto fault = fault_of_reference(mark, lesson_->scenes, scene))
            section.complain(key, t, fmt::format("{{{}}}: {}", visible(mark), *fault));
      } catch (const MarkError& error) {
        section.complain(key, t, error.what());
      }
    }
    return texts;
  }

  void read_look_at(const Section& section, Scene& scene, std::size_t k) const {
    const auto words = section.texts("look_at");
    for (std::size_t w = 0; w < words.size(); ++w) {
      const auto& parts = page_parts();
      const auto part =
          std::find_if(parts.begin(), parts.end(), [&](const PagePart& one) { return one.name == words[w]; });
      if (part != parts.end())
        scene.parts.push_back(*part);
      else if (const auto fault = fault_of_shown_figure(words[w], lesson_->scenes, k))
        section.complain("look_at", w,
                         fmt::format("found \"{}\": no part of the page ({}), and no figure: {}",
                                     visible(words[w]), fmt::join(names_of_page_parts(), ", "), *fault));
      else
        scene.figures.push_back(words[w]);
    }
  }

  // What limits of these tables may name: all figures, and of those with a load or a state the ones that are
  // written and exist.
  std::vector<StudyFinding> findings_in(const Table& tables, std::size_t scene, bool at_hand) const {
    auto findings = known_findings();
    for (const auto* limit : tables_in(tables, "limit"))
      for (const auto& entry : limit->entries) {
        const auto* name = std::get_if<std::string>(&entry.value.content);
        if (entry.key != "finding" || name == nullptr) continue;
        const auto fault = at_hand ? fault_of_shown_figure(*name, lesson_->scenes, scene)
                                   : fault_of_reference(*name, lesson_->scenes, scene);
        if (fault) continue;
        const FigureReference reference = read_reference(*name);
        findings.push_back(
            {*name, reference.over ? "" : models::unit_text(models::find_figure(reference.figure)->unit)});
      }
    return findings;
  }

  SceneQuestion read_question(const SceneSections& sections, std::size_t k) const {
    const Section& section = sections.question;
    SceneQuestion question;
    question.text = read_text_of(section, "text", k);
    question.answers = read_text_of(section, "answers", k);
    question.goals = read_limits(section, findings_in(*table_in(*sections.tables, "question"), k, true));
    if (section.has("answers") == section.has("limit"))
      section.complain("answers", section.has("limit")
                                      ? "given together with [[scene.question.limit]]; remove one of them"
                                      : "missing; give answers to choose from, or a goal as "
                                        "[[scene.question.limit]]");
    if (!section.has("answers")) {
      if (section.has("right")) section.complain("right", "there are no `answers`; remove it or add them");
      return question;
    }
    if (question.answers.size() < fewest_answers) section.complain("answers", "a choice has at least two answers");
    section.require({"right"}, "give the number of the right answer, the first is 1");
    question.right = section.count("right").value_or(0);
    if (question.right > static_cast<int>(question.answers.size()))
      section.complain("right",
                       fmt::format("found {}; there are {} answers", question.right, question.answers.size()));
    return question;
  }

  const Section* file_;
  Lesson* lesson_;
  const Table* tree_;
  std::vector<SceneSections> sections_;
};

}  // namespace

const SceneState* find_state(const std::vector<Scene>& scenes, std::size_t scene,
                             const StateReference& reference) {
  const std::size_t number = reference.scene ? static_cast<std::size_t>(*reference.scene) - 1 : scene;
  if (number >= scenes.size()) return nullptr;
  const Scene& chosen = scenes[number];
  switch (reference.part) {
    case ScenePart::own:
      return &chosen.own;
    case ScenePart::beside:
      return chosen.beside ? &chosen.beside->state : nullptr;
    case ScenePart::answer:
      return chosen.answer && chosen.answer->state ? &*chosen.answer->state : nullptr;
  }
  return nullptr;
}

Lesson read_lesson(const std::filesystem::path& path) {
  Lesson lesson;
  lesson.file = path.string();
  const Table tree = parse_file(lesson.file, read_text(path, "lesson"));
  Reading reading;
  const Section file(tree, lesson_keys(), reading);
  const auto named = read_named_case(file, path.parent_path());
  if (!named) throw CaseError(lesson.file, reading.problems);
  lesson.page = read_page_case(named->path.string(), {});
  SceneStates states(lesson.file, lesson.page, reading);
  LessonReader reader(file, lesson, tree);
  reader.read_states(states);
  // Texts of states that are wrong would be told to name loads and scenes that are not there.
  if (!reading.problems.empty()) throw CaseError(lesson.file, reading.problems);
  reader.read_words();
  if (!reading.problems.empty()) throw CaseError(lesson.file, reading.problems);
  lesson.name = file.text("name").value_or(lesson.page.entered.construct.name);
  lesson.page.first = lesson.scenes.front().own.page;
  lesson.places = reading.places;
  return lesson;
}

}  // namespace gapstrain::cases
