#include "tasks/worker_raising.h"

#include <algorithm>

#include "tasks/frame_fields.h"
#include "tasks/request_fields.h"
#include "tasks/worker_answer.h"

namespace bentbook {
namespace {

/// Whether every index in the frame names something.
bool indices_fit(const Frame& frame) {
  const int timbers = static_cast<int>(frame.timbers.size()), contacts = static_cast<int>(frame.contacts.size());
  const auto joint_fits = [&](const Joint& j) {
    return std::max({j.member, j.receiver, j.carried, j.carrier}) < timbers && j.first_contact + j.contacts <= contacts;
  };
  const auto contact_fits = [&](const ContactFace& c) { return c.joint < static_cast<int>(frame.joints.size()); };
  return std::all_of(frame.joints.begin(), frame.joints.end(), joint_fits) &&
         std::all_of(frame.contacts.begin(), frame.contacts.end(), contact_fits);
}

template <class Request, class Run>
std::string answered(json::FlatReader& reader, const std::shared_ptr<const Frame>& frame, Run run) {
  Request request;
  describe(reader, request);
  request.of.frame = frame;
  if (auto ok = reader.end(); !ok) return write_answer<FoundOrder>(tl::unexpected(ok.error()));
  return run(request);
}

}  // namespace

Result<Frame> read_frame(std::string_view bytes) {
  json::FlatReader reader(bytes, "frame");
  Frame frame;
  describe(reader, frame);
  if (auto ok = reader.end(); !ok) return tl::unexpected(ok.error());
  if (!indices_fit(frame)) return fail(ErrorCode::kSyntax, "frame");
  return frame;
}

std::string RaisingWorker::answer(std::string_view request, std::string_view frame, const Progress& progress) {
  if (frame_ == nullptr || frame != frame_bytes_) {
    Result<Frame> read = read_frame(frame);
    if (!read) return write_answer<FoundOrder>(tl::unexpected(read.error()));
    frame_ = std::make_shared<const Frame>(*std::move(read));
    frame_bytes_ = frame;
  }
  json::FlatReader reader(request, "task");
  int kind = 0;
  reader.integer("kind", kind, 0, static_cast<int>(TaskKind::kSearch));
  switch (static_cast<TaskKind>(kind)) {
    case TaskKind::kCheck:
      return answered<CheckRequest>(reader, frame_,
                                    [&](const CheckRequest& r) { return write_answer<OrderCheck>(tasks_.check(r)); });
    case TaskKind::kExplain:
      return answered<ExplainRequest>(reader, frame_,
                                      [&](const ExplainRequest& r) { return write_answer(tasks_.explain(r)); });
    case TaskKind::kSearch:
      return answered<SearchRequest>(
          reader, frame_, [&](const SearchRequest& r) { return write_answer<FoundOrder>(tasks_.search(r, progress)); });
    case TaskKind::kPattern:
    case TaskKind::kPaper:
      break;
  }
  return write_answer<FoundOrder>(fail(ErrorCode::kSyntax, "task"));
}

}  // namespace bentbook
