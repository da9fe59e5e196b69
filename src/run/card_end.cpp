#include "run/card_end.hpp"

#include <algorithm>
#include <utility>

#include "cutback/fit/select.hpp"
#include "cutback/schedule/groups.hpp"
#include "cutback/schedule/row_kind.hpp"
#include "run/require_sheath.hpp"

namespace cutback::run {

using schedule::Layout;
using schedule::Side;

InputError at_place(const InputError& error, const std::string& place) {
  std::vector<Fault> faults = error.faults();
  for (Fault& fault : faults) fault.where = place + fault.where;
  return InputError(std::move(faults));
}

std::string on_paper(const CardEnd& end) {
  const std::size_t place = std::min(end.place.size(), end.why_none.size());
  const std::size_t folder = end.why_none.substr(0, place).rfind('/');
  return folder == std::string::npos ? end.why_none : end.why_none.substr(folder + 1);
}

std::string place_of(const Layout& layout, schedule::Cells cells, Side side) {
  const std::size_t place = side == Side::from ? layout.from
                            : side == Side::to ? layout.to
                                               : Layout::k_none;
  return place == Layout::k_none ? std::string() : std::string(schedule::cell(cells, place));
}

std::string end_words(const Layout& layout, schedule::Cells cells, Side side) {
  const std::string words(schedule::end_name(layout, cells, side));
  const std::string name = place_of(layout, cells, side);
  return name.empty() ? words : words + ": " + name;
}

namespace {

/// Why the end is not proven, and what would help: in the words of the exceptions of a schedule.
void put_remedy(CardEnd& end, const schedule::Decision& decision) {
  if (!end.choice.fits_instead.empty()) {
    end.remedy = "use " + end.choice.fits_instead + ", which fits";
    return;
  }
  if (!decision.usable()) return;
  end.why = decision.reason;
  end.remedy = decision.change;
}

/// A finished end: what its readings carry, and nothing to cut by.
void take_made(const schedule::MadeEnd& made, const schedule::Decision& decision, CardEnd& end) {
  end.part = made.part;
  end.made = made.words;
  end.made_verdict = decision.usable() ? decision.verdict : Verdict::not_known;
  end.made_measured = decision.state == fit::State::fits;
  if (!decision.usable()) {
    end.made_says = "its figures cannot be used: " + schedule::unusable_text(decision);
  } else if (end.made_measured) {
    end.made_says = "its readings lie inside what the gland takes: nothing to do";
  } else if (decision.verdict == Verdict::fits) {
    end.made_says = "it fits by the datasheet; not every diameter that decides was read";
  } else {
    // The reason begins with what the card says already.
    end.made_says = decision.reason.substr(made.words.size() + 2) + "; " + decision.change;
  }
}

}  // namespace

CardEnd decide_job(const std::string& path, const job::JobInput& input,
                   const schedule::Settings& settings, const schedule::MadeEnd* made) {
  CardEnd end;
  end.place = path + ": ";
  end.is_file = true;
  end.input = input;
  if (made != nullptr && made->is_finished()) {
    end.tag = input.tag.value_or("");
    end.end = input.end.value_or("");
    take_made(*made, schedule::decide_asked(input, settings, nullptr, {}, made).decision, end);
    return end;
  }
  if (made != nullptr) schedule::put_readings(*made, end.input);
  end.job = std::make_unique<const job::Job>(schedule::job_of(input, settings, {}, made));
  require_sheath(*end.job, end.place + "cable.sheath_od_mm");
  end.tag = end.job->tag;
  end.end = end.job->end;
  end.question = fit::ask(*end.job, *settings.standards, settings.asking);
  const auto ranked =
      fit::fit_all(end.question, settings.glands->glands(), settings.glands->prefer());
  try {
    end.choice = sheet::choose(*end.job, ranked, input.gland.value_or(""));
  } catch (const InputError& error) {
    throw at_place(error, end.place);
  }
  end.choice.advice.nearest = nullptr;  // one of `ranked`
  if (end.choice.fit.verdict != Verdict::fits) {
    put_remedy(end, schedule::decide(input, settings, nullptr, {}, made));
  }
  end.part = input.gland.value_or(ranked.front().gland->part);
  return end;
}

CardEnd decide_row(const Layout& layout, schedule::Cells cells, Side side, const ChosenEnd& chosen,
                   std::string place, const OutsideRow& outside,
                   const schedule::Settings& settings) {
  CardEnd end;
  end.tag = schedule::tag_of(layout, cells);
  end.end = end_words(layout, cells, side);
  end.place = std::move(place);
  if (chosen.gland != nullptr) end.part = chosen.gland->part;
  if (const auto fault = schedule::fault_of_row(layout, cells)) {
    end.why_none = end.place + to_line(*fault);
    return end;
  }
  schedule::AskedEnd asked;
  schedule::RowNotes notes;
  end.input = schedule::input_of(layout, cells, side, asked.decision.faults, &notes);
  end.defaults = notes.defaults | schedule::quantity_default_of(layout, cells);
  end.input.tag = end.tag;
  if (!end.end.empty()) end.input.end = end.end;
  const schedule::MadeEnd* const made =
      settings.made == nullptr
          ? nullptr
          : settings.made->find(end.tag, schedule::end_name(layout, cells, side));
  if (asked.decision.usable()) {
    asked = schedule::decide_asked(end.input, settings, nullptr, notes, made);
    schedule::name_columns(layout, cells, side, asked.decision.faults);
  }
  const EndDoubt doubt = RowDoubts(layout).of(
      cells, side, schedule::count_of(layout, cells).value_or(schedule::RowCount{}), outside);
  doubt.say(asked.decision);
  const schedule::Decision& decision = asked.decision;
  if (made != nullptr && made->is_finished()) {
    take_made(*made, decision, end);
    return end;
  }
  if (made != nullptr) schedule::put_readings(*made, end.input);
  if (!decision.usable()) {
    // On paper what is wrong, not what the reader of the file would have taken.
    for (const Fault& fault : decision.faults) {
      end.why_none += end.why_none.empty() ? end.place : std::string("; ");
      end.why_none += fault.what + (fault.given.empty() ? "" : ": " + fault.given);
    }
    return end;
  }
  if (!asked.job) {
    end.why_none = end.place + decision.reason;
    return end;
  }
  if (!doubt.place.empty()) {
    end.why_none = end.place + "the place is told plain, and \"" + doubt.place +
                   "\" speaks of a hazardous one: write the zone of this end";
    return end;
  }
  end.job = std::move(asked.job);
  end.question = std::move(asked.question);
  if (chosen.gland != nullptr) {
    end.choice.fit = fit::check_gland(end.question, *chosen.gland);
    end.choice.because = "as the results of the schedule say";
    end.stated_mm = chosen.cuts_mm;
  } else {
    end.choice.fit = std::move(*asked.fit);
    end.choice.because = decision.reason;
    if (decision.gland != nullptr) end.part = decision.gland->part;
  }
  if (end.choice.fit.verdict != Verdict::fits) {
    if (decision.proven) end.choice.fits_instead = decision.gland->part;
    end.choice.advice = fit::advise(*end.job, end.choice.fit);
    end.choice.advice.nearest = nullptr;  // the fit that moves with this end
    put_remedy(end, decision);
  }
  return end;
}

}  // namespace cutback::run
