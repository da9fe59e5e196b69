#include "cutback/schedule/made.hpp"

#include <array>

#include "cutback/error.hpp"

namespace cutback::schedule {
namespace {

using measure::Evidence;
using Figure = std::optional<measure::Readings> job::JobInput::*;
using Measured = std::optional<measure::Readings> MadeEnd::*;

struct LayerRow {
  job::Layer layer;
  Figure figure;
  Measured measured;
};
constexpr std::array<LayerRow, 3> k_layers{{
    {job::Layer::sheath, &job::JobInput::sheath_od_mm, &MadeEnd::sheath_od},
    {job::Layer::bedding, &job::JobInput::bedding_mm, &MadeEnd::bedding},
    {job::Layer::wire, &job::JobInput::armour_mm, &MadeEnd::armour},
}};

std::string key_of(std::string_view tag, std::string_view end) {
  return std::string(tag) + '\n' + std::string(end);
}

std::optional<measure::Estimate>& estimate_in(cable::Cable& cable, job::Layer layer) {
  if (layer == job::Layer::sheath) return cable.sheath_od;
  return layer == job::Layer::bedding ? cable.bedding : cable.wire;
}

/// Whether a figure of the end stands beside the readings.
bool has_others(const MadeEnd& made, const job::JobInput& in) {
  for (const LayerRow& row : k_layers) {
    if (in.*row.figure && !(made.*row.measured)) return true;
  }
  return false;
}

/// Whether notation alone tells that they were measured: several readings, and of the wire one.
bool told_by_notation(const MadeEnd& made) {
  for (const Measured member : {&MadeEnd::sheath_od, &MadeEnd::bedding}) {
    const auto& readings = made.*member;
    if (!readings) continue;
    if (readings->places.size() == 1 && readings->places.front().readings_mm.size() == 1) {
      return false;
    }
  }
  return true;
}

}  // namespace

MadeEnd& MadeEnds::at(std::string_view tag, std::string_view end) {
  return ends_[key_of(tag, end)];
}

const MadeEnd* MadeEnds::find(std::string_view tag, std::string_view end) const {
  const auto found = ends_.find(key_of(tag, end));
  return found == ends_.end() ? nullptr : &found->second;
}

job::Job resolve_made(const job::JobInput& in, const MadeEnd& made,
                      const tables::Standards& standards) {
  job::JobInput known = in;
  for (const LayerRow& row : k_layers) {
    if (made.*row.measured) known.*row.figure = made.*row.measured;
  }
  if (made.is_measured() && !has_others(made, in)) known.evidence = Evidence::measured;
  job::Job job;
  const job::Frame frame = job::make_frame(known, standards, job::Unstated::by_notation, job);
  job::Frame measured = frame;
  measured.in.evidence = Evidence::measured;
  std::vector<Fault> faults;
  for (const LayerRow& row : k_layers) {
    const auto& readings = known.*row.figure;
    if (!readings) continue;
    try {
      estimate_in(job.cable, row.layer) =
          job::estimate(made.*row.measured ? measured : frame, row.layer, *readings, standards);
    } catch (const InputError& error) {
      faults.insert(faults.end(), error.faults().begin(), error.faults().end());
    }
  }
  for (const auto& more : {job::complete(frame, standards, job), frame.faults}) {
    faults.insert(faults.end(), more.begin(), more.end());
  }
  job::name_places(faults, job::Unstated::by_notation);
  if (!faults.empty()) throw InputError(std::move(faults));
  job.cable.warnings.insert(job.cable.warnings.end(), made.remarks.begin(), made.remarks.end());
  return job;
}

void put_readings(const MadeEnd& made, job::JobInput& in) {
  if (!made.is_measured()) return;
  const bool others = has_others(made, in);
  const bool datasheet = !in.evidence || in.evidence == Evidence::datasheet;
  const bool keeps = in.evidence == Evidence::measured || (datasheet && told_by_notation(made));
  for (const LayerRow& row : k_layers) {
    if (made.*row.measured) {
      in.*row.figure = made.*row.measured;
    } else if (!keeps) {
      (in.*row.figure).reset();
    }
  }
  if (others && keeps && datasheet) {
    in.evidence.reset();
  } else {
    in.evidence = Evidence::measured;
  }
}

}  // namespace cutback::schedule
