#pragma once
/// CRC-32 as ITU-T V.42 has it (polynomial 04C11DB7, reflected, all ones in and out): "123456789" gives CBF43926.
/// Source: SOURCES.md, "checksum".

#include <cstdint>
#include <string_view>

namespace bentbook {

/// `before`: the checksum of what came before, to go on from it.
[[nodiscard]] std::uint32_t crc32(std::string_view bytes, std::uint32_t before = 0);

}  // namespace bentbook
