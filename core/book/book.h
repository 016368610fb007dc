#pragma once
/// The book of one building: everything that the user said about it, each module's own inputs gathered in one plain
/// value. File form in README.md beside this file.

#include <string>
#include <string_view>
#include <vector>

#include "cut/saw.h"
#include "frame/plan.h"
#include "measure/print.h"
#include "raising/plan.h"
#include "roof/plan/roof_plan.h"
#include "roof/rafter.h"
#include "stock/plan.h"

namespace bentbook {

class Fields;

/// A joint with all its measures under a name, to be given to meetings.
struct NamedJoint {
  std::string name;
  JointType type;
  friend bool operator==(const NamedJoint&, const NamedJoint&) = default;
};

/// A note on one timber, by its mark; kept while the timber is gone from the plan.
struct TimberNote {
  std::string mark, text;
  friend bool operator==(const TimberNote&, const TimberNote&) = default;
};

struct Book {
  /// Names the building on every phone that has its book: lower case letters and digits, given once, kept by a shared
  /// file and not by a copy. "": not given yet.
  std::string identity;
  std::string title;
  std::string notes;
  LengthStyle lengths;    ///< form and smallest division that this building is worked in
  std::string saw;        ///< the one in use, by name; "" or unknown: the first
  std::vector<Saw> saws;  ///< copied from the kit when they are chosen: an edit there changes no book
  std::vector<Species> species;
  std::vector<NamedJoint> joints;
  /// False: a list of timbers alone, frame.added; the rest of the plan waits unseen.
  bool framed = true;
  FramePlan frame;
  RafterInput rafter;
  RoofPlan roof;  ///< a roof of any plan; no sides: none was given
  std::vector<TimberNote> timber_notes;
  RaisingPlan raising;
  StockPlan stock;
  std::string kept;  ///< as Kit::kept
  friend bool operator==(const Book& a, const Book& b) {
    return a.identity == b.identity && a.title == b.title && a.notes == b.notes && a.lengths.form == b.lengths.form &&
           a.lengths.denominator == b.lengths.denominator && a.lengths.decimals == b.lengths.decimals &&
           a.saw == b.saw && a.saws == b.saws && a.species == b.species && a.joints == b.joints &&
           a.framed == b.framed && a.frame == b.frame && a.rafter == b.rafter && a.roof == b.roof &&
           a.timber_notes == b.timber_notes && a.raising == b.raising && a.stock == b.stock && a.kept == b.kept;
  }
};

/// Three saws of no maker, the species that framers cut, one frame
/// from four numbers.
[[nodiscard]] Book new_book(std::string_view title, Length span, Length length, Length plate_height, Slope pitch,
                            SizedBy by = SizedBy::kInches);

/// The species that every new book knows: gravity green and at 12 %, green moisture.
/// Source: SOURCES.md, "species".
[[nodiscard]] const std::vector<Species>& common_species();

/// The demo: a small open timber shelter of our own invention, with its own knife plates.
[[nodiscard]] Book demo_book();

/// The saw in use; a hand saw where the book has none.
[[nodiscard]] const Saw& saw_of(const Book& book);

/// As files have it.
void describe(Fields&, Book&);

/// Longest note in bytes; other texts hold 400.
inline constexpr std::size_t kLongestNote = 4000;

}  // namespace bentbook
