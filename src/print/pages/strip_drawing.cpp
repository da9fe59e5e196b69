#include "print/pages/strip_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "cutback/number.hpp"
#include "print/pages/card_text.hpp"

namespace cutback::print {
namespace {

using strip::Axis;

constexpr double k_outline_mm = 0.3;
constexpr double k_mark_mm = 0.35;
constexpr double k_hair_mm = 0.15;
constexpr double k_frame_mm = 0.5;
constexpr double k_end_mm = 27.0;  // the word END and its arrow
constexpr double k_least_cable_mm = 5.5;
constexpr double k_most_cable_mm = 40.0;

// Drawn of the whole cable and of the tails: as much as there is room for, and the least.
constexpr double k_sheath_mm = 52.0;
constexpr double k_sheath_least_mm = 8.0;
constexpr double k_behind_mm = 9.0;  // of the sheath cut: back nut and outer seal
constexpr double k_tail_mm = 24.0;
constexpr double k_tail_least_mm = 10.0;

// Told apart by shade and by hatching; no colour, and no meaning that the words do not give.
constexpr Fill k_sheath{.grey = 0.62, .every_mm = 1.1, .turned_deg = 55.0};
constexpr Fill k_bedding{.grey = 0.86, .every_mm = 1.6, .turned_deg = -55.0};
constexpr Fill k_core{.grey = 1.0};
constexpr Fill k_wall{.grey = 0.9, .every_mm = 0.7, .turned_deg = 90.0};

bool is_armoured(const sheet::Sheet& sheet) {
  return sheet.job->cable.armour != cable::ArmourKind::none;
}

bool is_known(const Axis& axis, bool armoured) {
  return axis.bedding_end_mm && (!armoured || (axis.armour_stop_mm && axis.exposed_mm));
}

/// What is cut away or bared along the axis [mm].
struct Lengths {
  double exposed = 0.0;
  double stop = 0.0;
  double bedding = 0.0;  ///< from the shoulder
};

Lengths lengths_of(const sheet::Sheet& sheet) {
  const Axis& axis = sheet.plan->axis;
  const bool armoured = is_armoured(sheet);
  // Where a figure is missing the drawing shows the order of the layers alone.
  constexpr Lengths k_order{.exposed = 18.0, .stop = 14.0, .bedding = 18.0};
  if (!is_known(axis, armoured)) return armoured ? k_order : Lengths{.bedding = k_order.bedding};
  if (!armoured) return {.bedding = *axis.bedding_end_mm};
  return {*axis.exposed_mm, *axis.armour_stop_mm, *axis.bedding_end_mm};
}

/// How far the entry thread and the wall reach beyond the shoulder, where they are drawn. Through
/// an adaptor their place is not known.
double inside_mm(const sheet::Sheet& sheet) {
  const gland::Gland& gland = *sheet.fit->gland;
  const bool drawn = is_known(sheet.plan->axis, is_armoured(sheet)) && !sheet.fit->adaptor &&
                     gland.entry_thread.kind == entry::ThreadKind::metric && gland.entry_length_mm;
  return drawn ? std::max(*gland.entry_length_mm, sheet.plan->axis.inside_face_mm.value_or(0.0))
               : 0.0;
}

/// From the sheath cut, or from the shoulder of an unarmoured cable, to where the tails are alone.
double bared_mm(const sheet::Sheet& sheet) {
  const Lengths lengths = lengths_of(sheet);
  return lengths.exposed + lengths.stop + std::max(inside_mm(sheet), lengths.bedding);
}

/// Diameters as drawn at true size [mm].
struct Diameters {
  double sheath;
  double armour;
  double bedding;
};

Diameters diameters_of(const cable::Cable& cable) {
  const double sheath = cable.sheath_od ? cable.sheath_od->value_mm : 20.0;
  if (cable.armour == cable::ArmourKind::none) return {sheath, sheath, sheath * 0.8};
  const double bedding = cable.bedding ? cable.bedding->value_mm : sheath * 0.7;
  const double wire = cable.wire ? cable.wire->value_mm : (sheath - bedding) / 4.0;
  return {sheath, std::min(sheath, bedding + 2.0 * wire), bedding};
}

/// Where the layers stop along the drawing, from its left edge [mm of paper].
struct Places {
  double sheath_cut = 0.0;
  double armour_tips = 0.0;  ///< the sheath cut where there is no armour
  double shoulder = 0.0;
  double bedding_end = 0.0;  ///< the sheath cut where there is no armour
  double end = 0.0;          ///< of the tails as drawn, beyond their break
  double along = 1.0;        ///< mm of paper for a mm of cable
  bool true_size = false;
};

Places places_of(const sheet::Sheet& sheet, double width) {
  const Lengths lengths = lengths_of(sheet);
  const double bared = bared_mm(sheet);
  Places at;
  at.true_size = is_true_size(sheet, width);
  const double room = width - k_end_mm;
  // What is left beside the bared part goes to the sheath, and then to the tails.
  const double spare = room - bared - k_sheath_least_mm - k_tail_least_mm;
  const double sheath = k_sheath_least_mm + std::clamp(spare, 0.0, k_sheath_mm - k_sheath_least_mm);
  const double tail = k_tail_least_mm + std::clamp(spare - (k_sheath_mm - k_sheath_least_mm), 0.0,
                                                   k_tail_mm - k_tail_least_mm);
  at.along = std::min(1.0, (room - sheath - tail) / std::max(1.0, bared));
  const double bedding = lengths.bedding * at.along;
  at.sheath_cut = sheath;
  at.armour_tips = sheath + lengths.exposed * at.along;
  at.shoulder = at.armour_tips + lengths.stop * at.along;
  at.bedding_end = at.shoulder + bedding;
  if (!is_armoured(sheet)) {
    at.shoulder = sheath;
    at.sheath_cut = at.armour_tips = at.bedding_end;
  }
  at.end = std::max(at.bedding_end, at.shoulder + inside_mm(sheet) * at.along) + tail;
  return at;
}

/// The drawing while it is put on the page. `x_`, `top_`, `middle_` and `edge_` are places on it.
class Strip {
 public:
  Strip(const Pen& pen, const sheet::Sheet& sheet, double x, double y, const StripLook& look)
      : pen_(pen),
        sheet_(sheet),
        look_(look),
        armoured_(is_armoured(sheet)),
        at_(places_of(sheet, look.width)),
        diameters_(diameters_of(sheet.job->cable)),
        marks_(paper_marks(sheet)),
        x_(x),
        top_(y),
        edge_(y + look.height),
        small_{.size_mm = look.small_mm},
        figure_{.size_mm = look.figure_mm, .bold = true},
        line_(pen.height("x", small_, look.width)),
        row_(pen.height("x", figure_, look.width) + 0.6) {}

  [[nodiscard]] StripHeights heights() const {
    const double bare = look_.margin + below(place_labels());
    const double cable = std::clamp(highest(), k_least_cable_mm, k_most_cable_mm);
    return {bare + above(false) + k_least_cable_mm, bare + above(true) + cable};
  }

  void put() {
    if (!pen_.draws()) return;
    const std::vector<Label> labels = place_labels();
    bottom_ = edge_ - look_.margin;
    const double to = bottom_ - below(labels);
    named_ = to - top_ - above(true) >= k_least_cable_mm;
    const double from = top_ + above(named_);
    middle_ = (from + to) / 2.0;
    across_ = std::min({1.0, (to - from) / highest(), k_most_cable_mm / highest()});
    if (named_) put_names(top_ + 0.8);
    layers();
    gland();
    if (at_.true_size) {
      pen_.rectangle(x_, top_, look_.width, bottom_ - top_, k_frame_mm);
      scale();
    }
    ticks(labels);
    put_use(labels);
    put_end();
    if (!at_.true_size) put_sketch();
  }

 private:
  struct Label {
    const MarkWords* mark;
    double at;  ///< of the mark
    std::string words;
    double left;  ///< of the words, without the circle
    double wide;
    std::size_t row = 0;  ///< from below
  };

  /// Above the cable, and below it down to the margin.
  /// @param named  the layers have their names there, which there is not always room for
  [[nodiscard]] double above(bool named) const { return named ? 0.8 + line_ + 1.2 : 1.6; }
  [[nodiscard]] double below(const std::vector<Label>& labels) const {
    std::size_t rows = 1;
    for (const Label& label : labels) rows = std::max(rows, label.row + 1);
    return foot() + static_cast<double>(rows) * row_ + 0.6;
  }

  [[nodiscard]] double across(double diameter) const { return diameter * across_; }
  /// Below the figures: the rule.
  [[nodiscard]] double foot() const { return at_.true_size ? 2.3 : 0.6; }
  [[nodiscard]] double radius() const { return look_.figure_mm * 0.55; }

  /// Of everything beside the axis, at true size [mm].
  [[nodiscard]] double highest() const {
    return std::max(diameters_.sheath, body_mm()) + wall_mm();
  }

  [[nodiscard]] double thread_mm() const {
    return inside_mm(sheet_) > 0.0 ? sheet_.fit->gland->entry_thread.size : 0.0;
  }

  /// The gland's body across the axis: its flats where they are known.
  [[nodiscard]] double body_mm() const {
    return std::max(sheet_.fit->gland->flats_mm.value_or(0.0),
                    std::max(thread_mm() + 4.0, diameters_.sheath + 4.0));
  }

  [[nodiscard]] bool wall() const {
    return thread_mm() > 0.0 && sheet_.plan->axis.inside_face_mm &&
           sheet_.job->entry.wall_mm.value_or(0.0) > 0.0;
  }
  [[nodiscard]] double wall_mm() const { return wall() ? 4.0 : 0.0; }

  void bar(double from, double to, double diameter, const Fill& fill) const {
    const double high = across(diameter);
    pen_.area(x_ + from, middle_ - high / 2.0, to - from, high, fill, k_outline_mm);
  }

  /// The layer's name above the place where it shows, moved on where the one before is in the way.
  void put_names(double y) {
    struct Name {
      std::string words;
      double middle;
    };
    std::vector<Name> list{{"sheath", std::min(at_.sheath_cut, at_.shoulder) / 2.0}};
    if (armoured_) {
      list.push_back({"armour", (at_.sheath_cut + at_.armour_tips) / 2.0});
      list.push_back({"bedding", (at_.armour_tips + at_.bedding_end) / 2.0});
    }
    const auto cores = sheet_.job->cable.cores;
    list.push_back({"S: shoulder", at_.shoulder});
    const double beyond = std::max(at_.bedding_end, at_.shoulder + inside_mm(sheet_) * at_.along);
    list.push_back({cores ? std::to_string(*cores) + (*cores == 1 ? " core" : " cores") : "cores",
                    (beyond + at_.end) / 2.0});
    // Where the bedding ends behind the shoulder the two change places.
    std::stable_sort(list.begin(), list.end(),
                     [](const Name& a, const Name& b) { return a.middle < b.middle; });
    double free_from = 1.0;
    for (const Name& name : list) {
      const double wide = pen_.width(name.words, small_);
      const double left = std::max(free_from, name.middle - wide / 2.0);
      pen_.label(x_ + left, y, name.words, small_);
      free_from = left + wide + small_.size_mm * 0.5;
    }
    names_end_ = free_from;
  }

  /// How the drawing is used: where it has room beside the figures, else beside the names, else on
  /// a line of its own above them.
  [[nodiscard]] std::string use() const {
    return at_.true_size
               ? size_words() + ": lay the cable " + look_.edge + ", its mark 1 on tick 1."
               : std::string("Not to scale: do not lay the cable on it.");
  }
  /// Lengths are true; where there is no room for them, diameters are not.
  [[nodiscard]] std::string size_words() const {
    return across_ > 0.999 ? "TRUE SIZE" : "TRUE LENGTH";
  }
  void put_use(const std::vector<Label>& labels) const {
    Font loud = small_;
    loud.bold = true;
    loud.align = Align::right;
    double taken = 0.0;
    for (const Label& label : labels) {
      if (label.row <= 1) taken = std::max(taken, right_of(label));
    }
    const double room = look_.width - taken - 4.0;
    constexpr double k_least_mm = 15.0;
    const std::string brief = at_.true_size ? size_words() : "NOT TO SCALE";
    const std::string middling = at_.true_size ? brief + ": mark 1 on tick 1" : brief;
    for (const std::string& words : {use(), middling, brief}) {
      if (room > k_least_mm && pen_.height(words, loud, room) <= 2.2 * line_) {
        const double high = pen_.height(words, loud, room);
        pen_.text(x_ + taken + 3.0, bottom_ - foot() - 0.4 - high, words, loud, room);
        return;
      }
      if (named_ && names_end_ + pen_.width(words, loud) < look_.width - 1.0) {
        pen_.label(x_ + look_.width - 1.0, top_ + 0.8, words, loud);
        return;
      }
    }
    if (!named_) return;
    // Nowhere else: on the line below the names, before the word END.
    loud.align = Align::left;
    pen_.label(x_ + 1.0, top_ + 0.8 + line_, brief, loud);
  }

  void layers() const {
    cores();
    if (armoured_) {
      bar(at_.armour_tips, at_.bedding_end, diameters_.bedding, k_bedding);
      // Lines along the cable, a wire apart.
      const double wire = (diameters_.armour - diameters_.bedding) / 2.0;
      const Fill wires{.grey = 0.97, .every_mm = std::max(0.6, across(wire))};
      bar(at_.sheath_cut, at_.armour_tips, diameters_.armour, wires);
    }
    bar(0.0, at_.sheath_cut, diameters_.sheath, k_sheath);
    // The cable goes on to the left.
    const double high = across(diameters_.sheath) / 2.0;
    pen_.line(x_, middle_ - high, x_, middle_ + high, k_outline_mm * 2.0, 1.0);
  }

  /// As many as there are; where they can no longer be told apart, a bundle.
  void cores() const {
    const double inside = across((armoured_ ? diameters_.bedding : diameters_.sheath) * 0.82);
    const int count = std::max(1, sheet_.job->cable.cores.value_or(3));
    const double core = inside / count;
    constexpr double k_told_apart_mm = 1.0;
    const double from = x_ + at_.bedding_end;
    const double long_mm = at_.end - at_.bedding_end;
    if (core >= k_told_apart_mm || count <= 3) {
      for (int i = 0; i < count; ++i) {
        pen_.area(from, middle_ - inside / 2.0 + i * core, long_mm, core * 0.86, k_core,
                  k_outline_mm * 0.8);
      }
    } else {
      pen_.area(from, middle_ - inside / 2.0, long_mm, inside, {.grey = 1.0, .every_mm = 0.8},
                k_outline_mm * 0.8);
    }
    // Two slanted lines with white between them: here a length is left out.
    const double broken = at_.end - 6.0;
    const double half = inside / 2.0 + 1.0;
    const double lean = half * 0.35;
    const double gap = 1.2;
    pen_.area({{x_ + broken - lean, middle_ + half},
               {x_ + broken + lean, middle_ - half},
               {x_ + broken + lean + gap, middle_ - half},
               {x_ + broken - lean + gap, middle_ + half}},
              Fill{.grey = 1.0}, 0.0);
    for (const double side : {0.0, gap}) {
      pen_.line(x_ + broken - lean + side, middle_ + half, x_ + broken + lean + side,
                middle_ - half, k_outline_mm);
    }
  }

  /// The gland over its seat, dashed: nobody states its outline, so that only the shoulder and the
  /// entry thread have their places.
  void gland() const {
    const double shoulder = x_ + at_.shoulder;
    const double seat = std::min(at_.sheath_cut, at_.shoulder);
    const double rear = x_ + std::max(1.0, seat - k_behind_mm);
    const double body = across(body_mm());
    pen_.dashed_rectangle(rear, middle_ - body / 2.0, shoulder - rear, body, k_hair_mm * 1.6);
    pen_.line(shoulder, middle_ - body / 2.0, shoulder, middle_ + body / 2.0, k_hair_mm * 2.0);
    // Where the names have a line its name stands there.
    if (named_) {
      pen_.line(shoulder, top_ + 0.8 + line_, shoulder, middle_ - body / 2.0, k_hair_mm);
    } else {
      Font letter = small_;
      letter.align = Align::centre;
      letter.bold = true;
      pen_.area(shoulder - 1.3, middle_ - line_ / 2.0, 2.6, line_, Fill{}, 0.0);
      pen_.label(shoulder, middle_ - line_ / 2.0, "S", letter);
    }
    const double thread = across(thread_mm());
    if (thread <= 0.0) return;
    const double along = *sheet_.fit->gland->entry_length_mm * at_.along;
    pen_.dashed_rectangle(shoulder, middle_ - thread / 2.0, along, thread, k_hair_mm * 1.6);
    if (!wall()) return;
    const double thick = std::max(0.4, *sheet_.job->entry.wall_mm * at_.along);
    const double from = shoulder + *sheet_.plan->axis.inside_face_mm * at_.along - thick;
    const double high = across(2.0);
    for (const double side : {middle_ - thread / 2.0 - high, middle_ + thread / 2.0}) {
      pen_.area(from, side, thick, high, k_wall, k_hair_mm);
    }
  }

  [[nodiscard]] double place_of(const MarkWords& mark) const {
    if (!armoured_) return mark.number == '1' ? at_.sheath_cut : at_.shoulder;
    switch (mark.number) {
      case '1':
        return at_.armour_tips;
      case '2':
        return at_.sheath_cut;
      case '3':
        return at_.bedding_end;
      default:
        return at_.shoulder;
    }
  }

  /// The marks that are made on the cable, from left to right, each with its figure beside it: the
  /// first one's to the left where there is room, in rows above each other where they would touch.
  [[nodiscard]] std::vector<Label> place_labels() const {
    std::vector<Label> list;
    for (const MarkWords& mark : marks_) {
      if (!mark.is_cut && mark.layer == "check") continue;
      list.push_back({.mark = &mark,
                      .at = place_of(mark),
                      .words = mark.before.empty() ? mark.brief() : "",
                      .left = 0.0,
                      .wide = 0.0});
    }
    std::sort(list.begin(), list.end(), [](const Label& a, const Label& b) { return a.at < b.at; });
    const double gap = radius() + 0.8;
    if (!list.empty() && !list.back().words.empty() && list.back().mark->after == "from the end") {
      // Where beside it there is room left for how the drawing is used.
      constexpr double k_use_mm = 48.0;
      const std::string longer = list.back().words + " mm from the end";
      const double right = list.back().at + gap + pen_.width(longer, figure_);
      if (right + k_use_mm < look_.width) list.back().words = longer;
    }
    for (Label& label : list) {
      label.wide = pen_.width(label.words, figure_);
      const bool room_right = label.at + gap + label.wide < look_.width - 0.5;
      const bool room_left =
          (&label == &list.front() || !room_right) && label.at - gap - label.wide > 0.5;
      label.left = room_left ? label.at - gap - label.wide : label.at + gap;
      label.left = std::min(label.left, look_.width - label.wide - 0.5);
    }
    // From the lowest row up: away from the other labels, and from the lines of the other marks.
    for (std::size_t i = 0; i < list.size(); ++i) {
      constexpr std::size_t k_most_rows = 3;
      const auto is_free = [&](std::size_t row) {
        for (std::size_t j = 0; j < list.size(); ++j) {
          if (j == i) continue;
          const Label& other = list[j];
          // Below its row a line runs to the edge.
          if (row < k_most_rows - 1 && touches(list[i], other.at - 0.5, other.at + 0.5)) {
            return false;
          }
          if (j < i && other.row == row && touches(list[i], left_of(other), right_of(other))) {
            return false;
          }
        }
        return true;
      };
      while (list[i].row + 1 < k_most_rows && !is_free(list[i].row)) ++list[i].row;
    }
    // Rows that nobody uses are taken out.
    for (std::size_t row = 2; row-- > 0;) {
      const bool used = std::any_of(list.begin(), list.end(),
                                    [&](const Label& label) { return label.row == row; });
      if (used) continue;
      for (Label& label : list) label.row -= label.row > row ? 1 : 0;
    }
    return list;
  }

  [[nodiscard]] double left_of(const Label& label) const {
    return std::min(label.left, label.at - radius());
  }
  [[nodiscard]] double right_of(const Label& label) const {
    return std::max(label.left + label.wide, label.at + radius());
  }
  [[nodiscard]] bool touches(const Label& label, double left, double right) const {
    constexpr double k_apart_mm = 1.0;
    return left_of(label) < right + k_apart_mm && left - k_apart_mm < right_of(label);
  }

  void ticks(const std::vector<Label>& labels) const {
    const double above = middle_ - across(diameters_.sheath) / 2.0 - 0.8;
    for (const Label& label : labels) {
      pen_.line(x_ + label.at, above, x_ + label.at, at_.true_size ? edge_ : bottom_ - 1.0,
                k_mark_mm);
    }
    for (const Label& label : labels) {
      const double y = bottom_ - foot() - static_cast<double>(label.row + 1) * row_;
      const double middle = y + row_ / 2.0;
      if (!label.words.empty()) {
        pen_.area(x_ + label.left - 0.3, y, label.wide + 0.6, row_, Fill{}, 0.0);
        pen_.label(x_ + label.left, y + 0.3, label.words, figure_);
      }
      pen_.disc(x_ + label.at, middle, radius());
      Font number{.size_mm = look_.figure_mm * 0.82, .bold = true, .align = Align::centre};
      number.grey = 1.0;
      pen_.label(x_ + label.at, middle - pen_.height("1", number, 20.0) / 2.0,
                 std::string(1, label.mark->number), number);
    }
  }

  /// A rule along the lower side of the frame, every tenth line longer, from mark 1 both ways.
  void scale() const {
    const double zero = place_of(*std::find_if(
        marks_.begin(), marks_.end(), [](const auto& mark) { return mark.number == '1'; }));
    constexpr double k_thick_mm = 0.1;
    for (const auto& [every, high] : {std::pair{1.0, 1.2}, std::pair{10.0, 2.0}}) {
      const double first = zero - std::floor(zero / every) * every;
      pen_.stripes(x_ + first - k_thick_mm / 2.0, bottom_ - high, x_ + look_.width, high,
                   k_thick_mm, every);
    }
  }

  /// Which way the cable's end lies.
  void put_end() const {
    Font word{.size_mm = look_.figure_mm, .bold = true};
    const double from = x_ + std::max(at_.end + 2.0, look_.width - k_end_mm + 1.0);
    const double base = middle_ + look_.figure_mm * 0.36;
    const double wide = pen_.on_line(from, base, "END", word);
    const double start = from + wide + 1.5;
    const double tip = x_ + look_.width - 2.0;
    if (tip - start < 4.0) return;
    pen_.line(start, middle_, tip, middle_, 0.7);
    pen_.area({{tip + 0.6, middle_}, {tip - 2.4, middle_ - 1.5}, {tip - 2.4, middle_ + 1.5}},
              Fill{.grey = 0.0}, 0.0);
  }

  /// Across the sheath that goes on, where no mark is; it covers none of the figures below.
  void put_sketch() const {
    Font word{.size_mm = look_.figure_mm * 1.9, .bold = true, .align = Align::centre};
    const double room = std::max(std::min(at_.sheath_cut, at_.shoulder) - k_behind_mm - 2.0, 1.0);
    constexpr double k_pad_mm = 1.5;
    const double wide = pen_.width("SKETCH", word) + 2.0 * k_pad_mm;
    const double high = pen_.height("SKETCH", word, 200.0);
    const double most = across(std::max(body_mm(), highest()));
    word.size_mm *= std::min({1.0, room / wide, most / high});
    word.size_mm = std::max(word.size_mm, look_.figure_mm);
    const double half_wide = pen_.width("SKETCH", word) / 2.0 + k_pad_mm;
    const double half_high = pen_.height("SKETCH", word, 200.0) / 2.0;
    const double at = x_ + std::max(half_wide + 1.0, 1.0 + room / 2.0);
    pen_.area(at - half_wide, middle_ - half_high, 2.0 * half_wide, 2.0 * half_high, Fill{},
              k_outline_mm);
    pen_.label(at, middle_ - half_high, "SKETCH", word);
  }

  const Pen& pen_;
  const sheet::Sheet& sheet_;
  StripLook look_;
  bool armoured_;
  Places at_;
  Diameters diameters_;
  std::vector<MarkWords> marks_;
  double x_;
  double top_;
  double edge_;
  Font small_;
  Font figure_;
  double line_;
  double row_;
  double bottom_ = 0.0;
  double middle_ = 0.0;
  double across_ = 1.0;
  double names_end_ = 0.0;
  bool named_ = true;
};

}  // namespace

bool is_true_size(const sheet::Sheet& sheet, double width) {
  return is_known(sheet.plan->axis, is_armoured(sheet)) &&
         k_sheath_least_mm + bared_mm(sheet) + k_tail_least_mm + k_end_mm <= width;
}

StripHeights strip_heights(const Pen& pen, const sheet::Sheet& sheet, const StripLook& look) {
  return Strip(pen, sheet, 0.0, 0.0, look).heights();
}

void put_strip_drawing(const Pen& pen, const sheet::Sheet& sheet, double x, double y,
                       const StripLook& look) {
  Strip(pen, sheet, x, y, look).put();
}

}  // namespace cutback::print
