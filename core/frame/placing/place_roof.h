#pragma once
/// Inside the frame solver: king and queen posts, ridge beam, purlins, rafters, collars. Rafters of a hip roof stand in
/// frame/roofs/hip_roof.h.

#include "frame/placing/layout.h"

namespace bentbook {

/// Whether the plan puts a king post on a bent's tie, wherever the roof lets it.
[[nodiscard]] bool bears_king(const FramePlan& plan, const Layout& layout, int bent);
void place_king_posts(Work& work, Layout& layout);
void place_queen_posts(Work& work, Layout& layout);
void place_ridge(Work& work, Layout& layout);
void place_rafters(Work& work, Layout& layout);

}  // namespace bentbook
