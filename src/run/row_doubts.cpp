#include "run/row_doubts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "cutback/compare.hpp"
#include "cutback/job/job.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::run {

RowDoubts::RowDoubts(const schedule::Layout& layout) : layout_(layout), places_(layout) {
  for (const schedule::UnreadColumn& column : layout.unread) {
    if (column.may_ask) asking_.push_back(&column);
  }
}

std::optional<schedule::CountDoubt> RowDoubts::unread_figure(schedule::Cells cells) const {
  const auto nominal = parse_number(schedule::cell(cells, layout_.diameters.front()));
  for (const schedule::UnreadColumn* const column : asking_) {
    const std::string_view text = schedule::cell(cells, column->cell);
    if (layout_.is_not_given(text) || std::none_of(text.begin(), text.end(), is_digit)) continue;
    // A limit inside of what is allowed for the nominal diameter anyhow asks nothing.
    const auto limit = parse_number(text);
    const std::string heading = small_letters(column->heading);
    const bool is_limit =
        heading.find("max") != std::string::npos || heading.find("min") != std::string::npos;
    if (is_limit && limit && nominal && at_most(std::abs(*limit - *nominal), job::k_od_allow_mm)) {
      continue;
    }
    return schedule::CountDoubt{.says = "the column " + column->heading + " says " +
                                        std::string(text) + ", and is not read",
                                .group = "a column that is not read may ask more",
                                .change = "say what the column is, or that it is to be left out"};
  }
  return std::nullopt;
}

void EndDoubt::say(schedule::Decision& decision) const {
  if (count) schedule::say_count_unclear(*count, decision);
  if (!place.empty()) schedule::say_place_in_doubt(place, decision);
}

EndDoubt RowDoubts::of(schedule::Cells cells, schedule::Side side, const schedule::RowCount& count,
                       const OutsideRow& outside) const {
  EndDoubt doubt;
  if (!outside.above.empty()) {
    doubt.count = {.says = "its tag stands on " + outside.above + " already",
                   .group = "tag stands twice",
                   .change =
                       "say which of the rows holds: take the other out, or give it a tag of "
                       "its own"};
  } else if (!outside.title.away.empty()) {
    doubt.count = {.says = "it stands under \"" + outside.title.away + "\"",
                   .group = "under a title that takes cables away",
                   .change = "take the row out, or put it under another title"};
  } else if (!outside.title.beside.empty()) {
    doubt.count = {.says = "sheet " + outside.title.beside +
                           " lists whole cables, and the row may be one of them again",
                   .group = "a second list beside that of the cables",
                   .change = "read only the sheets that list the cables"};
  } else if (!count.unclear.empty()) {
    doubt.count = {.says = count.unclear};
  } else if (layout_.may_be_cables) {
    doubt.count = {.says = "the row may be a whole cable with two ends, and is counted as one",
                   .group = "number of ends not known",
                   .change = "say whether a row is a whole cable with two ends, or one end"};
  }
  if (!doubt.count && !asking_.empty()) doubt.count = unread_figure(cells);
  if (!any_plain_) return doubt;
  doubt.place = places_.told_otherwise(cells, side);
  if (doubt.place.empty() && is_place_against(outside.title, cells)) {
    doubt.place = outside.title.place;
  }
  return doubt;
}

void TitleOver::begin(const io::ScheduleFile& file) {
  above_ = file.title();
  says_ = above_;
  cables_ = false;
}

void TitleOver::begin(const io::RowBlock& block) {
  titles_ = &block.titles;
  next_ = 0;
}

void TitleOver::take_until(std::size_t line) {
  for (; next_ < titles_->size() && (*titles_)[next_].line < line; ++next_) {
    const io::TitleSays& says = (*titles_)[next_].says;
    if (cables_) says_ = above_;
    if (!says.place.empty()) says_.place = says.place;
    if (!says.away.empty()) says_.away = says.away;
    cables_ = false;
  }
}

const io::TitleSays& TitleOver::over(std::size_t line) {
  if (next_ < titles_->size()) take_until(line);
  cables_ = true;
  return says_;
}

void TitleOver::end() { take_until(std::numeric_limits<std::size_t>::max()); }

}  // namespace cutback::run
