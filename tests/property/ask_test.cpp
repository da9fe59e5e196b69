// The dialogue under any order of lines: answers, back, garbage.
#include "cutback/ask/ask.hpp"

#include <rapidcheck/catch.h>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "cutback/io/job_file.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"
#include "support/ask_facts.hpp"

namespace cutback::ask {
namespace {

using test::standards;

Facts facts() { return test::ask_facts(); }

/// Lines that answer something, lines that do not, and the way back.
rc::Gen<std::string> line() {
  const auto good = rc::gen::element<std::string>(
      "wire", "SWA", "none", "14.9", "15.1", "14.9+15.1", "9.9", "10.1", "0.9", "3", "3C", "M20",
      "20mm", "to-suit", "clearance", "tapped", "2.5", "1/8in", "steel", "GRP", "1", "21", "Zone 2",
      "d", "Ex e", "nR", "IIB", "IIIC", "54", "IP66", "1.8", "0.2", "yes", "no", "", "y");
  const auto odd = rc::gen::element<std::string>("?", "?", "<", "-1", "99", "15,1", "nan", "Ex de",
                                                 "\x1b[2J", "0", "1e9", "  ", "'; rm");
  return rc::gen::oneOf(good, good, odd, rc::gen::arbitrary<std::string>());
}

std::vector<std::string> lines_of(std::size_t count) {
  return *rc::gen::container<std::vector<std::string>>(count, line());
}

std::string written_job(const job::JobInput& in) { return io::write_job(in, 0); }
std::string written(const State& state) { return io::write_job(job_of(state), 0); }

}  // namespace

TEST_CASE("ask: any lines leave a job that can be true", "[property][ask]") {
  rc::prop("every state resolves, and a refused line changes nothing", [] {
    State state;
    for (const std::string& each : lines_of(40)) {
      const Step step = give(state, facts(), each);
      if (step.refused) {
        RC_ASSERT(step.state.answers == state.answers);
        RC_ASSERT(!step.says.empty());
      }
      state = step.state;
      const job::Job job = job::resolve(job_of(state), standards(), job::Unstated::measured);
      static_cast<void>(fit::ask(job, standards(), asking()));
      static_cast<void>(next(state, facts()));
    }
  });
}

TEST_CASE("ask: back undoes the answer before it", "[property][ask]") {
  rc::prop("an answer and back is where it was", [] {
    State state;
    for (const std::string& each : lines_of(25)) {
      const State before = state;
      Step step = give(state, facts(), each);
      const bool answered = step.state.answers.size() == before.answers.size() + 1;
      // The last line of a question asked again leads to the summary.
      if (answered && before.again == step.state.again) {
        const Step back = give(step.state, facts(), "<");
        RC_ASSERT(back.state.answers == before.answers);
        RC_ASSERT(written(back.state) == written(before));
      }
      state = std::move(step.state);
    }
  });
}

TEST_CASE("ask: what is kept never loses a fact to a question asked again", "[property][ask]") {
  rc::prop("from the summary, any line and any lines, the job to keep has what it had", [] {
    State state;
    for (const std::string& each : lines_of(25)) state = give(state, facts(), each).state;
    if (!state.before.empty()) {
      const std::string kept = written_job(job_to_keep(state));
      RC_ASSERT(kept == written(state.before.front()));
      State back = state;
      while (!back.before.empty()) back = give(back, facts(), "<").state;
      RC_ASSERT(written(back) == kept);
    }
  });
}

TEST_CASE("ask: it comes to an end", "[property][ask]") {
  rc::prop("not knowing anything more always ends at the summary", [] {
    State state;
    for (const std::string& each : lines_of(20)) state = give(state, facts(), each).state;
    state.confirmed = false;
    constexpr int k_most = 200;
    int lines = 0;
    for (auto prompt = next(state, facts()); prompt; prompt = next(state, facts())) {
      RC_ASSERT(++lines < k_most);
      const Step step = give(state, facts(), prompt->key.empty() ? "" : "?");
      RC_ASSERT(!step.refused);
      state = step.state;
    }
    RC_ASSERT(state.confirmed);
  });
}

TEST_CASE("ask: a file goes on where it was left", "[property][ask]") {
  rc::prop("a state from its own job asks nothing that the job tells", [] {
    State state;
    for (const std::string& each : lines_of(25)) state = give(state, facts(), each).state;
    State resumed;
    resumed.start = io::read_job(written(state), "job.json");
    RC_ASSERT(written(resumed) == written(state));
    const auto prompt = next(resumed, facts());
    if (!prompt || prompt->key.empty()) return;
    const bool diameter =
        prompt->key == "sheath_od_mm" || prompt->key == "bedding_mm" || prompt->key == "armour_mm";
    RC_ASSERT(diameter || !job::text_of(resumed.start, job::field_named(prompt->key)));
  });
}

TEST_CASE("ask: not knowing a fact never makes a gland fit", "[property][ask]") {
  rc::prop("? never turns what did not fit into what fits", [] {
    State state;
    for (const std::string& each : lines_of(25)) state = give(state, facts(), each).state;
    const auto best = [](const State& at) {
      const job::Job job = job::resolve(job_of(at), standards(), job::Unstated::measured);
      const auto question = fit::ask(job, standards(), asking());
      return fit::fit_all(question, test::demo_list().glands, fit::Prefer::price).front().verdict;
    };
    const Verdict before = best(state);
    const Verdict after = best(give(state, facts(), "?").state);
    if (after == Verdict::fits) RC_ASSERT(before == Verdict::fits || before == after);
  });
}

}  // namespace cutback::ask
