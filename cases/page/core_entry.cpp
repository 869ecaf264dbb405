// The core as a WebAssembly module: plain functions over its memory. Built by cases/page/core_wasm.cmake alone.
#include "cases/answers/page_session.h"
#include "cases/version.h"

#include <cstdint>
#include <cstdlib>
#include <exception>
#include <memory>
#include <string>

namespace gapstrain::cases {

namespace {

struct Core {
  std::unique_ptr<PageSession> session;
  Answer answer;
  std::string version, commit, date;  // of the program that made the page
};

Core& core() {
  static Core only;
  return only;
}

}  // namespace

const char* version() { return core().version.c_str(); }
const char* commit() { return core().commit.c_str(); }
const char* commit_date() { return core().date.c_str(); }
std::string program_and_version() { return "gapstrain " + core().version + " (commit " + core().commit + ')'; }

}  // namespace gapstrain::cases

// NOLINTBEGIN: names and types are the module's
#ifdef __wasm__
#define PAGE_EXPORT(name) extern "C" __attribute__((export_name(#name)))
#else  // for tools that read it
#define PAGE_EXPORT(name) extern "C"
#endif

using gapstrain::cases::core;

PAGE_EXPORT(page_alloc) void* page_alloc(std::uint32_t bytes) { return std::malloc(bytes); }
PAGE_EXPORT(page_free) void page_free(void* bytes) { std::free(bytes); }

// 0: open; 1: the answer says why not.
PAGE_EXPORT(page_open) int page_open(const char* pack, std::uint32_t size) {
  auto& state = core();
  state.answer = {};
  try {
    std::string bytes(pack, size);
    const auto opened = gapstrain::cases::read_pack(bytes);
    state.version = opened.version;
    state.commit = opened.commit;
    state.date = opened.date;
    state.session = std::make_unique<gapstrain::cases::PageSession>(std::move(bytes));
    state.answer.text = "{}";
    return 0;
  } catch (const std::exception& error) {
    state.answer.text = gapstrain::cases::Json{{"error", {{"kind", "core"}, {"text", error.what()}}}}.dump(
        -1, ' ', false, gapstrain::cases::Json::error_handler_t::replace);
    return 1;
  }
}

PAGE_EXPORT(page_ask) int page_ask(const char* request, std::uint32_t size) {
  core().answer = core().session->ask({request, size});
  return core().answer.is_fault ? 1 : 0;
}

// 1: more bodies are to be factored.
PAGE_EXPORT(page_factor) int page_factor() { return core().session->factor_one_more() ? 1 : 0; }

PAGE_EXPORT(page_answer) const char* page_answer() { return core().answer.text.data(); }
PAGE_EXPORT(page_answer_size) std::uint32_t page_answer_size() {
  return static_cast<std::uint32_t>(core().answer.text.size());
}
PAGE_EXPORT(page_answer_bytes) const char* page_answer_bytes() { return core().answer.bytes.data(); }
PAGE_EXPORT(page_answer_bytes_size) std::uint32_t page_answer_bytes_size() {
  return static_cast<std::uint32_t>(core().answer.bytes.size());
}
// NOLINTEND
