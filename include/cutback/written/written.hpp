#pragma once
// What people of the trade write, and what it is taken for: SWA, Ex d, 20mm, 19/32", £6.20.
//
// One table (src/core/written/words.cpp) holds every such word. What it is taken for is said
// wherever it is taken; a word that can be read in two ways is refused with both; and none is read
// so that less would be asked of the end.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/gland/columns.hpp"
#include "cutback/job/input.hpp"

namespace cutback::written {

/// A word and what it stands for. In `written`, `#` is a figure and `*` one of the words that the
/// field itself knows; the same sign in `taken` is that figure or word again.
struct Word {
  std::string_view key;      ///< of the field
  std::string_view written;  ///< in small letters, without spaces, points and hyphens
  std::string_view taken;
  std::string_view also = {};  ///< another field that it tells, as key=value
};

/// A word that can be read in two ways.
struct Doubt {
  std::string_view key;
  std::string_view written;  ///< as in Word
  std::string_view one;
  std::string_view other;
};

/// A word that is plain, and that no table has a row for.
struct Unheld {
  std::string_view key;
  std::string_view written;  ///< as in Word, without a sign
  std::string_view what;     ///< "insulated with EPR"
};

/// A marking as it is stamped, `Ex db eb IIC T6 Gb`: its parts, each empty where it does not stand
/// there. What is in front of the letters Ex and the temperature class are passed over.
struct Marking {
  std::vector<std::string> protection;
  std::vector<std::string> level;
  std::string gas_group;
  std::string dust_group;
  bool mines = false;       ///< group I: for no place of group II or III by itself
  bool conditions = false;  ///< X: special conditions of use stand on the certificate
};
/// @return nothing where a word of it is none of a marking, or there are two groups for one hazard
[[nodiscard]] std::optional<Marking> read_marking(std::string_view text);

/// A unit behind a figure or in a heading: value = figure x factor + shift, in the field's own
/// unit.
struct Unit {
  std::string_view unit;     ///< the field's own; empty where no field has figures of it
  std::string_view written;  ///< as in Word
  double factor = 1.0;
  double shift = 0.0;
  std::string_view name = {};  ///< what it is where it is not the field's own: `in`, `km`
  bool bare = false;           ///< known at the end of a heading without brackets: "Length m"
};

[[nodiscard]] std::span<const Word> words();
[[nodiscard]] std::span<const Doubt> doubts();
[[nodiscard]] std::span<const Unheld> unheld();
[[nodiscard]] std::span<const Unit> units();

/// The unit that a text is, by its one name: mm2 for `sq.mm`, in for `inches`; empty where it is
/// none. @param bare  only where it is known without brackets
[[nodiscard]] std::string_view unit_named(std::string_view text, bool bare = false);

/// What a value is asked for: a field of a job or a column of a gland list.
struct Asked {
  enum class Form { number, one_word, several_words, thread, adaptors, ip, readings, text };
  std::string_view key;
  Form form = Form::text;
  std::string_view unit;                ///< of a number; of ip, what stands between two codes
  std::vector<std::string_view> words;  ///< that it knows itself
};
[[nodiscard]] Asked asked_of(const job::Field& field);
[[nodiscard]] Asked asked_of(const gland::Column& column);

/// A value in the words of its field.
struct Taken {
  std::string text;
  std::string says;            ///< "\"SWA\" for wire"; empty where the text stands as it was
  std::string_view also = {};  ///< as in Word
};

/// The value in the words of its field where the table knows how it is written, and unchanged where
/// it does not: whoever sets the field says what is wrong with it then.
/// @param where  option or cell, for the message
/// @throws InputError for a word that can be read in two ways
[[nodiscard]] Taken take(const Asked& asked, std::string_view text, std::string_view where);

/// The same of what is typed for one field: of a whole marking, or of a zone with its group, the
/// field takes its own part. (A cell of a schedule that says several things is read as a whole.)
/// @throws InputError as take, and for a word that no table holds
[[nodiscard]] Taken take_typed(const Asked& asked, std::string_view text, std::string_view where);

/// A word that tells a second field.
struct Told {
  std::string_view also;   ///< as in Word
  std::string_view where;  ///< option or key where the word stood
  std::string given;       ///< the word
};

/// Puts the second fields in where they are not given.
/// @return a fault for each that is given otherwise
[[nodiscard]] std::vector<Fault> put_told(std::span<const Told> told, job::JobInput& job);

/// A whole marking off the plate of an enclosure, compared with the place: its group, and its level
/// or category of equipment. An enclosure that is marked for less must not stand there (IEC
/// 60079-14 5.3 and 5.4).
/// @param where  option or key where the marking stood
/// @return nothing where the text is no marking, or the place asks for nothing that it says
[[nodiscard]] std::vector<Fault> faults_of_plate(std::string_view plate, std::string_view where,
                                                 const job::JobInput& in);

/// Area [mm2] of a wire of an American gauge: 0.005 in x 92^((36 - n) / 39) across, n = 0 for 1/0
/// down to -3 for 4/0 (ASTM B258).
[[nodiscard]] double awg_area_mm2(int gauge);

}  // namespace cutback::written
