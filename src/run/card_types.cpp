#include "run/card_types.hpp"

#include <algorithm>
#include <memory>
#include <utility>

#include "cutback/entry/hardware.hpp"
#include "cutback/entry/parts.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/needs.hpp"
#include "cutback/number.hpp"
#include "cutback/sheet/sheet.hpp"
#include "cutback/print/words.hpp"

namespace cutback::run {
namespace {

/// The way to the terminals, where all cores have the same.
std::optional<double> reach_of(const strip::Tails& tails) {
  if (tails.cores.empty()) return std::nullopt;
  const std::optional<double> reach = tails.cores.front().reach_mm;
  const bool same = std::all_of(tails.cores.begin(), tails.cores.end(),
                                [&](const strip::Core& core) { return core.reach_mm == reach; });
  return same ? reach : std::nullopt;
}

std::string figure(const std::optional<double>& value) {
  return value ? plain(*value, 3) + ";" : std::string("-;");
}

/// All that a card of the type prints, but the route, and but depths and gates, of which the
/// strictest are printed: ends with one key have one card.
std::string key_of(const sheet::Sheet& sheet) {
  const job::Job& job = *sheet.job;
  const strip::Axis& axis = sheet.plan->axis;
  std::string key = sheet.fit->gland->part + ";" + std::string(to_string(sheet.state)) + ";" +
                    print::entry_words(job.entry) + ";";
  // Of the place the list has what the ends differ in; what is cut by it differs by this alone.
  const auto& protection = job.area.protection;
  key += protection && area::type_of(*protection) == area::Type::d ? "d;" : ";";
  for (const entry::EntryPart& part :
       entry::parts_in_order(*sheet.fit->gland, job.entry, sheet.fit->adaptor.has_value())) {
    ((key += part.name) += part.place) += figure(part.thickness_mm);
  }
  key += std::string(to_string(job.cable.armour)) + ";";
  if (job.cable.cores) key += std::to_string(*job.cable.cores);
  key += ";" + figure(job.cable.csa_mm2) + figure(job.tails.slack_mm) + figure(job.tails.strip_mm);
  for (const auto& value :
       {axis.inside_face_mm, axis.armour_stop_mm, axis.exposed_mm, axis.bedding_end_mm}) {
    key += figure(value);
  }
  for (const fit::WireGate& wire : sheet.gates.wire) {
    key += figure(wire.gate.low_mm) + figure(wire.gate.high_mm) + figure(wire.nominal_mm);
  }
  // What is read on every cable before it is cut has its gate, whether it was measured before or
  // not; what has a blank is printed.
  for (const print::OpenBlank& blank : print::open_blanks(sheet)) key += blank.words + ";";
  // An end whose figures contradict each other has no depths, and takes none from the others.
  const strip::Depths& depths = sheet.plan->depths;
  for (const auto& depth :
       {depths.sheath_mm, depths.saw_mm, depths.saw_limit_mm, depths.bedding_mm}) {
    key += depth ? 'd' : '-';
  }
  return key;
}

void take_least(std::optional<double>& depth, const std::optional<double>& other) {
  depth = depth && other ? std::optional(std::min(*depth, *other)) : std::nullopt;
}

/// Depths that are safe for both.
void take_least(strip::Depths& depths, const strip::Depths& other) {
  take_least(depths.sheath_mm, other.sheath_mm);
  take_least(depths.saw_mm, other.saw_mm);
  take_least(depths.saw_limit_mm, other.saw_limit_mm);
  take_least(depths.bedding_mm, other.bedding_mm);
  depths.spread_mm = std::max(depths.spread_mm, other.spread_mm);
}

void take_least(fit::Gate& gate, const fit::Gate& other) {
  if (other.low_mm) gate.low_mm = std::max(gate.low_mm.value_or(*other.low_mm), *other.low_mm);
  if (other.high_mm) gate.high_mm = std::min(gate.high_mm.value_or(*other.high_mm), *other.high_mm);
}

void take_less(std::optional<double>& limit, const std::optional<double>& other) {
  if (other) limit = std::min(limit.value_or(*other), *other);
}

/// What readings must keep to for both.
void take_least(fit::Gates& gates, const fit::Gates& other) {
  take_least(gates.sheath, other.sheath);
  take_least(gates.bedding, other.bedding);
  take_less(gates.sheath_apart_mm, other.sheath_apart_mm);
  take_less(gates.bedding_apart_mm, other.bedding_apart_mm);
  for (std::size_t i = 0; i < gates.wire.size(); ++i) {
    fit::WireGate& wire = gates.wire[i];
    const fit::WireGate& one = other.wire[i];  // the sizes are part of the key
    if (one.least_between_mm) {
      wire.least_between_mm =
          std::max(wire.least_between_mm.value_or(*one.least_between_mm), *one.least_between_mm);
    }
    take_less(wire.most_between_mm, one.most_between_mm);
  }
}

/// What kind of cable it is, for the head of the card.
std::string cable_name(const job::Job& job) {
  std::string name;
  if (job.cable.cores) name += std::to_string(*job.cable.cores) + " x ";
  if (job.cable.csa_mm2) {
    name += plain(*job.cable.csa_mm2) + " mm\u00b2";
  } else {
    name += job.cable.cores ? "core" : "cable";
  }
  return name;
}

/// The same end without tag and route.
CardEnd type_of(const CardEnd& end) {
  CardEnd type;
  type.input = end.input;
  type.input.tag.reset();
  type.input.end.reset();
  type.input.reach_mm.reset();
  type.input.core_list.clear();
  type.job = std::make_unique<const job::Job>(
      job::resolve(type.input, *end.question.standards, job::Unstated::by_notation));
  type.question = fit::ask(*type.job, *end.question.standards, end.question.asking);
  type.choice.fit = fit::check_gland(type.question, *end.choice.fit.gland);
  type.choice.because = end.choice.because;
  type.part = end.part;
  return type;
}

}  // namespace

bool CardTypes::add(CardEnd end, const std::string& source, std::size_t which,
                    const std::string& twice) {
  const print::ServedEnd name{.tag = print::tag_words(end.tag),
                              .end = end.end + (twice.empty() ? "" : " ! " + twice)};
  const auto with_reason = [&](std::string why) {
    print::ServedEnd listed = name;
    listed.why = std::move(why);
    return listed;
  };
  if (!end.why_none.empty() || end.choice.fit.verdict == Verdict::no_fit) {
    none_.push_back(with_reason(end.why_none.empty() ? end.why : on_paper(end)));
    return false;
  }
  const bool fits = end.choice.fit.verdict == Verdict::fits;
  try {
    CardEnd type = type_of(end);
    const sheet::Sheet sheet = sheet::make_sheet(type.question, type.choice, list_name_);
    if (!sheet.has_marks()) {
      // The route was taken away for the type: what the end itself lacks is said.
      const sheet::Sheet own = sheet::make_sheet(end.question, end.choice, list_name_);
      not_yet_.push_back(with_reason(own.lacks.empty()
                                         ? own.fit->deciding().says
                                         : "missing: " + print::missing_words(own.lacks)));
      return fits;
    }
    // Before the type is there: an end whose lengths contradict each other has none.
    print::ServedEnd served = name;
    bool cut = false;
    if (const auto reach = reach_of(end.job->tails)) {
      served.reach = plain(*reach, 1);
      const sheet::Sheet own = sheet::make_sheet(end.question, end.choice, list_name_);
      cut = own.state == sheet::State::cut;
      const strip::Marks& marks = own.plan->marks;
      const auto& first = marks.armour_cut_mm   ? marks.armour_cut_mm
                          : marks.sheath_cut_mm ? marks.sheath_cut_mm
                                                : marks.shoulder_mm;
      const bool stripped = std::all_of(own.job->tails.cores.begin(), own.job->tails.cores.end(),
                                        [](const strip::Core& core) { return core.strip_mm; });
      if (first && stripped && own.has_marks()) {
        // As the sum on the card comes to.
        served.first_mark = plain(round_up(*first, 1.0), 1);
        if (!marks.armour_cut_mm && marks.bedding_cut_mm) {
          served.second_mark = plain(*marks.bedding_cut_mm, 1);
        }
      }
    }
    std::string key = key_of(sheet);
    auto at = known_.find(key);
    if (at != known_.end()) {
      fit::Gates both = types_[at->second].gates;
      take_least(both, sheet.gates);
      if (both.possible()) {
        types_[at->second].gates = std::move(both);
        take_least(types_[at->second].depths, sheet.plan->depths);
      } else {
        at = known_.end();  // no reading would do for all: a card of its own
      }
    }
    if (at == known_.end()) {
      at = known_.insert_or_assign(std::move(key), types_.size()).first;
      types_.push_back({.end = std::move(type),
                        .source = source,
                        .depths = sheet.plan->depths,
                        .gates = sheet.gates,
                        .serves = {},
                        .alone = std::move(end),
                        .which = which});
    } else {
      types_[at->second].alone.reset();
    }
    Type& its = types_[at->second];
    std::vector<std::string> own = sheet.own_cautions;
    if (std::string metals = print::metals_words(*sheet.fit); !metals.empty()) {
      own.insert(own.begin(), std::move(metals));
    }
    for (const std::string& caution : own) {
      if (std::find(its.cautions.begin(), its.cautions.end(), caution) == its.cautions.end()) {
        its.cautions.push_back(caution);
      }
    }
    served.place = print::plate_words(sheet.job->area);
    its.serves.push_back(std::move(served));
    its.cut = its.cut && cut;
  } catch (const InputError& error) {
    none_.push_back(with_reason(to_line(error.faults().front())));
    return false;
  }
  return fits;
}

std::size_t CardTypes::size() const {
  return types_.size() + (not_yet_.empty() ? 0 : 1) + (none_.empty() ? 0 : 1);
}

void CardTypes::print(const std::function<void(print::Card)>& hand_on,
                      const std::function<void(CardEnd, std::size_t which)>& hand_on_end) {
  struct Made {
    CardEnd end;
    sheet::Sheet sheet;
  };
  for (Type& type : types_) {
    if (type.alone) {
      hand_on_end(*std::exchange(type.alone, std::nullopt), type.which);
      continue;
    }
    auto made = std::make_shared<Made>();
    made->end = std::move(type.end);
    const job::Job& job = *made->end.job;
    sheet::Sheet& sheet = made->sheet;
    sheet = sheet::make_sheet(made->end.question, made->end.choice, list_name_);
    sheet.plan->depths = type.depths;
    sheet.gates = type.gates;
    sheet.own_cautions = type.cautions;
    const std::string place = type.serves.front().place;
    const bool one_place =
        std::all_of(type.serves.begin(), type.serves.end(),
                    [&](const print::ServedEnd& end) { return end.place == place; });
    for (print::ServedEnd& end : type.serves) {
      if (one_place) end.place.clear();
      if (!one_place && end.place.empty()) end.place = "plain room";
    }
    // Their routes are known, and stand in the list.
    if (type.cut) sheet.state = sheet::State::cut;
    print::Card card;
    const std::size_t count = type.serves.size();
    card.tag = cable_name(job);
    card.end = (job.cable.armour == cable::ArmourKind::none
                    ? std::string("unarmoured")
                    : std::string(to_string(job.cable.armour)) + " armour") +
               ", " + std::to_string(count) + (count == 1 ? " end" : " ends");
    card.sheet = &sheet;
    card.serves = std::move(type.serves);
    card.schedule = type.source;
    card.keeps = std::move(made);
    hand_on(std::move(card));
  }
  const auto put_list = [&](const std::vector<print::ServedEnd>& ends, bool not_yet,
                            const char* why) {
    if (ends.empty()) return;
    print::Card card;
    card.tag = std::to_string(ends.size()) + (ends.size() == 1 ? " END" : " ENDS");
    card.end = "without a card of their type";
    card.not_yet = not_yet;
    card.why = why;
    card.remedy = "ask the office about each of them";
    card.serves = ends;
    hand_on(std::move(card));
  };
  put_list(not_yet_, true, "something is missing or not proven of each of these ends");
  put_list(none_, false, "no gland of the list fits these ends, or their figures cannot be used");
}

void Takeoff::add(const CardEnd& end, const fit::GlandFit* fit) {
  if (!end.made.empty()) return;  // nothing is to be taken there for it
  ++ends_;
  if (fit == nullptr || fit->verdict == Verdict::no_fit) {
    ++without_;
    return;
  }
  const gland::Gland& gland = *fit->gland;
  ++parts_[gland.part];
  const auto& adaptor = fit->adaptor;
  std::string thread = entry::to_text(gland.entry_thread);
  if (adaptor) {
    ++beside_[fit::adaptor_name(entry::wall_side(*adaptor, gland), gland.entry_thread)];
    if (end.job->entry.thread) thread = entry::to_text(*end.job->entry.thread);
  }
  for (const entry::EntryPart& part :
       entry::parts_in_order(gland, end.job->entry, adaptor.has_value())) {
    if (part.beside) ++beside_[std::string(part.name) + " " + thread];
  }
  if (fit->barrier) ++beside_["compound for " + gland.part];
}

print::PlacePage Takeoff::page(std::string place) const {
  print::PlacePage page{.place = std::move(place), .ends = ends_, .without = without_};
  for (const auto* const list : {&parts_, &beside_}) {
    for (const auto& [name, count] : *list) page.parts.push_back({name, count});
  }
  return page;
}

}  // namespace cutback::run
