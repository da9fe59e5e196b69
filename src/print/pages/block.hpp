#pragma once
// What a page is made of, from top to bottom: each block takes the width that it is given and says
// how high it is. Lengths in mm.

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

#include "print/pages/pen.hpp"

namespace cutback::print {

struct Heading {
  std::string words;
};

/// A paragraph, behind a label in a column of its own where there is one.
struct Paragraph {
  std::string words;
  std::string label;
  bool bold = false;
  double size = 1.0;        ///< of the body
  int most_lines = 0;       ///< 0: as many as it needs
  double label_size = 4.2;  ///< of the label's column, in sizes of the body
};

/// A line of a list: behind a box to tick, a number, or a dash.
struct Item {
  std::string words;
  std::string number;  ///< empty: a dash
  bool tick = false;
  double size = 1.0;
};

/// Rows of cells. Columns take their shares of the width.
struct Table {
  struct Column {
    double share = 1.0;
    Align align = Align::left;
  };
  std::vector<Column> columns;
  std::vector<std::string> head;  ///< may be empty
  std::vector<std::vector<std::string>> rows;
  std::size_t bold_column = k_no_column;  ///< the figures that are looked for
  std::size_t indent_from = k_no_column;  ///< from this column on a gap is left
  bool goes_on = false;  ///< of a table that began before: its head is printed again where a column
                         ///< of the page begins with it
  static constexpr std::size_t k_no_column = static_cast<std::size_t>(-1);
};

/// Lines to write on, each behind its words.
struct WriteIn {
  struct Field {
    std::string words;
    std::string unit;
  };
  std::vector<std::vector<Field>> rows;
};

/// What is looked at, with boxes for good and for not applicable, and room for a remark.
struct Inspected {
  std::string words;
  bool head = false;  ///< the names of the columns
};

using Block = std::variant<Heading, Paragraph, Item, Table, WriteIn, Inspected>;

/// Draws the block with its upper left corner at x, y, or only measures it where the pen has no
/// page. @param body_mm  size of the body's type
/// @return its height with the space below it
double put(const Pen& pen, const Block& block, double x, double y, double width, double body_mm);

/// Above a column that begins in the middle of a section: its heading once more, or the names of
/// what stands in columns, in one line.
/// @param block  that the column begins with
/// @return its height
double put_again(const Pen& pen, const Heading& heading, const Block& block, double x, double y,
                 double width, double body_mm);

/// Whether a page may end behind this block: not behind a heading, of whatever kind.
[[nodiscard]] bool may_end_page(const Block& block);

}  // namespace cutback::print
