#include "print/pages/strip_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "cutback/number.hpp"
#include "print/pages/sheet_blocks.hpp"

namespace cutback::print {
namespace {

using strip::Axis;

constexpr double k_outline_mm = 0.3;
constexpr double k_mark_mm = 0.3;
constexpr double k_hair_mm = 0.15;
constexpr double k_tail_mm = 16.0;    // drawn of the tails
constexpr double k_sheath_mm = 14.0;  // drawn of the whole cable
constexpr double k_sheath_least_mm = 5.0;
constexpr double k_tail_least_mm = 9.0;
constexpr double k_tick_mm = 3.5;  // of a mark below the cable

// Told apart by shade and by hatching; no colour, and no meaning that the words do not give.
constexpr Fill k_sheath{.grey = 0.62, .every_mm = 1.1, .turned_deg = 55.0};
constexpr Fill k_bedding{.grey = 0.86, .every_mm = 1.6, .turned_deg = -55.0};
constexpr Fill k_core{.grey = 1.0};
constexpr Fill k_wall{.grey = 0.9, .every_mm = 0.7, .turned_deg = 90.0};

bool is_known(const Axis& axis, bool armoured) {
  return axis.bedding_end_mm && (!armoured || (axis.armour_stop_mm && axis.exposed_mm));
}

/// What is cut away or bared along the axis [mm].
struct Lengths {
  double exposed = 0.0;
  double stop = 0.0;
  double bedding = 0.0;  ///< from the shoulder
};

Lengths lengths_of(const Axis& axis, bool armoured) {
  // Where a figure is missing the drawing shows the order of the layers alone.
  constexpr Lengths k_order{.exposed = 18.0, .stop = 14.0, .bedding = 18.0};
  if (!is_known(axis, armoured)) return k_order;
  if (!armoured) return {.exposed = 0.0, .stop = 0.0, .bedding = *axis.bedding_end_mm};
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
double bared_mm(const sheet::Sheet& sheet, const Lengths& lengths) {
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

/// Where the layers stop along the drawing, from its left edge [mm of paper], and how it is scaled.
struct StripPlaces {
  double sheath_cut = 0.0;
  double armour_tips = 0.0;  ///< the sheath cut where there is no armour
  double shoulder = 0.0;
  double bedding_end = 0.0;  ///< the sheath cut where there is no armour
  double end = 0.0;          ///< of the tails as drawn, beyond their break
  double along = 1.0;        ///< mm of paper for a mm of cable; 0: figures are missing
  double across = 1.0;
};

StripPlaces strip_places(const sheet::Sheet& sheet, double width, double most_high) {
  const bool armoured = is_armoured(sheet);
  const Axis& axis = sheet.plan->axis;
  const Lengths lengths = lengths_of(axis, armoured);
  StripPlaces at;
  double sheath = k_sheath_mm;
  double tail = k_tail_mm;
  const double bared = bared_mm(sheet, lengths);
  if (sheath + bared + tail > width) {
    sheath = k_sheath_least_mm;
    tail = k_tail_least_mm;
  }
  const double room = width - sheath - tail;
  at.along = std::min(1.0, room / std::max(1.0, bared));
  const double exposed = lengths.exposed * at.along;
  const double stop = lengths.stop * at.along;
  const double bedding = lengths.bedding * at.along;
  if (armoured) {
    at.sheath_cut = sheath;
    at.armour_tips = sheath + exposed;
    at.shoulder = at.armour_tips + stop;
    at.bedding_end = at.shoulder + bedding;
  } else {
    at.shoulder = sheath;
    at.sheath_cut = at.armour_tips = at.bedding_end = sheath + bedding;
  }
  at.end = std::max(at.bedding_end, at.shoulder + inside_mm(sheet) * at.along) + tail;
  if (!is_known(axis, armoured)) at.along = 0.0;
  at.across = std::min(1.0, most_high / diameters_of(sheet.job->cable).sheath);
  return at;
}

/// The drawing while it is put on the page. `x`, `middle` and `below` are places on the page.
class Strip {
 public:
  Strip(const Pen& pen, const sheet::Sheet& sheet, double x, double y, double width, double body,
        double most_high)
      : pen_(pen),
        sheet_(sheet),
        armoured_(is_armoured(sheet)),
        at_(strip_places(sheet, width, most_high)),
        diameters_(diameters_of(sheet.job->cable)),
        x_(x),
        y_(y),
        width_(width),
        small_{.size_mm = body * 0.82},
        line_(pen.height("x", small_, width)) {}

  double put() {
    const double high = highest();
    middle_ = y_ + line_ * 1.15 + high / 2.0;
    below_ = middle_ + high / 2.0 + 0.6;
    names();
    layers();
    gland();
    double at = dimensions(marks());
    if (at_.along != 1.0) {
      Font loud = small_;
      loud.bold = true;
      at += pen_.text(x_, at, warning(), loud, width_);
    }
    return at + pen_.text(x_, at, note(), small_, width_) - y_;
  }

 private:
  [[nodiscard]] double across(double diameter) const { return diameter * at_.across; }

  /// Of everything beside the axis [mm of paper].
  [[nodiscard]] double highest() const {
    double high = across(diameters_.sheath);
    if (thread_mm() > 0.0) high = std::max(high, across(thread_mm()) + (wall() ? 5.0 : 0.0));
    return high;
  }

  [[nodiscard]] double thread_mm() const {
    return inside_mm(sheet_) > 0.0 ? sheet_.fit->gland->entry_thread.size : 0.0;
  }

  [[nodiscard]] bool wall() const {
    return thread_mm() > 0.0 && sheet_.plan->axis.inside_face_mm &&
           sheet_.job->entry.wall_mm.value_or(0.0) > 0.0;
  }

  void bar(double from, double to, double diameter, const Fill& fill) const {
    const double high = across(diameter);
    pen_.area(x_ + from, middle_ - high / 2.0, to - from, high, fill, k_outline_mm);
  }

  /// The layer's name above the place where it shows, moved on where the one before is in the way.
  void names() const {
    struct Name {
      const char* words;
      double middle;
    };
    std::vector<Name> list{{"sheath", at_.sheath_cut / 2.0}};
    if (armoured_) {
      list.push_back({"armour", (at_.sheath_cut + at_.armour_tips) / 2.0});
      list.push_back({"bedding", (at_.armour_tips + at_.bedding_end) / 2.0});
    }
    list.push_back({"cores", (at_.bedding_end + at_.end) / 2.0});
    double free_from = 0.0;
    for (const Name& name : list) {
      const double wide = pen_.width(name.words, small_);
      const double left = std::max(free_from, name.middle - wide / 2.0);
      pen_.label(x_ + left, y_, name.words, small_);
      free_from = left + wide + small_.size_mm * 0.4;
    }
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

  void cores() const {
    const double inside = across((armoured_ ? diameters_.bedding : diameters_.sheath) * 0.82);
    constexpr int k_most_cores = 5;  // that can be told apart
    const int count = std::clamp(sheet_.job->cable.cores.value_or(3), 1, k_most_cores);
    const double core = inside / count;
    const double broken = at_.end - 6.0;
    for (int i = 0; i < count; ++i) {
      const double top = middle_ - inside / 2.0 + i * core;
      pen_.area(x_ + at_.bedding_end, top, at_.end - at_.bedding_end, core * 0.86, k_core,
                k_outline_mm * 0.8);
    }
    // Two slanted lines with white between them: here a length is left out.
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

  /// Dashed, where its lengths are known: the shoulder and the entry thread; the wall behind it.
  void gland() const {
    const double shoulder = x_ + at_.shoulder;
    const double thread = across(thread_mm());
    if (thread <= 0.0) return;
    const double along = *sheet_.fit->gland->entry_length_mm * at_.along;
    pen_.dashed_rectangle(shoulder, middle_ - thread / 2.0, along, thread, k_hair_mm * 1.4);
    if (!wall()) return;
    const double thick = std::max(0.4, *sheet_.job->entry.wall_mm * at_.along);
    const double from = shoulder + *sheet_.plan->axis.inside_face_mm * at_.along - thick;
    for (const double edge : {middle_ - thread / 2.0 - 2.5, middle_ + thread / 2.0}) {
      pen_.area(from, edge, thick, 2.5, k_wall, k_hair_mm);
    }
  }

  /// A place on the axis that is marked on the cable.
  struct Mark {
    double at;
    const char* number;
  };

  /// From left to right: a bedding may end in front of the shoulder or behind it.
  [[nodiscard]] std::vector<Mark> mark_list() const {
    std::vector<Mark> list{{at_.shoulder, "S"}};
    if (armoured_) {
      list.push_back({at_.sheath_cut, "2"});
      list.push_back({at_.armour_tips, "1"});
      list.push_back({at_.bedding_end, "3"});
    } else {
      list.push_back({at_.sheath_cut, "1"});
    }
    std::sort(list.begin(), list.end(), [](const Mark& a, const Mark& b) { return a.at < b.at; });
    return list;
  }

  [[nodiscard]] double radius() const { return line_ * 0.55; }

  /// Circles that would cover each other stand below each other. @return the place below them
  [[nodiscard]] double marks() const {
    std::vector<double> free_from;  // of each row
    const double step = 2.0 * radius() + 0.4;
    for (const Mark& mark : mark_list()) {
      std::size_t row = 0;
      while (row < free_from.size() && mark.at - radius() < free_from[row]) ++row;
      if (row == free_from.size()) free_from.push_back(0.0);
      free_from[row] = mark.at + radius() + 0.3;
      const double top = middle_ - across(diameters_.sheath) / 2.0 - 0.5;
      const double circle = below_ + k_tick_mm + static_cast<double>(row) * step;
      pen_.line(x_ + mark.at, top, x_ + mark.at, circle, k_mark_mm);
      pen_.circle(x_ + mark.at, circle + radius(), radius(), k_mark_mm * 0.8);
      Font type = small_;
      type.bold = true;
      type.align = Align::centre;
      pen_.label(x_ + mark.at, circle + radius() - line_ / 2.0, mark.number, type);
    }
    return below_ + k_tick_mm + static_cast<double>(free_from.size()) * step;
  }

  /// What lies between two neighbouring marks [mm], as far as figures are known.
  [[nodiscard]] std::string between(const Mark& left, const Mark& right) const {
    const strip::CutPlan& plan = *sheet_.plan;
    const Axis& axis = plan.axis;
    const bool exposed = left.number[0] == '2' && right.number[0] == '1';
    if (exposed && plan.marks.exposed_min_mm) {
      return plain(*plan.marks.exposed_min_mm, 1) + " to " + plain(*plan.marks.exposed_max_mm, 1);
    }
    const auto place = [&](const Mark& mark) -> std::optional<double> {
      if (mark.number[0] == 'S') return 0.0;
      if (mark.number[0] == '3' || !armoured_) return axis.bedding_end_mm;
      if (mark.number[0] == '1' && axis.armour_stop_mm) return -*axis.armour_stop_mm;
      return std::nullopt;
    };
    const auto from = place(left);
    const auto to = place(right);
    return from && to ? plain(*to - *from, 1) : "no figure";
  }

  /// The lengths from mark to mark, and below them that of the tails. @param top  where they begin
  /// @return the place below them
  [[nodiscard]] double dimensions(double top) const {
    const std::vector<Mark> list = mark_list();
    const double chain = top + 1.0;
    std::vector<double> free_from;  // of each row of words
    for (std::size_t i = 1; i < list.size(); ++i) {
      const std::string words = between(list[i - 1], list[i]) + " mm";
      const double wide = pen_.width(words, small_);
      const double left =
          std::clamp((list[i - 1].at + list[i].at - wide) / 2.0, 0.0, std::max(0.0, width_ - wide));
      std::size_t row = 0;
      while (row < free_from.size() && left < free_from[row]) ++row;
      if (row == free_from.size()) free_from.push_back(0.0);
      free_from[row] = left + wide + small_.size_mm * 0.4;
      pen_.label(x_ + left, chain + static_cast<double>(row) * line_ + 0.4, words, small_);
      arrows(list[i - 1].at, list[i].at, chain);
    }
    // The tails begin where the bedding ends, which may be in front of the shoulder: a line of its
    // own.
    const double below = chain + static_cast<double>(free_from.size()) * line_ + 1.4;
    const std::string words = "tails " + tails();
    const double wide = pen_.width(words, small_);
    arrows(at_.bedding_end, at_.end, below);
    pen_.label(x_ + std::clamp((at_.bedding_end + at_.end - wide) / 2.0, 0.0,
                               std::max(0.0, width_ - wide)),
               below + 0.4, words, small_);
    return below + line_ + 0.8;
  }

  void arrows(double from, double to, double y) const {
    constexpr double k_head = 0.9;
    pen_.line(x_ + from, y, x_ + to, y, k_hair_mm);
    if (to - from < 2.0 * k_head) return;
    pen_.area({{x_ + from, y}, {x_ + from + k_head, y - 0.35}, {x_ + from + k_head, y + 0.35}},
              Fill{.grey = 0.0}, 0.0);
    pen_.area({{x_ + to, y}, {x_ + to - k_head, y - 0.35}, {x_ + to - k_head, y + 0.35}},
              Fill{.grey = 0.0}, 0.0);
  }

  [[nodiscard]] std::string tails() const {
    double least = 0.0;
    double most = 0.0;
    for (const strip::Tail& tail : sheet_.plan->tails) {
      if (!tail.length_mm) return "no figure";
      least = most == 0.0 ? *tail.length_mm : std::min(least, *tail.length_mm);
      most = std::max(most, *tail.length_mm);
    }
    if (most == 0.0) return "no figure";
    return (least == most ? "" : plain(least, 1) + " to ") + plain(most, 1) + " mm";
  }

  [[nodiscard]] std::string warning() const {
    if (at_.along == 0.0) return "NOT TO SCALE: figures of the gland are missing.";
    return "NOT TRUE SIZE, " + plain(std::floor(at_.along * 100.0), 0) +
           " % of it: the paper is too narrow. Do not lay the cable on it; print a larger card, or "
           "across the paper (--landscape).";
  }

  [[nodiscard]] std::string note() const {
    std::string text;
    if (at_.along == 1.0) text = "True size along the cable: lay it on the paper. ";
    if (at_.across != 1.0) text += "Drawn narrower than it is. ";
    text += "S: the gland's shoulder";
    if (thread_mm() > 0.0) text += ", dashed: its thread";
    if (wall()) text += ", hatched beside it: the wall";
    return text + ". Tails are broken at the slanted lines.";
  }

  const Pen& pen_;
  const sheet::Sheet& sheet_;
  bool armoured_;
  StripPlaces at_;
  Diameters diameters_;
  double x_;
  double y_;
  double width_;
  Font small_;
  double line_;
  double middle_ = 0.0;
  double below_ = 0.0;
};

}  // namespace

double strip_true_size_mm(const sheet::Sheet& sheet) {
  return k_sheath_least_mm + bared_mm(sheet, lengths_of(sheet.plan->axis, is_armoured(sheet))) +
         k_tail_least_mm;
}

double put_strip_drawing(const Pen& pen, const sheet::Sheet& sheet, double x, double y,
                         double width, double body_mm, double most_high) {
  return Strip(pen, sheet, x, y, width, body_mm, most_high).put();
}

}  // namespace cutback::print
