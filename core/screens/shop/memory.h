#pragma once
/// What the Shop place remembers between frames: what was worked out for a frame and a state of the log, and where the
/// user was. Nothing of it is stored.

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "model/book_model.h"
#include "screens/timber/tape_memory.h"
#include "shop/log/conflicts.h"
#include "shop/workplace.h"
#include "stock/order.h"
#include "ui/platform.h"

namespace bentbook::screens {

struct ShopMemory {
  /// Every timber's steps and how far they are, for one frame, saw and state of the log.
  struct Work {
    std::shared_ptr<const Result<Frame>> of;
    std::string saw;
    std::vector<Rule> rules;
    std::uint64_t turn = 0;  ///< of the log
    std::vector<TimberWork> timbers;
    std::vector<Conflict> conflicts;
  } work;

  /// What is ordered and cut out of what, for one frame and what is said about stock.
  struct Stock {
    std::shared_ptr<const Result<Frame>> of;
    StockPlan plan;
    StockOrder order;
  } stock;

  TapeMemory picture;  ///< of a step
  /// A file as codes: made once, so that what is ticked while they are shown does not make the pieces that were read
  /// worthless.
  struct Codes {
    std::string bytes;
    std::uint64_t turn = 0;           ///< of the log that it was made of
    std::vector<std::string> pieces;  ///< none: there are too many
    bool begun = false;
    std::size_t shown = 0;
    double since_ms = 0;
  } codes;

  /// What the camera sees; a file that came together from its codes waits to be looked at.
  struct Scan {
    std::vector<PlatformEvent> events;  ///< of the camera, not yet looked at
    std::string received;
  } scan;
  /// Rows of a workplace that the user unfolded (true) or folded, by what they are of.
  struct Folded {
    std::string place;
    std::map<std::string, bool> open;
  } folded;
  /// The timber whose cautions were said last, on the card of `step` (empty: on the timber's own page).
  struct Cautioned {
    std::string timber, step;
    bool open = false;
    bool blade_open = false;  ///< what a step's blade adds, where it is folded
  } cautioned;
  std::string stopping;  ///< the timber or its step, "P-A1|slot/a", whose hold was unfolded to be given a reason
  std::string reason;    ///< typed for a hold or a release
};

}  // namespace bentbook::screens
