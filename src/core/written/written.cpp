#include "cutback/written/written.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "cutback/area/marking.hpp"
#include "cutback/entry/thread.hpp"
#include "cutback/error.hpp"
#include "cutback/fraction.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::written {
namespace {

constexpr double k_inch_mm = 25.4;
constexpr int k_decimals = 9;

/// Small letters, without spaces, points, hyphens and underscores; those between figures stay, a
/// hyphen there as a space, and so does a sign or a point in front of the first figure.
std::string normal(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool before = !out.empty() && is_digit(out.back());
    const bool after = i + 1 < text.size() && is_digit(text[i + 1]);
    if (c == '.') {
      if (after) out += c;
    } else if (c == '-' && out.empty() && i + 1 < text.size() && (after || text[i + 1] == '.')) {
      out += c;
    } else if (c == ' ' || c == '\t' || c == '-' || c == '_') {
      if (before && after) out += ' ';
    } else {
      out += small_letter(c);
    }
  }
  return out;
}

bool is_figure(std::string_view text) {
  return !text.empty() && is_digit(text.back()) &&
         text.find_first_not_of("0123456789./ -") == std::string_view::npos;
}

/// What of `text` stands for the sign of a pattern; nothing where they do not match. A pattern
/// without a sign matches itself, and then it is empty.
std::optional<std::string_view> matched(std::string_view pattern, std::string_view text) {
  const std::size_t sign = pattern.find_first_of("#*");
  if (sign == std::string_view::npos) {
    return pattern == text ? std::optional(std::string_view{}) : std::nullopt;
  }
  const std::string_view head = pattern.substr(0, sign);
  const std::string_view tail = pattern.substr(sign + 1);
  if (text.size() <= head.size() + tail.size()) return std::nullopt;
  if (!text.starts_with(head) || !text.ends_with(tail)) return std::nullopt;
  const std::string_view middle = text.substr(head.size(), text.size() - head.size() - tail.size());
  if (pattern[sign] == '#' && !is_figure(middle)) return std::nullopt;
  return middle;
}

std::string filled(std::string_view pattern, std::string_view middle) {
  std::string out(pattern);
  const std::size_t sign = out.find_first_of("#*");
  if (sign != std::string::npos) out.replace(sign, 1, middle);
  return out;
}

/// The word of the field that this is, but for case, spaces and hyphens.
std::optional<std::string_view> own_word(const Asked& asked, std::string_view text) {
  const std::string wanted = normal(text);
  std::optional<std::string_view> found;
  for (const std::string_view word : asked.words) {
    if (word == text) return word;
    if (normal(word) != wanted) continue;
    if (found) return std::nullopt;
    found = word;
  }
  return found;
}

[[noreturn]] void refuse(const Doubt& doubt, std::string_view middle, std::string_view text,
                         std::string_view where) {
  throw InputError(make_fault(ErrorCode::bad_value, "this can be read in two ways", where, text,
                              filled(doubt.one, middle) + "; or " + filled(doubt.other, middle),
                              "write the one that is meant"));
}

/// Of a word or a text with rows of its own. @return nothing where the table has none for it
std::optional<Taken> by_row(const Asked& asked, std::string_view text, std::string_view where) {
  const std::string wanted = normal(text);
  for (const Doubt& doubt : doubts()) {
    if (doubt.key != asked.key) continue;
    if (const auto middle = matched(doubt.written, wanted)) refuse(doubt, *middle, text, where);
  }
  for (const Word& row : words()) {
    if (row.key != asked.key) continue;
    const auto middle = matched(row.written, wanted);
    if (!middle) continue;
    if (row.written.find('*') != std::string_view::npos) {
      const auto word = own_word(asked, *middle);
      if (!word) continue;
      return Taken{std::string(*word), {}, row.also};
    }
    return Taken{filled(row.taken, *middle), {}, row.also};
  }
  return std::nullopt;
}

/// What the field asks for out of a whole marking; nothing where the text is none, or says more
/// than one thing of it.
std::optional<std::string> of_marking(const Asked& asked, std::string_view text,
                                      std::string_view where) {
  const bool protection = asked.key == "protection";
  if (!protection && asked.key != "gas_group" && asked.key != "dust_group") return std::nullopt;
  const auto marking = read_marking(text);
  if (!marking) return std::nullopt;
  if (asked.key == "gas_group") return marking->gas_group;
  if (asked.key == "dust_group") return marking->dust_group;
  const std::vector<std::string>& types = marking->protection;
  if (types.empty()) return std::nullopt;
  if (types.size() > 1) {
    const std::string entered = ", where the gland enters the part that is marked so";
    refuse({asked.key, {}, types.front() + entered, types.back() + entered}, {}, text, where);
  }
  return types.front();
}

/// `zone 1 IIB T4`, as a drawing has it: the zone, and the group as a second field.
std::optional<Taken> zone_and_group(const Asked& asked, std::string_view text) {
  constexpr std::array<std::string_view, 7> k_also{
      "gas_group=IIA",   "gas_group=IIB",   "gas_group=IIB+H2", "gas_group=IIC",
      "dust_group=IIIA", "dust_group=IIIB", "dust_group=IIIC"};
  std::vector<std::string_view> parts = split_words(text);
  if (asked.key != "zone" || parts.size() < 2) return std::nullopt;
  if (normal(parts.front()) == "zone") parts.erase(parts.begin());
  const auto zone = parts.empty() ? std::nullopt : own_word(asked, parts.front());
  if (!zone || *zone == "none" || parts.size() < 2) return std::nullopt;
  const char* const rest = parts[1].data();
  const auto marking =
      read_marking({rest, static_cast<std::size_t>(text.data() + text.size() - rest)});
  if (!marking || !marking->protection.empty() || !marking->level.empty()) return std::nullopt;
  const std::string told = !marking->gas_group.empty() ? "gas_group=" + marking->gas_group
                                                       : "dust_group=" + marking->dust_group;
  const auto also = std::find(k_also.begin(), k_also.end(), told);
  if (also == k_also.end()) return std::nullopt;
  return Taken{std::string(*zone), {}, *also};
}

Taken one_word(const Asked& asked, std::string_view text, std::string_view where) {
  if (const auto word = own_word(asked, text)) return {std::string(*word), {}};
  if (auto taken = by_row(asked, text, where)) return *std::move(taken);
  return {std::string(text), {}};
}

/// `Ex db eb`, `db, eb`: the words with one space between them, where all of them are known.
Taken several_words(const Asked& asked, std::string_view text, std::string_view where) {
  std::string spaced(text);
  std::replace_if(
      spaced.begin(), spaced.end(), [](char c) { return c == ',' || c == ';' || c == '/'; }, ' ');
  std::string out;
  for (const std::string_view part : split_words(spaced)) {
    const std::string plain_part = normal(part);
    if (asked.key == "protection" && (plain_part == "ex" || plain_part == "eex")) continue;
    // Group I and its levels Ma and Mb are no types of protection i, ma and mb.
    if (asked.key == "protection" && (part == "I" || part == "Ma" || part == "Mb")) {
      return {std::string(text), {}};
    }
    const Taken taken = one_word(asked, part, where);
    if (!own_word(asked, taken.text)) return {std::string(text), {}};
    out += (out.empty() ? "" : " ") + taken.text;
  }
  return {out, {}};
}

/// Of inches alone a fraction is a figure.
std::optional<double> figure_of(std::string_view text, bool fractions) {
  if (!fractions && text.find('/') != std::string_view::npos) return std::nullopt;
  const auto written = parse_written(text);
  return written ? std::optional(written->value) : std::nullopt;
}

/// 12, 1/0 or 00 of an American gauge.
std::optional<int> gauge_of(std::string_view text) {
  const bool noughts =
      !text.empty() && text.find_first_not_of('0') == std::string_view::npos && text.size() <= 4;
  if (noughts) return 1 - static_cast<int>(text.size());
  if (text.size() == 3 && text.ends_with("/0") && text[0] >= '1' && text[0] <= '4') {
    return 1 - (text[0] - '0');
  }
  const auto value = parse_figure(text);
  if (!value || *value != std::floor(*value) || *value > 40.0) return std::nullopt;
  return static_cast<int>(*value);
}

/// A figure with a unit of the table, in the field's own unit; nothing for anything else.
std::optional<double> with_unit(std::string_view unit, std::string_view text) {
  const std::string wanted = normal(text);
  const std::string_view all = wanted;
  const std::size_t end = all.find_first_not_of("0123456789./ -");
  if (end == std::string_view::npos || end == 0) return std::nullopt;
  const std::string_view figure = trimmed(all.substr(0, end));
  const std::string_view written = all.substr(end);
  if (unit == "mm2" && written == "awg") {
    const auto gauge = gauge_of(figure);
    return gauge ? std::optional(awg_area_mm2(*gauge)) : std::nullopt;
  }
  for (const Unit& row : units()) {
    if (row.unit != unit || row.written != written) continue;
    const auto value = figure_of(figure, row.factor == k_inch_mm);
    if (!value) return std::nullopt;
    return row.factor == 1.0 && row.shift == 0.0 ? *value : *value * row.factor + row.shift;
  }
  return std::nullopt;
}

Taken number(const Asked& asked, std::string_view text, std::string_view where) {
  if (parse_number(text)) return {std::string(text), {}};
  if (auto taken = by_row(asked, text, where)) return *std::move(taken);
  const auto value = with_unit(asked.unit, text);
  return {value ? plain(*value, k_decimals) : std::string(text), {}};
}

/// `20`, `20mm`, `1/2`: the thread that it must be, where only one kind has such a size.
Taken thread(const Asked& asked, std::string_view text, std::string_view where) {
  if (entry::parse_thread(text) || text == "to-suit") return {std::string(text), {}};
  if (normal(text) == normal("to-suit")) return {"to-suit", {}};
  std::vector<std::string> can_be;
  if (is_figure(normal(text))) {
    for (const char* kind : {"M", "NPT ", "PG "}) {
      const auto found = entry::parse_thread(kind + normal(text));
      if (found) can_be.push_back(entry::to_text(*found));
    }
  }
  if (can_be.size() == 1) return {can_be.front(), {}};
  if (can_be.size() > 1) {
    refuse({asked.key, {}, can_be.front(), can_be.back()}, {}, text, where);
  }
  if (auto taken = by_row(asked, text, where)) {
    if (taken->text == "to-suit" || entry::parse_thread(taken->text)) return *std::move(taken);
  }
  return {std::string(text), {}};
}

/// `M25/M20`, `M25 to M20`: the two threads, where they can be told apart in one way.
std::string adaptor(std::string_view text) {
  if (text.find(':') != std::string_view::npos) return std::string(text);
  std::vector<std::string> found;
  for (const std::string_view between : {"/", " to ", "-", "x", ">", " "}) {
    for (std::size_t at = text.find(between); at != std::string_view::npos;
         at = text.find(between, at + 1)) {
      const std::string_view a = trimmed(text.substr(0, at));
      const std::string_view b = trimmed(text.substr(at + between.size()));
      if (!entry::parse_thread(a) || !entry::parse_thread(b)) continue;
      std::string pair = std::string(a) + ":" + std::string(b);
      if (std::find(found.begin(), found.end(), pair) == found.end()) {
        found.push_back(std::move(pair));
      }
    }
  }
  return found.size() == 1 ? found.front() : std::string(text);
}

Taken adaptors(std::string_view text) {
  std::string out;
  for (std::string_view rest = text; !rest.empty();) {
    const std::size_t end = std::min(rest.find(';'), rest.size());
    out += (out.empty() ? "" : ";") + adaptor(trimmed(rest.substr(0, end)));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  // What needs no other words stays as it is.
  const bool same =
      std::count(out.begin(), out.end(), ':') == std::count(text.begin(), text.end(), ':');
  return {same ? std::string(text) : out, {}};
}

Taken ingress(const Asked& asked, std::string_view text, std::string_view where) {
  std::optional<std::vector<area::IpCode>> codes = area::parse_ip_codes(text);
  if (!codes) {
    const auto taken = by_row(asked, text, where);
    if (taken) codes = area::parse_ip_codes(taken->text);
  }
  if (!codes) return {std::string(text), {}};
  return {area::to_text(*codes, asked.unit), {}};
}

/// Readings whose units stand in other words than `in`.
Taken readings(std::string_view text) {
  std::string out;
  for (std::string_view rest = text; !rest.empty();) {
    const std::size_t end = std::min(rest.find_first_of(",+"), rest.size());
    const std::string_view part = trimmed(rest.substr(0, end));
    const std::string wanted = normal(part);
    const std::size_t letters = wanted.find_first_not_of("0123456789./ -");
    const auto value = with_unit("mm", part);
    if (!value ||
        (part.ends_with("in") && parse_written(trimmed(part.substr(0, part.size() - 2))))) {
      out += part;
    } else if (std::string_view(wanted).substr(letters) == "mm" || wanted.ends_with("cm") ||
               wanted.ends_with("metres")) {
      out += plain(*value, k_decimals);
    } else {  // as a job file keeps it, and no finer than it was read
      (out += trimmed(std::string_view(wanted).substr(0, letters))) += "in";
    }
    if (end < rest.size()) out += rest[end];
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return {out, {}};
}

Taken by_form(const Asked& asked, std::string_view text, std::string_view where) {
  switch (asked.form) {
    case Asked::Form::number:
      return number(asked, text, where);
    case Asked::Form::one_word:
      return one_word(asked, text, where);
    case Asked::Form::several_words:
      return several_words(asked, text, where);
    case Asked::Form::thread:
      return thread(asked, text, where);
    case Asked::Form::adaptors:
      return adaptors(text);
    case Asked::Form::ip:
      return ingress(asked, text, where);
    case Asked::Form::readings:
      return readings(text);
    case Asked::Form::text:
      break;
  }
  return {std::string(text), {}};
}

/// A plain word that no table has a row for is refused with what to do.
void refuse_unheld(const Asked& asked, std::string_view text, std::string_view where) {
  for (const Unheld& row : unheld()) {
    if (row.key != asked.key || row.written != normal(text)) continue;
    throw InputError(make_fault(
        ErrorCode::bad_value, "no table here holds it", where, text, job::either_of(asked.words),
        "leave it out: a cable " + std::string(row.what) + " is compared with nothing"));
  }
}

/// Says what a text was taken for.
void say(const Asked& asked, std::string_view text, Taken& taken) {
  taken.says = "\"" + std::string(text) + "\" for " + taken.text;
  if (asked.form == Asked::Form::number && !asked.unit.empty()) {
    taken.says += " " + std::string(asked.unit);
  }
  if (asked.form == Asked::Form::adaptors) {
    taken.says += " (either order: the thread that is not the gland's goes into the wall)";
  }
  if (taken.also.empty()) return;
  std::string also(taken.also);
  std::replace(also.begin(), also.end(), '=', ' ');
  std::replace(also.begin(), also.end(), '_', ' ');
  taken.says += ", " + also;
}

}  // namespace

std::optional<Marking> read_marking(std::string_view text) {
  std::string spaced(text);
  std::replace_if(
      spaced.begin(), spaced.end(), [](char c) { return c == ',' || c == ';' || c == '/'; }, ' ');
  const std::vector<std::string_view> parts = split_words(spaced);
  const auto is_ex = [](std::string_view part) {
    return normal(part) == "ex" || normal(part) == "eex";
  };
  const auto ex = std::find_if(parts.begin(), parts.end(), is_ex);
  const auto word_of = [](const auto& words, std::string_view part) {
    return std::find(words.begin(), words.end(), part) != words.end();
  };
  const auto is_class = [](std::string_view part) {  // T6, T85, T85C
    return part.size() > 1 && part.front() == 'T' && is_digit(part[1]);
  };
  Marking marking;
  for (auto at = ex == parts.end() ? parts.begin() : ex + 1; at != parts.end(); ++at) {
    const std::string part(*at);
    const auto same = [&](const area::ProtectionMark& mark) { return mark.word == part; };
    const auto& types = area::k_protection_marks;
    if (part != "none" && std::any_of(types.begin(), types.end(), same)) {
      marking.protection.push_back(part);
    } else if (word_of(area::k_level_words, part)) {
      marking.level.push_back(part);
    } else if (word_of(area::k_gas_mark_words, part) && marking.gas_group.empty()) {
      marking.gas_group = part;
    } else if (word_of(area::k_dust_group_words, part) && marking.dust_group.empty()) {
      marking.dust_group = part;
    } else if (part == "I") {
      marking.mines = true;
    } else if (part == "X") {
      marking.conditions = true;
    } else if (!is_class(part) && part != "Ex") {
      return std::nullopt;
    }
  }
  return marking;
}

double awg_area_mm2(int gauge) {
  const double across_mm = 0.005 * k_inch_mm * std::pow(92.0, (36.0 - gauge) / 39.0);
  return std::numbers::pi / 4.0 * across_mm * across_mm;
}

Asked asked_of(const job::Field& field) {
  using Form = Asked::Form;
  Asked asked{field.key, Form::text, field.allowed, job::words_of(field)};
  switch (field.kind) {
    case job::FieldKind::number:
    case job::FieldKind::whole:
      asked.form = Form::number;
      break;
    case job::FieldKind::words:
    case job::FieldKind::yes_no:
      asked.form = Form::one_word;
      break;
    case job::FieldKind::readings:
      asked.form = Form::readings;
      break;
    case job::FieldKind::text:
      if (field.key == "entry") asked.form = Form::thread;
      if (field.key == "adaptor") asked.form = Form::adaptors;
      if (field.key == "ip") {
        asked.form = Form::ip;
        asked.unit = "/";
      }
      break;
  }
  return asked;
}

Asked asked_of(const gland::Column& column) {
  using Form = Asked::Form;
  Asked asked{column.name, Form::text, column.unit, gland::words_of(column)};
  // The table names what a gland shares with a job as the job does.
  if (column.name == "entry_thread") asked.key = "entry";
  if (column.name == "material") asked.key = "adaptor_material";
  if (column.unit == "deg C") asked.unit = "C";
  switch (column.kind) {
    case gland::ColumnKind::number:
    case gland::ColumnKind::whole:
      asked.form = Form::number;
      break;
    case gland::ColumnKind::word:
      asked.form = Form::one_word;
      break;
    case gland::ColumnKind::words:
      asked.form = Form::several_words;
      break;
    case gland::ColumnKind::ip:
      asked.form = Form::ip;
      asked.unit = " ";
      break;
    case gland::ColumnKind::thread:
      asked.form = Form::thread;
      break;
    case gland::ColumnKind::text:
      break;
  }
  return asked;
}

Taken take(const Asked& asked, std::string_view raw, std::string_view where) {
  const std::string_view text = trimmed(raw, " \t");
  if (text.empty()) return {std::string(raw), {}};
  Taken taken = by_form(asked, text, where);
  if (taken.text == text) return {std::string(raw), {}, taken.also};
  say(asked, text, taken);
  return taken;
}

Taken take_typed(const Asked& asked, std::string_view raw, std::string_view where) {
  const std::string_view text = trimmed(raw, " \t");
  refuse_unheld(asked, text, where);
  Taken taken = take(asked, raw, where);
  const bool several = text.find(' ') != std::string_view::npos;
  if (asked.form != Asked::Form::one_word || !several || own_word(asked, taken.text)) return taken;
  if (auto zone = zone_and_group(asked, text)) {
    taken = *std::move(zone);
  } else if (const auto part = of_marking(asked, text, where); part && !part->empty()) {
    taken = take(asked, *part, where);
  } else {
    return taken;
  }
  say(asked, text, taken);
  return taken;
}

std::vector<Fault> put_told(std::span<const Told> told, job::JobInput& job) {
  std::vector<Fault> faults;
  for (const Told& each : told) {
    const std::size_t equals = each.also.find('=');
    const job::Field& field = job::field_named(each.also.substr(0, equals));
    const std::string value(each.also.substr(equals + 1));
    const auto given = job::text_of(job, field);
    if (!given) {
      const auto more = job::set_from_text(job, field, value, each.where);
      faults.insert(faults.end(), more.begin(), more.end());
    } else if (*given != value) {
      faults.push_back(make_fault(ErrorCode::contradiction,
                                  each.given + " says that the " + std::string(field.key) + " is " +
                                      value + ", and it is given as " + *given,
                                  each.where, each.given, "", "give the one that is true"));
    }
  }
  return faults;
}

namespace {

/// The levels of the categories in front of the letters Ex: 3 G stands for Gc.
std::vector<area::Level> levels_of_categories(std::string_view plate) {
  using enum area::Level;
  constexpr std::array k_gas{Ga, Gb, Gc};
  constexpr std::array k_dust{Da, Db, Dc};
  std::vector<area::Level> levels;
  std::size_t category = 0;
  for (const std::string_view part : split_words(plate)) {
    if (normal(part) == "ex" || normal(part) == "eex") break;
    std::string_view rest = part;
    if (rest.front() >= '1' && rest.front() <= '3') {
      category = static_cast<std::size_t>(rest.front() - '0');
      rest.remove_prefix(1);
    }
    const bool hazards = rest.find_first_not_of("GD") == std::string_view::npos;
    if (category == 0 || !hazards) continue;
    if (rest.find('G') != std::string_view::npos) levels.push_back(k_gas[category - 1]);
    if (rest.find('D') != std::string_view::npos) levels.push_back(k_dust[category - 1]);
  }
  return levels;
}

/// What the place asks its equipment for; nothing where it says neither level nor zone.
std::optional<area::Level> level_needed(const job::JobInput& in) {
  using enum area::Level;
  if (in.level || !in.zone) return in.level;
  switch (*in.zone) {
    case area::Zone::zone_0:
      return Ga;
    case area::Zone::zone_1:
      return Gb;
    case area::Zone::zone_2:
      return Gc;
    case area::Zone::zone_20:
      return Da;
    case area::Zone::zone_21:
      return Db;
    case area::Zone::zone_22:
      return Dc;
    case area::Zone::none:
      break;
  }
  return std::nullopt;
}

/// The best of the levels for the hazard of one; nothing where none is for it.
std::optional<area::Level> best_for(area::Level needed, std::span<const area::Level> levels) {
  std::optional<area::Level> best;
  for (const area::Level level : levels) {
    if (area::hazard_of(level) != area::hazard_of(needed)) continue;
    best = std::min(best.value_or(level), level);  // Ga, the highest, is the first
  }
  return best;
}

}  // namespace

std::vector<Fault> faults_of_plate(std::string_view plate, std::string_view where,
                                   const job::JobInput& in) {
  std::vector<Fault> faults;
  const auto marking = read_marking(plate);
  if (!marking) return faults;
  const auto add = [&](std::string_view plate_has, std::string_view needed) {
    faults.push_back(make_fault(ErrorCode::contradiction,
                                "the plate says " + std::string(plate_has) +
                                    ", and the place asks for " + std::string(needed) +
                                    ": this enclosure does not serve it",
                                where, plate, "", "look at plate and place again"));
  };
  const bool hazardous = (in.zone && *in.zone != area::Zone::none) || in.gas_group || in.dust_group;
  if (marking->mines && marking->gas_group.empty() && marking->dust_group.empty() && hazardous) {
    add("group I, mines", "group II or III");
  }
  const auto gas = value_of<area::GasMark>(marking->gas_group);
  if (gas && in.gas_group && *gas != area::GasMark::II) {
    const auto needed = value_of<area::GasMark>(to_string(*in.gas_group));
    if (*gas < *needed) add(marking->gas_group, to_string(*in.gas_group));
  }
  const auto dust = value_of<area::DustGroup>(marking->dust_group);
  if (dust && in.dust_group && *dust < *in.dust_group) {
    add(marking->dust_group, to_string(*in.dust_group));
  }
  std::vector<area::Level> levels = levels_of_categories(plate);
  for (const std::string& word : marking->level) levels.push_back(*value_of<area::Level>(word));
  const auto needed = level_needed(in);
  const auto best = needed ? best_for(*needed, levels) : std::nullopt;
  if (best && *best > *needed) {
    add("level " + std::string(to_string(*best)), "level " + std::string(to_string(*needed)));
  }
  return faults;
}

std::string_view unit_named(std::string_view text, bool bare) {
  const std::string wanted = normal(text);
  for (const Unit& row : units()) {
    if (row.written == wanted && (row.bare || !bare)) return row.name.empty() ? row.unit : row.name;
  }
  return {};
}

}  // namespace cutback::written
