# The core: plain C++, no exceptions, no RTTI. Three named parts make one library: what must be fast (a rafter's
# arithmetic), what is done thousands of times (frames, raisings, events), and what must be small in a phone's download
# (words, files, drawings). Only WebAssembly's release tells them apart: at -Oz a long frame takes a quarter longer than
# at -O2, at -Os it does not, but a rafter takes twice as long there.
set(FAST_FOLDERS numeric geometry cut roof roof/corner)
set(OFTEN_FOLDERS text roof/plan frame frame/placing frame/roofs shop/log raising raising/insertion raising/stability raising/search
  stock)
set(SMALL_FOLDERS measure draw paper frame/joints frame/sheet frame/list frame/drawings shop raising/lifting
  raising/drawings book book/backup model words words/aloud words/roofs words/steps printed printed/pages tasks command command/json command/roofs command/stock)

function(collect_sources result)
  list(TRANSFORM ARGN PREPEND ${PROJECT_SOURCE_DIR}/core/ OUTPUT_VARIABLE globs)
  list(TRANSFORM globs APPEND /*.cpp)
  file(GLOB sources CONFIGURE_DEPENDS ${globs})
  set(${result} ${sources} PARENT_SCOPE)
endfunction()
collect_sources(FAST_SOURCES ${FAST_FOLDERS})
collect_sources(OFTEN_SOURCES ${OFTEN_FOLDERS})
collect_sources(SMALL_SOURCES ${SMALL_FOLDERS})
list(FILTER SMALL_SOURCES EXCLUDE REGEX "/paper/pdf\\.cpp$") # bentbook_pdf's

# Sources made at build time (string table, fonts): generated.cmake adds them to the targets.
set(GENERATED_DIR ${PROJECT_BINARY_DIR}/generated)
file(MAKE_DIRECTORY ${GENERATED_DIR})

add_library(core_options INTERFACE)
target_compile_options(core_options INTERFACE -fno-exceptions -fno-rtti)
target_include_directories(core_options INTERFACE ${PROJECT_SOURCE_DIR}/core ${GENERATED_DIR})
target_link_libraries(core_options INTERFACE bentbook_libm header_libraries bentbook_sanitize bentbook_warnings
  qrcodegen eigen lp_solver)

add_library(core_fast OBJECT EXCLUDE_FROM_ALL)
add_batches(core_fast ${FAST_SOURCES})
target_link_libraries(core_fast PRIVATE core_options)
add_library(core_often OBJECT EXCLUDE_FROM_ALL)
add_batches(core_often ${OFTEN_SOURCES})
target_link_libraries(core_often PRIVATE core_options)
add_library(core_small OBJECT EXCLUDE_FROM_ALL)
add_batches(core_small ${SMALL_SOURCES})
target_link_libraries(core_small PRIVATE core_options)
if(EMSCRIPTEN)
  target_compile_options(core_often PRIVATE $<$<CONFIG:Release>:-Os>)
  target_compile_options(core_small PRIVATE $<$<CONFIG:Release>:-Oz>)
endif()

add_library(bentbook_core STATIC $<TARGET_OBJECTS:core_fast> $<TARGET_OBJECTS:core_often> $<TARGET_OBJECTS:core_small>)
target_include_directories(bentbook_core PUBLIC ${PROJECT_SOURCE_DIR}/core ${GENERATED_DIR})
target_link_libraries(bentbook_core PUBLIC bentbook_libm header_libraries bentbook_sanitize
  PRIVATE qrcodegen eigen lp_solver)

# PDF, with the library that writes it: for the command line, the window and a module of the Worker, so that the page's
# first module does not carry it.
add_library(bentbook_pdf STATIC EXCLUDE_FROM_ALL ${PROJECT_SOURCE_DIR}/core/paper/pdf.cpp)
target_compile_options(bentbook_pdf PRIVATE $<$<AND:$<BOOL:${EMSCRIPTEN}>,$<CONFIG:Release>>:-Oz>)
target_link_libraries(bentbook_pdf PRIVATE core_options pdf_writer PUBLIC bentbook_core)

# RapidJSON 1.1's stack starts as null and adds to it before its first growth: harmless, but UBSan tells. Only the files
# that include it are spared that one check.
if(BENTBOOK_SANITIZE)
  get_target_property(JSON_BATCHES core_small SOURCES)
  get_target_property(OFTEN_BATCHES core_often SOURCES)
  list(APPEND JSON_BATCHES ${OFTEN_BATCHES})
  list(FILTER JSON_BATCHES INCLUDE REGEX "/batches/core_(text|book|tasks)_")
  set_source_files_properties(${JSON_BATCHES} PROPERTIES COMPILE_OPTIONS -fno-sanitize=pointer-overflow)
endif()
