#include "render/solid_painter.h"

#include <GLES3/gl3.h>

#include <algorithm>
#include <cstddef>
#include <utility>

#include "render/gl.h"

namespace bentbook::render {
namespace {

// As in renderer.cpp, what holds for a whole draw comes as attributes that are no arrays, so that nothing has to be
// asked of a linked program. The one sampler keeps its first value, texture unit 0.
enum SolidAttribute : GLuint {
  kPlace,
  kPart,
  kPlaceB,
  kTint,  // of the patterns but kNone, packed one colour a component
  kRowX,
  kRowY,
  kRowZ,
  kFaceInk,
  kEdgeInk,
  kLitInk,
  kPixels,
  kTintLast
};

// A part has four texels in a row: (look, pattern, moves or not, –), move, turn, centre.
constexpr std::size_t kPartsWide = 256;

#define BENTBOOK_SOLID_HEAD                                                                                    \
  "#version 300 es\n"                                                                                          \
  "layout(location = 0) in vec3 place;\n"                                                                      \
  "layout(location = 1) in vec2 part;\n"                                                                       \
  "layout(location = 2) in vec3 place_b;\n"                                                                    \
  "layout(location = 3) in vec4 tints;\n"                                                                      \
  "layout(location = 4) in vec4 row_x;\n"                                                                      \
  "layout(location = 5) in vec4 row_y;\n"                                                                      \
  "layout(location = 6) in vec4 row_z;\n"                                                                      \
  "layout(location = 7) in vec4 face_ink;\n"                                                                   \
  "layout(location = 8) in vec4 edge_ink;\n"                                                                   \
  "layout(location = 9) in vec4 lit_ink;\n"                                                                    \
  "layout(location = 10) in vec4 pixels;\n" /* half width, half height, half stroke, nearer by */              \
  "layout(location = 11) in vec4 tint_last;\n"                                                                 \
  "uniform highp sampler2D parts;\n"                                                                           \
  "out lowp vec4 ink;\n"                                                                                       \
  "vec3 placed(vec3 p) { vec4 q = vec4(p, 1.0); return vec3(dot(row_x, q), dot(row_y, q), dot(row_z, q)); }\n" \
  "vec4 texel(int k) { int n = int(part.x + 0.5);\n"                                                           \
  "  return texelFetch(parts, ivec2((n & 255) * 4 + k, n >> 8), 0); }\n"                                       \
  "vec3 moved(vec3 p, float moves) {\n"                                                                        \
  "  if (moves < 0.5) return p;\n"                                                                             \
  "  vec3 turn = texel(2).xyz, centre = texel(3).xyz, r = p - centre;\n"                                       \
  "  float angle = length(turn);\n"                                                                            \
  "  if (angle > 1e-6) { vec3 k = turn / angle;\n"                                                             \
  "    r = r * cos(angle) + cross(k, r) * sin(angle) + k * dot(k, r) * (1.0 - cos(angle)); }\n"                \
  "  return centre + r + texel(1).xyz; }\n"

constexpr const char* kFaceVertex = BENTBOOK_SOLID_HEAD R"(
flat out lowp vec3 tint;
flat out highp vec2 hatch;
void main() {
  vec4 state = texel(0);
  int how = int(state.x + 0.5), pattern = int(state.y + 0.5);
  vec3 light = face_ink.rgb * (part.y / 255.0);
  ink = vec4(how == 3 ? mix(light, lit_ink.rgb, 0.35) : light, 1.0);
  float rgb24 = pattern == 5 ? tint_last.x : pattern == 0 ? 0.0 : tints[pattern - 1];
  tint = vec3(floor(rgb24 / 65536.0), mod(floor(rgb24 / 256.0), 256.0), mod(rgb24, 256.0)) / 255.0;
  hatch = vec2(how == 3 ? 0.0 : float(pattern), max(1.0, pixels.z / 0.55));
  gl_Position = how == 1 || how == 3 ? vec4(placed(moved(place, state.z)), 1.0) : vec4(2.0, 2.0, 2.0, 1.0);
}
)";
// Patterns lie on the screen, not on the wood: they keep their look however far away a timber is.
constexpr const char* kFaceFragment = R"(#version 300 es
precision highp float;
in lowp vec4 ink;
flat in lowp vec3 tint;
flat in highp vec2 hatch;
layout(location = 0) out lowp vec4 shade;
void main() {
  vec2 at = gl_FragCoord.xy / hatch.y;
  float up = at.x + at.y, down = at.x - at.y, lines = 0.0;
  if (hatch.x > 4.5) lines = step(mod(at.y, 5.0), 2.0);
  else if (hatch.x > 3.5) lines = 1.0;
  else if (hatch.x > 2.5) lines = step(mod(up, 5.0), 2.0);
  else if (hatch.x > 1.5) lines = max(step(mod(up, 9.0), 2.0), step(mod(down, 9.0), 2.0));
  else if (hatch.x > 0.5) lines = step(mod(up, 9.0), 2.0);
  float cover = hatch.x > 0.5 ? mix(0.12, hatch.x > 3.5 && hatch.x < 4.5 ? 0.6 : 0.85, lines) : 0.0;
  shade = vec4(mix(ink.rgb, tint * (0.35 + 0.65 * ink.rgb), cover), 1.0);
}
)";
// An edge is a strip of four corners across its line on the screen, one pixel wider than its stroke on either side.
constexpr const char* kEdgeVertex = BENTBOOK_SOLID_HEAD R"(
out highp float off;
flat out highp float half_stroke;
void main() {
  vec4 state = texel(0);
  int how = int(state.x + 0.5);
  vec3 a = placed(moved(place, state.z)), b = placed(moved(place_b, state.z));
  vec2 along = (b.xy - a.xy) * pixels.xy;
  float len = length(along);
  vec2 d = len > 0.001 ? along / len : vec2(1.0, 0.0);
  float to_b = float(gl_VertexID & 1), side = float(gl_VertexID & 2) - 1.0;
  half_stroke = pixels.z * (how == 3 ? 2.0 : how == 2 ? 0.6 : 1.0);
  off = side * (half_stroke + 1.0);
  vec2 shift = vec2(-d.y, d.x) * off + d * (to_b * 2.0 - 1.0) * half_stroke;
  vec3 p = mix(a, b, to_b);
  // What is too short to be read from here would only blacken the picture: joints pale with the distance.
  float whole = clamp((0.6 * len / pixels.z - 1.0) / 6.0, 0.0, 1.0);
  ink = how == 3 ? lit_ink : how == 2 ? vec4(edge_ink.rgb, 0.3 * whole) : vec4(edge_ink.rgb, whole);
  gl_Position = how == 0 ? vec4(2.0, 2.0, 2.0, 1.0) : vec4(p.xy + shift / pixels.xy, p.z - pixels.w, 1.0);
}
)";
constexpr const char* kEdgeFragment = R"(#version 300 es
precision highp float;
in lowp vec4 ink;
in highp float off;
flat in highp float half_stroke;
layout(location = 0) out lowp vec4 shade;
void main() { shade = vec4(ink.rgb, ink.a * clamp(half_stroke + 0.5 - abs(off), 0.0, 1.0)); }
)";

GLuint link(const char* vertex_source, const char* fragment_source) {
  const GLuint vertex = compile_shader(GL_VERTEX_SHADER, vertex_source),
               fragment = compile_shader(GL_FRAGMENT_SHADER, fragment_source);
  const GLuint program = glCreateProgram();
  if (vertex == 0 || fragment == 0 || program == 0) return 0;
  glAttachShader(program, vertex);
  glAttachShader(program, fragment);
  glLinkProgram(program);
  glDeleteShader(vertex);
  glDeleteShader(fragment);
  return program;
}

/// Three bytes of colour as one whole number, which a float holds.
float packed(const float (&colour)[3]) {
  float out = 0;
  for (const float c : colour) out = out * 256 + static_cast<float>(static_cast<int>(c * 255 + 0.5F));
  return out;
}

void unfiltered() {
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_NEAREST);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
}

template <class T>
void fill_buffer(GLenum target, const std::vector<T>& items) {
  glBufferData(target, static_cast<GLsizeiptr>(items.size() * sizeof(T)), items.data(), GL_STATIC_DRAW);
}

}  // namespace

bool SolidPainter::create() {
  lost();
  faces_program_ = link(kFaceVertex, kFaceFragment);
  edges_program_ = link(kEdgeVertex, kEdgeFragment);
  if (faces_program_ == 0 || edges_program_ == 0) {
    lost();
    return false;
  }
  unsigned buffers[3] = {}, arrays[2] = {}, textures[2] = {};
  glGenBuffers(3, buffers);
  glGenVertexArrays(2, arrays);
  glGenTextures(2, textures);
  glGenFramebuffers(1, &framebuffer_);
  glGenRenderbuffers(1, &depth_);
  corners_ = buffers[0], triangles_ = buffers[1], edges_ = buffers[2];
  faces_array_ = arrays[0], edges_array_ = arrays[1];
  colour_ = textures[0], parts_ = textures[1];

  glBindVertexArray(faces_array_);
  glBindBuffer(GL_ARRAY_BUFFER, corners_);
  glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, triangles_);
  glEnableVertexAttribArray(kPlace);
  glEnableVertexAttribArray(kPart);
  glVertexAttribPointer(kPlace, 3, GL_FLOAT, GL_FALSE, sizeof(FaceCorner), in_buffer(0));
  glVertexAttribPointer(kPart, 2, GL_UNSIGNED_SHORT, GL_FALSE, sizeof(FaceCorner),
                        in_buffer(offsetof(FaceCorner, part)));

  glBindVertexArray(edges_array_);
  glBindBuffer(GL_ARRAY_BUFFER, edges_);
  for (const GLuint array : {kPlace, kPart, kPlaceB}) {
    glEnableVertexAttribArray(array);
    glVertexAttribDivisor(array, 1);
  }
  glVertexAttribPointer(kPlace, 3, GL_FLOAT, GL_FALSE, sizeof(EdgeLine), in_buffer(0));
  glVertexAttribPointer(kPlaceB, 3, GL_FLOAT, GL_FALSE, sizeof(EdgeLine), in_buffer(offsetof(EdgeLine, b)));
  glVertexAttribPointer(kPart, 2, GL_UNSIGNED_SHORT, GL_FALSE, sizeof(EdgeLine), in_buffer(offsetof(EdgeLine, part)));
  glBindVertexArray(0);
  stale_ = true;
  return true;
}

void SolidPainter::lost() {
  faces_program_ = edges_program_ = 0;
  faces_array_ = edges_array_ = corners_ = triangles_ = edges_ = 0;
  framebuffer_ = colour_ = depth_ = parts_ = 0;
  uploaded_.reset();
  parts_stale_ = true;
  target_width_ = target_height_ = 0;
}

void SolidPainter::show(SolidPicture picture) {
  if (picture == picture_) return;
  parts_stale_ = parts_stale_ || picture.scene != picture_.scene || picture.looks != picture_.looks ||
                 picture.patterns != picture_.patterns || picture.motions != picture_.motions;
  picture_ = std::move(picture);
  stale_ = true;
}

ImTextureID SolidPainter::texture() const {
  return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(colour_));
}

/// The whole building goes up once for each solve.
void SolidPainter::upload() {
  if (uploaded_ == picture_.scene) return;
  uploaded_ = picture_.scene;
  glBindVertexArray(faces_array_);
  glBindBuffer(GL_ARRAY_BUFFER, corners_);
  fill_buffer(GL_ARRAY_BUFFER, uploaded_->corners);
  fill_buffer(GL_ELEMENT_ARRAY_BUFFER, uploaded_->triangles);
  glBindBuffer(GL_ARRAY_BUFFER, edges_);
  fill_buffer(GL_ARRAY_BUFFER, uploaded_->edges);
}

void SolidPainter::size_target() {
  const int width = std::max(1, static_cast<int>(picture_.width * picture_.scale + 0.5F));
  const int height = std::max(1, static_cast<int>(picture_.height * picture_.scale + 0.5F));
  glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_);
  if (width == target_width_ && height == target_height_) return;
  target_width_ = width;
  target_height_ = height;
  glBindTexture(GL_TEXTURE_2D, colour_);
  unfiltered();
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
  glBindRenderbuffer(GL_RENDERBUFFER, depth_);
  glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, width, height);
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, colour_, 0);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, depth_);
}

void SolidPainter::upload_parts() {
  glBindTexture(GL_TEXTURE_2D, parts_);
  if (!std::exchange(parts_stale_, false)) return;
  const std::size_t count = picture_.scene->parts.size(), rows = count / kPartsWide + 1;
  std::vector<float> texels(rows * kPartsWide * 16, 0);
  for (std::size_t i = 0; i < count; ++i) {
    float* own = texels.data() + i * 16;
    own[0] = static_cast<float>(i < picture_.looks.size() ? picture_.looks[i] : std::uint8_t{1});
    own[1] = i < picture_.patterns.size() ? static_cast<float>(picture_.patterns[i]) : 0;
    if (i >= picture_.motions.size() || picture_.motions[i] == PartMotion{}) continue;
    const PartMotion& motion = picture_.motions[i];
    own[2] = 1;
    std::copy_n(motion.move, 3, own + 4);
    std::copy_n(motion.turn, 3, own + 8);
    std::copy_n(motion.centre, 3, own + 12);
  }
  unfiltered();
  glPixelStorei(GL_UNPACK_ALIGNMENT, 4);
  glPixelStorei(GL_UNPACK_ROW_LENGTH, 0);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA32F, static_cast<GLsizei>(kPartsWide * 4), static_cast<GLsizei>(rows), 0,
               GL_RGBA, GL_FLOAT, texels.data());
}

void SolidPainter::set_frame(float width, float height) const {
  const View view(*picture_.scene, picture_.camera, static_cast<double>(width), static_cast<double>(height));
  const View::Rows rows = view.rows();
  glVertexAttrib4fv(kRowX, rows.x);
  glVertexAttrib4fv(kRowY, rows.y);
  glVertexAttrib4fv(kRowZ, rows.z);
  const SolidInk& ink = picture_.ink;
  glVertexAttrib4f(kFaceInk, ink.face[0], ink.face[1], ink.face[2], 1);
  glVertexAttrib4f(kEdgeInk, ink.edge[0], ink.edge[1], ink.edge[2], 1);
  glVertexAttrib4f(kLitInk, ink.lit[0], ink.lit[1], ink.lit[2], 1);
  glVertexAttrib4f(kTint, packed(ink.tint[1]), packed(ink.tint[2]), packed(ink.tint[3]), packed(ink.tint[4]));
  glVertexAttrib4f(kTintLast, packed(ink.tint[5]), 0, 0, 0);
  // A quarter inch nearer than the faces that it parts.
  const float nearer = 0.25F * static_cast<float>(view.depth_step());
  glVertexAttrib4f(kPixels, width * picture_.scale / 2, height * picture_.scale / 2,
                   std::max(0.6F, 0.55F * picture_.scale), nearer);
}

void SolidPainter::paint() {
  if (!ready() || !stale_ || !picture_.scene || picture_.width < 1 || picture_.height < 1) return;
  stale_ = false;
  glActiveTexture(GL_TEXTURE0);
  upload();
  size_target();
  upload_parts();
  glViewport(0, 0, target_width_, target_height_);
  glDisable(GL_SCISSOR_TEST);
  glDisable(GL_STENCIL_TEST);
  glDisable(GL_BLEND);
  glDisable(GL_CULL_FACE);
  glEnable(GL_DEPTH_TEST);
  glDepthFunc(GL_LEQUAL);
  glDepthMask(GL_TRUE);
  glClearColor(picture_.ink.ground[0], picture_.ink.ground[1], picture_.ink.ground[2], 1);
  glClearDepthf(1);
  glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  set_frame(picture_.width, picture_.height);

  glEnable(GL_POLYGON_OFFSET_FILL);
  glPolygonOffset(1, 1);
  glUseProgram(faces_program_);
  glBindVertexArray(faces_array_);
  glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(uploaded_->triangles.size()), GL_UNSIGNED_INT, in_buffer(0));
  glDisable(GL_POLYGON_OFFSET_FILL);

  glEnable(GL_BLEND);
  glBlendEquation(GL_FUNC_ADD);
  glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  glDepthMask(GL_FALSE);
  glUseProgram(edges_program_);
  glBindVertexArray(edges_array_);
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, static_cast<GLsizei>(uploaded_->edges.size()));
  glDepthMask(GL_TRUE);
  glDisable(GL_DEPTH_TEST);
  glBindVertexArray(0);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

}  // namespace bentbook::render
