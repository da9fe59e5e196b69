#include "run/require_sheath.hpp"

#include "cutback/error.hpp"

namespace cutback::run {

void require_sheath(const job::Job& job, const std::string& where) {
  if (job.cable.sheath_od) return;
  throw InputError(Fault{.code = ErrorCode::missing,
                         .what = "the sheath diameter is needed",
                         .where = where,
                         .given = {},
                         .allowed = "readings in mm such as 14.9+15.1",
                         .hint = "measure twice at right angles where the gland will sit, or give "
                                 "cores and size for an estimate"});
}

}  // namespace cutback::run
