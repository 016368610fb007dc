#pragma once
/// An order of raising as comma-separated values, someone else's or our own. Source: SOURCES.md, "CSV".
///
/// The first line names the columns, in any order; the separator is the comma, semicolon or tab that stands there.
///
// clang-format off
///   | column   | says                                                                                       |
///   |----------|--------------------------------------------------------------------------------------------|
///   | step     | a number; lines of one number are one step, and steps go by their numbers; without such a  |
///   |          | column each line is a step                                                                 |
///   | mark     | a timber, or several with + between them; or `marks`                                       |
///   | day      | empty: 1; lines of one step that give one give the same                                    |
///   | put_up   | names of temporaries put up before the sling comes off, + between them                     |
///   | take_out | …taken out at the end of the step                                                          |
///   | set_first | timbers set before `mark`'s and held until those close on them, in order of the lines     |
///   | held_by  | of those: hands (also where empty), cleat, rope or peg                                     |
///   | later    | two timbers with + between them: the joints between them are fastened after the raising   |
///   | by       | by what the step goes up: hands, tip_up, telehandler, crane, crane_two, gin_pole or poles;  |
///   |          | empty: as the yard has it; lines of one step that give one give the same                   |
// clang-format on
///
/// Columns of other names and lines without any cell are passed over.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "numeric/result.h"
#include "raising/plan.h"

namespace bentbook {

struct OrderCsvTrouble {
  int line = 1;  ///< of the file, from 1
  std::string column;
  Error error;
};

struct OrderCsv {
  std::vector<RaisingStep> steps;
  std::optional<std::vector<JointName>> later;  ///< where there is such a column
  std::vector<int> lines;                       ///< by step: its first line
  std::vector<OrderCsvTrouble> troubles;        ///< in the order of lines; a bad line is left out whole
};

/// Never fails: a file without a readable first line is one trouble and no steps. Reasons: kMissing (the column `mark`;
/// a line that says nothing of timbers, temporaries or joints), kUnexpected, kTooLarge and the like (a number; more
/// than 10 000 steps), kConflict (a step with two days or by two things; a column twice), kSyntax (quotes that do not
/// close, more cells than columns, bytes that are no text, `later` without two different timbers).
[[nodiscard]] OrderCsv read_order_csv(std::string_view bytes);

/// One timber or temporary a line, lines end in CR LF: reading it gives the same steps and joints (but for
/// `done`, and where a name has a + in it). Joints stand with the step that brings the later of their timbers, with the
/// last one where none does; without steps they are left out.
[[nodiscard]] std::string write_order_csv(std::span<const RaisingStep> steps, std::span<const JointName> later = {});

}  // namespace bentbook
