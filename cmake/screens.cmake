# The screens and their renderer, one library under both shells. Needs Dear ImGui; a machine that only tests the core
# does not have it.
file(GLOB SCREEN_SOURCES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/core/render/*.cpp
  ${PROJECT_SOURCE_DIR}/core/ui/*.cpp ${PROJECT_SOURCE_DIR}/core/ui/keypad/*.cpp
  ${PROJECT_SOURCE_DIR}/core/ui/drawing/*.cpp
  ${PROJECT_SOURCE_DIR}/core/screens/*/*.cpp ${PROJECT_SOURCE_DIR}/core/screens/*/*/*.cpp)
list(FILTER SCREEN_SOURCES EXCLUDE REGEX "/imgui_format\\.cpp$") # part of the imgui target
if(TARGET imgui AND SCREEN_SOURCES)
  add_library(bentbook_screens STATIC EXCLUDE_FROM_ALL)
  add_batches(bentbook_screens ${SCREEN_SOURCES})
  target_compile_options(bentbook_screens PRIVATE -fno-exceptions -fno-rtti)
  if(EMSCRIPTEN)
    target_compile_options(bentbook_screens PRIVATE $<$<CONFIG:Release>:-Oz>)
  endif()
  target_link_libraries(bentbook_screens PUBLIC bentbook_core imgui PRIVATE bentbook_warnings)
endif()
