#pragma once
/// Inside the renderer: what both programs say to OpenGL.

#include <GLES3/gl3.h>

#include <cstddef>

namespace bentbook::render {

/// An offset into the bound buffer, as OpenGL takes it: a pointer.
inline const void* in_buffer(std::size_t bytes) { return reinterpret_cast<const void*>(bytes); }

/// 0 if there is no shader to be had.
inline GLuint compile_shader(GLenum kind, const char* source) {
  const GLuint shader = glCreateShader(kind);
  if (shader == 0) return 0;
  glShaderSource(shader, 1, &source, nullptr);
  glCompileShader(shader);
  return shader;
}

}  // namespace bentbook::render
