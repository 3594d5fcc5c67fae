// Nothing but a place for the precompiled header that all test programs share
// (tests/CMakeLists.txt).
