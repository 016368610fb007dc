#pragma once
/// Long work off the frame, as plain values: what is asked and what comes back. A screen asks its platform
/// (ui/platform.h); the desktop works it out in a thread from these very values, the phone in a Worker, where they
/// cross as JSON (border.h).

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <variant>

#include "frame/plan.h"
#include "numeric/result.h"
#include "paper/page.h"
#include "raising/check.h"
#include "raising/plan.h"
#include "raising/search/search.h"
#include "raising/stability/standing.h"
#include "roof/pattern.h"
#include "roof/rafter.h"
#include "tasks/fingerprint.h"
#include "words/strings.h"

namespace bentbook {

/// Called with per mille done, now and then; false stops the work.
using Progress = std::function<bool(int per_mille)>;

// ── What is asked ─────────────────────────────────────────────────────────────────────────────────────────────────

/// The pattern of one side's rafter, true to the millimetre.
struct PatternRequest {
  RafterInput rafter;
  Side side = Side::kLeft;
  Language language = Language::kEn;
  int denominator = 16;  ///< smallest division that its figures are printed with
};

/// A solved frame and what the lead says of its raising.
struct RaisingCase {
  std::shared_ptr<const Frame> frame;
  RaisingPlan plan;
};
struct CheckRequest {
  RaisingCase of;
};
struct ExplainRequest {
  RaisingCase of;
  int step = 0;  ///< index in RaisingPlan::steps
};
struct SearchRequest {
  RaisingCase of;
  std::uint64_t seed = 1;
  int tries = 4000;
  bool further = false;  ///< go on after the first good order
};

/// Pages as a PDF file.
struct PaperRequest {
  std::shared_ptr<const paper::Document> document;
};

// ── What comes back ───────────────────────────────────────────────────────────────────────────────────────────────

struct PatternSheet {
  std::string svg;
};

struct PaperFile {
  std::string pdf;
};

/// One step looked at closely.
struct StepExplained {
  int step = 0;
  StandingCheck standing;         ///< when the sling comes off
  std::vector<Temporary> braces;  ///< with which it would stand, names left empty; none where it stands or none do
};

// ── A task ────────────────────────────────────────────────────────────────────────────────────────────────────────

/// In the order of the alternatives of TaskRequest and TaskAnswer.
enum class TaskKind : std::uint8_t { kPattern, kCheck, kExplain, kSearch, kPaper };
using TaskRequest = std::variant<PatternRequest, CheckRequest, ExplainRequest, SearchRequest, PaperRequest>;
using TaskAnswer = std::variant<PatternSheet, OrderCheck, StepExplained, FoundOrder, PaperFile>;

/// What kind of work, about what.
struct TaskId {
  TaskKind kind = TaskKind::kPattern;
  Fingerprint of = 0;
  friend bool operator==(const TaskId&, const TaskId&) = default;
};

struct Task {
  TaskId id;
  TaskRequest request;  ///< of id.kind
};

/// How far a task is, or how it ended.
struct TaskEvent {
  TaskId id;
  int per_mille = 0;
  std::optional<Result<TaskAnswer>> ended;
};

}  // namespace bentbook
