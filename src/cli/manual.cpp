#include "cli/manual.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

namespace cutback::cli {
namespace {

using Words = std::vector<std::string>;

/// What is completed of an option or argument.
struct Parameter {
  std::string name;         ///< `--od`; empty: an argument without an option
  std::string type;         ///< `FILE`; empty: a switch
  std::string description;  ///< in one line
  Words words;              ///< that it may have
  Words endings;            ///< of its files; empty: any
};

std::string one_line(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

bool is_word(std::string_view text) {
  constexpr std::string_view k_signs = "-_.:/";
  return !text.empty() && std::all_of(text.begin(), text.end(), [&](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           k_signs.find(c) != std::string_view::npos;
  });
}

/// `a, b or c`, up to a bracket. @return empty where it is no such list
Words listed(std::string_view text) {
  text = text.substr(0, text.find(" ("));
  Words words;
  const std::size_t last = text.rfind(" or ");
  if (last == std::string_view::npos) return {};
  std::string_view rest = text.substr(0, last);
  for (;;) {
    const std::size_t comma = rest.find(", ");
    words.emplace_back(rest.substr(0, comma));
    if (comma == std::string_view::npos) break;
    rest.remove_prefix(comma + 2);
  }
  words.emplace_back(text.substr(last + 4));
  return std::all_of(words.begin(), words.end(), is_word) ? words : Words{};
}

/// The words of an option stand in its description behind the last colon, or are all of it.
Words words_in(const std::string& type, const std::string& description) {
  if (type == "yes|no") return {"yes", "no"};
  if (type != "WORD" && type != "WHEN" && type != "MARK" && type != "NAME") return {};
  const std::size_t colon = description.rfind(": ");
  return listed(colon == std::string::npos ? description
                                           : std::string_view(description).substr(colon + 2));
}

Words endings_in(const std::string& type, const std::string& description) {
  Words endings;
  if (type != "FILE") return endings;
  constexpr std::array<std::pair<std::string_view, const char*>, 3> k_kinds{
      {{"CSV", "csv"}, {".xlsx", "xlsx"}, {"JSON", "json"}}};
  for (const auto& [word, ending] : k_kinds) {
    if (description.find(word) != std::string::npos) endings.emplace_back(ending);
  }
  return endings;
}

Parameter parameter_of(const CLI::Option& option) {
  const std::string name = option.get_lnames().empty() ? "" : "--" + option.get_lnames().front();
  Parameter out{.name = name,
                .type = option.get_items_expected_max() == 0 ? "" : option.get_type_name(),
                .description = one_line(option.get_description()),
                .words = {},
                .endings = {}};
  out.words = words_in(out.type, out.description);
  out.endings = endings_in(out.type, out.description);
  return out;
}

std::vector<Parameter> parameters_of(const CLI::App& command) {
  std::vector<Parameter> list;
  for (const CLI::Option* option : command.get_options()) list.push_back(parameter_of(*option));
  return list;
}

std::string joined(const Words& words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : std::string(between)) + word;
  return text;
}

std::string first_sentence(const std::string& description) {
  std::string text = one_line(description);
  return text.substr(0, text.find_first_of(".:?"));
}

/// With nothing in it that roff obeys.
std::string roff(std::string_view text) {
  std::string out;
  bool line_start = true;
  for (const char c : text) {
    if (line_start && (c == '.' || c == '\'')) out += "\\&";
    if (c == '\\') {
      out += "\\e";
    } else if (c == '-') {
      out += "\\-";
    } else {
      out += c;
    }
    line_start = c == '\n';
  }
  return out;
}

std::string as_it_stands(const std::string& text) { return ".nf\n" + roff(text) + "\n.fi\n"; }

std::string heading(const std::string& name) {
  std::string upper = name;
  for (char& c : upper) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return ".TH " + upper + " 1 \"\" \"cutback " CUTBACK_VERSION "\" \"cutback\"\n";
}

std::string entry(const Parameter& parameter) {
  std::string text = ".TP\n\\fB" + roff(parameter.name) + "\\fR";
  if (!parameter.type.empty()) text += " \\fI" + roff(parameter.type) + "\\fR";
  return text + "\n" + roff(parameter.description) + "\n";
}

/// Single quotes as a shell takes them within single quotes.
std::string in_quotes(std::string_view text) {
  std::string out = "'";
  for (const char c : text) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

/// Within the brackets of zsh's _arguments.
std::string zsh_text(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::vector<const CLI::App*> commands_of(const CLI::App& program) {
  return program.get_subcommands([](const CLI::App*) { return true; });
}

std::string zsh_action(const Parameter& parameter) {
  if (!parameter.words.empty()) return "(" + zsh_text(joined(parameter.words, " ")) + ")";
  if (parameter.type == "DIR") return "_files -/";
  if (parameter.type != "FILE") return " ";
  if (parameter.endings.empty()) return "_files";
  return "_files -g \"*.(" + joined(parameter.endings, "|") + ")\"";
}

/// What bash offers for a value. @return empty: nothing
std::string bash_values(const Parameter& parameter) {
  if (!parameter.words.empty()) return "words " + in_quotes(joined(parameter.words, " "));
  if (parameter.type == "DIR") return "folders";
  if (parameter.type == "FILE") return "files " + in_quotes(joined(parameter.endings, "|"));
  return "nothing";
}

}  // namespace

std::string manual_page(const CLI::App& program) {
  std::string text = heading("cutback") +
                     ".SH NAME\ncutback \\- fits cable glands to wire\\-armoured "
                     "cables and says where each layer is cut\n"
                     ".SH SYNOPSIS\n\\fBcutback\\fR \\fICOMMAND\\fR [\\fIOPTIONS\\fR]\n"
                     ".SH COMMANDS\n";
  std::string pages;
  for (const CLI::App* command : commands_of(program)) {
    text += ".TP\n\\fB" + roff(command->get_name()) + "\\fR\n" +
            roff(first_sentence(command->get_description())) + "\n";
    pages += (pages.empty() ? "" : ",\n") + std::string(".BR cutback\\-") +
             roff(command->get_name()) + " (1)";
  }
  text +=
      ".SH ENVIRONMENT\n"
      ".TP\n\\fBCUTBACK_GLANDS\\fR\nThe gland list where none is given\n"
      ".TP\n\\fBCUTBACK_DATA\\fR\nFolder with tables of published values to use in place of the "
      "built\\-in ones\n"
      ".TP\n\\fBNO_COLOR\\fR\nNo colour where it is not empty\n"
      ".TP\n\\fBSOURCE_DATE_EPOCH\\fR\nThe date of pages and workbooks, in seconds since "
      "1970\\-01\\-01\n";
  return text + ".SH EXIT STATUS\n" + roff(program.get_footer()) + "\n.SH SEE ALSO\n" + pages +
         "\n";
}

std::string manual_page(const CLI::App& program, const CLI::App& command) {
  const std::string name = command.get_name();
  std::string text = heading("cutback-" + name) + ".SH NAME\ncutback\\-" + roff(name) + " \\- " +
                     roff(first_sentence(command.get_description())) +
                     "\n.SH SYNOPSIS\n\\fBcutback " + roff(name) + "\\fR [\\fIOPTIONS\\fR]";
  std::string arguments;
  std::vector<std::string> groups;
  const auto group_of = [](const CLI::Option& option) {
    return option.get_group().empty() ? std::string("Options") : option.get_group();
  };
  for (const CLI::Option* option : command.get_options()) {
    const Parameter parameter = parameter_of(*option);
    if (parameter.name.empty()) {
      text += " \\fI" + roff(option->get_name()) + "\\fR";
      arguments +=
          ".TP\n\\fI" + roff(option->get_name()) + "\\fR\n" + roff(parameter.description) + "\n";
    } else if (std::find(groups.begin(), groups.end(), group_of(*option)) == groups.end()) {
      groups.push_back(group_of(*option));
    }
  }
  text += "\n.SH DESCRIPTION\n" + roff(command.get_description()) + "\n";
  if (!arguments.empty()) text += ".SH ARGUMENTS\n" + arguments;
  text += ".SH OPTIONS\n";
  for (const std::string& group : groups) {
    text += ".SS " + roff(group) + "\n";
    for (const CLI::Option* option : command.get_options()) {
      const Parameter parameter = parameter_of(*option);
      if (!parameter.name.empty() && group_of(*option) == group) text += entry(parameter);
    }
  }
  // Its footer is its own words and then those of the program.
  std::string footer = command.get_footer();
  const std::size_t common = footer.find(program.get_footer());
  footer.erase(std::min(common, footer.size()));
  footer.erase(footer.find_last_not_of('\n') + 1);
  if (!footer.empty()) text += ".SH NOTES\n" + as_it_stands(footer);
  return text + ".SH EXIT STATUS\n" + roff(program.get_footer()) +
         "\n.SH SEE ALSO\n.BR cutback (1)\n";
}

std::string bash_completion(const CLI::App& program) {
  std::string names;
  std::string cases;
  for (const CLI::App* command : commands_of(program)) {
    const std::string name = command->get_name();
    names += " " + name;
    std::string options;
    std::string argument = "nothing";
    for (const Parameter& parameter : parameters_of(*command)) {
      if (parameter.name.empty()) {
        argument = bash_values(parameter);
        continue;
      }
      options += " " + parameter.name;
      if (parameter.type.empty()) continue;
      cases += "    " + in_quotes(name + " " + parameter.name) + ") _cutback_" +
               bash_values(parameter) + "; return ;;\n";
    }
    cases += "    " + in_quotes(name + " ") + "*)\n      case $current in -*) _cutback_words " +
             in_quotes(options) + " ;; *) _cutback_" + argument + " ;; esac; return ;;\n";
  }
  return "# bash completion for cutback. Generated from its options.\n"
         "_cutback_words() {\n"
         "  COMPREPLY=($(compgen -W \"$1\" -- \"$current\"))\n"
         "  case $current in\n"
         "    *:*) local head=${current%\"${current##*:}\"} i\n"
         "      for i in \"${!COMPREPLY[@]}\"; do COMPREPLY[i]=${COMPREPLY[i]#\"$head\"}; done ;;\n"
         "  esac\n"
         "}\n"
         "_cutback_nothing() { COMPREPLY=(); }\n"
         "_cutback_folders() { mapfile -t COMPREPLY < <(compgen -d -- \"$current\"); compopt -o "
         "filenames; }\n"
         "_cutback_files() {\n"
         "  local each\n"
         "  COMPREPLY=()\n"
         "  while IFS= read -r each; do\n"
         "    if [ -z \"$1\" ] || [ -d \"$each\" ] || [[ $each =~ \\.($1)$ ]]; then "
         "COMPREPLY+=(\"$each\"); fi\n"
         "  done < <(compgen -f -- \"$current\")\n"
         "  compopt -o filenames\n"
         "}\n"
         "_cutback() {\n"
         "  local words current previous\n"
         "  words=(\"${COMP_WORDS[@]:0:COMP_CWORD+1}\")\n"
         "  current=${words[COMP_CWORD]}\n"
         "  previous=${words[COMP_CWORD-1]}\n"
         "  # A colon is a word of its own to bash: iec-60079-14:2007.\n"
         "  if [ \"$current\" = : ]; then current=$previous:; previous=${words[COMP_CWORD-2]}\n"
         "  elif [ \"$previous\" = : ]; then current=${words[COMP_CWORD-2]}:$current; "
         "previous=${words[COMP_CWORD-3]}; fi\n"
         "  if [ \"$COMP_CWORD\" -lt 2 ]; then _cutback_words " +
         in_quotes("--help --version" + names) +
         "; return; fi\n"
         "  case \"${words[1]} $previous\" in\n" +
         cases + "  esac\n}\ncomplete -F _cutback cutback\n";
}

std::string zsh_completion(const CLI::App& program) {
  std::string names;
  std::string cases;
  for (const CLI::App* command : commands_of(program)) {
    names += "    " +
             in_quotes(command->get_name() + ":" + first_sentence(command->get_description())) +
             "\n";
    cases += "    " + command->get_name() + ")\n      _arguments";
    for (const Parameter& parameter : parameters_of(*command)) {
      std::string item = parameter.name.empty()
                             ? "*:file:" + zsh_action(parameter)
                             : "*" + parameter.name + "[" + zsh_text(parameter.description) + "]";
      if (!parameter.name.empty() && !parameter.type.empty()) {
        item += ":" + zsh_text(parameter.type) + ":" + zsh_action(parameter);
      }
      cases += " \\\n        " + in_quotes(item);
    }
    cases += " ;;\n";
  }
  return "#compdef cutback\n# Generated from its options.\n"
         "local -a commands\ncommands=(\n" +
         names +
         ")\nif (( CURRENT == 2 )); then\n  _describe command commands\n  _arguments "
         "'--help[Print this help]' '--version[Print the version]'\nelse\n"
         "  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $command in\n" +
         cases + "  esac\nfi\n";
}

std::string fish_completion(const CLI::App& program) {
  std::string text =
      "# fish completion for cutback. Generated from its options.\ncomplete -c cutback -f\n";
  for (const CLI::App* command : commands_of(program)) {
    const std::string name = command->get_name();
    text += "complete -c cutback -n __fish_use_subcommand -a " + name + " -d " +
            in_quotes(first_sentence(command->get_description())) + "\n";
    for (const Parameter& parameter : parameters_of(*command)) {
      text += "complete -c cutback -n '__fish_seen_subcommand_from " + name + "'";
      if (!parameter.name.empty()) text += " -l " + parameter.name.substr(2);
      if (!parameter.name.empty() && !parameter.type.empty()) text += " -r";
      if (!parameter.words.empty()) text += " -a " + in_quotes(joined(parameter.words, " "));
      if (parameter.type == "FILE") text += " -F";
      if (parameter.type == "DIR") text += " -a '(__fish_complete_directories)'";
      text += " -d " + in_quotes(parameter.description) + "\n";
    }
  }
  return text;
}

}  // namespace cutback::cli
