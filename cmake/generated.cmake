# Sources made at build time. Included after the targets that take them.
#   answers/strings.gen.{h,cpp}   the string table, from assets/strings/*.tsv
#   screens/fonts.gen.{h,cpp}     the subset fonts, from Debian's fonts-noto-core and the string table's letters
# A wrong table or a glyph that the font lacks stops the build.
find_program(BENTBOOK_PYTHON python3 PATHS /usr/bin NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH REQUIRED)
file(GLOB STRING_TABLES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/assets/strings/*.tsv)

add_custom_command(
  OUTPUT ${GENERATED_DIR}/answers/strings.gen.h ${GENERATED_DIR}/answers/strings.gen.cpp
  COMMAND ${BENTBOOK_PYTHON} ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${GENERATED_DIR}/answers ${STRING_TABLES}
  DEPENDS ${PROJECT_SOURCE_DIR}/cmake/make_strings.py ${STRING_TABLES}
  COMMENT "Making the string table" VERBATIM)
target_sources(bentbook_core PRIVATE ${GENERATED_DIR}/answers/strings.gen.h ${GENERATED_DIR}/answers/strings.gen.cpp)
