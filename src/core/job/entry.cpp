#include <algorithm>

#include "core/job/resolve.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::job::detail {
namespace {

std::optional<entry::Thread> thread_of(const std::string& text, const std::string& where,
                                       Faults& faults) {
  auto thread = entry::parse_thread(text);
  if (!thread) {
    faults.add(ErrorCode::bad_value, "this is not an entry thread", where, text,
               std::string(entry::thread_forms()), entry::thread_advice(text));
  }
  return thread;
}

/// `M25:M20`, or `M25:M20:db` with the adaptor's own protection.
void add_adaptor(const std::string& text, entry::Entry& entry, Faults& faults) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == ':') {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  const auto a = entry::parse_thread(parts[0]);
  const auto b = parts.size() > 1 ? entry::parse_thread(parts[1]) : std::nullopt;
  if (!a || !b || *a == *b || parts.size() > 3) {
    faults.add(ErrorCode::bad_value, "this is not a thread adaptor", "entry.adaptor", text,
               "two different threads such as M25:M20, or M25:M20:db with its protection",
               "either order: the thread that is not the gland's goes into the wall");
    return;
  }
  entry::Adaptor adaptor{*a, *b, {}};
  for (const std::string_view mark :
       split_words(parts.size() == 3 ? std::string_view(parts[2]) : std::string_view{})) {
    const auto protection = value_of<area::Protection>(mark);
    if (!protection || *protection == area::Protection::none) {
      faults.add(ErrorCode::bad_value, "this is not a marking of an adaptor's protection",
                 "entry.adaptor", std::string(mark),
                 either_of(k_words_of<area::k_part_protections>),
                 "leave it out when it is not known");
      return;
    }
    adaptor.protection.push_back(*protection);
  }
  entry.adaptors.push_back(std::move(adaptor));
}

/// One, or several with semicolons between them: one of them must suit the entry.
void resolve_adaptors(const JobInput& in, entry::Entry& entry, Faults& faults) {
  const std::string& text = *in.adaptor;
  std::string_view rest = text;
  std::size_t count = 0;
  do {
    const std::size_t end = std::min(rest.find(';'), rest.size());
    add_adaptor(std::string(trimmed(rest.substr(0, end))), entry, faults);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    ++count;
  } while (!rest.empty());
  if (count > 1 && (in.adaptor_mm || in.adaptor_thread_mm || in.adaptor_bore_mm)) {
    faults.add(ErrorCode::contradiction,
               "of several adaptors one has figures, and which is not said", "entry.adaptor", text,
               "one adaptor with its figures, or several without", "give the one that is used");
  }
  if (!entry.thread || entry.adaptors.empty()) return;
  const auto suits = [&](const entry::Adaptor& each) {
    return each.a == *entry.thread || each.b == *entry.thread;
  };
  if (std::any_of(entry.adaptors.begin(), entry.adaptors.end(), suits)) return;
  faults.add(ErrorCode::contradiction, "neither side of the adaptor suits the entry",
             "entry.adaptor", text, "one side " + entry::to_text(*entry.thread), "");
}

}  // namespace

entry::Entry resolve_entry(const JobInput& in, Faults& faults) {
  entry::Entry entry;
  entry.to_suit = in.entry == "to-suit";
  if (in.entry && !entry.to_suit) entry.thread = thread_of(*in.entry, "entry.entry", faults);
  entry.hole_dia_mm = in.hole_dia_mm;
  entry.hole = in.hole;
  entry.wall_mm = in.wall_mm;
  entry.washer_mm = in.washer_mm;
  entry.tag_mm = in.tag_mm;
  entry.serrated_mm = in.serrated_mm;
  entry.locknut_mm = in.locknut_mm;
  entry.chamfer_mm = in.chamfer_mm;
  entry.undercut_mm = in.undercut_mm;
  entry.adaptor_mm = in.adaptor_mm;
  entry.adaptor_thread_mm = in.adaptor_thread_mm;
  entry.adaptor_bore_mm = in.adaptor_bore_mm;
  entry.adaptor_material = in.adaptor_material;
  entry.material = in.material;
  if (entry.hole == entry::Hole::threaded && in.hole_dia_mm) {
    faults.add(ErrorCode::contradiction, "a tapped hole has no diameter of a clearance hole",
               "entry.hole_dia_mm", plain(*in.hole_dia_mm), "hole_dia_mm with hole clearance",
               "leave it out, or check which kind of hole it is");
  }
  if (in.adaptor) resolve_adaptors(in, entry, faults);
  // Through an adaptor nothing passes that is as wide as its own thread.
  if (entry.thread && entry.thread->kind == entry::ThreadKind::metric && in.adaptor_bore_mm &&
      !entry.adaptors.empty() && *in.adaptor_bore_mm >= entry.thread->size) {
    faults.add(ErrorCode::contradiction, "the adaptor's bore is not smaller than its thread",
               "entry.adaptor_bore_mm", plain(*in.adaptor_bore_mm),
               "under " + plain(entry.thread->size) + " mm in " + entry::to_text(*entry.thread),
               "measure its smallest bore");
  }
  return entry;
}

}  // namespace cutback::job::detail
