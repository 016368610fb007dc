# Targets for what cmake/deps.sh keeps in its cache. A target exists only when its unit is there: the run scripts call
# deps.sh first with the parts they need.
function(find_unit unit result)
  execute_process(COMMAND bash ${PROJECT_SOURCE_DIR}/cmake/deps.sh where ${unit}
    OUTPUT_VARIABLE folder OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
  if(NOT IS_DIRECTORY "${folder}")
    set(folder "")
  endif()
  set(${result} "${folder}" PARENT_SCOPE)
endfunction()

find_unit(core CORE_UNIT)
if(NOT CORE_UNIT)
  message(FATAL_ERROR "The core's dependencies are missing: run bash cmake/deps.sh core")
endif()

# The one libm: always the same flags, whatever the build.
file(GLOB LIBM_SOURCES ${CORE_UNIT}/libm/*.c)
add_library(bentbook_libm STATIC ${LIBM_SOURCES})
target_compile_options(bentbook_libm PRIVATE -O2 -std=c99 -fno-builtin -ffp-contract=off -fno-strict-aliasing -w
  -Werror=implicit-function-declaration -include ${PROJECT_SOURCE_DIR}/cmake/libm/musl_prefix.h)
target_compile_definitions(bentbook_libm PRIVATE _DEFAULT_SOURCE)
target_include_directories(bentbook_libm PRIVATE ${CORE_UNIT}/libm ${PROJECT_SOURCE_DIR}/cmake/libm)
target_include_directories(bentbook_libm SYSTEM INTERFACE ${PROJECT_SOURCE_DIR}/cmake/libm)

# What the machine has as a CMake package comes first, what deps.sh keeps second. WebAssembly takes the latter always: it
# must not see the host's headers.
if(NOT EMSCRIPTEN)
  find_package(tl-expected QUIET)
  find_package(RapidJSON QUIET)
  find_package(Eigen3 3.4 QUIET NO_MODULE)
  find_package(Catch2 3 QUIET)
endif()

# tl::expected and RapidJSON
add_library(header_libraries INTERFACE)
if(TARGET tl::expected AND RapidJSON_FOUND)
  target_link_libraries(header_libraries INTERFACE tl::expected)
  target_include_directories(header_libraries SYSTEM INTERFACE ${RAPIDJSON_INCLUDE_DIRS})
else()
  target_include_directories(header_libraries SYSTEM INTERFACE ${CORE_UNIT}/include)
endif()
# RapidJSON's iterators were written before C++20 turned comparisons round; the right one is chosen all the same.
target_compile_options(header_libraries INTERFACE $<$<CXX_COMPILER_ID:Clang>:-Wno-ambiguous-reversed-operator>)

# QR codes
find_unit(qr QR_UNIT)
if(NOT QR_UNIT)
  message(FATAL_ERROR "The core's dependencies are missing: run bash cmake/deps.sh core")
endif()
add_library(qrcodegen STATIC ${QR_UNIT}/qrcodegen.c)
target_compile_options(qrcodegen PRIVATE -w $<$<CONFIG:Release>:-Os>)
target_include_directories(qrcodegen SYSTEM PUBLIC ${QR_UNIT})

# Linear algebra and linear programs, for core/raising. The solver's mathematics is the one libm's. Its files that
# read, write and print are left out (cmake/libm/lp_silent.c); small is as fast as -O2 here.
find_unit(statics STATICS_UNIT)
if(NOT STATICS_UNIT)
  message(FATAL_ERROR "The core's dependencies are missing: run bash cmake/deps.sh core")
endif()
add_library(eigen INTERFACE)
if(TARGET Eigen3::Eigen)
  target_link_libraries(eigen INTERFACE Eigen3::Eigen)
else()
  target_include_directories(eigen SYSTEM INTERFACE ${STATICS_UNIT}/include)
endif()
target_compile_definitions(eigen INTERFACE EIGEN_DONT_VECTORIZE EIGEN_DONT_PARALLELIZE EIGEN_MPL2_ONLY)
set(LP_FOLDER ${STATICS_UNIT}/lp_solve)
set(LP_FILES lp_MDO.c shared/commonlib.c shared/myblas.c lp_crash.c bfp/bfp_LUSOL/lp_LUSOL.c
  bfp/bfp_LUSOL/LUSOL/lusol.c lp_Hash.c lp_lib.c lp_matrix.c lp_mipbb.c lp_presolve.c lp_price.c
  lp_pricePSE.c lp_scale.c lp_simplex.c lp_SOS.c lp_utils.c colamd/colamd.c)
list(TRANSFORM LP_FILES PREPEND ${LP_FOLDER}/)
add_library(lp_solver STATIC ${LP_FILES} ${PROJECT_SOURCE_DIR}/cmake/libm/lp_silent.c)
target_compile_options(lp_solver PRIVATE -w -O2 $<$<BOOL:${EMSCRIPTEN}>:-Oz> -std=gnu99 -fno-strict-aliasing
  -include ${PROJECT_SOURCE_DIR}/cmake/libm/lp_prefix.h)
target_compile_definitions(lp_solver PRIVATE YY_NEVER_INTERACTIVE INVERSE_ACTIVE=INVERSE_LUSOL RoleIsExternalInvEngine
  PUBLIC NOPARSE LoadInverseLib=0 LoadLanguageLib=0 LoadableBlasLib=0)  # nothing is loaded at run time
target_include_directories(lp_solver SYSTEM PRIVATE ${LP_FOLDER}/shared ${LP_FOLDER}/bfp ${LP_FOLDER}/bfp/bfp_LUSOL
  ${LP_FOLDER}/bfp/bfp_LUSOL/LUSOL ${LP_FOLDER}/colamd PUBLIC ${LP_FOLDER})
target_link_libraries(lp_solver PUBLIC bentbook_libm ${CMAKE_DL_LIBS})

# PDF. What is not called is left out by the linker; the streams' packing is the same everywhere.
find_unit(pdf PDF_UNIT)
if(NOT PDF_UNIT)
  message(FATAL_ERROR "The core's dependencies are missing: run bash cmake/deps.sh core")
endif()
file(GLOB PDF_FILES ${PDF_UNIT}/haru/*.c ${PDF_UNIT}/zlib/*.c)
add_library(pdf_writer STATIC EXCLUDE_FROM_ALL ${PDF_FILES})
target_compile_options(pdf_writer PRIVATE -w -O2 $<$<BOOL:${EMSCRIPTEN}>:-Oz> -ffunction-sections -fdata-sections)
target_include_directories(pdf_writer SYSTEM PUBLIC ${PDF_UNIT}/haru PRIVATE ${PDF_UNIT}/zlib)

# Tests include Catch2 as one header.
if(TARGET Catch2::Catch2WithMain)
  file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/catch2/catch_amalgamated.hpp CONTENT "#include <catch2/catch_all.hpp>\n")
  add_library(catch2 INTERFACE)
  target_link_libraries(catch2 INTERFACE Catch2::Catch2WithMain)
  target_include_directories(catch2 SYSTEM INTERFACE ${PROJECT_BINARY_DIR}/catch2)
else()
  add_library(catch2 STATIC EXCLUDE_FROM_ALL ${CORE_UNIT}/catch2/catch_amalgamated.cpp)
  target_include_directories(catch2 SYSTEM PUBLIC ${CORE_UNIT}/catch2)
  target_compile_options(catch2 PRIVATE -w -O1)
  if(EMSCRIPTEN)
    target_compile_options(catch2 PUBLIC -fexceptions)
    target_link_options(catch2 PUBLIC -fexceptions)
  endif()
endif()

# Dear ImGui, compiled here because core/ui/imgui_config.h decides what is in it.
find_unit(imgui IMGUI_UNIT)
if(IMGUI_UNIT AND EXISTS ${PROJECT_SOURCE_DIR}/core/ui/imgui_config.h)
  add_library(imgui STATIC EXCLUDE_FROM_ALL ${IMGUI_UNIT}/imgui.cpp ${IMGUI_UNIT}/imgui_draw.cpp
    ${IMGUI_UNIT}/imgui_tables.cpp ${IMGUI_UNIT}/imgui_widgets.cpp
    ${PROJECT_SOURCE_DIR}/core/ui/imgui_format.cpp)
  target_compile_options(imgui PRIVATE -w -fno-exceptions -fno-rtti $<$<CONFIG:Release>:-Oz>)
  target_compile_definitions(imgui PUBLIC IMGUI_USER_CONFIG="ui/imgui_config.h" PRIVATE BENTBOOK_BUILDS_IMGUI)
  target_include_directories(imgui SYSTEM PUBLIC ${IMGUI_UNIT})
  target_include_directories(imgui PUBLIC ${PROJECT_SOURCE_DIR}/core)
endif()

# SDL2: for the page our own small build, on the desktop Debian's. OpenGL ES 3 beside it; on the desktop libpng too.
if(EMSCRIPTEN)
  find_unit(sdl2_wasm SDL2_UNIT)
  if(SDL2_UNIT)
    add_library(sdl2 INTERFACE)
    target_include_directories(sdl2 SYSTEM INTERFACE ${SDL2_UNIT}/include ${SDL2_UNIT}/include/SDL2)
    target_link_libraries(sdl2 INTERFACE ${SDL2_UNIT}/lib/libSDL2.a)
    target_compile_options(sdl2 INTERFACE -sUSE_SDL=0)
    # Named libraries only: else Emscripten's own SDL 1 quietly fills what our SDL2 leaves out.
    target_link_options(sdl2 INTERFACE -sUSE_SDL=0 -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2 -sAUTO_JS_LIBRARIES=0
      -lwebgl.js -lhtml5_webgl.js -lasync.js)
  endif()
else()
  find_package(SDL2 QUIET)
  find_package(PNG QUIET)
  find_library(GLES_LIBRARY GLESv2)
  if(SDL2_FOUND AND PNG_FOUND AND GLES_LIBRARY)
    add_library(sdl2 INTERFACE)
    target_link_libraries(sdl2 INTERFACE SDL2::SDL2 ${GLES_LIBRARY})
  endif()
endif()
