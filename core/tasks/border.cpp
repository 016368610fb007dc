#include "tasks/border.h"

#include <array>

#include "tasks/answer_fields.h"
#include "tasks/flat.h"
#include "tasks/frame_fields.h"
#include "tasks/paper_fields.h"
#include "tasks/request_fields.h"
#include "text/hex.h"

namespace bentbook {
namespace {

constexpr std::array<std::string_view, std::variant_size_v<TaskRequest>> kKinds = {"pattern", "check", "explain",
                                                                                   "search", "paper"};
constexpr int kDigits = 16;  ///< of a fingerprint

template <class Answer>
Result<TaskAnswer> read_as(json::FlatReader& reader) {
  Answer answer;
  describe(reader, answer);
  if (auto ok = reader.end(); !ok) return tl::unexpected(ok.error());
  return TaskAnswer(std::move(answer));
}

}  // namespace

std::string task_name(const TaskId& id) {
  std::string name = std::string(kKinds[static_cast<std::size_t>(id.kind)]) + " ";
  put_hex(name, id.of, kDigits);
  return name;
}

std::optional<TaskId> read_task_name(std::string_view name) {
  const std::size_t space = name.find(' ');
  if (space == std::string_view::npos) return std::nullopt;
  for (std::size_t kind = 0; kind < kKinds.size(); ++kind) {
    if (name.substr(0, space) != kKinds[kind]) continue;
    if (const auto of = read_hex(name.substr(space + 1), kDigits)) return TaskId{static_cast<TaskKind>(kind), *of};
  }
  return std::nullopt;
}

std::string write_request(const TaskRequest& request) {
  json::FlatWriter writer;
  int kind = static_cast<int>(request.index());
  writer.integer("kind", kind, 0, 0);
  std::visit([&](const auto& of) { writer.inner("request", described_as_is(of)); }, request);
  return writer.bytes();
}

std::shared_ptr<const Frame> frame_of(const TaskRequest& request) {
  return std::visit(
      [](const auto& of) -> std::shared_ptr<const Frame> {
        if constexpr (requires { of.of.frame; })
          return of.of.frame;
        else
          return nullptr;
      },
      request);
}

std::string write_frame(const Frame& frame) {
  json::FlatWriter writer;
  writer.inner("frame", described_as_is(frame));
  return writer.bytes();
}

Result<TaskAnswer> read_answer(TaskKind kind, std::string_view bytes) {
  json::FlatReader reader(bytes, "answer");
  bool good = false;
  reader.flag("good", good);
  if (!good) {
    Error error;
    describe(reader, error);
    const auto ok = reader.end();
    return tl::unexpected(ok ? error : ok.error());
  }
  switch (kind) {
    case TaskKind::kPattern:
      return read_as<PatternSheet>(reader);
    case TaskKind::kCheck:
      return read_as<OrderCheck>(reader);
    case TaskKind::kExplain:
      return read_as<StepExplained>(reader);
    case TaskKind::kSearch:
      return read_as<FoundOrder>(reader);
    case TaskKind::kPaper:
      return read_as<PaperFile>(reader);
  }
  return fail(ErrorCode::kSyntax, "answer");
}

}  // namespace bentbook
