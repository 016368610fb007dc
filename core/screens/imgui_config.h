#pragma once
// What of Dear ImGui is built, and how (IMGUI_USER_CONFIG).

#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS
#define IMGUI_DISABLE_OBSOLETE_KEYIO
#define IMGUI_DISABLE_WIN32_FUNCTIONS
#define IMGUI_DISABLE_FILE_FUNCTIONS

// OpenGL ES 3.0 has no base vertex: a list of more than 65 535 vertices needs wide indices.
#define ImDrawIdx unsigned int
