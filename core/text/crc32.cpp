#include "text/crc32.h"

#include <array>

namespace bentbook {
namespace {

constexpr std::array<std::array<std::uint32_t, 256>, 4> make_tables() {
  std::array<std::array<std::uint32_t, 256>, 4> tables{};
  for (std::uint32_t i = 0; i < 256; ++i) {
    std::uint32_t c = i;
    for (int bit = 0; bit < 8; ++bit) c = (c & 1) != 0 ? 0xEDB88320u ^ (c >> 1) : c >> 1;
    tables[0][i] = c;
  }
  for (std::size_t i = 0; i < 256; ++i)
    for (std::size_t t = 1; t < 4; ++t) tables[t][i] = (tables[t - 1][i] >> 8) ^ tables[0][tables[t - 1][i] & 255];
  return tables;
}
constexpr auto kTables = make_tables();

std::uint32_t octet_at(std::string_view bytes, std::size_t i) { return static_cast<unsigned char>(bytes[i]); }

}  // namespace

std::uint32_t crc32(std::string_view bytes, std::uint32_t before) {
  std::uint32_t c = ~before;
  std::size_t i = 0;
  for (; i + 4 <= bytes.size(); i += 4) {
    c ^= octet_at(bytes, i) | octet_at(bytes, i + 1) << 8 | octet_at(bytes, i + 2) << 16 | octet_at(bytes, i + 3) << 24;
    c = kTables[3][c & 255] ^ kTables[2][(c >> 8) & 255] ^ kTables[1][(c >> 16) & 255] ^ kTables[0][c >> 24];
  }
  for (; i < bytes.size(); ++i) c = kTables[0][(c ^ octet_at(bytes, i)) & 255] ^ (c >> 8);
  return ~c;
}

}  // namespace bentbook
