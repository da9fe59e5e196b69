#include "cutback/fit/questions.hpp"

#include <algorithm>
#include <array>

#include "core/fit/rules.hpp"
#include "cutback/earth/path.hpp"
#include "cutback/entry/hardware.hpp"

namespace cutback::fit {
namespace {

constexpr std::array k_topics{Topic::cable, Topic::entry, Topic::joint,
                              Topic::place, Topic::earth, Topic::fault};

/// A fact that speaks of the joint between gland and wall.
bool speaks_of_joint(const entry::Entry& entry) {
  return entry.hole || entry.wall_mm || entry.hole_dia_mm || entry.washer_mm || entry.tag_mm ||
         entry.serrated_mm || entry.locknut_mm || entry.chamfer_mm || entry.undercut_mm ||
         entry.adaptor_mm || entry.adaptor_thread_mm;
}

bool joint_is_asked(const Question& question) {
  return question.asking.purpose == Purpose::sheet || question.job->asked.joint ||
         speaks_of_joint(question.job->entry) || detail::is_flameproof(question);
}

bool entry_is_asked(const Question& question) {
  const entry::Entry& entry = question.job->entry;
  return question.asking.purpose != Purpose::fit || entry.thread || entry.to_suit ||
         !entry.adaptors.empty() || joint_is_asked(question);
}

bool place_is_asked(const Question& question) {
  return question.asking.place || question.job->asked.place || area::is_asked(question.job->area);
}

/// An armoured single core asks for it too, unless it is on d.c.: steel round it, the wall's as
/// well, decides.
bool earth_is_asked(const Question& question) {
  const cable::Cable& cable = question.job->cable;
  const bool wall = question.asking.purpose == Purpose::sheet || question.job->asked.earth ||
                    question.job->entry.material.has_value();
  const bool single = cable.cores == 1;
  if (cable.armour == cable::ArmourKind::none) return earth::may_be_single(cable) && wall;
  return wall || (single && cable.supply != cable::Supply::dc);
}

bool fault_is_asked(const Question& question) {
  return question.job->cable.armour != cable::ArmourKind::none &&
         (question.job->asked.fault || earth::is_asked(question.job->fault));
}

bool measured(const std::optional<measure::Estimate>& diameter) {
  return diameter && diameter->evidence == measure::Evidence::measured;
}

/// A question that has no meaning for this end is not named as not asked.
bool applies(Topic topic, const Question& question) {
  const cable::Cable& cable = question.job->cable;
  if (cable.armour != cable::ArmourKind::none) return true;
  if (topic == Topic::earth) return earth::may_be_single(cable);
  return topic != Topic::fault;
}

}  // namespace

bool is_asked(Topic topic, const Question& question) {
  switch (topic) {
    case Topic::cable:
      return true;
    case Topic::entry:
      return entry_is_asked(question);
    case Topic::joint:
      return joint_is_asked(question);
    case Topic::place:
      return place_is_asked(question);
    case Topic::earth:
      return earth_is_asked(question);
    case Topic::fault:
      return fault_is_asked(question);
  }
  return true;
}

std::vector<Topic> not_asked(const Question& question) {
  std::vector<Topic> topics;
  std::copy_if(k_topics.begin(), k_topics.end(), std::back_inserter(topics),
               [&](Topic topic) { return applies(topic, question) && !is_asked(topic, question); });
  return topics;
}

std::vector<Lack> not_measured(const cable::Cable& cable) {
  std::vector<Lack> lacks;
  const auto add = [&](const char* name, std::string_view key,
                       const std::optional<measure::Estimate>& diameter) {
    if (!measured(diameter)) lacks.push_back({name, key, Lack::Where::at_the_end});
  };
  add("sheath", "sheath_od_mm", cable.sheath_od);
  if (cable.armour == cable::ArmourKind::none) return lacks;
  add("bedding", "bedding_mm", cable.bedding);
  add("wire", "armour_mm", cable.wire);
  return lacks;
}

bool is_measured(const cable::Cable& cable) {
  if (!measured(cable.sheath_od)) return false;
  return cable.armour == cable::ArmourKind::none ||
         (measured(cable.bedding) && measured(cable.wire));
}

std::vector<Assumption> assumptions(const Question& question, const gland::Gland* gland) {
  const job::Job& job = *question.job;
  const entry::Entry& entry = job.entry;
  std::vector<Assumption> list = job.assumed;
  const auto take = [&](bool given, const char* fact, const char* taken, const char* why) {
    if (!given) list.push_back({fact, taken, why});
  };
  if (is_asked(Topic::joint, question)) {
    if (gland != nullptr && !entry.washer_mm && gland->washer_mm) {
      list.push_back({"washer_mm", "the gland's own", "the gland list"});
    }
    if (gland != nullptr && !entry.locknut_mm && gland->locknut_mm) {
      list.push_back({"locknut_mm", "the gland's own", "the gland list"});
    }
    take(entry.tag_mm.has_value(), "tag_mm", "0 mm", "no earth tag where none is stated");
    take(entry.serrated_mm.has_value(), "serrated_mm", "0 mm", "none where none is stated");
    if (entry::hole_of(entry) == entry::Hole::threaded) {
      const bool taper = gland != nullptr && gland->entry_thread.kind == entry::ThreadKind::npt;
      take(entry.chamfer_mm.has_value(), "chamfer_mm", taper ? "0 mm" : "2 mm",
           taper ? "a taper thread is gauged from its face"
                 : "the deepest that IEC 60079-1 allows a flameproof entry");
      take(entry.undercut_mm.has_value(), "undercut_mm", "0 mm", "none where none is stated");
    } else {
      take(entry.undercut_mm.has_value(), "undercut_mm", "0 mm", "none where none is stated");
      take(entry.hole_dia_mm.has_value(), "hole_dia_mm", "one made for the thread",
           "common practice, no source");
    }
  }
  if (is_asked(Topic::earth, question) && !entry.tag_mm) {
    list.push_back(
        {"tag_mm", "bare metal under the locknut of a metal wall", "a hold point of the sheet"});
  }
  const auto append = [&](const std::vector<Assumption>& more) {
    list.insert(list.end(), more.begin(), more.end());
  };
  append(area::assumptions_of(job.area));
  if (gland == nullptr) return list;
  append(gland::assumptions_of(*gland));
  if (!gland->bore_mm && gland->inner) {
    list.push_back({"bore_mm", "upper limit of the inner seal", "the seal lies in the same bore"});
  }
  return list;
}

std::vector<Lack> lacks_of(const GlandFit& fit) {
  std::vector<Lack> lacks;
  if (fit.verdict == Verdict::fits || fit.verdict == Verdict::no_fit) return lacks;
  const auto add = [&](const Lack& lack) {
    if (std::find(lacks.begin(), lacks.end(), lack) == lacks.end()) lacks.push_back(lack);
  };
  for (const Topic topic : k_topics) {
    for (const Check& check : fit.checks) {
      if (check.verdict == Verdict::fits || topic_of(check.name) != topic) continue;
      for (const Lack& lack : check.lacks) add(lack);
      if (check.lacks.empty()) {
        add({.fact = std::string(to_string(check.name)) + " (" +
                     std::string(to_string(check.verdict)) + ")",
             .key = {},
             .where = Lack::Where::elsewhere});
      }
    }
  }
  return lacks;
}

std::string lacks_text(const std::vector<Lack>& lacks) {
  constexpr std::size_t k_named = 3;
  std::string text;
  for (std::size_t i = 0; i < std::min(lacks.size(), k_named); ++i) {
    text += (i == 0 ? "" : ", ") + lacks[i].fact;
  }
  if (lacks.size() > k_named) text += " and " + std::to_string(lacks.size() - k_named) + " more";
  return text;
}

State state_of(Verdict best, const cable::Cable& cable) {
  if (best == Verdict::no_fit) return State::none;
  if (best != Verdict::fits) return State::not_yet;
  return is_measured(cable) ? State::fits : State::order;
}

}  // namespace cutback::fit
