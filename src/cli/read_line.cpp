#include "cli/read_line.hpp"

#include <histedit.h>
#include <clocale>
#include <cstdio>
#include <memory>

namespace cutback::cli {
namespace {

/// The editor of one run and what was typed in it. Its prompt is asked for by a plain function,
/// which finds it through the editor.
class Editor {
 public:
  Editor() : edit_(started(), el_end) {
    if (edit_ == nullptr || history_ == nullptr) return;
    HistEvent event{};
    history(history_.get(), &event, H_SETSIZE, 100);
    el_set(edit_.get(), EL_CLIENTDATA, this);
    el_set(edit_.get(), EL_PROMPT, prompt_of);
    el_set(edit_.get(), EL_EDITOR, "emacs");
    el_set(edit_.get(), EL_HIST, history, history_.get());
    // Ctrl-C as a key: it ends the dialogue, which then saves what was told.
    el_set(edit_.get(), EL_SETTY, "-d", "-isig", nullptr);
    el_set(edit_.get(), EL_ADDFN, "stop", "end the dialogue", stop);
    el_set(edit_.get(), EL_BIND, "^C", "stop", nullptr);
  }

  std::optional<std::string> read(const std::string& prompt) {
    if (edit_ == nullptr || history_ == nullptr) return std::nullopt;
    prompt_ = prompt;
    int count = 0;
    const char* const line = el_gets(edit_.get(), &count);
    if (line == nullptr || count <= 0) return std::nullopt;
    std::string text(line, static_cast<std::size_t>(count));
    if (text.back() != '\n') return std::nullopt;
    text.pop_back();
    HistEvent event{};
    if (!text.empty()) history(history_.get(), &event, H_ENTER, text.c_str());
    return text;
  }

 private:
  /// The editor drops what is no character of the locale: what a program starts with has ASCII
  /// alone.
  static EditLine* started() {
    std::setlocale(LC_CTYPE, "C.UTF-8");
    return el_init("cutback", stdin, stdout, stderr);
  }
  static char* prompt_of(EditLine* edit) {
    Editor* self = nullptr;
    el_get(edit, EL_CLIENTDATA, &self);
    return self->prompt_.data();
  }
  static unsigned char stop(EditLine*, int) { return CC_EOF; }

  std::unique_ptr<EditLine, void (*)(EditLine*)> edit_;
  std::unique_ptr<History, void (*)(History*)> history_{history_init(), history_end};
  std::string prompt_;
};

}  // namespace

std::optional<std::string> read_line(const std::string& prompt) {
  static Editor editor;  // its history lasts as long as the program
  return editor.read(prompt);
}

}  // namespace cutback::cli
