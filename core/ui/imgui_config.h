#pragma once
// What of Dear ImGui is built, and how (IMGUI_USER_CONFIG).

#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS
#define IMGUI_DISABLE_OBSOLETE_KEYIO
#define IMGUI_DISABLE_WIN32_FUNCTIONS
#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEFAULT_FORMAT_FUNCTIONS  // imgui_format.cpp has what is used

// No settings file is ever read (IniFilename is null), and sscanf alone brings 20 KB of floating-point scanning.
#ifdef BENTBOOK_BUILDS_IMGUI  // in ImGui's own files, not in what includes it
#include <cstdio>
#define sscanf(...) 0
#endif

// OpenGL ES 3.0 has no base vertex: a list of more than 65 535 vertices needs wide indices.
#define ImDrawIdx unsigned int
