#include "cases/help/manual_page.h"

#include "cases/cautions.h"
#include "cases/help/exit_statuses.h"
#include "cases/version.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

// Text as roff prints it: with its backslashes and hyphens, and no line of it taken for a request.
std::string roff(std::string_view text) {
  std::string safe;
  if (text.starts_with('.') || text.starts_with('\'')) safe = "\\&";
  for (const char c : text) {
    if (c == '\\')
      safe += "\\e";
    else if (c == '-')
      safe += "\\-";
    else
      safe.push_back(c);
  }
  return safe;
}

std::string heading(std::string_view title) { return fmt::format(".SH {}\n", title); }

// A term with what it means, indented below it. @param term roff
std::string entry(const std::string& term, std::string_view meaning) {
  return fmt::format(".TP\n{}\n{}\n", term, roff(meaning));
}

std::string bold(std::string_view text) { return fmt::format("\\fB{}\\fR", roff(text)); }
std::string italic(std::string_view text) { return fmt::format("\\fI{}\\fR", roff(text)); }

std::string term(const OptionHelp& option) {
  if (option.is_argument) return italic(option.value) + (option.is_repeated ? " ..." : "");
  return option.value.empty() ? bold(option.name) : bold(option.name) + " " + italic(option.value);
}

std::string options_text(const std::vector<OptionHelp>& options) {
  std::string text;
  for (const auto& option : options) text += entry(term(option), option.meaning + '.');
  return text;
}

// "gapstrain analyse [OPTIONS] CASE.toml".
std::string synopsis(const ProgramHelp& program, const CommandHelp& command) {
  std::string line = bold(program.name) + ' ' + bold(command.name) + " [" + italic("OPTIONS") + ']';
  for (const auto& option : command.options)
    if (option.is_argument) line += ' ' + term(option);
  return line;
}

std::string commands_text(const ProgramHelp& program) {
  std::string text;
  for (const auto& command : program.commands) {
    text += fmt::format(".SS {}\n{}\n.PP\n{}.\n", roff(command.name), synopsis(program, command),
                        roff(command.meaning));
    text += options_text(command.options);
    for (const auto& remark : command.remarks) text += ".PP\n" + roff(remark) + '\n';
  }
  return text;
}

struct File {
  std::string_view name, meaning;
};

constexpr std::array<File, 5> told_files{{
    {"CASE.toml", "A case: bone, plate, screws, fracture, loads. Its keys: gapstrain keys."},
    {"STUDY.toml", "A study: a case and what is varied in it. Its keys: gapstrain keys --study."},
    {"findings.json",
     "All figures of an analysis with the meaning of each key (gapstrain keys --findings), its evidence and the "
     "program "
     "that made it; beside it tables, texts, fields and pictures."},
    {"rows.csv",
     "One construct a row, of layouts and sweep. Its columns: gapstrain keys --rows. While rows are missing it is "
     "named "
     "rows.csv.part."},
    {"run.json", "Which study, which part of it and which program a folder's rows are of."},
}};

}  // namespace

std::string manual_page(const ProgramHelp& program) {
  std::string page = fmt::format(".TH {} 1 \"{}\" \"{}\" \"User Commands\"\n.nh\n.ad l\n", "GAPSTRAIN",
                                 roff(commit_date()), roff(program_and_version()));
  page +=
      heading("NAME") + fmt::format("{} \\- {}\n", program.name, "finite-element analysis of plated long bones");
  page += heading("SYNOPSIS") + fmt::format("{} {} [{}] [{}]\n", bold(program.name), italic("COMMAND"),
                                            italic("OPTIONS"), italic("FILES"));
  page += heading("DESCRIPTION") + roff(program.meaning) + '\n' +
          ".PP\nA case file goes in; a finite\\-element analysis of plate, screws and bone runs in seconds; a "
          "summary, "
          "tables, field files and pictures come out. No display is needed.\n";
  page += heading("OPTIONS") + options_text(program.options);
  page += heading("COMMANDS") + commands_text(program);
  page += heading("EXIT STATUS");
  for (const auto& [status, meaning] : exit_statuses)
    page += entry(bold(fmt::to_string(static_cast<int>(status))), meaning);
  page += heading("FILES");
  for (const auto& file : told_files) page += entry(italic(file.name), file.meaning);
  page += heading("CAUTIONS");
  for (const auto& caution : cautions) page += roff(caution) + "\n.PP\n";
  page += heading("SEE ALSO") +
          "How to cite the program and the sources of its method: " + bold("gapstrain cite") + ".\n";
  return page;
}

}  // namespace gapstrain::cases
