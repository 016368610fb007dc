#include "render/renderer.h"

#include <GLES3/gl3.h>
#include <imgui_internal.h>

#include "render/gl.h"

namespace bentbook::render {
namespace {

// Vertex attributes. The last two are not arrays: they hold one value for a whole draw. So there is no uniform, and
// nothing has to be asked of a linked program.
enum Attribute : GLuint { kPosition, kTexture, kColour, kFrame, kCoverage };

constexpr const char* kVertexShader = R"(#version 300 es
layout(location = 0) in vec2 position;
layout(location = 1) in vec2 texture_at;
layout(location = 2) in vec4 colour;
layout(location = 3) in vec4 frame;     // scale and shift to clip space
layout(location = 4) in float coverage; // 1: the texture's red is coverage; 0: the texture is a picture
out highp vec2 at;
out lowp vec4 tint;
flat out lowp float is_coverage;
void main() {
  at = texture_at;
  tint = colour;
  is_coverage = coverage;
  gl_Position = vec4(position * frame.xy + frame.zw, 0.0, 1.0);
}
)";

constexpr const char* kFragmentShader = R"(#version 300 es
precision highp float;
uniform sampler2D picture;
in highp vec2 at;
in lowp vec4 tint;
flat in lowp float is_coverage;
layout(location = 0) out lowp vec4 shade;
void main() {
  lowp vec4 found = texture(picture, at);
  shade = tint * mix(found, vec4(1.0, 1.0, 1.0, found.r), is_coverage);
}
)";

// A texture's id is its GL name; the top bit says that its red is coverage.
constexpr std::uintptr_t kCoverageBit = 0x8000'0000;
GLuint name_of(ImTextureID id) { return static_cast<GLuint>(reinterpret_cast<std::uintptr_t>(id) & ~kCoverageBit); }
bool is_coverage(ImTextureID id) { return (reinterpret_cast<std::uintptr_t>(id) & kCoverageBit) != 0; }
ImTextureID id_of(GLuint name, std::uintptr_t bit = 0) { return reinterpret_cast<ImTextureID>(name | bit); }

GLuint make_texture(GLint inner, GLenum format, const void* pixels, int width, int height) {
  GLuint texture = 0;
  glGenTextures(1, &texture);
  glActiveTexture(GL_TEXTURE0);
  glBindTexture(GL_TEXTURE_2D, texture);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glPixelStorei(GL_UNPACK_ROW_LENGTH, 0);
  glTexImage2D(GL_TEXTURE_2D, 0, inner, width, height, 0, format, GL_UNSIGNED_BYTE, pixels);
  return texture;
}

void point_arrays_at(std::size_t first_vertex) {
  const GLsizei stride = sizeof(ImDrawVert);
  const std::size_t base = first_vertex * sizeof(ImDrawVert);
  glVertexAttribPointer(kPosition, 2, GL_FLOAT, GL_FALSE, stride, in_buffer(base + offsetof(ImDrawVert, pos)));
  glVertexAttribPointer(kTexture, 2, GL_FLOAT, GL_FALSE, stride, in_buffer(base + offsetof(ImDrawVert, uv)));
  glVertexAttribPointer(kColour, 4, GL_UNSIGNED_BYTE, GL_TRUE, stride, in_buffer(base + offsetof(ImDrawVert, col)));
}

template <class T>
GLsizeiptr bytes_of(const ImVector<T>& items) {
  return static_cast<GLsizeiptr>(items.size_in_bytes());
}

}  // namespace

bool Renderer::make_program() {
  const GLuint vertex = compile_shader(GL_VERTEX_SHADER, kVertexShader);
  const GLuint fragment = compile_shader(GL_FRAGMENT_SHADER, kFragmentShader);
  program_ = glCreateProgram();
  if (vertex == 0 || fragment == 0 || program_ == 0) return false;
  glAttachShader(program_, vertex);
  glAttachShader(program_, fragment);
  glLinkProgram(program_);
  // They go with the program.
  glDeleteShader(vertex);
  glDeleteShader(fragment);
  return true;
}

void Renderer::make_buffers() {
  glGenVertexArrays(1, &vertex_array_);
  glBindVertexArray(vertex_array_);
  glGenBuffers(1, &vertices_);
  glGenBuffers(1, &indices_);
  glBindBuffer(GL_ARRAY_BUFFER, vertices_);
  glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_);
  for (const GLuint array : {kPosition, kTexture, kColour}) glEnableVertexAttribArray(array);
}

bool bake(ImFontAtlas& atlas) {
  return !atlas.ConfigData.empty() && ImFontAtlasGetBuilderForStbTruetype()->FontBuilder_Build(&atlas);
}

bool Renderer::create(ImFontAtlas& atlas) {
  ImGui::GetIO().BackendRendererName = "bentbook";
  return create_without_atlas() && upload_atlas(atlas);
}

bool Renderer::create_without_atlas() {
  failure_.clear();
  if (!make_program()) {
    lost();
    failure_ = "no shader objects: the context is lost or has no OpenGL ES 3";
    return false;
  }
  make_buffers();
  return true;
}

bool Renderer::upload_atlas(ImFontAtlas& atlas) {
  if (atlas.TexPixelsAlpha8 == nullptr && !bake(atlas)) {
    failure_ = "the font atlas is empty";
    return false;
  }
  if (atlas_ != 0) glDeleteTextures(1, &atlas_);
  atlas_ = make_texture(GL_R8, GL_RED, atlas.TexPixelsAlpha8, atlas.TexWidth, atlas.TexHeight);
  atlas.SetTexID(id_of(atlas_, kCoverageBit));
  return atlas_ != 0;
}

void Renderer::lost() { program_ = vertex_array_ = vertices_ = indices_ = atlas_ = 0; }

void Renderer::destroy() {
  if (program_ != 0) {
    glDeleteProgram(program_);
    glDeleteVertexArrays(1, &vertex_array_);
    glDeleteBuffers(1, &vertices_);
    glDeleteBuffers(1, &indices_);
    glDeleteTextures(1, &atlas_);
  }
  lost();
}

void Renderer::set_state(const ImDrawData& data, int width, int height) const {
  glViewport(0, 0, width, height);
  glEnable(GL_BLEND);
  glBlendEquation(GL_FUNC_ADD);
  // Colours are straight; the frame's own alpha must stay 1, or the page behind the canvas shines through.
  glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  glDisable(GL_CULL_FACE);
  glDisable(GL_DEPTH_TEST);
  glDisable(GL_STENCIL_TEST);
  glEnable(GL_SCISSOR_TEST);
  glUseProgram(program_);
  glBindVertexArray(vertex_array_);
  glBindBuffer(GL_ARRAY_BUFFER, vertices_);
  glActiveTexture(GL_TEXTURE0);
  const float sx = 2 / data.DisplaySize.x, sy = -2 / data.DisplaySize.y;
  glVertexAttrib4f(kFrame, sx, sy, -1 - data.DisplayPos.x * sx, 1 - data.DisplayPos.y * sy);
}

void Renderer::paint(const ImDrawData& data, int width, int height, ClearColour clear) {
  if (!ready() || width <= 0 || height <= 0 || data.DisplaySize.x <= 0 || data.DisplaySize.y <= 0) return;
  set_state(data, width, height);
  glScissor(0, 0, width, height);
  glClearColor(clear.r, clear.g, clear.b, 1);
  glClear(GL_COLOR_BUFFER_BIT);
  paint_lists(data, height);
}

void Renderer::paint_over(const ImDrawData& data, int width, int height) {
  if (!ready()) return;
  set_state(data, width, height);
  paint_lists(data, height);
}

void Renderer::paint_lists(const ImDrawData& data, int height) const {
  // New storage every frame, so that nothing waits for the frame before; then each list into its place.
  glBufferData(GL_ARRAY_BUFFER,
               static_cast<GLsizeiptr>(data.TotalVtxCount) * static_cast<GLsizeiptr>(sizeof(ImDrawVert)), nullptr,
               GL_STREAM_DRAW);
  glBufferData(GL_ELEMENT_ARRAY_BUFFER,
               static_cast<GLsizeiptr>(data.TotalIdxCount) * static_cast<GLsizeiptr>(sizeof(ImDrawIdx)), nullptr,
               GL_STREAM_DRAW);
  std::size_t vertex = 0, index = 0;
  for (const ImDrawList* list : data.CmdLists) {
    glBufferSubData(GL_ARRAY_BUFFER, static_cast<GLintptr>(vertex * sizeof(ImDrawVert)), bytes_of(list->VtxBuffer),
                    list->VtxBuffer.Data);
    glBufferSubData(GL_ELEMENT_ARRAY_BUFFER, static_cast<GLintptr>(index * sizeof(ImDrawIdx)),
                    bytes_of(list->IdxBuffer), list->IdxBuffer.Data);
    vertex += static_cast<std::size_t>(list->VtxBuffer.Size);
    index += static_cast<std::size_t>(list->IdxBuffer.Size);
  }
  vertex = index = 0;
  for (const ImDrawList* list : data.CmdLists) {
    point_arrays_at(vertex);
    paint_commands(*list, data, height, index);
    vertex += static_cast<std::size_t>(list->VtxBuffer.Size);
    index += static_cast<std::size_t>(list->IdxBuffer.Size);
  }
  glDisable(GL_SCISSOR_TEST);
}

void Renderer::paint_commands(const ImDrawList& list, const ImDrawData& data, int height,
                              std::size_t first_index) const {
  constexpr GLenum kIndexType = sizeof(ImDrawIdx) == 4 ? GL_UNSIGNED_INT : GL_UNSIGNED_SHORT;
  ImTextureID bound = nullptr;
  for (const ImDrawCmd& command : list.CmdBuffer) {
    if (command.UserCallback != nullptr) {
      if (command.UserCallback != ImDrawCallback_ResetRenderState) command.UserCallback(&list, &command);
      continue;
    }
    const auto to_px = [&](float v, float from, float scale) { return static_cast<int>((v - from) * scale + 0.5F); };
    const int left = to_px(command.ClipRect.x, data.DisplayPos.x, data.FramebufferScale.x);
    const int top = to_px(command.ClipRect.y, data.DisplayPos.y, data.FramebufferScale.y);
    const int right = to_px(command.ClipRect.z, data.DisplayPos.x, data.FramebufferScale.x);
    const int bottom = to_px(command.ClipRect.w, data.DisplayPos.y, data.FramebufferScale.y);
    if (right <= left || bottom <= top || command.ElemCount == 0) continue;
    glScissor(left, height - bottom, right - left, bottom - top);
    if (const ImTextureID texture = command.GetTexID(); texture != bound) {
      bound = texture;
      glBindTexture(GL_TEXTURE_2D, name_of(texture));
      glVertexAttrib1f(kCoverage, is_coverage(texture) ? 1.0F : 0.0F);
    }
    glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(command.ElemCount), kIndexType,
                   in_buffer((first_index + command.IdxOffset) * sizeof(ImDrawIdx)));
  }
}

}  // namespace bentbook::render
