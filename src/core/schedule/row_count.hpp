#pragma once
// What of a schedule speaks for how many glands a row needs, beside its quantity.

#include "core/schedule/tag_names.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// Finds the columns that say how many ends there are, or what the quantity is of, among those that
/// nobody reads, and says where nothing tells whether a row is one end or a whole cable.
/// @param layout  is finished but for this
void note_counts(Layout& layout, Sample sample);

/// Whatever some of the first rows tell of the joint, the earth or a fault is asked of every end: a
/// blank cell in a column that others fill is a fact that is missing.
void note_asked(Layout& layout, Sample sample);

}  // namespace cutback::schedule
