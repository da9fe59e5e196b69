#include "core/sheet/accepts.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include "cutback/entry/hardware.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/number.hpp"

namespace cutback::sheet::detail {
namespace {

constexpr const char* k_stop = "stop and ask";
constexpr double k_wall_step_mm = 0.5;  // as a wall is read with a rule
constexpr int k_wall_steps = 200;       // up to 100 mm, beyond any wall

/// Puts a gland to the question with one of its facts filled in.
class Trial {
 public:
  /// @param lacks  what the page has blanks for; all borrowed
  Trial(const fit::Question& question, const gland::Gland& gland,
        const std::vector<fit::Lack>& lacks)
      : question_(question), gland_(gland), lacks_(lacks) {}

  template <typename Set>
  [[nodiscard]] bool is_good(Set set) const {
    job::Job job = *question_.job;
    if (hole_) job.entry.hole = hole_;
    set(job);
    const fit::Question asked = fit::ask(job, *question_.standards, question_.asking);
    const fit::GlandFit fit = fit::check_gland(asked, gland_);
    return fit.verdict != Verdict::no_fit && is_only_unread(fit) && lacks_nothing_new(fit);
  }
  /// Whether the page has a blank for it.
  [[nodiscard]] bool lacks(std::string_view key) const {
    return std::any_of(lacks_.begin(), lacks_.end(),
                       [&](const fit::Lack& lack) { return lack.key == key; });
  }
  [[nodiscard]] bool knows_hole() const {
    return hole_ || entry::hole_of(question_.job->entry).has_value();
  }
  /// The same, were the hole of this kind.
  [[nodiscard]] Trial in(entry::Hole hole) const {
    Trial other = *this;
    other.hole_ = hole;
    return other;
  }

 private:
  /// What fits with a wall of 8 mm only if the hole has no chamfer does not fit with 8 mm on a page
  /// that has no blank for the chamfer.
  [[nodiscard]] bool lacks_nothing_new(const fit::GlandFit& fit) const {
    const std::vector<fit::Lack> left = fit::lacks_of(fit);
    return std::all_of(left.begin(), left.end(),
                       [&](const fit::Lack& lack) { return lacks(lack.key); });
  }

  const fit::Question& question_;
  const gland::Gland& gland_;
  const std::vector<fit::Lack>& lacks_;
  std::optional<entry::Hole> hole_;
};

/// Between a number that will do and one that will not, the last that will.
template <class IsGood>
int last_good(IsGood is_good, int good, int bad) {
  while (std::abs(good - bad) > 1) {
    const int middle = (good + bad) / 2;
    (is_good(middle) ? good : bad) = middle;
  }
  return good;
}

/// A nut takes a wall up to some thickness, a tapped hole one from some depth on.
std::string walls(const Trial& trial) {
  if (!trial.knows_hole()) {
    const std::string clearance = walls(trial.in(entry::Hole::clearance));
    const std::string threaded = walls(trial.in(entry::Hole::threaded));
    if (clearance.empty() && threaded.empty()) return {};
    return "clearance hole: " + (clearance.empty() ? "any" : clearance) +
           "; threaded: " + (threaded.empty() ? "any" : threaded);
  }
  const auto good = [&](int steps) {
    return trial.is_good([&](job::Job& job) { job.entry.wall_mm = steps * k_wall_step_mm; });
  };
  const bool thin = good(1);
  const bool thick = good(k_wall_steps);
  const auto mm = [](int steps) { return plain(steps * k_wall_step_mm, 1) + " mm"; };
  if (thin && thick) return {};
  if (thin) return "at most " + mm(last_good(good, 1, k_wall_steps));
  if (thick) return "at least " + mm(last_good(good, k_wall_steps, 1));
  for (int some = 2; some < k_wall_steps; some += 2) {
    if (!good(some)) continue;
    return mm(last_good(good, some, 1)) + " to " + mm(last_good(good, some, k_wall_steps));
  }
  return k_stop;
}

struct Answer {
  const char* name;
  bool good;
};

std::string either(const Answer& one, const Answer& other) {
  if (one.good && other.good) return {};
  if (!one.good && !other.good) return k_stop;
  const Answer& yes = one.good ? one : other;
  const Answer& no = one.good ? other : one;
  return std::string(yes.name) + ": go on; " + no.name + ": " + k_stop;
}

std::string holes(const Trial& trial) {
  const auto good = [&](entry::Hole hole) {
    return trial.is_good([&](job::Job& job) { job.entry.hole = hole; });
  };
  return either({"clearance", good(entry::Hole::clearance)},
                {"threaded", good(entry::Hole::threaded)});
}

/// What a wall may be made of; where hole or wall are blank as well, with some hole and some wall.
std::string materials(const Trial& trial) {
  const auto some = [&](const char* material) {
    const auto with = [&](const Trial& hole) {
      constexpr std::array k_walls_mm{1.0, 2.0, 3.0, 5.0, 8.0, 12.0, 20.0};
      return hole.is_good([&](job::Job& job) { job.entry.material = material; }) &&
             (!trial.lacks("wall_mm") ||
              std::any_of(k_walls_mm.begin(), k_walls_mm.end(), [&](double wall_mm) {
                return hole.is_good([&](job::Job& job) {
                  job.entry.material = material;
                  job.entry.wall_mm = wall_mm;
                });
              }));
    };
    return trial.knows_hole()
               ? with(trial)
               : with(trial.in(entry::Hole::clearance)) || with(trial.in(entry::Hole::threaded));
  };
  std::string good;
  std::string bad;
  // Steel stands for what is magnetic: round a single core of a.c. only other metal will do.
  const bool steel = some("steel");
  const bool other = some("aluminium");
  const auto put = [&](bool is_good, const char* name) {
    std::string& list = is_good ? good : bad;
    list += (list.empty() ? "" : ", ") + std::string(name);
  };
  if (steel == other) {
    put(steel, "metal");
  } else {
    put(other, "metal that is not magnetic");
    put(steel, "steel or cast iron");
  }
  put(some("polymer"), "plastic");
  if (bad.empty()) return {};
  return good.empty() ? k_stop : good + ": go on; " + bad + ": " + k_stop;
}

/// One core asks what is round it; a chamber takes no more than so many.
std::string cores(const Trial& trial) {
  constexpr int k_most = 61;
  const auto good = [&](int count) {
    return trial.is_good([&](job::Job& job) { job.cable.cores = count; });
  };
  int least = 1;
  while (least <= k_most && !good(least)) ++least;
  if (least > k_most) return k_stop;
  const std::string from = std::to_string(least);
  if (!good(k_most)) return from + " to " + std::to_string(last_good(good, least, k_most));
  return least == 1 ? std::string() : from + " or more; fewer: " + k_stop;
}

}  // namespace

bool is_only_unread(const fit::GlandFit& fit) {
  return std::all_of(fit.checks.begin(), fit.checks.end(), [](const fit::Check& check) {
    if (check.verdict == Verdict::fits) return true;
    return !check.lacks.empty() &&
           std::all_of(check.lacks.begin(), check.lacks.end(), [](const fit::Lack& lack) {
             return lack.where == fit::Lack::Where::at_the_end;
           });
  });
}

std::vector<Accepted> accepts_of(const fit::Question& question, const gland::Gland& gland,
                                 const std::vector<fit::Lack>& lacks) {
  const Trial trial(question, gland, lacks);
  std::vector<Accepted> list;
  const auto add = [&](std::string_view key, std::string (*words)(const Trial&)) {
    if (!trial.lacks(key)) return;
    std::string says = words(trial);
    if (!says.empty()) list.push_back({key, std::move(says)});
  };
  add("wall_mm", walls);
  add("hole", holes);
  add("material", materials);
  add("cores", cores);
  return list;
}

}  // namespace cutback::sheet::detail
