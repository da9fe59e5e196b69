#include "cutback/fit/needs.hpp"

#include <algorithm>
#include <cmath>

#include "cutback/entry/hardware.hpp"
#include "cutback/entry/parts.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/number.hpp"

namespace cutback::fit {
namespace {

/// Whether all that is not proven of a fit are figures of the adaptor.
bool lacks_the_adaptor_alone(const GlandFit& fit) {
  return std::all_of(fit.checks.begin(), fit.checks.end(), [](const Check& check) {
    if (check.verdict == Verdict::fits) return true;
    return check.verdict == Verdict::not_known && !check.lacks.empty() &&
           std::all_of(check.lacks.begin(), check.lacks.end(), [](const Lack& lack) {
             // Its washer and locknut in the wall come with it.
             return lack.key.starts_with("adaptor") || lack.key == "washer_mm" ||
                    lack.key == "locknut_mm";
           });
  });
}

}  // namespace

std::string adaptor_name(const entry::Thread& hole, const entry::Thread& gland) {
  const bool reducer = hole.kind == gland.kind && hole.size > gland.size;
  return (reducer ? "reducer " : "adaptor ") + entry::to_text(hole) + " to " +
         entry::to_text(gland);
}

std::optional<area::Compound> compound_of(const Question& question, const GlandFit& fit) {
  const job::Job& job = *question.job;
  const gland::Gland& gland = *fit.gland;
  const bool known = job.cable.cores && job.construction && job.construction->core_mm &&
                     gland.chamber_bore_mm && gland.chamber_length_mm;
  if (!fit.barrier || !known) return std::nullopt;
  return area::compound_of(question.standards->table("bundle_factors"),
                           {.bore_mm = *gland.chamber_bore_mm,
                            .length_mm = *gland.chamber_length_mm,
                            .cores = *job.cable.cores,
                            .core_mm = *job.construction->core_mm});
}

int packs_of(double volume_cm3, double pack_cm3) {
  return std::max(1, static_cast<int>(std::ceil(volume_cm3 / pack_cm3 - 1e-9)));
}

std::string compound_words(const std::optional<area::Compound>& compound,
                           const std::optional<double>& pack_cm3) {
  if (!compound) return {};
  const double volume_cm3 = round_up(compound->volume_cm3, 0.1);
  std::string text = plain(volume_cm3, 1) + " cm3 round the cores";
  if (!pack_cm3) return text;
  const int packs = packs_of(volume_cm3, *pack_cm3);
  return text + ", " + std::to_string(packs) + (packs == 1 ? " pack of " : " packs of ") +
         plain(*pack_cm3, 1) + " cm3";
}

std::vector<Need> needs_of(const Question& question, const GlandFit& fit) {
  const job::Job& job = *question.job;
  const entry::Entry& entry = job.entry;
  std::vector<Need> needs;
  std::string thread;  // of the hole, where it is not the gland's own
  if (fit.adaptor) {
    const entry::Thread& hole = entry::wall_side(*fit.adaptor, *fit.gland);
    needs.push_back({adaptor_name(hole, fit.gland->entry_thread), ""});
    thread = " " + entry::to_text(hole);
  }
  for (const entry::EntryPart& part :
       entry::parts_in_order(*fit.gland, entry, fit.adaptor.has_value())) {
    if (!part.beside) continue;
    needs.push_back({std::string(part.name) + thread,
                     part.thickness_mm ? plain(*part.thickness_mm) + " mm" : ""});
  }
  if (fit.barrier) {
    needs.push_back(
        {"compound", compound_words(compound_of(question, fit), job.compound_pack_cm3)});
  }
  if (!needs.empty() && job.cable.armour != cable::ArmourKind::none) {
    needs.push_back({"shroud", "if one is used"});
  }
  return needs;
}

std::optional<Through> nearest_through(const Question& question, std::span<const GlandFit> ranked) {
  const entry::Entry& entry = question.job->entry;
  if (!entry.thread) return std::nullopt;
  for (const GlandFit& each : ranked) {
    const entry::Thread& own = each.gland->entry_thread;
    if (each.verdict == Verdict::fits) return std::nullopt;
    if (own == *entry.thread || each.adaptor) continue;
    const Check* const thread = each.find(CheckName::entry);
    if (thread == nullptr || thread->verdict != Verdict::no_fit) continue;
    job::Job job = *question.job;
    job.entry.adaptors.push_back({*entry.thread, own, {}});
    const Question through = ask(job, *question.standards, question.asking);
    GlandFit fit = check_gland(through, *each.gland);
    if (!fit.adaptor || !lacks_the_adaptor_alone(fit)) continue;
    Through found{.fit = std::move(fit),
                  .adaptor = adaptor_name(*entry.thread, own),
                  .with = {},
                  .lacks = {}};
    found.lacks = lacks_of(found.fit);
    found.with = needs_of(through, found.fit);
    found.with.erase(found.with.begin());  // the adaptor itself
    return found;
  }
  return std::nullopt;
}

}  // namespace cutback::fit
