#pragma once
// The commands: one line each here and in app.cpp, one file pair each.

namespace CLI {
class App;
}  // namespace CLI

namespace cutback::cli {

struct Context;

}  // namespace cutback::cli
