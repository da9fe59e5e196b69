# find_package(cutback): the target cutback::core. A static library names what it is built from, so
# that its packages are looked for too; its public headers need none of them.
include(CMakeFindDependencyMacro)
find_dependency(fmt)
find_dependency(nlohmann_json)
find_dependency(Boost)
include("${CMAKE_CURRENT_LIST_DIR}/cutback-targets.cmake")
