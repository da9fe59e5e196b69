#include "cutback/gland/gland.hpp"

namespace cutback::gland {

std::vector<Assumption> assumptions_of(const Gland& gland) {
  std::vector<Assumption> list;
  if (!gland.sealing) {
    list.push_back(
        {"sealing", "compression", "the list says of glands with compound that they are"});
  }
  if (sealing_of(gland) == Sealing::compression) return list;
  const bool cores = gland.max_cores.has_value();
  const bool bundle = gland.max_bundle_mm.has_value();
  const bool bore = gland.chamber_bore_mm.has_value();
  // Where nothing of the chamber is stated nothing is taken either.
  if (!cores && !bundle && !bore) return list;
  constexpr const char* k_why = "what the list states of the chamber decides";
  if (!cores) list.push_back({"max_cores", "what the chamber passes", k_why});
  if (!bundle) list.push_back({"max_bundle_mm", bore ? "the chamber's bore" : "any", k_why});
  if (!bore) list.push_back({"chamber_bore_mm", bundle ? "the largest bundle" : "any", k_why});
  return list;
}

}  // namespace cutback::gland
