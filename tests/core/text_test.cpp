// Bytes and characters: UTF-8, hexadecimal digits, checksums, records of a list, JSON, XML.

#include <catch_amalgamated.hpp>

#include "text/crc32.h"
#include "text/csv.h"
#include "text/hex.h"
#include "text/invisible.h"
#include "text/json_writer.h"
#include "text/print_fixed.h"
#include "text/utf8.h"
#include "text/xml_text.h"

using namespace bentbook;

TEST_CASE("characters at the edges of what UTF-8 has", "[text]") {
  // RFC 3629, section 3: the first and the last code point of each length.
  struct Edge {
    std::uint32_t code;
    std::string_view bytes;
  };
  for (const auto& [code, bytes] :
       {Edge{0x7F, "\x7F"}, Edge{0x80, "\xC2\x80"}, Edge{0x7FF, "\xDF\xBF"}, Edge{0x800, "\xE0\xA0\x80"},
        Edge{0xD7FF, "\xED\x9F\xBF"}, Edge{0xE000, "\xEE\x80\x80"}, Edge{0xFFFF, "\xEF\xBF\xBF"},
        Edge{0x10000, "\xF0\x90\x80\x80"}, Edge{0x10FFFF, "\xF4\x8F\xBF\xBF"}}) {
    CHECK(utf8(code) == bytes);
    CHECK(code_point(bytes) == code);
    CHECK(character_at(bytes, 0) == bytes.size());
    CHECK(count_characters(bytes) == 1);
  }
  // Section 7, examples: "A≢Α." and "日本語".
  CHECK(utf8(0x41) + utf8(0x2262) + utf8(0x391) + utf8(0x2E) == "\x41\xE2\x89\xA2\xCE\x91\x2E");
  CHECK(count_characters("\xE6\x97\xA5\xE6\x9C\xAC\xE8\xAA\x9E") == 3);
  for (const std::uint32_t none : {0xD800U, 0xDFFFU, 0x110000U}) CHECK(utf8(none).empty());
}

TEST_CASE("bytes that are no UTF-8", "[text]") {
  // RFC 3629, sections 3, 4 and 10: loose and missing bytes, more bytes than needed, surrogates, past the last.
  for (const std::string_view bad :
       {"\x80", "\xBF", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2\x41", "\xE0\x80\x80", "\xE0\x9F\xBF", "\xE2\x80",
        "\xED\xA0\x80", "\xED\xBF\xBF", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFE", "\xFF"}) {
    CHECK(character_at(bad, 0) == 0);
    CHECK(!is_text(bad));
  }
}

TEST_CASE("what a mark may hold", "[text]") {
  for (const char* good : {"", "P-A1", "Íñigo", "\xC2\xA0", "\xE2\x80\x9C", "\xF0\x9F\xAA\xB5", "\xF4\x8F\xBF\xBF"})
    CHECK(is_text(good));
  for (const char* control : {"\t", "a\nb", "\x1F", "\x7F", "\xC2\x80", "\xC2\x85", "\xC2\x9F"})
    CHECK(!is_text(control));
}

TEST_CASE("a text is walked and shortened by whole characters", "[text]") {
  std::string text = "3 ½″";
  CHECK(end_of_character(text, 0) == 1);
  CHECK(end_of_character(text, 2) == 4);
  CHECK(end_of_character(text, 4) == text.size());
  CHECK(end_of_character(text, text.size()) == text.size());
  drop_last_character(text);
  CHECK(text == "3 ½");
  drop_last_character(text);
  CHECK(text == "3 ");
  text.clear();
  drop_last_character(text);
  CHECK(text.empty());
}

TEST_CASE("hexadecimal digits", "[text]") {
  std::string out;
  put_hex(out, 0xCBF43926, 8);
  put_hex(out, 0xA7, 4, HexCase::kUpper);
  CHECK(out == "cbf4392600A7");
  CHECK(read_hex("cbf43926", 8) == 0xCBF43926);
  CHECK(read_hex("ffffffffffffffff", 16) == ~std::uint64_t{0});
  CHECK(read_hex("00A7", 4, HexCase::kUpper) == 0xA7);
  for (const char* bad : {"", "a7", "0000a", "00A7", "00g7", " 0a7", "-0a7"}) CHECK(!read_hex(bad, 4));
  CHECK(!read_hex("00a7", 4, HexCase::kUpper));
}

TEST_CASE("the checksum is ITU-T V.42's", "[text]") {
  CHECK(crc32("123456789") == 0xCBF43926U);  // check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRCs
  CHECK(crc32("56789", crc32("1234")) == 0xCBF43926U);
  CHECK(crc32("") == 0);
  CHECK(crc32("The quick brown fox jumps over the lazy dog") == 0x414FA339U);  // published with many libraries
}

TEST_CASE("records of comma-separated values", "[text]") {
  // RFC 4180, section 2, rules 1 to 7.
  csv::Records records(
      "\xEF\xBB\xBF"
      "aaa,\"b\r\nb\",\"c\"\"c\"\r\n zzz ,,x");
  const csv::Record first = records.next(), second = records.next();
  CHECK(first.cells == std::vector<std::string>{"aaa", "b\r\nb", "c\"c"});
  CHECK(second.cells == std::vector<std::string>{" zzz ", "", "x"});
  CHECK(second.line == 3);
  CHECK(!records.more());
  csv::Records semicolons("a;b,c\n");
  CHECK(semicolons.next().cells == std::vector<std::string>{"a", "b,c"});
  csv::Records open("\"a,b");
  CHECK(open.next().open_quote);
  CHECK(csv::trimmed(" \tP-A1 ") == "P-A1");
  CHECK(csv::trimmed(" \t").empty());
  CHECK(csv::quoted("P-A1") == "P-A1");
  CHECK(csv::quoted("6\" x 8\"") == "\"6\"\" x 8\"\"\"");
  CHECK(csv::quoted("a;b") == "\"a;b\"");
}

TEST_CASE("JSON is written in its own order, numbers with fixed decimals", "[text]") {
  JsonWriter json;
  json.open_object();
  json.key("in"), json.number(2.5, 6);
  json.key("none"), json.number(1 / 0.0, 2);
  json.key("count"), json.count(-3);
  json.key("list");
  json.open_list();
  json.flag(true), json.text(""), json.text("a\"\\\n\x01½"), json.json("{\"kept\":1.0}");
  json.close_list();
  json.close_object();
  // RFC 8259, section 7: quotation mark, reverse solidus and control characters are escaped, the rest stands.
  CHECK(json.bytes() ==
        "{\"in\":2.500000,\"none\":null,\"count\":-3,"
        "\"list\":[true,\"\",\"a\\\"\\\\\\n\\u0001½\",{\"kept\":1.0}]}");
}

TEST_CASE("decimals that say nothing go", "[text]") {
  CHECK(without_trailing_zeros("39.800") == "39.8");
  CHECK(without_trailing_zeros("40.000") == "40");
  CHECK(without_trailing_zeros("400") == "400");
}

TEST_CASE("text inside XML", "[text]") {
  // XML 1.0, 2.4: the ampersand and the less-than sign never stand for themselves.
  CHECK(xml_text("6\" & <8\"") == "6&quot; &amp; &lt;8&quot;");
}

TEST_CASE("characters that do not show are found, named and made visible", "[text]") {
  CHECK(code_name(invisible_in("a\u202eb").value()) == "U+202E");
  CHECK(code_name(invisible_in("\U000E0041").value()) == "U+E0041");
  CHECK_FALSE(invisible_in("P-A1 \u00d1\u2032 \u4e2d"));
  CHECK_FALSE(invisible_in(std::string_view("\xff\xfe\xe2\x80", 4)));
  CHECK(made_visible("a\u200b\u202eb\xff") == "a<U+200B><U+202E>b\xff");
}
