# Language level, warnings and code generation for everything of our own.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_C_STANDARD 11)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Debug CACHE STRING "Debug or Release" FORCE)
endif()
# -O1 rather than -O0: the property tests run a million cases in this build too.
set(CMAKE_C_FLAGS_DEBUG "-O1 -g")
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -g")
set(CMAKE_C_FLAGS_RELEASE "-O2 -DNDEBUG")
set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG")
if(EMSCRIPTEN)
  set(CMAKE_EXE_LINKER_FLAGS_DEBUG "-O1")
  # Not -Oz: that takes a memset and memcpy that go byte by byte, and a rafter took four times as long to solve.
  set(CMAKE_EXE_LINKER_FLAGS_RELEASE "-Os")
  # em++ 3.1.6 takes -Os and -Oz for "inline nothing": slower, and a quarter larger than what clang itself does then.
  set(CMAKE_C_FLAGS_RELEASE "-finline-functions ${CMAKE_C_FLAGS_RELEASE}")
  set(CMAKE_CXX_FLAGS_RELEASE "-finline-functions ${CMAKE_CXX_FLAGS_RELEASE}")
endif()

# ccache, told to take equal files for equal wherever the checkout lies.
find_program(CCACHE_PROGRAM ccache)
if(CCACHE_PROGRAM)
  set(ccache_launcher ${CMAKE_COMMAND} -E env CCACHE_BASEDIR=${PROJECT_SOURCE_DIR} CCACHE_NOHASHDIR=1)
  if(EMSCRIPTEN)
    list(APPEND ccache_launcher CCACHE_COMPILERTYPE=clang)
  endif()
  foreach(lang C CXX)
    set(CMAKE_${lang}_COMPILER_LAUNCHER ${ccache_launcher} ${CCACHE_PROGRAM})
  endforeach()
endif()

# Everywhere, other people's code too: no contraction of a*b+c, or targets differ in the last bit.
add_compile_options(-ffp-contract=off)

add_library(bentbook_warnings INTERFACE)
target_compile_options(bentbook_warnings INTERFACE -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror
  # gcc 12 at -O2 sees overlap in std::string's own assignment from a literal (its bug 105651).
  $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)

add_library(bentbook_sanitize INTERFACE)
if(BENTBOOK_SANITIZE)
  # The core has no RTTI, which the vptr check reads.
  target_compile_options(bentbook_sanitize INTERFACE -fsanitize=${BENTBOOK_SANITIZE} -fno-sanitize=vptr
    -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(bentbook_sanitize INTERFACE -fsanitize=${BENTBOOK_SANITIZE})
endif()
