#include "render/picture.h"

#include <algorithm>
#include <cstddef>

#include "render/gl.h"

namespace bentbook::render {
namespace {

/// Rows painted at a time: every context has a picture of this size.
constexpr int kBand = 1024;

/// Texture and framebuffer, bound while this lives.
class Target {
 public:
  Target(int width, int height) {
    glGenTextures(1, &texture_);
    glBindTexture(GL_TEXTURE_2D, texture_);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
    glGenFramebuffers(1, &framebuffer_);
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_);
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, texture_, 0);
  }
  ~Target() {
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    glDeleteFramebuffers(1, &framebuffer_);
    glDeleteTextures(1, &texture_);
  }
  Target(const Target&) = delete;
  Target& operator=(const Target&) = delete;

 private:
  GLuint texture_ = 0, framebuffer_ = 0;
};

}  // namespace

Pixels pixels_of(Renderer& renderer, const ImDrawData& data, float scale, ClearColour clear) {
  Pixels out{
      static_cast<int>(data.DisplaySize.x * scale + 0.5F), static_cast<int>(data.DisplaySize.y * scale + 0.5F), {}};
  if (!renderer.ready() || out.width <= 0 || out.height <= 0) return {};
  const Target target(out.width, kBand);
  if (glCheckFramebufferStatus(GL_FRAMEBUFFER) != GL_FRAMEBUFFER_COMPLETE) return {};
  const std::size_t row = static_cast<std::size_t>(out.width) * 4;
  out.rgba.resize(row * static_cast<std::size_t>(out.height));
  std::string band(row * kBand, 0);
  ImDrawData part = data;
  part.FramebufferScale = {scale, scale};
  part.DisplaySize.y = kBand / scale;
  for (int top = 0; top < out.height; top += kBand) {
    part.DisplayPos.y = data.DisplayPos.y + static_cast<float>(top) / scale;
    renderer.paint(part, out.width, kBand, clear);
    glReadPixels(0, 0, out.width, kBand, GL_RGBA, GL_UNSIGNED_BYTE, band.data());
    for (int y = 0; y < std::min(kBand, out.height - top); ++y)  // rows come from the bottom
      std::copy_n(band.data() + row * static_cast<std::size_t>(kBand - 1 - y), row,
                  out.rgba.data() + row * static_cast<std::size_t>(top + y));
  }
  return out;
}

}  // namespace bentbook::render
