// The two printing functions that ImGui asks for (IMGUI_DISABLE_DEFAULT_FORMAT_FUNCTIONS), for the formats that it
// needs to name its windows: %s, %d, %i, %u, %x, %X, %%, with a width and zeros. vsnprintf would bring all of printf
// with it.
#include <imgui_internal.h>

#include <cstdarg>

namespace {

/// Counts what does not fit, as vsnprintf does.
struct Out {
  char* buffer;
  std::size_t room;
  std::size_t size = 0;

  void put(char c) {
    if (buffer != nullptr && size + 1 < room) buffer[size] = c;
    ++size;
  }
};

void put_number(Out& out, unsigned value, bool negative, unsigned base, bool capitals, int width, char fill) {
  char digits[16];
  int n = 0;
  do {
    digits[n++] = (capitals ? "0123456789ABCDEF" : "0123456789abcdef")[value % base];
    value /= base;
  } while (value != 0);
  if (negative) out.put('-');
  for (int i = n + (negative ? 1 : 0); i < width; ++i) out.put(fill);
  while (n > 0) out.put(digits[--n]);
}

}  // namespace

int ImFormatStringV(char* buf, std::size_t buf_size, const char* fmt, va_list args) {
  Out out{buf, buf_size};
  for (const char* p = fmt; *p != 0; ++p) {
    if (*p != '%') {
      out.put(*p);
      continue;
    }
    ++p;
    const char fill = *p == '0' ? '0' : ' ';
    int width = 0;
    for (; *p >= '0' && *p <= '9'; ++p) width = width * 10 + (*p - '0');
    if (*p == 's') {
      for (const char* s = va_arg(args, const char*); *s != 0; ++s) out.put(*s);
    } else if (*p == 'd' || *p == 'i') {
      const int v = va_arg(args, int);
      put_number(out, v < 0 ? 0U - static_cast<unsigned>(v) : static_cast<unsigned>(v), v < 0, 10, false, width, fill);
    } else if (*p == 'u' || *p == 'x' || *p == 'X') {
      put_number(out, va_arg(args, unsigned), false, *p == 'u' ? 10 : 16, *p == 'X', width, fill);
    } else if (*p == '%') {
      out.put('%');
    } else {
      IM_ASSERT(false && "a format that imgui_format.cpp does not know");
      break;
    }
  }
  if (buf == nullptr) return static_cast<int>(out.size);
  const std::size_t end = out.size < buf_size ? out.size : buf_size - 1;
  buf[end] = 0;
  return static_cast<int>(end);
}

int ImFormatString(char* buf, std::size_t buf_size, const char* fmt, ...) {
  va_list args;
  va_start(args, fmt);
  const int size = ImFormatStringV(buf, buf_size, fmt, args);
  va_end(args);
  return size;
}
