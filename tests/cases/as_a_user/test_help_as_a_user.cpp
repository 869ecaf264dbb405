// What the program says of itself: completion, manual page, citation.
#include "cases/help/method_sources.h"
#include "cases/version.h"
#include "tests/cases/as_a_user/run_program.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <regex>
#include <set>
#include <sstream>

namespace fs = std::filesystem;
using namespace gapstrain;
using namespace gapstrain::tests;

namespace {

const std::vector<std::string> commands{"analyse", "cite",  "compare", "completion", "keys",  "layouts", "lesson",
                                        "man",     "merge", "new",     "page",       "sweep", "trends"};

std::string output_of(const std::vector<std::string>& arguments) {
  const ScratchFolder scratch;
  const Run run = run_program(arguments, scratch.path());
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  return run.out;
}

// What bash offers once `words` are typed, the last one as far as it goes.
std::set<std::string> offered(const fs::path& folder, const std::vector<std::string>& words) {
  std::string typed;
  for (const auto& word : words) typed += " '" + word + "'";
  write_file(folder / ".script", output_of({"completion", "bash"}));
  const std::string command = "cd '" + folder.string() + "' && bash -c 'source .script; COMP_WORDS=(\"$@\"); " +
                              "COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _gapstrain; printf \"%s\\n\" " +
                              "\"${COMPREPLY[@]}\"' bash" + typed + " > .offered 2> .said";
  REQUIRE(std::system(command.c_str()) == 0);
  CHECK(read_file(folder / ".said").empty());
  std::istringstream stream(read_file(folder / ".offered"));
  std::set<std::string> all;
  for (std::string line; std::getline(stream, line);)
    if (!line.empty()) all.insert(line);
  return all;
}

using Words = std::set<std::string>;

}  // namespace

TEST_CASE("bash completes commands, options, values, case files and folders", "[cases][help][as-a-user]") {
  const ScratchFolder scratch;
  for (const char* file : {"dog one.toml", "dog.toml", "dog.png"}) write_file(scratch.path() / file, "");
  fs::create_directory(scratch.path() / "dogs");
  const auto offers = [&](const std::vector<std::string>& words) { return offered(scratch.path(), words); };
  CHECK(offers({"gapstrain", "co"}) == Words{"compare", "completion"});
  Words all(commands.begin(), commands.end());
  all.insert({"--help", "--version"});
  CHECK(offers({"gapstrain", ""}) == all);
  CHECK(offers({"gapstrain", "analyse", "--no"}) == Words{"--no-pictures"});
  CHECK(offers({"gapstrain", "analyse", "do"}) == Words{"dog one.toml", "dog.toml", "dogs"});
  CHECK(offers({"gapstrain", "analyse", "dog.toml", "--out", "d"}) == Words{"dogs"});
  CHECK(offers({"gapstrain", "trends", "--csv", "dog."}) == Words{"dog.toml", "dog.png"});
  CHECK(offers({"gapstrain", "completion", ""}) == Words{"bash", "zsh", "fish"});
  CHECK(offers({"gapstrain", "cite", "--format", "b"}) == Words{"bibtex"});
  CHECK(offers({"gapstrain", "nonsense", ""}).empty());
}

TEST_CASE("every shell is offered every command with its options", "[cases][help][as-a-user]") {
  for (const std::string shell : {"bash", "zsh", "fish"}) {
    const std::string script = output_of({"completion", shell});
    for (const auto& command : commands) {
      INFO(shell << ": " << command);
      CHECK(script.find(command) != std::string::npos);
    }
    CHECK(script.find("no-pictures") != std::string::npos);
  }
  const ScratchFolder scratch;
  const Run wrong = run_program({"completion", "zhs"}, scratch.path());
  CHECK(wrong.status == 2);
  CHECK_THAT(wrong.err, Catch::Contains("found \"zhs\"; allowed: bash, zsh or fish (did you mean \"zsh\"?)"));
}

TEST_CASE("the manual page has all sections, commands and options, and is sound roff",
          "[cases][help][as-a-user]") {
  const std::string page = output_of({"man"});
  for (const char* section :
       {"NAME", "SYNOPSIS", "DESCRIPTION", "OPTIONS", "COMMANDS", "EXIT STATUS", "FILES", "CAUTIONS"}) {
    INFO(section);
    CHECK(page.find(std::string(".SH ") + section + '\n') != std::string::npos);
  }
  for (const auto& command : commands) {
    INFO(command);
    CHECK(page.find(".SS " + command + '\n') != std::string::npos);
    // All options of the command's own help.
    const std::string help = output_of({command, "--help"});
    const std::regex name("--[a-z-]+");
    for (auto found = std::sregex_iterator(help.begin(), help.end(), name); found != std::sregex_iterator();
         ++found)
      if (help.find("  " + found->str()) != std::string::npos) {
        const std::string hyphens = std::regex_replace(found->str(), std::regex("-"), "\\-");
        INFO(hyphens);
        CHECK(page.find(hyphens) != std::string::npos);
      }
  }
  CHECK(page.find("not a medical device") != std::string::npos);
  // Known requests only, and no line that roff would take for another.
  std::istringstream lines(page);
  const std::regex request(R"(\.(TH|SH|SS|TP|PP|nh|ad l)( .*)?)");
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    CHECK_FALSE(line.starts_with('\''));
    if (line.starts_with('.')) CHECK(std::regex_match(line, request));
  }
}

TEST_CASE("a citation names version, commit and licence in three formats", "[cases][help][as-a-user]") {
  for (const std::string format : {"text", "bibtex", "cff"}) {
    const std::string citation = output_of({"cite", "--format", format});
    INFO(format);
    CHECK_THAT(citation, Catch::Contains(cases::version()) && Catch::Contains(cases::commit()) &&
                             Catch::Contains("GPL-3.0-or-later"));
  }
  CHECK(output_of({"cite"}) == output_of({"cite", "--format", "text"}));
  const std::string bibtex = output_of({"cite", "--format", "bibtex"});
  CHECK(std::count(bibtex.begin(), bibtex.end(), '{') == std::count(bibtex.begin(), bibtex.end(), '}'));
  const std::regex entry("@[a-z]+\\{([^,]+),");
  std::set<std::string> keys;
  for (auto found = std::sregex_iterator(bibtex.begin(), bibtex.end(), entry); found != std::sregex_iterator();
       ++found)
    CHECK(keys.insert((*found)[1].str()).second);
  CHECK(keys.size() == cases::method_sources().size() + 1);
}

TEST_CASE("every source that is cited stands in the code that uses it", "[cases][help]") {
  std::string code;  // comments as running text
  for (const char* layer : {"mesh", "solver", "models"})
    for (const auto& file : fs::recursive_directory_iterator(fs::path(GAPSTRAIN_EXAMPLES) / "../.." / layer))
      if (file.path().extension() == ".h" || file.path().extension() == ".cpp") code += read_file(file.path());
  code = std::regex_replace(code, std::regex(R"("?\s*\n\s*(///?|")?\s*)"), " ");
  for (const auto& source : cases::method_sources()) {
    INFO(source.reference);
    CHECK(code.find(source.reference) != std::string::npos);
  }
}
