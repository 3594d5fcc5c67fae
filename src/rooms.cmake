# The rooms and the walls between them.
#
# A room's headers can be reached only through build/walls/<room>, a folder that holds one link,
# <room> -> src/<room>; a target gets that folder on its include path only for the rooms behind SEES. So
# `#include "pdf/write.h"` in a room that does not see `pdf` does not compile (tests/walls proves it).

set(CHALKLEAF_WALLS ${CMAKE_BINARY_DIR}/walls)

# Lets a target include the headers of the rooms named.
function(chalkleaf_sees target)
  foreach(room ${ARGN})
    file(MAKE_DIRECTORY ${CHALKLEAF_WALLS}/${room})
    file(CREATE_LINK ${CMAKE_SOURCE_DIR}/src/${room} ${CHALKLEAF_WALLS}/${room}/${room} SYMBOLIC)
    target_include_directories(${target} PRIVATE ${CHALKLEAF_WALLS}/${room})
  endforeach()
endfunction()

# chalkleaf_room(NAME SEES rooms… FILES sources… USES libraries…)
function(chalkleaf_room name)
  cmake_parse_arguments(ROOM "" "" "SEES;FILES;USES" ${ARGN})
  add_library(room_${name} STATIC ${ROOM_FILES})
  chalkleaf_sees(room_${name} ${name} ${ROOM_SEES})
  set_property(GLOBAL PROPERTY CHALKLEAF_SEES_${name} "${name};${ROOM_SEES}")
  list(TRANSFORM ROOM_SEES PREPEND room_)
  target_link_libraries(room_${name} PUBLIC ${ROOM_SEES} PRIVATE ${ROOM_USES})
  # Under a sanitizer optimising takes clang more than half of its time (a batch of `sheet`: 28 s of CPU with it, 12
  # without). Only in these rooms do the tests win it back, and under the thread sanitizer, which runs little, nowhere.
  if(CMAKE_CXX_FLAGS MATCHES "fsanitize=" AND NOT CHALKLEAF_FUZZ AND
     (CMAKE_CXX_FLAGS MATCHES "fsanitize=thread" OR NOT name MATCHES "^(base|dose|picture|type|page)$"))
    target_compile_options(room_${name} PRIVATE -O0)
  endif()
endfunction()

# In the order a plan flows through them.
foreach(room base source dose rota draft plan reason figure picture type page sheet pdf club cli pack)
  add_subdirectory(${CMAKE_SOURCE_DIR}/src/${room} ${CMAKE_BINARY_DIR}/rooms/${room})
endforeach()

# What each room sees, for tests/walls.
set(sees "")
foreach(room base source dose rota draft plan reason figure picture type page sheet pdf club cli)
  get_property(rooms GLOBAL PROPERTY CHALKLEAF_SEES_${room})
  list(JOIN rooms " " rooms)
  string(APPEND sees "${room}: ${rooms}\n")
endforeach()
file(WRITE ${CMAKE_BINARY_DIR}/sees.txt "${sees}")
