// The laws of an earned pass, over every row of the field table and every column of the gland list:
// a field or column that is added there is under them without an edit here. A failure names the one
// fact that was taken away.
#include <fmt/format.h>
#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <memory>
#include <set>

#include "core/fit/rules.hpp"
#include "cutback/fit/gates.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/sheet/sheet.hpp"
#include "support/any.hpp"

using namespace cutback;
using fit::Purpose;
using fit::Topic;

namespace {

/// An end with its question; it does not move, for the question borrows the job.
struct End {
  End(const job::JobInput& in, Purpose purpose)
      : job(job::resolve(in, test::standards(), job::Unstated::by_notation)),
        question(fit::ask(job, test::standards(), {.purpose = purpose})) {}
  End(const End&) = delete;
  End& operator=(const End&) = delete;
  const job::Job job;
  const fit::Question question;

  [[nodiscard]] Verdict verdict(const gland::Gland& gland) const {
    return fit::check_gland(question, gland).verdict;
  }
  [[nodiscard]] std::set<std::string> assumed(const gland::Gland& gland) const {
    std::set<std::string> facts;
    for (const Assumption& one : fit::assumptions(question, &gland)) facts.insert(one.fact);
    return facts;
  }
  [[nodiscard]] std::set<Topic> not_asked() const {
    const auto topics = fit::not_asked(question);
    return {topics.begin(), topics.end()};
  }
};

std::unique_ptr<End> end_of(const job::JobInput& in, Purpose purpose) {
  try {
    return std::make_unique<End>(in, purpose);
  } catch (const InputError&) {
    return nullptr;
  }
}

Purpose any_purpose() { return *rc::gen::element(Purpose::fit, Purpose::schedule, Purpose::sheet); }

/// An end of which nearly everything that decides is given and most of it is in order, so that many
/// ends hang on one fact.
job::JobInput near_pass() {
  job::JobInput in = test::any_end(*rc::gen::element(3, 6, 12));
  const auto give = [&](const char* key, const char* text) {
    if (*rc::gen::inRange(0, 4) == 0) return;
    const job::JobInput before = in;
    test::set(in, job::field_named(key), text);
    if (!test::can_be(in)) in = before;
  };
  give("entry", "M20");
  give("hole", "clearance");
  give("wall_mm", "2.5");
  give("washer_mm", "1.5");
  give("locknut_mm", "4");
  give("material", "steel");
  give("protection", "eb");
  give("zone", "1");
  give("gas_group", "IIB");
  give("ip", "66");
  give("ambient_max_c", "40");
  give("cores", "3");
  return in;
}

/// Mostly a gland that states everything, of which a few columns are others.
gland::Gland near_gland() {
  gland::Gland gland = test::any_gland(*rc::gen::element(5, 10, 20));
  const auto put = [&](const char* column, const char* text) {
    if (*rc::gen::inRange(0, 4) == 0) return;
    gland::put(gland, gland::columns()[gland::column_place(column)], std::string_view(text));
  };
  put("protection", "db eb tb");
  put("level", "Gb Db");
  put("gas_group", "IIC");
  put("dust_group", "IIIC");
  put("ip", "66 68");
  put("material", "brass");
  const auto figure = [&](const char* column, double value) {
    if (*rc::gen::inRange(0, 4) == 0) return;
    gland::put(gland, gland::columns()[gland::column_place(column)], value);
  };
  figure("temp_min_c", -40);
  figure("temp_max_c", 100);
  figure("fault_ka", 5);
  figure("washer_mm", 1.5);
  figure("locknut_mm", 4);
  return gland;
}

/// A question that was asked before and is not asked any more.
bool falls_silent(const End& before, const End& after) {
  const auto was = before.not_asked();
  const auto is = after.not_asked();
  return std::any_of(is.begin(), is.end(), [&](Topic topic) { return was.count(topic) == 0; });
}

}  // namespace

TEST_CASE("laws: a fact of an end taken away never makes it pass", "[property][laws]") {
  constexpr int k_ends_per_round = 25;
  int taken = 0;
  int ends = 0;
  CHECK(rc::check("every field, one at a time", [&] {
    for (int i = 0; i < k_ends_per_round; ++i) {
      const job::JobInput in = near_pass();
      const Purpose purpose = any_purpose();
      const gland::Gland gland = near_gland();
      const auto before = end_of(in, purpose);
      if (before == nullptr) continue;
      ++ends;
      if (before->verdict(gland) == Verdict::fits) continue;
      for (const job::Field& field : job::fields()) {
        if (!job::text_of(in, field)) continue;
        job::JobInput less = in;
        job::take_away(less, field);
        const auto after = end_of(less, purpose);
        ++taken;
        if (after == nullptr || after->verdict(gland) != Verdict::fits) continue;
        if (falls_silent(*before, *after)) continue;
        // Ingress and temperature are asked alone as well, and then by their own figure.
        const bool alone = field.section == "area" && !fit::is_asked(Topic::place, after->question);
        if (alone || after->assumed(gland).count(std::string(field.key)) > 0) continue;
        RC_FAIL("without " + std::string(field.key) + " it passes");
      }
    }
  }));
  CHECK(ends >= 2000);
  CHECK(taken > 20000);
}

TEST_CASE("laws: a statement of a gland taken away never makes it pass", "[property][laws]") {
  int taken = 0;
  CHECK(rc::check("every column, one at a time", [&] {
    const auto end = end_of(near_pass(), any_purpose());
    const bool there = end != nullptr;
    RC_PRE(there);
    for (int i = 0; i < 20; ++i) {
      const gland::Gland gland = near_gland();
      if (end->verdict(gland) == Verdict::fits) continue;
      for (const gland::Column& column : gland::columns()) {
        // A list without these is refused; and without an inner range there is no inner seal, which
        // is another gland and not a silent one.
        const std::string name(column.name);
        if (column.required || name.starts_with("armour_m") || name.starts_with("inner_m"))
          continue;
        gland::Gland less = gland;
        gland::take_away(less, column);
        ++taken;
        if (end->verdict(less) != Verdict::fits) continue;
        if (end->assumed(less).count(name) > 0) continue;
        RC_FAIL("without " + name + " it passes");
      }
    }
  }));
  CHECK(taken > 20000);
}

TEST_CASE("laws: a wider interval never makes an end pass", "[property][laws]") {
  CHECK(rc::check("each diameter by a factor", [&] {
    const auto end = end_of(near_pass(), any_purpose());
    const bool there = end != nullptr;
    RC_PRE(there);
    job::Job wider = end->job;
    const double factor = 1.0 + *rc::gen::inRange(1, 2000) / 100.0;
    for (auto* diameter : {&wider.cable.sheath_od, &wider.cable.bedding, &wider.cable.wire}) {
      if (!*diameter) continue;
      (*diameter)->standard_mm *= factor;
      (*diameter)->expanded_mm *= factor;
    }
    if (wider.cable.wire && wider.cable.wire_nominal) {
      wider.cable.wire_nominal =
          cable::standard_size(test::standards().wire_bands, *wider.cable.wire);
    }
    const auto question = fit::ask(wider, test::standards(), end->question.asking);
    for (int i = 0; i < 20; ++i) {
      const gland::Gland gland = near_gland();
      if (end->verdict(gland) == Verdict::fits) continue;
      RC_ASSERT(fit::check_gland(question, gland).verdict != Verdict::fits);
    }
  }));
}

TEST_CASE("laws: whoever asks, a check that is asked has one answer", "[property][laws]") {
  CHECK(rc::check("fit, schedule and sheet", [&] {
    const job::JobInput in = near_pass();
    const auto quick = end_of(in, Purpose::fit);
    const bool there = quick != nullptr;
    RC_PRE(there);
    const End row(in, Purpose::schedule);
    const End sheet(in, Purpose::sheet);
    for (int i = 0; i < 10; ++i) {
      const gland::Gland gland = near_gland();
      const auto of_sheet = fit::check_gland(sheet.question, gland);
      for (const End* other : {static_cast<const End*>(quick.get()), &row}) {
        for (const fit::Check& check : fit::check_gland(other->question, gland).checks) {
          // The path to earth is another question for a single core alone.
          if (!fit::is_asked(Topic::earth, other->question) &&
              check.name == fit::CheckName::earth) {
            continue;
          }
          const fit::Check* same = of_sheet.find(check.name);
          RC_ASSERT(same != nullptr);
          RC_ASSERT(same->verdict == check.verdict);
        }
      }
    }
  }));
}

TEST_CASE("laws: depths hold for whatever is read above the sheath that they are for",
          "[property][laws]") {
  CHECK(rc::check("another cable's depths are not smaller", [] {
    gland::Gland gland = test::small_gland();
    gland.outer = {5.0, 60.0};
    gland.inner = measure::Range{5.0, 50.0};
    gland.bore_mm = 50.0;
    gland.armour_clamp = {0.5, 4.0};
    gland.entry_thread = *entry::parse_thread("M63");
    job::JobInput in = test::small_cable();
    in.entry = "M63";
    in.evidence = *rc::gen::element(measure::Evidence::measured, measure::Evidence::datasheet);
    in.step_mm = *rc::gen::element(0.01, 0.05, 0.1);
    const bool measured = in.evidence == measure::Evidence::measured;
    const double wire = *rc::gen::element(0.9, 1.25, 1.6, 2.0);
    const auto put = [&](double sheath, double bedding, bool twice) {
      const auto text = [&](double mm) {
        return twice ? fmt::format("{0:.3f}+{0:.3f}", mm) : fmt::format("{:.3f}", mm);
      };
      in.sheath_od_mm = text(sheath);
      in.bedding_mm = text(bedding);
      in.armour_mm = fmt::format("{}", wire);
    };
    const double bedding = 8.0 + *rc::gen::inRange(0, 300) / 10.0;
    const double thick = 1.2 + *rc::gen::inRange(0, 80) / 50.0;
    put(bedding + 2.0 * (wire + thick), bedding, measured);
    const auto first = end_of(in, Purpose::sheet);
    RC_ASSERT(first != nullptr);
    const sheet::Sheet page = sheet::make_sheet(first->question,
                                                {.fit = fit::check_gland(first->question, gland),
                                                 .because = {},
                                                 .fits_instead = {},
                                                 .advice = {}},
                                                "list");
    RC_PRE(page.depths_from_mm.has_value());
    const double between = *page.depths_from_mm + *rc::gen::inRange(0, 15) / 10.0;
    in.evidence = measure::Evidence::measured;
    const double other = bedding + *rc::gen::inRange(-20, 20) / 10.0;
    put(other + between, other, true);
    const auto second = end_of(in, Purpose::sheet);
    RC_ASSERT(second != nullptr);
    const strip::Depths its = strip::depths_of(
        second->job.cable, {.sheath_mm = strip::oversheath_thickness_mm(second->job),
                            .bedding_mm = strip::bedding_thickness_mm(second->job)});
    const auto holds = [](const std::optional<double>& depth, const std::optional<double>& of) {
      return !depth || (of && *of >= *depth - 1e-9);
    };
    RC_ASSERT(holds(page.plan->depths.sheath_mm, its.sheath_mm));
    RC_ASSERT(holds(page.plan->depths.saw_mm, its.saw_mm));
    RC_ASSERT(holds(page.plan->depths.saw_limit_mm, its.saw_limit_mm));
  }));
}

TEST_CASE("laws: readings inside all gates are proven", "[property][laws]") {
  int proven = 0;
  CHECK(rc::check("every check of a diameter", [&] {
    job::JobInput in = near_pass();
    in.evidence = measure::Evidence::measured;
    in.step_mm = *rc::gen::element(0.01, 0.02, 0.05, 0.1);
    in.mpe_mm.reset();
    in.zero_mm.reset();
    const Purpose purpose = any_purpose();
    const auto before = end_of(in, purpose);
    const bool there = before != nullptr;
    RC_PRE(there);
    const gland::Gland gland = near_gland();
    const fit::Gates gates = fit::gates_of(before->question, gland);
    const bool possible = gates.possible() && gates.sheath.low_mm && gates.sheath.high_mm &&
                          gates.bedding.high_mm && !gates.wire.empty();
    RC_PRE(possible);
    const fit::WireGate wire = gates.wire[*rc::gen::inRange<std::size_t>(0, gates.wire.size())];
    const auto in_gate = [](const fit::Gate& gate, double least) {
      const double low = std::max(gate.low_mm.value_or(least), least);
      const double high = *gate.high_mm;
      return low + (high - low) * *rc::gen::inRange(0, 101) / 100.0;
    };
    const double sheath = in_gate(gates.sheath, 0.0);
    const double bedding = in_gate(gates.bedding, 1.0);
    const double most = wire.most_between_mm.value_or(1000.0);
    const bool between = wire.gate.high_mm && wire.least_between_mm &&
                         sheath - bedding >= *wire.least_between_mm && sheath - bedding <= most &&
                         bedding <= *gates.bedding.high_mm;
    RC_PRE(between);
    in.sheath_od_mm = fmt::format("{0:.6f}+{0:.6f}", sheath);
    in.bedding_mm = fmt::format("{0:.6f}+{0:.6f}", bedding);
    in.armour_mm = fmt::format("{:.6f}", in_gate(wire.gate, 0.1));
    const auto after = end_of(in, purpose);
    const bool usable = after != nullptr;
    RC_PRE(usable);
    ++proven;
    const fit::detail::Case at(after->question, gland);
    for (const fit::detail::Rule& rule : fit::detail::rules()) {
      const auto against = is_of_gland(rule) ? fit::detail::against(rule, at) : std::nullopt;
      if (!against || !against->range || against->otherwise) continue;
      RC_TAG(std::string(to_string(rule.name)));
      RC_ASSERT(fit::detail::finding_of(*against, at.cable()).verdict == against->verdict);
    }
    const fit::GlandFit fit = fit::check_gland(after->question, gland);
    RC_ASSERT(fit.find(fit::CheckName::build_up)->verdict == Verdict::fits);
    // Enough armour for the fault as it was means enough of it inside the gates.
    const auto armour = [](const End& end) {
      for (const fit::detail::Rule& rule : fit::detail::rules()) {
        if (rule.name == fit::CheckName::fault) return fit::detail::alone(rule, end.question);
      }
      return std::optional<Verdict>();
    };
    if (before->job.cable.bedding && armour(*before) == Verdict::fits &&
        gates.bedding.holds(before->job.cable.bedding->value_mm)) {
      RC_ASSERT(armour(*after) == Verdict::fits);
    }
  }));
  CHECK(proven >= 50);
}
