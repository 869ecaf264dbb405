#include "cases/program.h"

#include "cases/cautions.h"
#include "cases/commands/analyse.h"
#include "cases/commands/keys.h"
#include "cases/outputs/output_folder.h"
#include "cases/reader/problems.h"
#include "cases/reader/words.h"
#include "cases/version.h"
#include "mesh/gmsh_session.h"
#include "models/findings/analyse.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <iostream>

namespace gapstrain::cases {

namespace {

// The nearest command to a first argument that is none.
std::string hint_for_command(const CLI::App& program, int argc, const char* const* argv) {
  if (argc < 2) return {};
  std::vector<std::string> commands;
  for (const auto* command : program.get_subcommands([](const CLI::App*) { return true; }))
    commands.push_back(command->get_name());
  const std::string first = argv[1];
  if (std::find(commands.begin(), commands.end(), first) != commands.end()) return {};
  const auto nearest = nearest_word(first, commands);
  return nearest ? fmt::format("Did you mean \"{} {}\"?\n", "gapstrain", *nearest) : "";
}

Status run_job(const Job& job) try { return job(); } catch (const CaseError& error) {
  fmt::print(stderr, "{}", error.what());
  return Status::bad_input;
} catch (const OutputError& error) {
  fmt::print(stderr, "gapstrain: {}\n", error.what());
  return Status::bad_input;
} catch (const models::ModelError& error) {
  fmt::print(stderr, "gapstrain: the model does not hold for this case: {}\n", error.what());
  return Status::does_not_hold;
} catch (const mesh::MeshError& error) {
  fmt::print(stderr, "gapstrain: this case cannot be meshed: {}\n", error.what());
  return Status::does_not_hold;
} catch (const std::exception& error) {
  fmt::print(stderr, "gapstrain: the calculation broke off: {}\n", error.what());
  return Status::does_not_hold;
}

}  // namespace

Status run_program(int argc, const char* const* argv) {
  CLI::App program{"Finite-element analysis of plated long bones: gap strain, plate and screw stress.",
                   "gapstrain"};
  program.set_version_flag("--version", fmt::format("gapstrain {}", version));
  program.require_subcommand(1);
  program.footer(fmt::format("{}", fmt::join(cautions, "\n")));
  Job job;
  add_analyse(program, job);
  add_keys(program, job);
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    const bool asked_for_text = program.exit(error, std::cout, std::cerr) == 0;  // --help or --version
    if (asked_for_text) return Status::done;
    fmt::print(stderr, "{}", hint_for_command(program, argc, argv));
    return Status::bad_input;
  }
  return run_job(job);
}

}  // namespace gapstrain::cases
