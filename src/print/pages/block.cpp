#include "print/pages/block.hpp"

#include <algorithm>
#include <array>

namespace cutback::print {
namespace {

constexpr double k_hair_mm = 0.15;
constexpr double k_box_mm = 0.25;

/// All spaces grow with the body.
struct Setter {
  const Pen& pen;
  double x;
  double y;
  double width;
  double body;

  [[nodiscard]] Font font(double size = 1.0, bool bold = false) const {
    return {.size_mm = body * size, .bold = bold};
  }

  double operator()(const Heading& heading) const {
    const double above = body * 0.35;
    const Font type = font(0.95, true);
    const double high = pen.text(x, y + above, heading.words, type, width);
    const double base = y + above + high + body * 0.05;
    pen.line(x, base, x + width, base, k_hair_mm);
    return above + high + body * 0.3;
  }

  double operator()(const Paragraph& paragraph) const {
    Font type = font(paragraph.size, paragraph.bold);
    type.most_lines = paragraph.most_lines;
    if (paragraph.label.empty()) {
      return pen.text(x, y, paragraph.words, type, width) + body * 0.15;
    }
    const double column = body * paragraph.label_size;
    pen.text(x, y, paragraph.label, font(paragraph.size * 0.9), column);
    return pen.text(x + column, y, paragraph.words, type, width - column) + body * 0.15;
  }

  double operator()(const Item& item) const {
    const double side = body * item.size;
    double left = x;
    const Font type = font(item.size);
    const double one_line = pen.height("x", type, width);
    if (item.tick) {
      const double box = side * 0.72;
      pen.rectangle(left, y + (one_line - box) / 2.0, box, box, k_box_mm);
    }
    if (item.tick || !item.number.empty()) left += side * 1.2;
    if (!item.number.empty()) {
      Font number = type;
      number.align = Align::right;
      pen.label(left + side * 1.1, y, item.number, number);
      left += side * 1.5;
    } else if (!item.tick) {
      pen.label(left, y, "\u2013", type);
      left += side * 0.9;
    }
    return pen.text(left, y, item.words, type, x + width - left) + body * 0.12;
  }

  double operator()(const Table& table) const {
    double at = y;
    if (!table.head.empty() && !table.goes_on) {
      at += row(table, table.head, at, 0.82, Table::k_no_column);
      pen.line(x, at, x + width, at, k_hair_mm, 0.4);
      at += body * 0.12;
    }
    for (const std::vector<std::string>& cells : table.rows) {
      at += row(table, cells, at, 1.0, table.bold_column);
    }
    return at - y + (table.goes_on ? 0.0 : body * 0.15);
  }

  double operator()(const WriteIn& write_in) const {
    const double line_high = std::max(6.0, body * 2.1);  // for a pencil and a cold hand
    double at = y;
    for (const std::vector<WriteIn::Field>& fields : write_in.rows) {
      const double gap = body * 0.8;
      const double share = (width + gap) / static_cast<double>(fields.size());
      double left = x;
      for (const WriteIn::Field& field : fields) {
        const Font type = font(0.9);
        const double base = at + line_high * 0.8;
        const double high = pen.height("x", type, width);
        pen.label(left, base - high * 0.82, field.words, type);
        const double from = left + pen.width(field.words, type) + body * 0.3;
        double to = left + share - gap;
        if (!field.unit.empty()) {
          to -= pen.width(field.unit, type) + body * 0.3;
          pen.label(to + body * 0.3, base - high * 0.82, field.unit, type);
        }
        if (to > from) pen.line(from, base, to, base, k_hair_mm);
        left += share;
      }
      at += line_high;
    }
    return at - y + body * 0.3;
  }

  double operator()(const Inspected& inspected) const {
    const double box = body * 0.95;
    const double column = body * 2.2;
    const double remark = width * 0.28;
    const double words = width - 2.0 * column - remark;
    const std::array boxes{x + words, x + words + column};
    if (inspected.head) {
      const Font small = font(0.82);
      pen.label(boxes[0], y, "OK", small);
      pen.label(boxes[1], y, "n/a", small);
      pen.label(x + words + 2.0 * column, y, "remark", small);
      return pen.height("x", small, width) + body * 0.1;
    }
    const double high = pen.text(x, y, inspected.words, font(), words - body * 0.5);
    for (const double left : boxes) {
      pen.rectangle(left, y + body * 0.15, box, box, k_box_mm);
    }
    const double base = y + std::max(high, body * 1.2);
    pen.line(x + words + 2.0 * column, base, x + width, base, k_hair_mm);
    return base - y + body * 0.3;
  }

 private:
  double row(const Table& table, const std::vector<std::string>& cells, double at, double size,
             std::size_t bold_column) const {
    double shares = 0.0;
    for (const Table::Column& column : table.columns) shares += column.share;
    const double gap = body * 0.5;
    double left = x;
    double high = 0.0;
    for (std::size_t i = 0; i < cells.size() && i < table.columns.size(); ++i) {
      double wide = width * table.columns[i].share / shares;
      if (i == table.indent_from) {
        left += gap;
        wide -= gap;
      }
      Font type = font(size, i == bold_column);
      type.align = table.columns[i].align;
      high = std::max(high, pen.text(left, at, cells[i], type, std::max(1.0, wide - gap)));
      left += wide;
    }
    return high + body * 0.12;
  }
};

}  // namespace

double put_again(const Pen& pen, const Heading& heading, const Block& block, double x, double y,
                 double width, double body_mm) {
  if (const auto* const table = std::get_if<Table>(&block); table != nullptr && table->goes_on) {
    Table head = *table;
    head.rows.clear();
    head.goes_on = false;
    return put(pen, head, x, y, width, body_mm);
  }
  const Font small{.size_mm = body_mm * 0.82, .bold = true};
  // "Initial inspection, grade detailed (IEC 60079-17)": its first words name it.
  const std::string name = heading.words.substr(0, heading.words.find(','));
  const double high = pen.text(x, y, name + ", continued", small, width * 0.7);
  if (std::holds_alternative<Inspected>(block)) {
    put(pen, Inspected{.words = {}, .head = true}, x, y, width, body_mm);
  }
  return high + body_mm * 0.3;
}

double put(const Pen& pen, const Block& block, double x, double y, double width, double body_mm) {
  return std::visit(Setter{pen, x, y, width, body_mm}, block);
}

bool may_end_page(const Block& block) {
  const auto* const inspected = std::get_if<Inspected>(&block);
  return !std::holds_alternative<Heading>(block) && (inspected == nullptr || !inspected->head);
}

}  // namespace cutback::print
