#include "cases/answers/page_session.h"

#include "cases/answers/case_edits.h"
#include "cases/answers/drawing_json.h"
#include "cases/answers/opened_answer.h"
#include "cases/answers/state_answer.h"
#include "cases/toml/quantity_text.h"
#include "models/assembly/bodies_archive.h"
#include "models/findings/model_error.h"
#include "solver/bodies/not_elastic_error.h"

#include <fmt/format.h>

#include <chrono>
#include <exception>
#include <utility>

namespace gapstrain::cases {

namespace {

// From fastest to slowest; each is with all before it but for figures, which the last one says.
enum class Detail { read, quick, margins, verdict, whole };

Detail detail_of(const Json& request) {
  const std::string word = request.value("detail", "quick");
  if (word == "read") return Detail::read;
  if (word == "quick") return Detail::quick;
  if (word == "margins") return Detail::margins;
  if (word == "verdict") return Detail::verdict;
  if (word == "whole") return Detail::whole;
  throw RequestError("\"detail\" is read, quick, margins, verdict or whole");
}

class Clock {
 public:
  // Since the last call, or since it was made.
  double milliseconds() {
    const auto now = std::chrono::steady_clock::now();
    const double passed = std::chrono::duration<double, std::milli>(now - last_).count();
    last_ = now;
    return passed;
  }

 private:
  std::chrono::steady_clock::time_point last_ = std::chrono::steady_clock::now();
};

Json fault(const std::string& kind, const std::string& text) { return {{"kind", kind}, {"text", text}}; }

Json fault(const CaseError& error, const std::string& file) {
  Json json = fault("case", error.what());
  json["problems"] = Json::array();
  for (const auto& problem : error.problems)
    json["problems"].push_back({{"file", file},
                                {"line", problem.place.line},
                                {"column", problem.place.column},
                                {"key", problem.key},
                                {"message", problem.message}});
  return json;
}

// What went wrong, as an answer has it. @pre within a catch
Json fault_under_way(const std::string& file) {
  try {
    throw;
  } catch (const CaseError& error) {
    return fault(error, file);
  } catch (const NotPreparedError& error) {
    return fault("not_prepared", error.what());
  } catch (const models::ModelError& error) {
    return fault("model", error.what());
  } catch (const solver::NotElasticError& error) {
    return fault("model", error.what());
  } catch (const RequestError& error) {
    return fault("request", error.what());
  } catch (const QuantityError& error) {
    return fault("request", error.what());
  } catch (const Json::exception& error) {
    return fault("request", error.what());
  } catch (const std::exception& error) {
    return fault("core", error.what());
  }
}

}  // namespace

PageSession::PageSession(std::string pack) : bytes_(std::move(pack)), pack_(read_pack(bytes_)) {
  for (const auto& packed : pack_.variants) {
    Variant& variant = variants_.emplace_back();
    variant.label = packed.label;
    variant.entered = pack_.entered;
    patch(variant.entered, packed.changes);
    variant.bodies = packed.bodies;
  }
  variant(0);
}

PageSession::Variant& PageSession::variant(std::size_t number) {
  if (number >= variants_.size()) throw RequestError(fmt::format("there is no variant number {}", number));
  Variant& chosen = variants_[number];
  if (chosen.prepared == nullptr) {
    chosen.prepared = models::read_bodies(chosen.bodies, models::WholeBodies::left_out);
  }
  return chosen;
}

void PageSession::factor_all(Variant& variant) {
  for (std::size_t b = 0; b < variant.prepared->bodies.size(); ++b)
    if (variant.prepared->bodies[b].body == nullptr) models::factor_body(*variant.prepared, b);
}

bool PageSession::factor_one_more() {
  Variant& first = variants_.front();
  auto& bodies = first.prepared->bodies;
  std::size_t left = 0;
  bool is_done = false;
  for (std::size_t b = 0; b < bodies.size(); ++b) {
    if (bodies[b].body != nullptr) continue;
    if (is_done)
      ++left;
    else
      models::factor_body(*first.prepared, b);
    is_done = true;
  }
  return left > 0;
}

// The state as it was solved last, or another one.
SolvedState& PageSession::state_of(const Json& changed, std::size_t number) {
  Json whole = changed;
  whole["candidate"] = pack_.variants[number].candidates;
  const std::string text = fmt::format("# Written by a page of {}.\n{}", pack_.file, format_toml(table_of(whole)));
  if (last_ != nullptr && last_number_ == number && last_->file().text == text) return *last_;
  last_ = nullptr;
  // Candidates are those of the bodies, and were held against the case when these were made.
  CaseFile file = read_case_tree(pack_.file, text, table_of(changed));
  last_ = std::make_unique<SolvedState>(std::move(file), variant(number).prepared);
  last_number_ = number;
  return *last_;
}

Answer PageSession::opened() {
  ByteBlock bytes;
  Json json{{"name", variant(0).prepared->construct.name}, {"file", pack_.file}, {"variants", Json::array()}};
  for (std::size_t k = 0; k < variants_.size(); ++k)
    json["variants"].push_back({{"label", variants_[k].label}, {"changes", pack_.variants[k].changes}});
  put_parts(json, *variant(0).prepared);
  json["drawing"] = Json::array();
  for (std::size_t k = 0; k < variants_.size(); ++k)
    json["drawing"].push_back(bodies_json(*variant(k).prepared, bytes));
  return {json.dump(-1, ' ', false, Json::error_handler_t::replace), bytes.take(), false};
}

void PageSession::solve(Json& answer, const Json& changed, const Json& request, ByteBlock& bytes) {
  Clock clock;
  answer["ms"] = Json::object();
  const auto lap = [&](const char* stage) { answer["ms"][stage] = clock.milliseconds(); };
  const auto number = answer["variant"].get<std::size_t>();
  SolvedState& state = state_of(changed, number);
  answer["case_text"] = state.file().text;
  put_read(answer, state);
  lap("read");
  const Detail detail = detail_of(request);
  if (detail == Detail::read) return;
  state.assembly();
  lap("assemble");
  factor_all(variant(number));
  lap("factor");
  if (detail == Detail::quick) {
    put_quick(answer, state);
    lap("solve");
  }
  const Json wanted = request.value("fields", Json::array());
  if (detail == Detail::verdict && request.value("piecewise", false)) {
    const std::size_t left = state.judge_one_more();
    lap("findings");
    if (left > 0) {
      answer["left"] = left;
      return;
    }
  }
  if (detail != Detail::quick) {
    const auto extent = detail == Detail::whole     ? models::Extent::whole
                        : detail == Detail::verdict ? models::Extent::verdict
                                                    : models::Extent::margins;
    put_findings(answer, state, extent, detail == Detail::whole && request.value("race", false));
    lap("findings");
  }
  put_fields(answer, state, wanted, bytes);
  lap("fields");
}

Answer PageSession::ask(std::string_view text) {
  Json answer = Json::object();
  ByteBlock bytes;
  try {
    const Json request = Json::parse(text);
    answer["changes"] = request.value("changes", Json::object());
    answer["variant"] = request.value("variant", 0);
    answer["detail"] = request.value("detail", "quick");
    const Json entered = variant(answer["variant"].get<std::size_t>()).entered;
    Json changed = entered;
    patch(changed, answer["changes"]);
    if (request.contains("edit")) {
      changed = edited(entered, changed, request["edit"]);
      answer["changes"] = difference(entered, changed);
    }
    solve(answer, changed, request, bytes);
  } catch (...) {
    answer["error"] = fault_under_way(pack_.file);
  }
  const bool is_fault = answer.contains("error");
  return {answer.dump(-1, ' ', false, Json::error_handler_t::replace), bytes.take(), is_fault};
}

}  // namespace gapstrain::cases
