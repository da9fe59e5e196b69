// Every row of metrology_checks.csv.
// P01 JCGM 100:2008 (GUM) 4.4.3; P02 G.4.1; P03 H.1 (end gauge); P05 NIST TN 1297 Table B.1, the
// layout of GUM Table G.2; P06 JCGM 106:2012 7.4; P08 NIST/SEMATECH e-Handbook 7.2.6.3; P09
// ISO 16269-6:2014 Annex F; P10 EA-4/02 S10 (from memory); P11 IEC 60227-2:2003 1.9 and GUM 7.2.6;
// P12 ILAC-G8:09/2019 and JCGM 106:2012 Table 1; P13 GUM 4.3.7, 4.3.9, F.2.2.1, H.1.3.4; P14 the
// widths of an ellipse. T: computed with an independent reference for whole sets of readings.
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/non_central_t.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <map>
#include <numbers>

#include "core/measure/budget.hpp"
#include "core/measure/distributions.hpp"
#include "cutback/measure/drums.hpp"
#include "cutback/number.hpp"
#include "published/csv_rows.hpp"

using namespace cutback;
using namespace cutback::measure;

namespace {

using Outputs = std::map<std::string, std::string>;  ///< output -> value with 17 digits, or words

std::string digits(double value) {
  if (std::isinf(value)) return "inf";
  char buffer[40];
  std::snprintf(buffer, sizeof buffer, "%.17g", value);
  return buffer;
}

std::string words(Verdict verdict) {
  std::string text(to_string(verdict));
  for (char& c : text) c = c == '-' ? '_' : static_cast<char>(std::toupper(c));
  return text;
}

/// `a=1;b=2` as a map; `D1=14.62+14.94|...` among them.
std::map<std::string, std::string> settings(const std::string& text) {
  std::map<std::string, std::string> out;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find(';', begin), text.size());
    const std::string part = text.substr(begin, end - begin);
    const std::size_t equal = part.find('=');
    if (equal != std::string::npos) out[part.substr(0, equal)] = part.substr(equal + 1);
    begin = end + 1;
  }
  return out;
}

double number(const std::map<std::string, std::string>& values, const std::string& key) {
  return parse_number(values.at(key)).value();
}

std::vector<double> list(std::string text) {
  std::vector<double> out;
  for (char& c : text) c = c == '|' ? '+' : c;
  for (const Place& place : parse_places(text, "row")) {
    out.insert(out.end(), place.readings_mm.begin(), place.readings_mm.end());
  }
  return out;
}

// T: readings of drums, or a datasheet figure

DrumsInput drums_input(const std::map<std::string, std::string>& values) {
  DrumsInput in;
  for (const auto& [key, value] : values) {
    if (key.front() != 'D') continue;
    std::string places = value;
    for (char& c : places) c = c == '|' ? ',' : c;
    in.drums.push_back({key, parse_places(places, key)});
  }
  in.caliper = {.step_mm = number(values, "res"), .mpe_mm = number(values, "mpe")};
  in.range = {number(values, "seal_lo"), number(values, "seal_hi")};
  if (values.count("ovality_limit") > 0) in.ovality_limit_ratio = number(values, "ovality_limit");
  return in;
}

void put_drum(Outputs& out, const std::string& prefix, const DrumResult& drum, const Range& range) {
  const Estimate& estimate = drum.estimate;
  out[prefix + "D"] = digits(estimate.value_mm);
  out[prefix + "u"] = digits(estimate.standard_mm);
  out[prefix + "nu_eff"] = digits(drum.effective_degrees);
  out[prefix + "nu_used"] = digits(estimate.degrees_of_freedom);
  out[prefix + "k"] = digits(estimate.k);
  out[prefix + "U"] = out[prefix + "w"] = digits(estimate.expanded_mm);
  out[prefix + "acc_lo"] = digits(*range.low_mm + estimate.expanded_mm);
  out[prefix + "acc_hi"] = digits(*range.high_mm - estimate.expanded_mm);
  out[prefix + "P_below"] = digits(drum.judgement.probability_below);
  out[prefix + "P_above"] = digits(drum.judgement.probability_above);
  out[prefix + "P_fit"] = digits(drum.judgement.probability);
  out[prefix + "narrow"] = drum.judgement.narrow ? "1" : "0";
  out[prefix + "verdict_after_cap"] = words(drum.judgement.verdict);
  Estimate uncapped = estimate;
  uncapped.caps.clear();
  uncapped.readings_mm.clear();
  out[prefix + "verdict"] = words(judge(uncapped, range).verdict);
}

/// The uncertainty of the drum's mean itself: spread divided by the number of places.
void put_mean(Outputs& out, const DrumsInput& in, const DrumsResult& result) {
  const double s = result.pooled_standard_mm;
  const std::vector<detail::Term> terms{
      {s * s / static_cast<double>(in.drums[0].places.size()), result.pooled_degrees},
      detail::caliper_term(in.caliper, {}, 15.0)};
  const detail::Combined mean = detail::combine(terms, 0.95);
  out["mean_u"] = digits(mean.standard);
  out["mean_nu_eff"] = digits(mean.effective_degrees);
  out["mean_U95"] = digits(mean.expanded);
}

Outputs readings_of_drums(const std::string& inputs) {
  const DrumsInput in = drums_input(settings(inputs));
  const DrumsResult result = analyse_drums(in, {});
  Outputs out;
  out["s_w"] = digits(result.pooled_standard_mm);
  out["nu_w"] = digits(result.pooled_degrees);
  out["u_B"] = digits(std::sqrt(detail::caliper_term(in.caliper, {}, 15.0).variance));
  out["overall_verdict"] = words(result.judgement.verdict);
  for (const DrumResult& drum : result.drums) {
    put_drum(out, result.drums.size() > 1 ? drum.name + "." : "", drum, in.range);
  }
  double ovality = 0.0;
  const DrumResult& first = result.drums.front();
  for (std::size_t i = 0; i < first.places.size(); ++i) {
    out["place_mean_" + std::to_string(i + 1)] = digits(first.places[i].mean_mm);
    out["ovality_mm_" + std::to_string(i + 1)] = digits(first.places[i].ovality_mm);
    ovality = std::max(ovality, first.places[i].ovality_mm / first.places[i].mean_mm);
  }
  out["max_ovality_fraction"] = digits(ovality);
  if (first.tolerance) {
    out["k2_exact_95_95"] = out["k2_exact_95_95_n4_m3_pooled"] = digits(first.tolerance->factor);
    out["TI_lo"] = digits(first.tolerance->low_mm);
    out["TI_hi"] = digits(first.tolerance->high_mm);
  }
  put_mean(out, in, result);
  return out;
}

Outputs datasheet(const std::string& inputs) {
  const auto values = settings(inputs);
  const Estimate estimate = from_datasheet(number(values, "nominal"), number(values, "declared_a"));
  const Judgement j = judge(estimate, {number(values, "seal_lo"), number(values, "seal_hi")});
  return {{"D", digits(estimate.value_mm)},         {"u", digits(estimate.standard_mm)},
          {"P_fit", digits(j.probability)},         {"P_below", digits(j.probability_below)},
          {"P_above", digits(j.probability_above)}, {"verdict", words(j.verdict)}};
}

// P: published examples

Outputs gum_4_4_3(const std::string& inputs) {
  std::vector<detail::PlaceFigures> temperatures;
  for (const double value : list(inputs)) temperatures.push_back({value, 0.0, 1});
  const double s = detail::scatter_of({&temperatures, 1}).standard_mm;
  return {{"mean", digits(detail::mean_of(temperatures))},
          {"s", digits(s)},
          {"s_mean", digits(s / std::sqrt(20.0))}};
}

Outputs gum_g_4_1(const std::string&) {
  const std::vector<detail::Term> terms{
      {0.25 * 0.25, 9.0}, {0.57 * 0.57, 4.0}, {0.82 * 0.82, 14.0}};
  const detail::Combined c = detail::combine(terms, 0.95);
  // The guide puts the rounded 1.03 into the formula.
  const double rounded = c.effective_degrees * std::pow(1.03 / c.standard, 4);
  return {{"u_c", digits(c.standard)},
          {"nu_eff_unrounded", digits(c.effective_degrees)},
          {"nu_eff_with_u_c_1.03", digits(rounded)},
          {"t95_nu19", digits(detail::student_quantile(0.975, 19.0))},
          {"U95", digits(c.expanded)}};
}

Outputs gum_h_1(const std::string&) {
  const auto squared = [](double x) { return x * x; };
  const double t95 = detail::student_quantile(0.975, 5.0);
  const std::vector<detail::Term> comparison{
      {squared(5.8), 24.0}, {squared(10.0 / t95), 5.0}, {squared(20.0 / 3.0), 8.0}};
  const detail::Combined d = detail::combine(comparison, 0.99);
  constexpr double k_length_nm = 50.000623e6;
  const double alpha = detail::rectangular_standard(k_length_nm * 0.1 * 1e-6);
  const double theta = detail::rectangular_standard(k_length_nm * 11.5e-6 * 0.05);
  const std::vector<detail::Term> terms{{squared(25.0), 18.0},
                                        {d.standard * d.standard, d.effective_degrees},
                                        {squared(alpha), 50.0},
                                        {squared(theta), 2.0}};
  const detail::Combined c = detail::combine(terms, 0.99);
  CHECK(c.degrees_used == 16.0);
  return {{"u_d", digits(d.standard)},
          {"nu_eff_d", digits(d.effective_degrees)},
          {"u_dalpha", digits(alpha)},
          {"u_dtheta", digits(theta)},
          {"u_c2", digits(c.standard * c.standard)},
          {"u_c", digits(c.standard)},
          {"nu_eff", digits(c.effective_degrees)},
          {"k_t99_16", digits(c.k)},
          {"U99_unrounded", digits(c.expanded)}};
}

Outputs t_table(const std::string& inputs) {
  const auto values = settings(inputs);
  double level = number(values, "p") / 100.0;
  // 68.27, 95.45 and 99.73 % are short for one, two and three sigma of the normal distribution.
  for (const double sigma : {1.0, 2.0, 3.0}) {
    const double share = 2.0 * detail::normal_cdf(sigma) - 1.0;
    if (std::abs(level - share) < 5e-5) level = share;
  }
  return {{"t_p", digits(detail::student_quantile((1.0 + level) / 2.0, number(values, "nu")))}};
}

Outputs jcgm_106_7_4(const std::string& inputs) {
  const auto values = settings(inputs);
  Estimate estimate;
  estimate.value_mm = number(values, "y");
  estimate.standard_mm = number(values, "u");
  return {
      {"p_c", digits(judge(estimate, {number(values, "TL"), number(values, "TU")}).probability)}};
}

double approximate_factor(double n, double content, double confidence) {
  const double z = detail::normal_quantile((1.0 + content) / 2.0);
  const boost::math::chi_squared chi_squared(n - 1.0);
  return z * std::sqrt((n - 1.0) * (1.0 + 1.0 / n) / quantile(chi_squared, 1.0 - confidence));
}

Outputs handbook_7_2_6_3(const std::string&) {
  constexpr double n = 43.0, s = 0.0268, mean = 97.07;
  const double k = approximate_factor(n, 0.90, 0.99);
  const boost::math::non_central_t one_sided(n - 1.0, detail::normal_quantile(0.90) * std::sqrt(n));
  return {{"k2_approx_uncorrected", digits(k)},
          {"k2_exact", digits(detail::tolerance_factor(n, n - 1.0, 0.90, 0.99))},
          {"k2_for_p0.99_g0.05", digits(detail::tolerance_factor(n, n - 1.0, 0.99, 0.05))},
          {"TI_lo_approx", digits(mean - k * s)},
          {"TI_hi_approx", digits(mean + k * s)},
          {"k1_noncentral_t", digits(quantile(one_sided, 0.99) / std::sqrt(n))}};
}

Outputs iso_16269_6(const std::string& inputs) {
  const auto values = settings(inputs);
  const double n = number(values, "n");
  return {{"k2_exact", digits(detail::tolerance_factor(n, number(values, "m") * (n - 1.0),
                                                       number(values, "p"), number(values, "g")))}};
}

/// EA-4/02 S10: two rectangles make a trapezoid, whose coverage factor is below the normal one.
Outputs ea_4_02_s10(const std::string& inputs) {
  const auto values = settings(inputs);
  const double a1 = number(values, "a1"), a2 = number(values, "a2"), p = number(values, "p");
  const double beta = std::abs(a1 - a2) / (a1 + a2);
  const double k =
      (1.0 - std::sqrt((1.0 - p) * (1.0 - beta * beta))) / std::sqrt((1.0 + beta * beta) / 6.0);
  // Limits +-a2 of a vernier are half its step.
  const double u =
      std::sqrt(detail::caliper_term({.step_mm = 2.0 * a2, .mpe_mm = a1}, {}, 150.0).variance);
  return {{"beta", digits(beta)},
          {"k_trapezoid", digits(k)},
          {"u_two_rectangles_mm", digits(u)},
          {"U_mm", digits(k * u)}};
}

Outputs rounding(const std::string& inputs) {
  const auto values = settings(inputs);
  if (values.count("x") > 0) {
    return {{"rounded", digits(round_half_up(number(values, "x"), number(values, "step")))}};
  }
  if (values.count("y") > 0) {
    const int decimals = round_uncertainty(number(values, "u")).decimals;
    return {{"y_rounded", fixed(number(values, "y"), decimals)}};
  }
  const double u = number(values, "u");
  return {{"rounded",
           digits(values.at("rule") == "up" ? round_uncertainty(u).value : round_half_up(u, 1.0))}};
}

Outputs decision_risk(const std::string& inputs) {
  const auto values = settings(inputs);
  if (values.count("r") == 0) {
    const std::string level = values.at("p_c");  // "0.8 one-sided"
    const double p = parse_number(level.substr(0, level.find(' '))).value();
    return {{"z", digits(detail::normal_quantile(p))}};
  }
  // A value that stands right at the acceptance limit, a guard band of r U below the upper limit.
  Estimate estimate;
  estimate.value_mm = 10.0 - 2.0 * number(values, "r");
  estimate.standard_mm = 1.0;
  return {{"one_sided_false_accept_at_acceptance_limit",
           digits(judge(estimate, {{}, 10.0}).probability_above)}};
}

Outputs type_b(const std::string& inputs) {
  const auto values = settings(inputs);
  if (values.count("res") > 0) {
    return {{"u_rect_full_width", digits(detail::step_standard(number(values, "res")))}};
  }
  const double a = number(values, "a");
  return {{"u_rect_half_width", digits(detail::rectangular_standard(a))},
          {"u_triangular", digits(a / std::sqrt(6.0))},
          // Extremes 2 a apart, as of an oval section whose widths differ by 2 a.
          {"u_arcsine", digits(detail::oval_standard(2.0 * a))}};
}

Outputs ellipse(const std::string&) {
  constexpr double major = 16.8, minor = 15.2, pi = std::numbers::pi;
  const auto width = [](double angle) {
    return std::hypot(major * std::cos(angle), minor * std::sin(angle));
  };
  const auto crossed = [&](double angle) {
    const std::vector<Place> place{{{width(angle), width(angle + pi / 2.0)}}};
    return measure_here({.places = place, .caliper = {.mpe_mm = 0.05}}, {}).value_mm;
  };
  const double eccentricity = std::sqrt(1.0 - (minor * minor) / (major * major));
  Place all;
  for (int i = 0; i < 180; ++i) all.readings_mm.push_back(width(i * pi / 180.0));
  return {{"perimeter_over_pi", digits(2.0 * major * std::comp_ellint_2(eccentricity) / pi)},
          {"mean_two_crossed_on_axes", digits(crossed(0.0))},
          {"mean_two_crossed_at_45deg", digits(crossed(pi / 4.0))},
          {"mean_width_all_angles", digits(detail::figures_of({&all, 1}, 0.0)[0].mean_mm)}};
}

const std::map<std::string, std::function<Outputs(const std::string&)>>& cases() {
  static const std::map<std::string, std::function<Outputs(const std::string&)>> all{
      {"T01", readings_of_drums},
      {"T02", readings_of_drums},
      {"T03", readings_of_drums},
      {"T05", readings_of_drums},
      {"T07a", datasheet},
      {"T07b", datasheet},
      {"T07c", datasheet},
      {"T07d", datasheet},
      {"T08", readings_of_drums},
      {"T10", readings_of_drums},
      {"T11", readings_of_drums},
      {"T13", readings_of_drums},
      {"P01", gum_4_4_3},
      {"P02", gum_g_4_1},
      {"P03", gum_h_1},
      {"P05", t_table},
      {"P06", jcgm_106_7_4},
      {"P08", handbook_7_2_6_3},
      {"P09", iso_16269_6},
      {"P10", ea_4_02_s10},
      {"P11", rounding},
      {"P12", decision_risk},
      {"P13", type_b},
      {"P14", ellipse}};
  return all;
}

bool near(const std::string& given, const std::string& wanted, const std::string& tolerance) {
  if (tolerance == "exact" || wanted == "inf" || given == "inf") return given == wanted;
  return std::abs(parse_number(given).value() - parse_number(wanted).value()) <=
         parse_number(tolerance).value();
}

}  // namespace

TEST_CASE("metrology checks: every row within its tolerance", "[published][measure]") {
  const published::CsvRows rows("metrology_checks.csv");
  std::size_t checked = 0;
  std::size_t printed = 0;
  for (const published::CsvRow& row : rows) {
    INFO(row["case"] << " " << row["output"] << ": " << row["source"]);
    const auto it = cases().find(row["case"]);
    REQUIRE(it != cases().end());
    const Outputs outputs = it->second(row["inputs"]);
    const auto output = outputs.find(row["output"]);
    REQUIRE(output != outputs.end());
    INFO("given " << output->second << ", wanted " << row["expected"]);
    CHECK(near(output->second, row["expected"], row["abs_tol"]));
    ++checked;
    if (row["published_value"].empty()) continue;
    INFO("published " << row["published_value"]);
    CHECK(near(output->second, row["published_value"], row["published_abs_tol"]));
    ++printed;
  }
  CHECK(checked == 294);
  CHECK(printed == 63);
}
