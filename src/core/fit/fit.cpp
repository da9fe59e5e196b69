#include "cutback/fit/fit.hpp"

#include <algorithm>
#include <limits>

#include "core/fit/checks.hpp"
#include "core/fit/order.hpp"

namespace cutback::fit {
namespace {

double margin_or_none(const Check& check) {
  return check.margin_mm.value_or(-std::numeric_limits<double>::infinity());
}

/// Best first.
struct ByVerdict {
  bool operator()(const GlandFit& fit, Verdict verdict) const { return fit.verdict > verdict; }
  bool operator()(Verdict verdict, const GlandFit& fit) const { return verdict > fit.verdict; }
};

}  // namespace

const Check* GlandFit::find(CheckName name) const {
  const auto it = std::find_if(checks.begin(), checks.end(),
                               [&](const Check& check) { return check.name == name; });
  return it == checks.end() ? nullptr : &*it;
}

const Check& GlandFit::deciding() const {
  return *std::min_element(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
    if (a.verdict != b.verdict) return a.verdict < b.verdict;
    return margin_or_none(a) < margin_or_none(b);
  });
}

Question ask(const job::Job& job, const tables::Standards& standards, const Asking& asking) {
  return {&job, &standards,
          std::make_shared<const area::Demand>(
              area::make_demand(job.area, job.cable, standards, asking.place || job.asked.place)),
          asking};
}

std::vector<CheckName> check_names() {
  std::vector<CheckName> names;
  for (const detail::Rule& rule : detail::rules()) names.push_back(rule.name);
  return names;
}

GlandFit check_gland(const Question& question, const gland::Gland& gland) {
  const detail::Case at(question, gland);
  GlandFit fit;
  fit.gland = &gland;
  fit.barrier = at.barrier;
  fit.checks.reserve(detail::rules().size());
  fit.verdict = Verdict::fits;
  for (const detail::Rule& rule : detail::rules()) {
    auto check = detail::say(rule, at, fit);
    if (!check) continue;
    fit.verdict = worst(fit.verdict, check->verdict);
    if (check->counts_for_margin && check->margin_mm) {
      fit.margin_mm = std::min(fit.margin_mm.value_or(*check->margin_mm), *check->margin_mm);
    }
    fit.checks.push_back(std::move(*check));
  }
  return fit;
}

MadeOff made_off(const Question& question, const gland::Gland& gland) {
  const detail::Case at(question, gland);
  return {.barrier = at.barrier,
          .adaptor = at.adaptor != nullptr ? std::optional(*at.adaptor) : std::nullopt};
}

Margins margins_of(const Question& question, const gland::Gland& gland) {
  const detail::Case at(question, gland);
  const auto margin = [&](const std::optional<detail::Against>& against) {
    return against ? detail::finding_of(*against, at.cable()).margin_mm : std::nullopt;
  };
  return {.outer_mm = margin(detail::against_outer_seal(at)),
          .inner_mm = margin(detail::against_inner_seal(at)),
          .armour_mm = margin(detail::against_armour(at))};
}

std::vector<GlandFit> fit_all(const Question& question, std::span<const gland::Gland> glands,
                              Prefer prefer) {
  std::vector<GlandFit> fits;
  fits.reserve(glands.size());
  for (const gland::Gland& gland : glands) fits.push_back(check_gland(question, gland));
  rank(fits, prefer);
  return fits;
}

void rank(std::vector<GlandFit>& fits, Prefer prefer) {
  const auto standing = [&](const GlandFit& fit) {
    return detail::Standing{fit.verdict, detail::preference(*fit.gland, prefer),
                            fit.margin_mm.value_or(detail::k_no_margin_mm), fit.gland->part};
  };
  std::sort(fits.begin(), fits.end(), [&](const GlandFit& a, const GlandFit& b) {
    return detail::comes_before(standing(a), standing(b));
  });
  const auto open = std::equal_range(fits.begin(), fits.end(), Verdict::not_known, ByVerdict{});
  std::stable_sort(open.first, open.second,
                   [](const GlandFit& a, const GlandFit& b) { return miss_of(a) < miss_of(b); });
}

}  // namespace cutback::fit
