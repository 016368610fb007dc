#pragma once
/// What stands, what comes and on which way, moving; how it can give way; temporary braces as lines.

#include "screens/frame/solid_view.h"
#include "screens/raising/form.h"

namespace bentbook::screens {

struct RaisingPicture {
  std::vector<int> standing, coming;  ///< indices in Frame::timbers
  std::vector<Temporary> temporaries;
  const Entry* entry = nullptr;  ///< how it comes in
  const Mode* mode = nullptr;    ///< a motion that nothing holds back: shown instead
};
/// Draws it over the column's width, so high.
void raising_picture(Context&, const ShownFrame&, ItemKey key, float height, const RaisingPicture&);
/// The keys that turn it, for whom dragging is hard, at both ends of the column; what is left between them.
[[nodiscard]] Rect turn_keys(Context&, ItemKey key, float height);

/// By part of the scene: how far what comes is from its place when `share` of the way is behind it.
[[nodiscard]] std::vector<render::PartMotion> coming_motions(const std::vector<int>& parts, const RaisingPicture&,
                                                             double share);

}  // namespace bentbook::screens
