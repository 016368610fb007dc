#pragma once
/// The keypad: three slots (feet, inches, fraction), or one, or two for a rise in 12. Digits fill the first two, the
/// fraction is picked on a drawn inch of tape; sign, sum, erase, done; what was typed is read back while it is typed.
/// This is the state, without a window; keypad_panel() draws it.
///
/// A screen opens it on a figure and asks for the outcome each frame:
///
///   if (given(ui, "rafter.span", name, printed)) keypad.open_length("rafter.span", name, span, {min, max});
///   if (const auto v = keypad.take_length("rafter.span")) ...change the book...
///
/// Opening on another figure while one is open finishes the first as Done would, when it reads well.
/// The first digit after opening starts the entry anew; a slot or a tick touched first keeps the other slots.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "measure/fields.h"
#include "measure/unit.h"
#include "ui/input.h"

namespace bentbook::screens {

struct Ui;

enum class Quantity : std::uint8_t { kLength, kSlope, kAngle, kCount };

/// One press on the keypad.
struct Stroke {
  enum class Kind : std::uint8_t {
    kDigit,      ///< value 0..9
    kPoint,      ///< decimal point
    kTick,       ///< value: count of smallest divisions on the inch of tape
    kSlot,       ///< value: slot to go to
    kSign,       ///< change the sign
    kOperator,   ///< value: one of + - * / ( )
    kErase,      ///< the last thing typed; all of it while it is still what was there
    kOperators,  ///< show the operators in the digits' place, or the digits again
    kForm,       ///< value: BareSlope; what stands is said in it
    kNext,       ///< done, and on to the field that follows
    kUsual,      ///< value: which of offered(); it is handed out at once
    kDone,
    kCancel,
  } kind = Kind::kDigit;
  int value = 0;
};

class Keypad {
 public:
  struct Reading {
    std::optional<Length> length;
    std::optional<Slope> slope;
    std::optional<Angle> angle;
    std::optional<std::int64_t> count;
    std::optional<Error> error;  ///< `at` is a byte of entry(), `where` the title
    [[nodiscard]] bool good() const { return !error; }
  };
  struct Outcome {
    std::string key;
    Reading reading;
  };
  /// A value that is usual here or was entered lately, a tap away: how it is shown, and what the tap hands out.
  struct Usual {
    std::string text;
    std::vector<Outcome> gives;
  };

  /// How lengths are entered and echoed: form decides the slots, denominator the tape's smallest division.
  void set_style(const LengthStyle& style) { style_ = style; }
  [[nodiscard]] const LengthStyle& style() const { return style_; }

  /// A negative `min` brings the sign key; the unit of the entry is the slot that is typed into first, and what a
  /// number without a mark means in typed text (metric styles have their own).
  void open_length(std::string_view key, std::string_view title, Length value, LengthEntry range = {});
  /// As open_length, with nothing entered yet.
  void open_length(std::string_view key, std::string_view title, LengthEntry range = {});
  void open_slope(std::string_view key, std::string_view title, const Slope& value);
  void open_angle(std::string_view key, std::string_view title, Angle value, Angle min, Angle max);
  /// `value`, `min` and `max`, and the outcome, count the step's smallest decimals.
  void open_count(std::string_view key, std::string_view title, std::int64_t value, std::int64_t min, std::int64_t max,
                  EntryStep step = {});
  /// Stand above the keys until it is closed or opened on something else.
  void offer(std::vector<Usual> usual) { usual_ = std::move(usual); }
  [[nodiscard]] const std::vector<Usual>& offered() const { return usual_; }
  /// What was entered since the start, the latest first.
  [[nodiscard]] const std::vector<Outcome>& entered() const { return entered_; }
  /// Keys of the page's fields that follow one another; from all but the last, a key leads to the next.
  void set_walk(std::vector<std::string> keys) { walk_ = std::move(keys); }
  [[nodiscard]] bool has_next() const { return !next_key().empty(); }
  /// Once: that key led here, so the keypad is to be opened on it.
  bool take_next(std::string_view key);
  void close();

  [[nodiscard]] bool is_open() const { return open_; }
  [[nodiscard]] bool is_open(std::string_view key) const { return open_ && key_ == key; }
  [[nodiscard]] const std::string& key() const { return key_; }

  /// Key of an outcome that waits to be taken and begins so; "" if there is none.
  [[nodiscard]] std::string waiting(std::string_view prefix) const;
  /// The outcome, once, after Done.
  std::optional<Length> take_length(std::string_view key);
  std::optional<Slope> take_slope(std::string_view key);
  std::optional<Angle> take_angle(std::string_view key);
  std::optional<std::int64_t> take_count(std::string_view key);
  std::optional<Reading> take(std::string_view key);
  /// What stands in the open keypad now, when it reads well and something was typed: lets a drawing follow each digit.
  [[nodiscard]] std::optional<Reading> preview(std::string_view key) const;
  [[nodiscard]] std::optional<Length> preview_length(std::string_view key) const;
  [[nodiscard]] std::optional<Slope> preview_slope(std::string_view key) const;
  [[nodiscard]] std::optional<Angle> preview_angle(std::string_view key) const;

  void press(Stroke stroke);
  /// From a real keyboard. A first printable character changes to one line of free text, read by the same grammar.
  void character(std::uint32_t code_point);
  void set_text(std::string_view text);  ///< whole entry at once (screen reader, paste)

  // What the panel shows.
  enum class SlotKind : std::uint8_t { kFeet, kInches, kFraction, kMm, kMetres, kDegrees, kPercent, kMmPerM, kPlain };
  struct Slot {
    SlotKind kind = SlotKind::kPlain;
    std::string digits;
  };
  [[nodiscard]] const std::string& title() const { return title_; }
  [[nodiscard]] Quantity quantity() const { return quantity_; }
  [[nodiscard]] int slot_count() const { return term_.slot_count; }
  [[nodiscard]] const Slot& slot(int i) const { return term_.slots[static_cast<std::size_t>(i)]; }
  [[nodiscard]] int active_slot() const { return term_.active; }
  [[nodiscard]] bool has_tape() const;
  [[nodiscard]] int tick() const { return term_.tick; }
  [[nodiscard]] int denominator() const { return style_.denominator; }
  [[nodiscard]] BareSlope form() const { return form_; }
  [[nodiscard]] bool takes_sign() const;
  [[nodiscard]] bool takes_sum() const { return quantity_ == Quantity::kLength; }
  [[nodiscard]] bool takes_point() const;
  [[nodiscard]] bool negative() const { return term_.negative; }
  [[nodiscard]] bool fresh() const { return fresh_; }          ///< the next digit starts anew
  [[nodiscard]] bool typing() const { return typing_; }        ///< one line of free text instead of slots
  [[nodiscard]] bool operators() const { return operators_; }  ///< the operators stand in the digits' place
  /// What is being entered as text: the sum so far and the slots, or the free text.
  [[nodiscard]] std::string entry() const;
  [[nodiscard]] const std::string& sum() const { return sum_; }

  [[nodiscard]] Reading reading() const;
  /// How the entry is read, printed in full, and what it comes to where the entry does not say it; "" when it does not
  /// read well.
  [[nodiscard]] std::string echo() const;
  /// The limit that an error of the entry names; "" where it is a length (words/error_words.h).
  [[nodiscard]] std::string limit_text(const Error&) const;
  /// What a number without a mark is read in at this moment: the slot that it goes to, the field's own in typed text.
  [[nodiscard]] SlotKind bare_kind() const;

 private:
  struct Term {
    std::array<Slot, 3> slots;
    int slot_count = 1, active = 0, tick = 0;
    bool negative = false;
  };
  struct Step {  ///< what an operator put aside; erasing it brings this back
    Term term;
    std::size_t sum_size = 0;
  };
  void begin(Quantity, std::string_view key, std::string_view title);
  void lay_slots();
  void show_length(Length value);
  void show_slope(const Slope& value);
  void start_anew();
  void digit(char c);
  void pick_tick(int tick);
  void pick_slot(int slot);
  void apply_operator(char c);
  void erase();
  void pick_form(BareSlope form);
  void change_sign();
  bool finish();
  void pick_usual(std::size_t which);
  void hand_out(Outcome);
  void lead_on();
  [[nodiscard]] std::string next_key() const;
  bool leave_typing();
  void type(std::string_view text);
  [[nodiscard]] Reading read_entry() const;
  void check_range(Reading&) const;
  [[nodiscard]] std::string term_text() const;
  [[nodiscard]] bool term_empty() const;
  [[nodiscard]] bool after_closed() const;
  [[nodiscard]] bool wants_factor() const;
  [[nodiscard]] BareUnit bare() const;

  LengthStyle style_;
  bool open_ = false, typing_ = false, operators_ = false;
  bool fresh_ = true;     ///< nothing was typed since it was opened or its unit changed
  bool chosen_ = false;   ///< a slot was touched: its next digit replaces its figures and keeps the others
  bool signed_ = false;   ///< nothing but the sign was changed: the next digit starts anew behind it
  bool carried_ = false;  ///< what stands is fresh in another unit, but was entered: it is handed out all the same
  std::string key_, title_, typed_, sum_;
  Quantity quantity_ = Quantity::kLength;
  BareSlope form_ = BareSlope::kIn12;
  Term term_;
  std::vector<Step> steps_;
  LengthEntry range_;
  Angle angle_min_, angle_max_;
  std::int64_t count_min_ = 0, count_max_ = 0;
  EntryStep step_;
  Reading opened_;  ///< what it was opened on
  std::vector<Outcome> outcomes_, entered_;
  std::vector<Usual> usual_;
  std::vector<std::string> walk_;
  std::string next_;  ///< the keypad is to be opened on this
};

/// How the open keypad divides an area: the entry with its echo, the keys under the thumb, and what is left to the
/// page. Lying phones get the keys at the thumb's side, from top to bottom.
struct KeypadBoxes {
  Rect strip, keys, page;
  Rect usual{};  ///< no height: none is offered, or the page would be left no room
};
[[nodiscard]] KeypadBoxes keypad_boxes(const Ui&, const Keypad&, Rect area, bool landscape);
/// Draws the open keypad and presses its keys.
void keypad_panel(Ui&, Keypad&, const KeypadBoxes&);

}  // namespace bentbook::screens
