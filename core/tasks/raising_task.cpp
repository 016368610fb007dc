#include "tasks/raising_task.h"

#include <algorithm>
#include <utility>

#include "book/book_file.h"
#include "book/json_io.h"
#include "model/book_model.h"
#include "numeric/sorting.h"
#include "tasks/raising_json.h"

namespace bentbook {

static void describe(Fields& fields, StepExplained& e) {
  fields.integer("step", e.step, 0, 100'000'000);
  fields.object("standing", e.standing);
  fields.list("braces", e.braces, kMostRaisingThings);
}

namespace {

struct Request {
  std::string task;
  int step = 0, tries = 4000;
  std::int64_t seed = 1;
  bool further = false;
};

template <class Value>
std::string written(Value value) {
  json::Document document(rapidjson::kObjectType);
  json::Writer writer(document, document.GetAllocator());
  describe(writer, value);
  return json_text(document);
}

template <class Value>
Result<Value> read(std::string_view bytes) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, "answer"); !ok) return tl::unexpected(ok.error());
  Value value;
  Error error;
  json::Reader reader(document, error);
  describe(reader, value);
  if (!error.where.empty()) return fail(ErrorCode::kSyntax, "answer");
  return value;
}

std::string request_of(std::string_view task, const Book& book, const std::string& more) {
  std::string out = R"({"task":")";
  out += task;
  out += '"';
  out += more;
  out += R"(,"book":)" + write_book(book) + "}";
  return out;
}

}  // namespace

struct RaisingTasks::Kept {
  Book book;  ///< what the frame was solved of
  std::unique_ptr<Frame> frame;
  std::unique_ptr<Blocking> blocking;
  std::unique_ptr<RaisingPlan> judged;  ///< the judge's own
  std::unique_ptr<Judge> judge;
  std::optional<OrderCheck> check;
  RaisingPlan checked;  ///< the plan that `check` is of

  Result<void> take(Book next) {
    const bool same_frame = frame != nullptr && next.frame == book.frame && next.framed == book.framed;
    if (!same_frame) {
      BookModel model = solve(next);
      if (!*model.frame) return tl::unexpected(model.frame->error());
      judge.reset();
      check.reset();
      frame = std::make_unique<Frame>(**model.frame);
      blocking = std::make_unique<Blocking>(*frame);
    }
    if (judge == nullptr || !same_judgement(*judged, next.raising)) {
      judge.reset();
      check.reset();
      judged = std::make_unique<RaisingPlan>(next.raising);
      judge = make_judge(*frame, *judged);
    }
    book = std::move(next);
    return {};
  }

  const OrderCheck& checked_order() {
    const RaisingPlan& plan = book.raising;
    check = check ? check_order_again(*frame, plan, *judge, *blocking, *check, checked)
                  : check_order(*frame, plan, *judge, *blocking);
    checked = plan;
    return *check;
  }

  Result<StepExplained> explain(int index) {
    const OrderCheck& order = checked_order();
    if (index < 0 || static_cast<std::size_t>(index) >= order.steps.size()) return fail(ErrorCode::kTooLarge, "step");
    const StepCheck& step = order.steps[static_cast<std::size_t>(index)];
    StepExplained out;
    out.step = index;
    std::vector<int> timbers = step.stood;
    timbers.insert(timbers.end(), step.timbers.begin(), step.timbers.end());
    sort_up(timbers);
    out.standing = judge->check(timbers, step.temporaries, step.timbers, StandingDepth::kExplain);
    out.standing.hangs_on.clear();
    if (out.standing.stands()) return out;
    for (const int t : judge->propose(timbers, step.temporaries)) {
      out.braces.push_back(judge->temporaries()[static_cast<std::size_t>(t)]);
      out.braces.back().name.clear();
    }
    return out;
  }

  FoundOrder search(const Request& request, const Progress& progress) {
    SearchOptions options;
    options.seed = static_cast<std::uint64_t>(request.seed);
    options.steps = options.improving = request.tries;
    options.improve = request.further;
    // A judge of its own: it numbers what it proposes.
    const std::unique_ptr<Judge> own = make_judge(*frame, book.raising);
    return search_order(*frame, book.raising, *own, *blocking, options, [&](const SearchProgress& p) {
      const int part = p.found ? 500 + 500 * std::min(p.tried, options.steps) / std::max(1, options.steps)
                               : 500 * p.placed / std::max(1, p.pieces);
      return !progress || progress(std::min(part, 999));
    });
  }
};

RaisingTasks::RaisingTasks() : kept_(std::make_unique<Kept>()) {}
RaisingTasks::~RaisingTasks() = default;

bool RaisingTasks::takes(std::string_view request) { return request.starts_with(R"({"task":"raise_)"); }

Result<std::string> RaisingTasks::run(std::string_view bytes, const Progress& progress) {
  json::Document document;
  if (auto ok = parse_json_object(document, bytes, "task"); !ok) return tl::unexpected(ok.error());
  Request request;
  Error error;
  json::Reader reader(document, error);
  Fields& fields = reader;
  fields.text("task", request.task);
  fields.integer("step", request.step, 0, 100'000'000);
  fields.integer("tries", request.tries, 1, 100'000'000);
  fields.flag("further", request.further);
  fields.whole("seed", request.seed, 0, std::int64_t{1} << 52);
  if (!error.where.empty()) return tl::unexpected(error);
  const json::Value* told = json_member(document, "book");
  if (told == nullptr) return fail(ErrorCode::kMissing, "book");
  auto book = read_book(json_text(*told));
  if (!book) return tl::unexpected(book.error());
  if (auto taken = kept_->take(std::move(*book)); !taken) return tl::unexpected(taken.error());
  if (request.task == "raise_check") return written(kept_->checked_order());
  if (request.task == "raise_search") return written(kept_->search(request, progress));
  if (request.task != "raise_explain") return fail(ErrorCode::kUnknownOption, "task");
  auto explained = kept_->explain(request.step);
  if (!explained) return tl::unexpected(explained.error());
  return written(std::move(*explained));
}

std::string raise_check_request(const Book& book) { return request_of("raise_check", book, {}); }
std::string raise_explain_request(const Book& book, int step) {
  return request_of("raise_explain", book, R"(,"step":)" + std::to_string(step));
}
std::string raise_search_request(const Book& book, std::uint64_t seed, int tries, bool further) {
  return request_of("raise_search", book,
                    R"(,"seed":)" + std::to_string(seed) + R"(,"tries":)" + std::to_string(tries) + R"(,"further":)" +
                        (further ? "true" : "false"));
}

Result<OrderCheck> read_order_check(std::string_view answer) { return read<OrderCheck>(answer); }
Result<StepExplained> read_step_explained(std::string_view answer) { return read<StepExplained>(answer); }
Result<FoundOrder> read_found_order(std::string_view answer) { return read<FoundOrder>(answer); }

}  // namespace bentbook
