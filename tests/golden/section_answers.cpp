// What the command line and the files say, byte for byte.

#include <string>
#include <vector>

#include "book/demo.h"
#include "book/kit.h"
#include "command/command.h"
#include "random.h"
#include "rows.h"
#include "tasks/pattern_task.h"

namespace golden {
namespace {

using bentbook::run_command;

/// One command's whole output as one row a line.
void say(Rows& rows, const std::vector<std::string>& words) {
  const std::vector<std::string_view> args(words.begin(), words.end());
  const bentbook::CommandOutput output = run_command(args);
  rows.whole(output.exit_code);
  std::string line;
  for (const char c : output.out + output.err) {
    if (c != '\n') {
      line += c;
      continue;
    }
    rows.word(line).end();
    line.clear();
  }
}

std::string in_64ths(Random& random, std::int64_t least, std::int64_t most) {
  const std::int64_t whole = random.whole(least, most), part = random.whole(1, 63);  // in this order
  return std::to_string(whole) + " " + std::to_string(part) + "/64\"";
}

std::vector<std::string> random_rafter(Random& random) {
  std::vector<std::string> words{"rafter",
                                 "--span",
                                 in_64ths(random, 100, 400),
                                 "--pitch",
                                 in_64ths(random, 3, 18) + ":12",
                                 "--depth",
                                 in_64ths(random, 5, 12),
                                 "--overhang",
                                 in_64ths(random, 10, 40)};
  const auto add = [&](const char* option, const std::string& value) {
    words.push_back(option);
    words.push_back(value);
  };
  if (random.whole(0, 1) == 0) add("--seat", in_64ths(random, 1, 4));
  const std::int64_t peak = random.whole(0, 2);
  if (peak == 1) add("--ridge", in_64ths(random, 1, 3));
  if (peak == 2) add("--ridge-beam", in_64ths(random, 4, 9));
  if (random.whole(0, 2) == 0) add("--pitch-right", in_64ths(random, 3, 18) + ":12");
  if (random.whole(0, 2) == 0) add("--load", std::to_string(random.whole(10, 90)));
  const char* const tails[] = {"plumb", "square", "level"};
  add("--tail", tails[random.whole(0, 2)]);
  if (random.whole(0, 3) == 0) add("--unit", "mm");
  if (random.whole(0, 1) == 0) add("--lang", "es");
  if (random.whole(0, 3) != 0) words.push_back("--json");
  return words;
}

}  // namespace

void answer_rows(Rows& rows) {
  Random random(0xa45e);
  for (int i = 0; i < 400; ++i) say(rows, random_rafter(random));
  for (int i = 0; i < 400; ++i) {
    std::vector<std::string> words{"angle",
                                   "--pitch",
                                   in_64ths(random, 1, 24) + ":12",
                                   "--depth",
                                   in_64ths(random, 2, 12),
                                   "--breadth",
                                   in_64ths(random, 2, 12),
                                   "--reach",
                                   in_64ths(random, 2, 12),
                                   "--scale-step",
                                   random.whole(0, 1) == 0 ? "1" : "0.5"};
    if (random.whole(0, 1) == 0) words.push_back("--reads-90");
    if (random.whole(0, 3) != 0) words.push_back("--json");
    say(rows, words);
    say(rows, {"mitre", "--between", std::to_string(random.whole(5, 175)), "--depth-a", in_64ths(random, 2, 12),
               "--depth-b", in_64ths(random, 2, 12), "--json"});
    say(rows, {"flip", "--gap", "1/" + std::to_string(random.whole(8, 64)), "--depth", in_64ths(random, 2, 12)});
  }
}

void file_rows(Rows& rows) {
  rows.word(bentbook::write_kit(bentbook::first_kit())).end();
  rows.word(bentbook::write_places(bentbook::demo_places())).end();
  for (const bool right : {false, true}) {
    const auto sheet =
        bentbook::run_pattern({bentbook::demo_places().rafter, right ? bentbook::Side::kRight : bentbook::Side::kLeft,
                               right ? bentbook::Language::kEs : bentbook::Language::kEn, 16},
                              [](int) { return true; });
    rows.word(sheet ? sheet->svg : "refused").end();
  }
}

}  // namespace golden
