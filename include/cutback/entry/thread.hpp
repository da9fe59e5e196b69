#pragma once
// Entry threads: metric, NPT and PG.

#include <optional>
#include <string>
#include <string_view>

namespace cutback::entry {

enum class ThreadKind { metric, npt, pg };

/// A thread by its designation. `size` is the nominal diameter in mm (metric), in inches (NPT) or
/// the PG number. Two threads are the same when kind, size and pitch agree.
struct Thread {
  ThreadKind kind = ThreadKind::metric;
  double size = 0.0;
  double pitch_mm = 0.0;

  friend bool operator==(const Thread&, const Thread&) = default;
};

/// Reads `M20`, `M20x1.5`, `NPT 1/2`, `1/2 NPT`, `NPT 1 1/4`, `PG 13.5`, `PG13.5`; letters of
/// either case. A metric thread without a pitch has 1.5 mm up to M75 and 2 mm above (common
/// practice, no source), and the coarse pitch where the size is not made with that.
/// @return nothing when the text is none of these, or a size or pitch that the kind does not have:
/// ISO 261 from M6 to M200, and IEC 60423; ASME B1.20.1 from 1/8 to 6; DIN 40430
[[nodiscard]] std::optional<Thread> parse_thread(std::string_view text);

/// What to write instead of a text that is no thread: the sizes next to it, or the pitches of the
/// size. Empty where nothing is near, or the text is a thread.
[[nodiscard]] std::string thread_advice(std::string_view text);

/// What parse_thread accepts, for messages.
[[nodiscard]] std::string_view thread_forms();

/// `M20`, `M20x1` (a pitch that is not the usual one), `NPT 1/2`, `PG 13.5`.
[[nodiscard]] std::string to_text(const Thread& thread);

}  // namespace cutback::entry
