#include "cutback/written/cores.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <utility>
#include <vector>

#include "core/written/cores_words.hpp"
#include "cutback/words.hpp"

namespace cutback::written {
namespace {

constexpr int k_most_cores = 1000;
constexpr double k_smallest_mm2 = 0.2;
constexpr double k_largest_mm2 = 1200.0;

using Words = std::span<const CellWord>;

/// Thrown within this file; the sentence goes into CoresReading::why_not.
struct Refusal {
  std::string why;
};

/// The words that tell of layers, taken out of the rest.
class Layers {
 public:
  explicit Layers(std::vector<CellWord> words) {
    for (CellWord& word : words) take(std::move(word));
    // A stroke joins words of layers, and so belongs to them where it stands at the end of figures.
    while (!figures_.empty() && figures_.back().mark == Mark::stroke) figures_.pop_back();
    while (!figures_.empty() && figures_.front().mark == Mark::stroke) {
      figures_.erase(figures_.begin());
    }
  }

  [[nodiscard]] const std::vector<CellWord>& figures() const { return figures_; }

  void put(Cores& cores) const {
    // The first of two plastics is that of the cores; one alone may be that of the sheath.
    const bool sure = plastics_ > 1 || (plastics_ == 1 && (first_ == "xlpe" || before_armour_));
    if (plastics_ > 0 && !sure) {
      throw Refusal{first_ + " alone may be the insulation or the sheath"};
    }
    cores.insulation = first_;
    cores.voltage = voltage_;
    const std::vector<std::string_view> armour = split_words(armour_);
    if (armour.size() == 2) {
      cores.armour = std::string(armour[0]);
      cores.armour_material = std::string(armour[1]);
    } else {
      cores.armour = armour_;
    }
  }

 private:
  void take(CellWord word) {
    switch (word.mark) {
      case Mark::insulation:
        ++plastics_;
        if (first_.empty() && !sheathed_) first_ = word.word;
        return;
      case Mark::sheath:
        // Low smoke compounds are sheaths; where one is the insulation too, it is not told here.
        sheathed_ = true;
        if (!first_.empty()) ++plastics_;
        return;
      case Mark::armour:
      case Mark::unarmoured: {
        if (!armour_.empty()) throw Refusal{"two kinds of armour stand in it"};
        armour_ = word.mark == Mark::unarmoured ? "none" : word.word;
        before_armour_ = plastics_ > 0;
        return;
      }
      case Mark::voltage:
        if (!voltage_.empty()) throw Refusal{"two voltages stand in it"};
        voltage_ = word.word;
        return;
      case Mark::metal:
      case Mark::filler:
        return;
      default:
        // Strokes between layers: cu/xlpe/swa/pvc.
        if (word.mark == Mark::stroke && (figures_.empty() || !is_figure(figures_.back()))) return;
        figures_.push_back(std::move(word));
    }
  }
  static bool is_figure(const CellWord& word) {
    return word.mark == Mark::number || word.mark == Mark::size_unit;
  }

  std::vector<CellWord> figures_;
  std::string first_;  ///< plastic
  std::string armour_;
  std::string voltage_;
  int plastics_ = 0;
  bool sheathed_ = false;
  bool before_armour_ = false;
};

/// Reads the figures from left to right.
class Figures {
 public:
  explicit Figures(Words words) : words_(words) {}

  Cores read() {
    if (is_size_first()) {
      size_first();
    } else {
      count_first();
    }
    if (at_ < words_.size()) refuse_rest();
    check();
    return cores_;
  }

 private:
  [[nodiscard]] bool is(Mark mark, std::size_t ahead = 0) const {
    return at_ + ahead < words_.size() && words_[at_ + ahead].mark == mark;
  }
  bool skip(Mark mark) {
    if (!is(mark)) return false;
    ++at_;
    return true;
  }
  double number(const char* what) {
    if (!is(Mark::number)) throw Refusal{std::string(what) + " is not where it should be"};
    return words_[at_++].number;
  }

  int count() {
    const double value = number("the number of cores");
    counted_ = true;
    if (value != std::floor(value)) {
      throw Refusal{"half a core: the size of the smaller one is not written"};
    }
    return static_cast<int>(std::min(value, 1e6));
  }

  [[nodiscard]] bool is_size_first() const {
    return is(Mark::number) && is(Mark::size_unit, 1) && words_.size() > 2;
  }

  /// 16mm2 4c, 16 mm2 x 4 core.
  void size_first() {
    cores_.csa_mm2 = number("the size");
    skip(Mark::size_unit);
    skip(Mark::times);
    if (!is(Mark::number)) throw Refusal{"the number of cores is not written behind the size"};
    cores_.cores = count();
    if (!take_kind()) throw Refusal{"two sizes, or a size and a number without its letter"};
    take_earth_behind();
  }

  void count_first() {
    if (is(Mark::number) && is(Mark::size_unit, 1)) {  // a size alone
      cores_.csa_mm2 = number("the size");
      skip(Mark::size_unit);
      return;
    }
    cores_.cores = count();
    const bool named = take_kind();
    if (at_ == words_.size()) {
      if (!named) throw Refusal{"a number alone may be a size or a number of cores"};
      return;
    }
    const bool earth = take_earth_behind();
    const bool times = skip(Mark::times);
    if (!named && !times && !earth)
      throw Refusal{"nothing tells the number of cores from the size"};
    if (at_ == words_.size() && earth && !times) return;
    if (times && is(Mark::number) && is(Mark::times, 1)) return pairs_by_figures();
    if (times && !named && is(Mark::number) && (is(Mark::cores, 1) || is(Mark::pairs, 1))) {
      throw Refusal{"several cables: give their number in the column quantity"};
    }
    take_size(cores_.csa_mm2);
    take_earth_size(earth);
  }

  /// The letter behind a number of cores.
  bool take_kind() {
    if (skip(Mark::green)) {
      green_ = true;
      return true;
    }
    for (const auto& [mark, each] : {std::pair(Mark::cores, 1), std::pair(Mark::pairs, 2),
                                     std::pair(Mark::triples, 3), std::pair(Mark::quads, 4)}) {
      if (!skip(mark)) continue;
      cores_.cores *= each;
      cores_.groups = each > 1;
      return true;
    }
    return false;
  }

  /// 2x2x1.5: groups, cores of each, size.
  void pairs_by_figures() {
    const int each = count();
    skip(Mark::times);
    if (each < 2 || each > 4) {
      throw Refusal{"several cables: give their number in the column quantity"};
    }
    cores_.groups = true;
    cores_.cores *= each;
    take_size(cores_.csa_mm2);
    constexpr double k_largest_pair_mm2 = 2.5;
    if (*cores_.csa_mm2 > k_largest_pair_mm2) {
      throw Refusal{"several cables, or pairs: give a number of cables in the column quantity"};
    }
  }

  void take_size(std::optional<double>& size) {
    size = number("the size");
    skip(Mark::size_unit);
  }

  /// 3c+e: an earth core before the size. @return whether there is one
  bool take_earth_behind() {
    if (is(Mark::earth)) {
      ++at_;
      cores_.earth_unknown = true;
      return true;
    }
    if (!is(Mark::plus) || !is(Mark::earth, 1)) return false;
    at_ += 2;
    cores_.earth_unknown = true;
    return true;
  }

  /// 3x25+16, 3c 25 + 1c 16, 3x25+e16.
  void take_earth_size(bool before) {
    if (!skip(Mark::plus)) return;
    const bool earth = skip(Mark::earth);
    if (at_ == words_.size() && earth) {
      cores_.earth_unknown = true;
      return;
    }
    if (before) throw Refusal{"two earth cores"};
    const double first = number("the size of the other core");
    const bool one = is(Mark::times) || is(Mark::cores) || is(Mark::green);
    if (one) {
      ++at_;
      skip(Mark::times);
      if (first != 1.0) throw Refusal{"several cores of another size"};
      take_size(cores_.earth_csa_mm2);
    } else {
      cores_.earth_csa_mm2 = first;
      skip(Mark::size_unit);
    }
    skip(Mark::earth);
  }

  [[noreturn]] void refuse_rest() const {
    const CellWord& word = words_[at_];
    if (word.mark == Mark::stroke) {
      throw Refusal{"what stands behind the stroke may be a concentric conductor, or strands"};
    }
    if (word.mark == Mark::plus) throw Refusal{"several cores of another size"};
    if (word.mark == Mark::number) throw Refusal{"one figure too many: " + word.word};
    throw Refusal{"not clear: " + word.word};
  }

  void check() {
    if (cores_.earth_unknown) ++cores_.cores;
    if (cores_.groups && (cores_.earth_csa_mm2 || cores_.earth_unknown)) {
      throw Refusal{"pairs with an earth core"};
    }
    if (green_ && cores_.earth_csa_mm2) throw Refusal{"two earth cores"};
    if (counted_ && (cores_.cores < 1 || cores_.cores > k_most_cores)) {
      throw Refusal{"no such number of cores"};
    }
    for (const std::optional<double>& size : {cores_.csa_mm2, cores_.earth_csa_mm2}) {
      if (size && (*size < k_smallest_mm2 || *size > k_largest_mm2)) {
        throw Refusal{"no such size"};
      }
    }
    if (cores_.earth_csa_mm2 && *cores_.earth_csa_mm2 > *cores_.csa_mm2) {
      throw Refusal{"the earth core is larger than the others"};
    }
    if (cores_.earth_csa_mm2 == cores_.csa_mm2 && cores_.csa_mm2) {
      ++cores_.cores;  // of the same size it is one of the cores
      cores_.earth_csa_mm2.reset();
    }
  }

  Words words_;
  std::size_t at_ = 0;
  Cores cores_;
  bool green_ = false;
  bool counted_ = false;
};

}  // namespace

CoresReading read_cores(std::string_view text, char decimal) {
  CoresReading reading;
  std::string unknown;
  const auto words = cores_words(text, decimal, unknown);
  if (!words) {
    reading.why_not = "not known here: " + unknown;
    return reading;
  }
  try {
    const Layers layers(*words);
    Cores cores = Figures(layers.figures()).read();
    layers.put(cores);
    reading.cores = std::move(cores);
  } catch (const Refusal& refusal) {
    reading.why_not = refusal.why;
  }
  return reading;
}

std::optional<Cores> read_layers(std::string_view text) {
  std::string unknown;
  const auto words = cores_words(text, '.', unknown);
  if (!words) return std::nullopt;
  try {
    const Layers layers(*words);
    if (!layers.figures().empty()) return std::nullopt;
    Cores cores;
    layers.put(cores);
    return cores;
  } catch (const Refusal&) {
    return std::nullopt;
  }
}

}  // namespace cutback::written
