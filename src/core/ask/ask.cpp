#include "cutback/ask/ask.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "core/ask/rows.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::ask {
namespace {

using job::Field;
using job::JobInput;

constexpr std::string_view k_not_known = "?";
constexpr std::size_t k_most_readings = 8;  // of one place; nobody takes more

bool is_diameter(std::string_view key) {
  return key == "sheath_od_mm" || key == "bedding_mm" || key == "armour_mm";
}

const std::optional<measure::Readings>& readings_of(const JobInput& in, std::string_view key) {
  return in.*std::get<std::optional<measure::Readings> JobInput::*>(job::field_named(key).member);
}

/// What has been worked out from the job so far.
struct View {
  job::Job job;
  std::vector<fit::GlandFit> fits;
  /// Facts of place and cable that nobody gave, each of which could lift what the stricter side of
  /// them forbids.
  std::vector<std::string> would_change;
};

/// @throws InputError where the facts cannot be true together
View view_of(const JobInput& in, const Facts& facts) {
  View view;
  view.job = job::resolve(in, facts.standards, job::Unstated::measured);
  const fit::Question question = fit::ask(view.job, facts.standards, asking());
  for (const gland::Gland& gland : facts.glands) {
    view.fits.push_back(fit::check_gland(question, gland));
  }
  view.would_change = question.demand->would_change;
  return view;
}

/// Whether the gland fails by what no later answer lifts: the cable does not go into it.
bool is_out(const fit::GlandFit& fit) {
  for (const auto name : {fit::CheckName::outer_seal, fit::CheckName::armour}) {
    const fit::Check* const check = fit.find(name);
    if (check != nullptr && check->verdict == Verdict::no_fit) return true;
  }
  return false;
}

bool any_with(const View& view, Verdict least) {
  return std::any_of(view.fits.begin(), view.fits.end(),
                     [&](const fit::GlandFit& fit) { return fit.verdict >= least; });
}

/// A field of an end that was not given.
bool is_missing(const JobInput& in, std::string_view key) {
  for (const Field& field : job::fields()) {
    if (field.key == key) return !field.option.empty() && !job::text_of(in, field);
  }
  return false;
}

std::vector<std::string_view> answers_to(const State& state, std::string_view key) {
  std::vector<std::string_view> texts;
  for (const Answer& answer : state.answers) {
    if (answer.key == key) texts.push_back(answer.text);
  }
  return texts;
}

/// Whether readings of one diameter are all that is worth taking.
bool are_enough(const measure::Readings& readings, std::string_view key) {
  const std::vector<double>& first = readings.places.front().readings_mm;
  if (readings.places.size() > 1 || key == "armour_mm") return true;
  const auto [low, high] = std::minmax_element(first.begin(), first.end());
  const double mean = (*low + *high) / 2.0;
  return first.size() > 1 && *low < *high && *high - *low <= measure::k_ovality_limit_ratio * mean;
}

/// Whether nothing more is asked of a key.
bool is_answered(const State& state, const JobInput& in, std::string_view key) {
  const std::vector<std::string_view> texts = answers_to(state, key);
  if (!is_diameter(key)) return !texts.empty() || job::text_of(in, job::field_named(key));
  const auto& readings = readings_of(in, key);
  if (readings && are_enough(*readings, key)) return true;
  return std::any_of(texts.begin(), texts.end(), [](std::string_view text) {
    return text.empty() || text == k_not_known || text.find(',') != std::string::npos;
  });
}

/// Whether a question has a meaning for the cable at hand.
bool applies(std::string_view key, const JobInput& in) {
  const bool bare = in.armour == cable::ArmourKind::none;
  if (key == "bedding_mm" || key == "armour_mm" || key == "current_ka") return !bare;
  return true;
}

/// The facts that together allow a gland which seals on the bedding for a flameproof entry.
constexpr std::array<std::string_view, 5> k_of_solid_cable{"bedding_made", "circular", "compact",
                                                           "fillers", "length_m"};

bool is_of_solid_cable(std::string_view key) {
  return std::find(k_of_solid_cable.begin(), k_of_solid_cable.end(), key) != k_of_solid_cable.end();
}

bool solid_cable_not_known(const State& state) {
  return std::any_of(state.answers.begin(), state.answers.end(), [](const Answer& answer) {
    return is_of_solid_cable(answer.key) && answer.text == k_not_known;
  });
}

/// What can still change the answer.
struct Open {
  bool any = false;  ///< a gland may still come to fit
  std::set<std::string, std::less<>> keys;
};

Open open_of(const State& state, const JobInput& in, const View& view) {
  Open open;
  const bool fits = any_with(view, Verdict::fits);
  open.any = fits || any_with(view, Verdict::not_known);
  const auto add = [&](std::string_view key) {
    const bool asks = is_missing(in, key) && !is_answered(state, in, key) && applies(key, in);
    if (asks) open.keys.emplace(key);
    return asks;
  };
  if (fits) return open;
  for (const fit::GlandFit& fit : view.fits) {
    for (const fit::Lack& lack : fit::lacks_of(fit)) add(lack.key);
    if (fit.verdict != Verdict::no_fit || is_out(fit)) continue;
    for (const std::string& key : view.would_change) {
      // All of them must hold: one that is not known leaves the others without a say.
      if (is_of_solid_cable(key) && solid_cable_not_known(state)) continue;
      open.any = add(key) || open.any;
    }
  }
  return open;
}

/// The key of the next question; nothing where the summary comes.
std::optional<std::string> next_key(const State& state, const JobInput& in, const Facts& facts) {
  if (!state.again.empty()) return state.again;
  const Open open = open_of(state, in, view_of(in, facts));
  for (const detail::Row& row : detail::rows()) {
    if (is_answered(state, in, row.key) || !applies(row.key, in)) continue;
    // A diameter that was begun is brought to its end.
    const bool begun = is_diameter(row.key) && readings_of(in, row.key).has_value();
    if (row.key == "armour" || row.key == "sheath_od_mm" || begun) return std::string(row.key);
    if (open.any && (row.always || open.keys.contains(row.key))) return std::string(row.key);
  }
  for (const std::string& key : open.keys) {
    if (detail::row_of(key) == nullptr) return key;
  }
  return std::nullopt;
}

std::string running_of(const JobInput& in, std::string_view key, const Facts& facts) {
  const auto& readings = readings_of(in, key);
  if (!readings) return {};
  const job::Job job = job::resolve(in, facts.standards, job::Unstated::measured);
  const std::optional<measure::Estimate>& estimate = key == "sheath_od_mm" ? job.cable.sheath_od
                                                     : key == "bedding_mm" ? job.cable.bedding
                                                                           : job.cable.wire;
  if (!estimate) return {};
  const std::vector<double>& first = readings->places.front().readings_mm;
  std::string text = "so far " + measure::with_spread(*estimate) + "; ";
  if (first.size() == 1) return text + "a second one at right angles is needed to pass a gland";
  const auto [low, high] = std::minmax_element(first.begin(), first.end());
  if (*low == *high) {
    return text + "all alike to the last digit: turn the caliper by a right angle and take another";
  }
  return text + "they differ by " + plain(*high - *low) +
         " mm, which is not round: take another, or an empty line goes on";
}

/// @return null where the key has none
const detail::Row* row_for(std::string_view key, const JobInput& in) {
  if (key == "armour_mm") return &detail::piece_row(in.armour.value_or(cable::ArmourKind::wire));
  return detail::row_of(key);
}

Prompt prompt_of(const std::string& key, const JobInput& in, const Facts& facts) {
  Prompt prompt;
  prompt.key = key;
  const Field& field = job::field_named(key);
  if (const detail::Row* const row = row_for(key, in)) {
    prompt.asks = row->asks;
    prompt.form = row->example;
    prompt.usual = row->usual;
    prompt.not_known = row->not_known;
    prompt.may_skip = row->may_skip;
    if (is_diameter(key)) {
      prompt.running = running_of(in, key, facts);
      prompt.may_skip = !prompt.running.empty();
      if (prompt.running.empty()) prompt.drawing = row->drawing;
      const auto& readings = readings_of(in, key);
      const std::size_t taken = readings ? readings->places.front().readings_mm.size() : 0;
      if (key != "armour_mm") prompt.asks += ": reading " + std::to_string(taken + 1);
    }
    return prompt;
  }
  prompt.asks = std::string(field.help) + "?";
  prompt.form = job::allowed_text(field);
  prompt.not_known = "what asks for it stays open";
  return prompt;
}

Prompt confirm_prompt() {
  Prompt prompt;
  prompt.asks = "Is all of this right?";
  prompt.form = "an empty line: yes; a number asks that line again";
  prompt.may_skip = true;
  return prompt;
}

/// A value with its unit, in the words of a summary.
std::string shown(const Field& field, std::string text) {
  const bool in_inches = text.find("in") != std::string::npos;
  if (field.kind == job::FieldKind::readings) return in_inches ? text : text + " mm";
  if (field.key == "zone" && text == "none") return "none: a plain room";
  if (field.key == "ip") return text == "00" ? "nobody asks" : "IP" + text;
  const bool has_unit = field.kind == job::FieldKind::number && !field.allowed.empty();
  return has_unit ? text + " " + std::string(field.allowed) : text;
}

/// What was answered to a question; nothing where it was not asked.
std::optional<std::string> told_of(const State& state, const JobInput& in, std::string_view key) {
  const Field& field = job::field_named(key);
  if (auto text = job::text_of(in, field)) return shown(field, *std::move(text));
  const std::vector<std::string_view> texts = answers_to(state, key);
  if (texts.empty()) return std::nullopt;
  return texts.back() == k_not_known ? "not known" : "nobody asks";
}

Step refused(const State& state, std::string why) { return {state, {std::move(why)}, true}; }

/// What people type for the two signs, in any case; the line itself for anything else.
std::string_view sign_of(std::string_view line) {
  constexpr std::array<std::string_view, 12> k_unknown{
      "dunno",   "don't know", "dont know", "do not know", "unknown",   "not known",
      "no idea", "-",          "n/a",       "tbc",         "not given", "??"};
  std::string small;
  for (const char c : line) small += small_letter(c);
  if (std::find(k_unknown.begin(), k_unknown.end(), small) != k_unknown.end()) return k_not_known;
  return small == "back" ? "<" : line;
}

constexpr const char* k_ways_on = "or ? not known, < back, Ctrl-C saves and stops";

Step refused(const State& state, const InputError& error) {
  Step step{state, {}, true};
  for (Fault fault : error.faults()) {
    fault.where.clear();  // the question is at hand
    for (const Field& field : job::fields()) {
      // Nobody who is asked in words has seen the keys.
      if (fault.what.starts_with(std::string(field.key) + " is not ")) {
        fault.what.replace(0, field.key.size(), "the answer");
      }
    }
    step.says.push_back(to_line(fault));
  }
  if (!step.says.empty()) step.says.back() += std::string("; ") + k_ways_on;
  return step;
}

/// Takes every answer to `key` away, and what the start told of it.
State without(const State& state, std::string_view key) {
  State out = state;
  std::erase_if(out.answers, [&](const Answer& answer) { return answer.key == key; });
  job::take_away(out.start, job::field_named(key));
  out.confirmed = false;
  return out;
}

Step at_summary(const State& state, std::string_view line) {
  if (line.empty() || line == "y" || line == "yes") {
    Step step{state, {}, false};
    step.state.confirmed = true;
    return step;
  }
  const std::vector<Told> told = summary(state);
  const auto number = parse_figure(line);
  if (!number || *number < 1.0 || *number > static_cast<double>(told.size())) {
    return refused(state, "an empty line confirms; 1 to " + std::to_string(told.size()) +
                              " asks that line again; < goes back");
  }
  const auto at = static_cast<std::size_t>(*number) - 1;
  Step step{without(state, told[at].key), {}, false};
  step.state.again = told[at].key;
  step.state.before = {state};
  return step;
}

/// The summary as it was before one of its lines was asked again.
Step kept(const State& state) { return {state.before.front(), {"as it was"}, false}; }

/// Once the new answer is whole the old one is gone.
State settled(State state) {
  if (state.again.empty() || !is_answered(state, job_of(state), state.again)) return state;
  state.again.clear();
  state.before.clear();
  return state;
}

/// Of the state after an answer: what the cable's layers say at once.
std::vector<std::string> remarks(const JobInput& before, const JobInput& after,
                                 const Facts& facts) {
  const job::Job was = job::resolve(before, facts.standards, job::Unstated::measured);
  const job::Job now = job::resolve(after, facts.standards, job::Unstated::measured);
  std::vector<std::string> says;
  if (now.cable.contradiction && !was.cable.contradiction) {
    says.push_back(now.cable.contradiction->says + ". Repeat: " + now.cable.contradiction->repeat);
  }
  for (const std::string& warning : now.cable.warnings) {
    const auto& old = was.cable.warnings;
    if (std::find(old.begin(), old.end(), warning) == old.end()) says.push_back(warning);
  }
  return says;
}

/// One reading behind those of the same place.
std::string joined_reading(const JobInput& in, std::string_view key, const std::string& text) {
  const auto& before = readings_of(in, key);
  return before ? before->text + "+" + text : text;
}

/// The type of protection as it was typed, perhaps the whole marking.
std::string plate_of(const State& state) {
  for (const Answer& answer : state.answers) {
    if (answer.key == "protection") return answer.as_typed;
  }
  return {};
}

Step take_answer(const State& state, const Facts& facts, const std::string& key,
                 std::string_view line) {
  const Field& field = job::field_named(key);
  const JobInput before = job_of(state);
  const written::Taken taken = written::take_typed(written::asked_of(field), line, "");
  Step step{state, {}, false};
  if (!taken.says.empty()) step.says.push_back("taken: " + taken.says);
  JobInput trial = before;
  std::string text(trimmed(taken.text));
  if (is_diameter(key)) {
    const auto& readings = readings_of(before, key);
    if (readings && readings->places.front().readings_mm.size() >= k_most_readings) {
      return refused(state, "these are enough: an empty line goes on");
    }
    text = joined_reading(before, key, text);
  }
  auto faults = job::set_from_text(trial, field, text, "");
  if (!taken.also.empty() && faults.empty()) {
    faults = written::put_told(std::array{written::Told{taken.also, "", std::string(line)}}, trial);
  }
  // What the plate says of group and level is compared whenever the place or the plate is told.
  std::string plate = plate_of(state);
  if (key == "protection") plate = line;
  if (faults.empty()) faults = written::faults_of_plate(plate, "", trial);
  if (!faults.empty()) throw InputError(std::move(faults));
  Answer answer{key, std::string(trimmed(taken.text))};
  if (key == "protection") answer.as_typed = line;
  const std::string also(taken.also);
  if (!also.empty() && !job::text_of(before, job::field_named(also.substr(0, also.find('='))))) {
    answer.also = also;
  }
  step.state.answers.push_back(std::move(answer));
  for (std::string& remark : remarks(before, job_of(step.state), facts)) {
    step.says.push_back("look: " + std::move(remark));
  }
  static_cast<void>(view_of(job_of(step.state), facts));  // throws what cannot be
  return step;
}

Step not_known(const State& state, const Prompt& prompt) {
  Step step{state, {"not known: " + prompt.not_known}, false};
  step.state.answers.push_back({prompt.key, std::string(k_not_known)});
  return step;
}

/// One answer back: at a line that is asked again to the reading before it, then to the summary.
Step back(const State& state) {
  const bool asked_again = !state.again.empty();
  if (asked_again && (state.answers.empty() || state.answers.back().key != state.again)) {
    return kept(state);
  }
  if (state.answers.empty()) {
    const bool told = !summary(state).empty();
    return refused(state, told ? "this is the first question; what stood in the file can be "
                                 "changed at the summary"
                               : "this is the first question");
  }
  Step step{state, {}, false};
  step.state.answers.pop_back();
  return step;
}

}  // namespace

job::JobInput job_of(const State& state) {
  JobInput in = state.start;
  for (const Answer& answer : state.answers) {
    if (answer.text.empty() || answer.text == k_not_known) continue;
    const Field& field = job::field_named(answer.key);
    const std::string text =
        is_diameter(answer.key) ? joined_reading(in, answer.key, answer.text) : answer.text;
    // Each was set once before it was kept.
    static_cast<void>(job::set_from_text(in, field, text, answer.key));
    if (answer.also.empty()) continue;
    const std::size_t equals = answer.also.find('=');
    static_cast<void>(job::set_from_text(in, job::field_named(answer.also.substr(0, equals)),
                                         answer.also.substr(equals + 1), answer.key));
  }
  // Whoever was asked and does not know has not said that nobody asks.
  const bool began_so = in.asked && in.asked->find("fault") != std::string::npos;
  in.asked.reset();
  std::string asked;
  const auto add = [&](const char* topic) { (asked += asked.empty() ? "" : " ") += topic; };
  if (!in.zone && !in.level) add("place");
  const auto fault = std::find_if(state.answers.rbegin(), state.answers.rend(),
                                  [](const Answer& answer) { return answer.key == "current_ka"; });
  const bool not_told = fault == state.answers.rend() ? began_so : fault->text == k_not_known;
  if (not_told && !in.current_ka) add("fault");
  if (!asked.empty()) in.asked = asked;
  return in;
}

job::JobInput job_to_keep(const State& state) {
  return job_of(state.before.empty() ? state : state.before.front());
}

std::optional<Prompt> next(const State& state, const Facts& facts) {
  if (state.confirmed) return std::nullopt;
  const JobInput in = job_of(state);
  const auto key = next_key(state, in, facts);
  if (!key) return confirm_prompt();
  Prompt prompt = prompt_of(*key, in, facts);
  if (!state.before.empty() && prompt.running.empty()) {
    const State& was = state.before.front();
    prompt.now = told_of(was, job_of(was), *key).value_or("");
    prompt.may_skip = true;
  }
  return prompt;
}

Step give(const State& state, const Facts& facts, std::string_view raw) {
  const std::string_view line = sign_of(trimmed(raw));
  if (state.confirmed) return {state, {}, false};
  if (line == "<") return back(state);
  const Prompt prompt = *next(state, facts);
  if (prompt.key.empty()) return at_summary(state, line);
  if (line.empty() && !prompt.now.empty()) return kept(state);
  if (line.empty() && !prompt.may_skip) {
    const std::vector<std::string_view> words = job::words_of(job::field_named(prompt.key));
    const bool is_word = std::find(words.begin(), words.end(), prompt.usual) != words.end();
    return refused(state, "nothing was typed: type the answer" +
                              (is_word ? ", such as " + prompt.usual : "") + ", " + k_ways_on);
  }
  for (const std::string_view word : {"help", "h", "q", "quit", "exit"}) {
    if (line != word) continue;
    const std::vector<std::string_view> own = job::words_of(job::field_named(prompt.key));
    if (std::find(own.begin(), own.end(), line) == own.end()) {
      return refused(state, "type the answer, " + std::string(k_ways_on));
    }
  }
  try {
    Step step{state, {}, false};
    if (line == k_not_known) {
      step = not_known(state, prompt);
    } else if (line.empty()) {
      step.state.answers.push_back({prompt.key, {}, {}});
    } else {
      step = take_answer(state, facts, prompt.key, line);
    }
    step.state = settled(std::move(step.state));
    return step;
  } catch (const InputError& error) {
    return refused(state, error);
  }
}

std::vector<Told> summary(const State& state) {
  std::vector<Told> told;
  const JobInput in = job_of(state);
  const auto add = [&](std::string_view key, std::string_view name) {
    if (auto text = told_of(state, in, key)) {
      told.push_back({std::string(key), std::string(name), *std::move(text)});
    }
  };
  for (const detail::Row& row : detail::rows()) add(row.key, row_for(row.key, in)->name);
  for (const Field& field : job::fields()) {
    if (detail::row_of(field.key) == nullptr && !field.option.empty() && field.key != "asked") {
      add(field.key, field.help);
    }
  }
  return told;
}

std::vector<std::string> command_of(const State& state) {
  std::vector<std::string> words{"fit", "--ask-all"};
  const JobInput in = job_of(state);
  for (const Field& field : job::fields()) {
    const auto text = job::text_of(in, field);
    if (!text || field.option.empty() || field.section == "tails") continue;
    words.emplace_back(field.option);
    words.push_back(*text);
  }
  return words;
}

State other_end(const State& state) {
  State out;
  out.start = job_of(state);
  for (const Field& field : job::fields()) {
    const bool of_cable = field.section == "cable" && !is_diameter(field.key);
    const bool name = field.key == "job" || field.key == "tag" || field.key == "rules";
    if (!of_cable && !name) job::take_away(out.start, field);
  }
  out.start.core_list.clear();
  return out;
}

}  // namespace cutback::ask
