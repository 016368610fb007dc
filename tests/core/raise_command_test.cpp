// bentbook raise, on files in memory.

#include <catch_amalgamated.hpp>
#include <map>

#include "book/book.h"
#include "book/book_file.h"
#include "command/raise.h"
#include "frame/facts.h"
#include "model/book_model.h"
#include "words/raise_text.h"

using namespace bentbook;

namespace {

struct Disk {
  std::map<std::string, std::string, std::less<>> files;
  Files hands() {
    return {[this](std::string_view path) -> std::optional<std::string> {
              const auto found = files.find(path);
              return found == files.end() ? std::nullopt : std::optional(found->second);
            },
            [this](std::string_view path, std::string_view bytes) {
              files[std::string(path)] = bytes;
              return true;
            }};
  }
  CommandOutput run(
      std::vector<std::string_view> args, const Seconds& seconds = [] { return 0.0; }) {
    return raise_command(args, hands(), seconds);
  }
};

Book small_book() {
  Book book =
      new_book("Cart shed", Length::feet(12), Length::feet(10), Length::feet(8), Slope::in_12(Length::inches(8)));
  book.raising.crew.people = 30;
  return book;
}

bool has(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

std::size_t longest_line(std::string_view text) {
  std::size_t most = 0, now = 0;
  for (const char c : text) {
    if (c == '\n')
      now = 0;
    else if ((static_cast<unsigned char>(c) & 0xC0) != 0x80)
      most = std::max(most, ++now);
  }
  return most;
}

}  // namespace

TEST_CASE("lines are wrapped at eighty characters, counted as characters", "[raise]") {
  CHECK(wrapped("  ", "one two") == "  one two\n");
  CHECK(wrapped("A: ", "") == "A: \n");
  std::string words, accents;
  for (int i = 0; i < 60; ++i) words += "word ", accents += "ñandú ";
  CHECK(longest_line(wrapped("Label ", words)) == 80);
  CHECK(longest_line(wrapped("", accents)) == 77);  // thirteen words of five and their blanks
  const std::string long_word(100, 'x');
  CHECK(wrapped("  ", "a " + long_word + " b") == "  a\n  " + long_word + "\n  b\n");
}

// Found orders and good ones: tests/cli/cli_checks.py, by the release build.
TEST_CASE("raise text and order: the book's own, as text and as a list", "[raise]") {
  Disk disk;
  Book book = small_book();
  RaisingStep first, second;
  first.marks = {"P-A1"};
  second.marks = {"P-E1", "T-1", "K-C1"};
  second.put_up = {"T1"};
  second.day = 2;
  book.raising.steps = {first, second};
  disk.files["shed"] = write_book(book);
  for (const char* language : {"en", "es"}) {
    const std::string text = disk.run({"text", "shed", "--lang", language}).out;
    CHECK(longest_line(text) <= 80);
    CHECK(has(text, language == std::string_view("en") ? "has not been checked" : "no está revisado"));
    CHECK(has(text, "P-E1, T-1, K-C1"));
    CHECK(!has(text, "{"));
  }
  CHECK(disk.run({"order", "shed", "--out", "order.csv"}).exit_code == 0);
  CHECK(disk.run({"order", "shed"}).out == disk.files["order.csv"]);
}

TEST_CASE("raise brief: a line a step, then each temporary with its length, from when to when", "[raise]") {
  Disk disk;
  Book book = small_book();
  RaisingStep post, plain;
  post.marks = {"P-A1"};
  post.put_up = {"T1"};
  plain.marks = {"P-E1"};
  plain.take_out = {"T1"};
  book.raising.steps = {post, plain};
  // From 6 ft up the post to 8 ft beside it: 10 ft long (3, 4, 5).
  Temporary brace;
  brace.name = "T1";
  brace.kind = TemporaryKind::kDiagonal;
  const BookModel model = solve(book);
  const Frame& frame = **model.frame;
  const Timber& timber = frame.timbers[static_cast<std::size_t>(timber_by_mark(frame, "P-A1"))];
  brace.from = {"P-A1", Length::feet(6)};
  const Vec3 foot = timber.at.origin;
  brace.ground_x = Length::from_inches(foot.x - 96);
  brace.ground_y = Length::from_inches(foot.y);
  brace.ground_z = Length::from_inches(foot.z);
  book.raising.temporaries = {brace};
  book.raising.later = {{"T-1", "P-A1"}};
  book.raising.crew.on_lines = "the two tall ones";
  disk.files["shed"] = write_book(book);
  const std::string text = disk.run({"brief", "shed"}).out;
  CHECK(has(text, "Fastened after") == false);  // nothing is fastened with the steps here
  CHECK(has(text, "On the lines and ropes: the two tall ones."));
  CHECK(longest_line(text) <= 80);
  CHECK(has(text, "  1  Post P-A1"));
  CHECK(has(text, "+T1"));
  CHECK(has(text, "−T1"));
  CHECK(has(text, "most at once 1"));
  std::string words;  // as they are said, whatever line they came on
  for (const char c : text)
    if (const char said = c == '\n' ? ' ' : c; said != ' ' || words.empty() || words.back() != ' ') words += said;
  CHECK(has(words, "to the ground, 8' 0\" out toward the left wall."));
  CHECK(has(words, "10' 0\" long"));
  CHECK(has(words, "step 1 to 2"));
  CHECK(has(text, "competent person"));
}

TEST_CASE("raise: what the crew can't pick is told with its figures", "[raise]") {
  Book book = small_book();
  const BookModel model = solve(book);
  REQUIRE(*model.frame);
  FoundOrder found;
  found.plan.crew.people = 2;
  Voice voice;
  voice.marks = Marks::kAscii;
  found.stuck.push_back({{"P-A1", "P-E1", "T-1"}, StuckReason::kCantPick, {}});
  const std::string text = found_order_text(found, **model.frame, voice);
  CHECK(has(text, "P-A1, P-E1, T-1"));
  CHECK(has(text, "people needed, 2 on hand"));
  CHECK(longest_line(text) <= 80);
  // With a crane: its own figures, here a chart that ends at 10 ft.
  found.plan.crane.present = true;
  found.plan.crane.chart = {{Length::feet(10), Weight::pounds(2000)}};
  CHECK(has(found_order_text(found, **model.frame, voice), "10' 0\""));
}

TEST_CASE("raise check: a bad order is told with its first fault", "[raise]") {
  Disk disk;
  disk.files["shed"] = write_book(small_book());
  disk.files["order.csv"] = "step,mark\r\n1,T-1\r\n2,P-A1\r\n3,P-Z9\r\n";
  const CommandOutput bad = disk.run({"check", "shed", "order.csv"});
  CHECK(bad.exit_code == 2);
  CHECK(has(bad.out, "NOT GOOD. The first step with a fault is step 1."));
  CHECK(has(bad.out, "P-Z9"));
  disk.files["order.csv"] = "step,mark\r\n1,\"T-1\r\n";
  const CommandOutput broken = disk.run({"check", "shed", "order.csv"});
  CHECK(broken.exit_code == 2);
  CHECK(has(broken.err, "order.csv, line 2, "));
  CHECK(broken.out.empty());
}

TEST_CASE("raise: time is the caller's, bad words are refused", "[raise]") {
  Disk disk;
  disk.files["shed"] = write_book(small_book());
  double now = 0;
  const CommandOutput stopped = disk.run({"shed", "--seconds", "1", "--json"}, [&] { return now += 0.4; });
  CHECK(has(stopped.out, R"("stopped":true)"));
  CHECK(disk.run({}).exit_code == 2);
  CHECK(disk.run({"help"}).exit_code == 0);
  CHECK(disk.run({"nowhere"}).exit_code == 2);
  CHECK(disk.run({"check"}).exit_code == 2);
  CHECK(disk.run({"check", "shed", "nowhere.csv"}).exit_code == 2);
  for (const char* wrong : {"--seed=x", "--seed=", "--seconds=0", "--seconds=99999999", "--tries=-1", "--often=2"})
    CHECK(disk.run({"shed", wrong}).exit_code == 2);
}
