#pragma once
// What stands on a card, not yet placed.

#include <optional>
#include <string>
#include <vector>

#include "cutback/print/pages.hpp"
#include "print/pages/block.hpp"
#include "print/pages/qr_code.hpp"

namespace cutback::print {

struct CardText {
  std::string tag;
  std::string again;         ///< end and gland, for the head of a card that goes on
  std::vector<Block> facts;  ///< the tag first; beside the code
  bool wants_code = false;
  std::optional<QrCode> code;    ///< none where the job is too long for any
  std::optional<Block> alarm;    ///< over the whole width
  std::optional<Block> drawing;  ///< in a column where it has its true size there, else over all
  double drawing_mm = 0.0;       ///< the least width for its true size
  std::vector<Block> body;       ///< in columns
  std::vector<Block> sources;    ///< every one, behind the body
  std::vector<Block> compact;    ///< body and sources for a card where the others are too long
};

/// @param most_high  that the cable may be drawn, mm of paper
[[nodiscard]] CardText card_text(const Card& card, double most_high);

}  // namespace cutback::print
