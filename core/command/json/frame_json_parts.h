#pragma once
/// Inside frame_json: what members and sheets have in common.

#include "command/json/json_out.h"
#include "frame/keys.h"
#include "frame/sheet/layout_marks.h"
#include "words/frame_words.h"

namespace bentbook::frame_json {

void vector(JsonOut& out, std::string_view key, Vec3 v);
void points(JsonOut& out, std::string_view key, std::span<const Vec2> points);
void cut_plane(JsonOut& out, const CutPlane& plane);
void pocket(JsonOut& out, const Pocket& pocket);
void feature(JsonOut& out, const Frame& frame, const Timber& timber, int self, const Feature& feature);
void warnings(JsonOut& out, std::span<const TimberWarning> warnings, const Voice& voice);
void findings(JsonOut& out, const Frame& frame, const Voice& voice);
void waste(JsonOut& out, Waste waste);
/// mark, kind, section and the wood.
void head(JsonOut& out, const Timber& timber);

}  // namespace bentbook::frame_json
