# The core: plain C++, no exceptions, no RTTI. A folder takes part as soon as it has a source file.
set(CORE_FOLDERS numeric measure geometry cut roof frame shop raising stock draw paper book model answers)
list(TRANSFORM CORE_FOLDERS PREPEND ${PROJECT_SOURCE_DIR}/core/ OUTPUT_VARIABLE CORE_GLOBS)
list(TRANSFORM CORE_GLOBS APPEND /*.cpp)
file(GLOB CORE_SOURCES CONFIGURE_DEPENDS ${CORE_GLOBS})
if(NOT CORE_SOURCES)
  file(WRITE ${PROJECT_BINARY_DIR}/generated/empty_core.cpp "")
  set(CORE_SOURCES ${PROJECT_BINARY_DIR}/generated/empty_core.cpp)
endif()

# Sources made at build time (string table, fonts): generated.cmake adds them to the targets.
set(GENERATED_DIR ${PROJECT_BINARY_DIR}/generated)
file(MAKE_DIRECTORY ${GENERATED_DIR})

add_library(bentbook_core STATIC ${CORE_SOURCES})
target_compile_options(bentbook_core PRIVATE -fno-exceptions -fno-rtti)
target_include_directories(bentbook_core PUBLIC ${PROJECT_SOURCE_DIR}/core ${GENERATED_DIR})
target_link_libraries(bentbook_core PUBLIC bentbook_libm header_libraries bentbook_sanitize
  PRIVATE bentbook_warnings qrcodegen eigen lp_solver)

# What a phone downloads: words, files and drawings are made small, the arithmetic stays fast (at -Os or -Oz a frame
# takes five to ten times as long to solve).
if(EMSCRIPTEN AND CMAKE_BUILD_TYPE STREQUAL "Release")
  set(SMALL_SOURCES ${CORE_SOURCES})
  list(FILTER SMALL_SOURCES INCLUDE REGEX
    "/core/(answers|book|draw|measure|model|paper)/|/core/frame/(csv|plan_drawing|sheet)[a-z_]*[.]cpp")
  set_source_files_properties(${SMALL_SOURCES} PROPERTIES COMPILE_OPTIONS -Oz)
endif()

# RapidJSON 1.1's stack starts as null and adds to it before its first growth: harmless, but UBSan tells. Only the files
# that include it are spared that one check.
if(BENTBOOK_SANITIZE)
  file(GLOB JSON_SOURCES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/core/book/*.cpp)
  set_source_files_properties(${JSON_SOURCES} ${PROJECT_SOURCE_DIR}/core/answers/task.cpp
    PROPERTIES COMPILE_OPTIONS -fno-sanitize=pointer-overflow)
endif()
