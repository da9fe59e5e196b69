// Instantaneous tripping of circuit breakers, typed from: IEC 60898-1:2015 Table 7 as remembered (B
// above 3 to 5 times the rated current, C above 5 to 10, D above 10 to 20; in less than 0.1 s).
// From memory: it decides nothing.
#include <catch2/catch.hpp>

#include "cutback/earth/device.hpp"
#include "support/build_job.hpp"

using namespace cutback;

TEST_CASE("IEC 60898-1: bands of instantaneous tripping", "[published][earth]") {
  struct Row {
    char type;
    double low;
    double high;
  };
  for (const Row& row : {Row{'B', 3, 5}, Row{'C', 5, 10}, Row{'D', 10, 20}}) {
    const earth::TripBand band = earth::trip_band({row.type, 16.0}, test::standards());
    CHECK(band.never_to_a == row.low * 16.0);
    CHECK(band.always_from_a == row.high * 16.0);
    CHECK(band.within_s == 0.1);
  }
  CHECK(test::standards().table("breaker_bands").status == tables::Status::from_memory);
}
