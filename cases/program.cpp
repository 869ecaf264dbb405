#include "cases/program.h"

#include "cases/cautions.h"
#include "cases/commands/analyse.h"
#include "cases/commands/cite.h"
#include "cases/commands/compare.h"
#include "cases/commands/completion.h"
#include "cases/commands/keys.h"
#include "cases/commands/layouts.h"
#include "cases/commands/lesson.h"
#include "cases/commands/man.h"
#include "cases/commands/merge.h"
#include "cases/commands/new.h"
#include "cases/commands/page.h"
#include "cases/commands/sweep.h"
#include "cases/commands/trends.h"
#include "cases/files/output_folder.h"
#include "cases/progress/interrupt.h"
#include "cases/text/words.h"
#include "cases/toml/problems.h"
#include "cases/version.h"
#include "mesh/gmsh_session.h"
#include "models/measures/analyse.h"
#include "models/preparation/memory_need.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <cerrno>
#include <cstdio>
#include <iostream>
#include <new>
#include <stdexcept>
#include <system_error>

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

constexpr const char* no_memory =
    "gapstrain: not enough memory for this calculation; take a smaller mesh.refinement, fewer --threads, or a "
    "machine "
    "with more";

std::string output_fault() {
  return fmt::format("gapstrain: what is printed cannot be written{}; is there room on the disk?",
                     errno == 0 ? "" : fmt::format(": {}", std::generic_category().message(errno)));
}

// Faults end all processes of the command, which may be waiting for this one.
Status run_job(const Job& job, const Ranks& ranks) {
  const auto fail = [&](Status status, std::string message) {
    if (message.ends_with('\n')) message.pop_back();  // a list of problems ends its own last line
    ranks.give_up(static_cast<int>(status), message);
    return status;
  };
  try {
    return job();
  } catch (const Interrupted&) {
    return fail(Status::interrupted, "gapstrain: interrupted; nothing was written");
  } catch (const CaseError& error) {
    return fail(Status::bad_input, error.what());
  } catch (const OutputError& error) {
    return fail(Status::bad_input, fmt::format("gapstrain: {}", error.what()));
  } catch (const models::ModelError& error) {
    return fail(Status::does_not_hold,
                fmt::format("gapstrain: the model does not hold for this case: {}", error.what()));
  } catch (const mesh::MeshError& error) {
    return fail(Status::does_not_hold, fmt::format("gapstrain: this case cannot be meshed: {}", error.what()));
  } catch (const models::TooLargeError& error) {
    return fail(Status::does_not_hold, fmt::format("gapstrain: {}", error.what()));
  } catch (const std::bad_alloc&) {
    return fail(Status::does_not_hold, no_memory);
  } catch (const std::length_error&) {  // a container asked for more than can be addressed
    return fail(Status::does_not_hold, no_memory);
  } catch (const std::exception& error) {
    if (std::ferror(stdout) != 0) return fail(Status::bad_input, output_fault());
    return fail(Status::does_not_hold, fmt::format("gapstrain: the calculation broke off: {}", error.what()));
  }
}

// What was printed may still wait in memory: a full disk is found when the last of it is written.
Status with_output_written(Status status) {
  errno = 0;
  std::cout.flush();
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0 && std::cout) return status;
  fmt::print(stderr, "{}\n", output_fault());
  return Status::bad_input;
}

}  // namespace

Status run_program(int argc, const char* const* argv) try {
  Ranks ranks;
  CLI::App program{"Finite-element analysis of plated long bones: gap strain, plate and screw stress.",
                   "gapstrain"};
  program.set_version_flag("--version", program_and_version());
  program.require_subcommand(1);
  program.footer(fmt::format("{}", fmt::join(cautions, "\n")));
  Job job;
  add_analyse(program, job);
  add_cite(program, job);
  add_compare(program, job);
  add_completion(program, job);
  add_trends(program, job);
  add_keys(program, job);
  add_layouts(program, job, ranks);
  add_lesson(program, job);
  add_man(program, job);
  add_merge(program, job);
  add_new(program, job);
  add_page(program, job);
  add_sweep(program, job, ranks);
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    const bool asked_for_text = program.exit(error, std::cout, std::cerr) == 0;  // --help or --version
    if (asked_for_text) return with_output_written(Status::done);
    fmt::print(stderr, "{}", hint_for_command(program, argc, argv));
    return Status::bad_input;
  }
  // What makes no rows is one process' work.
  const bool is_shared = program.got_subcommand("layouts") || program.got_subcommand("sweep");
  return is_shared || ranks.rank() == 0 ? with_output_written(run_job(job, ranks)) : Status::done;
} catch (const std::exception& error) {  // of starting as one of several processes, or of a stderr that is closed
  static_cast<void>(std::fprintf(stderr, "gapstrain: %s\n", error.what()));
  return Status::bad_input;
}

}  // namespace gapstrain::cases
