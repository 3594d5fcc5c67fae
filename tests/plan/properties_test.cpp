// Properties that hold for any text: reading never fails, places lie in the file and nest, and no
// word of the coach's is lost. A seeded generator (xorshift, so that every machine tries the same).
#include <catch2/catch.hpp>
#include <set>

#include "places.h"
#include "support/random.h"

namespace chalkleaf::plan {
namespace {

using support::Random;

const std::string kSample = R"(---
title: Strong shapes
place: home
slot: 40 min
start: 17:00
repeat: [Mon, Wed]
equipment: {towel: "a bath towel", line: tape}
timings:
  changeover: 10 s
  parts: {Warm-up: 8 min}
---

Hold *still*. <!-- mine -->

> **Safety.** Clear the floor. An adult stays.

## Warm-up

[The warm-up](w.md)

## Shapes — floor

- Dish hold: 2 × 20 s, rest 20 s
  - cue: lower `back` down
  - easier: knees bent
  - uses: towel, held
  - without towel: Dish, palms: 2 x 20 s
    - easier: one foot &amp; hand
- Beam walk: 12 steps each way: forwards, backwards
- Donkey kick or wall walk-up: max hold, 3 goes
  - record: seconds
  - at: beam
  - coach: stand *by* the beam
- 10 star jumps, 10 high knees
- Put away: hoops, in the bag: 1 min
- Circuit: 3 rounds, 30 s work, 15 s rest
  - Star jumps
    - cue: **soft** knees
  - Plank: 20 s
  - ![a bë](p.png)

Family: ask *us* **ü&uuml;ber *é* it**.

| **a** | b |
|---|---|
| 1 | 2 |

| a | b |
|---|---|
| 1 | 2 |

    code

## Cool-down
)";

const std::vector<std::string> kPieces{"\t",
                                       "  - ",
                                       "- ",
                                       "> ",
                                       "#",
                                       "`",
                                       "*",
                                       "[",
                                       "](x.md)",
                                       ":",
                                       ": ",
                                       "'",
                                       "\"",
                                       "{",
                                       "}",
                                       "&",
                                       "!",
                                       "|",
                                       "\n",
                                       "\r",
                                       "\r\n",
                                       "---",
                                       "\xC2\xA0",
                                       "½",
                                       "é",
                                       "—",
                                       "<",
                                       "-->",
                                       "<!--",
                                       "\\",
                                       "0",
                                       "99999999999",
                                       "x",
                                       ",",
                                       ";",
                                       "each way: ",
                                       "without a: ",
                                       "cue:",
                                       "max hold",
                                       "\xEF\xBB\xBF",
                                       "[a]: b\n",
                                       "\xFF",
                                       "",
                                       "**",
                                       "Coach: ",
                                       "Put away: ",
                                       " or ",
                                       "record: ",
                                       "- Circuit: 3 rounds, 9 s work, 9 s rest\n",
                                       "![](p.png)\n"};

std::string mutated(Random& random) {
  std::string text = kSample;
  const std::size_t changes = 1 + random.below(6);
  for (std::size_t i = 0; i < changes; ++i) {
    const std::size_t at = random.below(text.size() + 1);
    switch (random.below(4)) {
      case 0:
        text.erase(at, random.below(12));
        break;
      case 1:
        text.insert(at, random.pick(kPieces));
        break;
      case 2: {
        const std::size_t from = random.below(text.size());
        const std::string copy = text.substr(from, random.below(80));
        text.insert(at, copy);
        break;
      }
      default:
        text =
            text.substr(0, at) + random.pick(kPieces) + text.substr(std::min(at + 1, text.size()));
    }
  }
  return text;
}

TEST_CASE("any mutation of a plan is read, and every place is in the file and nests") {
  for (unsigned seed = 1; seed <= support::rounds(4000); ++seed) {
    Random random(seed);
    const std::string text = mutated(random);
    const ReadPlan plan = read_plan(text);
    if (!plan.source) {
      CHECK(plan.diagnostics.error_count() == 1);  // not UTF-8 any more
      continue;
    }
    Places places(plan.source.get());
    places.session(plan.session);
    for (const Diagnostic& d : plan.diagnostics.all()) {
      places.in_file(d.span);
      if (d.message.empty() || d.hint.empty() || d.name.empty()) places.ok = false;
    }
    if (!places.ok) {
      INFO("seed " << seed << "\n" << text);
      CHECK(places.ok);
    }
  }
}

/// The words of a text: runs of letters and digits.
std::set<std::string> words_in(std::string_view text) {
  std::set<std::string> out;
  std::string word;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const char c = i < text.size() ? text[i] : ' ';
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) {
      word += c;
    } else if (!word.empty()) {
      out.insert(std::move(word));
      word.clear();
    }
  }
  return out;
}

/// Everything the model says, and everything that is reported.
class Said {
 public:
  void session(const ReadPlan& plan) {
    const Session& s = plan.session;
    add(s.title);
    notes(s.introduction);
    safety(s.safety);
    for (const Part& part : s.parts) {
      add(part.title);
      safety(part.safety);
      for (const Step& step : part.steps) {
        if (const auto* d = std::get_if<Drill>(&step)) drill(*d);
        if (const auto* n = std::get_if<Note>(&step)) note(*n);
        if (const auto* k = std::get_if<KitMove>(&step)) {
          add_all(k->kit), add(k->how);
        }
        if (const auto* l = std::get_if<PartLink>(&step)) add(l->text);
      }
    }
    for (const Diagnostic& d : plan.diagnostics.all()) all += std::string(d.span.text()) + " ";
  }
  std::string all;

 private:
  void add(const Words& words) { all += words.text + " "; }
  void add_all(const std::vector<Words>& many) {
    for (const Words& words : many) add(words);
  }
  void notes(const std::vector<Note>& many) {
    for (const Note& one : many) note(one);
  }
  void note(const Note& one) {
    add(one.words);
    all += one.picture + " ";
    if (one.kind != Note::Kind::kTableRow) return;
    std::set<std::string> in_cells;
    for (const Words& cell : one.cells) in_cells.merge(words_in(cell.text));
    if (in_cells != words_in(one.words.text)) all.clear();  // the line and its cells say the same
  }
  void safety(const std::vector<Safety>& many) {
    for (const Safety& one : many) add(one.words);
  }
  // Numbers of a dose are in its values; its bytes stand for them here.
  void dose(const std::optional<Dose>& d) {
    if (d) all += std::string(d->span.text()) + " ";
  }
  void drill(const Drill& d) {
    add(d.name);
    dose(d.dose);
    add_all(d.cues), add_all(d.easier), add_all(d.harder), add(d.record), add(d.at);
    for (const Drill& station : d.stations) drill(station);
    for (const KitUse& use : d.uses) add(use.kit), add(use.how);
    notes(d.notes);
    for (const Substitute& s : d.substitutes) {
      add(s.kit), add(s.name);
      dose(s.dose);
      add_all(s.cues), add_all(s.easier), add_all(s.harder);
      notes(s.notes);
    }
  }
};

TEST_CASE("every word of a body is in the model or in a message") {
  const std::vector<std::string> lines{"## W\n\n",
                                       "W W\n\n",
                                       "- W: 2 x 20 s, W\n",
                                       "- W\n",
                                       "  - cue: W\n",
                                       "  - W W: W\n",
                                       "  - without W: W: 3\n",
                                       "    - easier: W\n",
                                       "> W. W\n\n",
                                       "> - W\n",
                                       "| W | W |\n|---|---|\n| W | W | W |\n\n",
                                       "```\nW\n```\n\n",
                                       "    W\n\n",
                                       "[W](x.md)\n\n",
                                       "[W](http://e.org/W) W\n",
                                       "<b>W</b> W\n\n",
                                       "<div>W</div>\n\n",
                                       "W\n===\n\n",
                                       "### W\n",
                                       "1. W: 3 W\n",
                                       "   - W: W\n",
                                       "![W](p.png)\n\n",
                                       "[W]: W\n",
                                       "`W` *W* \\*W\n",
                                       "- [ ] W: 3\n",
                                       "      - harder: W\n",
                                       "  W: 3\n",
                                       "  cue: W\n",
                                       "-W\n",
                                       "\n",
                                       "---\n",
                                       "W &amp; W\n",
                                       "easier: W\n\n",
                                       "- easier: W\n",
                                       "  - uses: W, W\n",
                                       "* W – W\n",
                                       "> > W\n",
                                       "  > W\n",
                                       "  1. W\n",
                                       "##W\n",
                                       "**W**\n",
                                       "W:\n",
                                       "• W: 3 x 10\n",
                                       "\xC2\xA0- W\n",
                                       "W: 3 x 10\n",
                                       "  [W](x.md)\n",
                                       "[[W]]\n",
                                       "  - cue W\n",
                                       "    - W: 3 W\n",
                                       "  cue: W\n",
                                       "## W (10 min)\n",
                                       "- Circuit: 3 rounds, 10 s work, 5 s rest\n",
                                       "- W: 3 rounds, 10 s work\n",
                                       "  - W W\n",
                                       "Circuit: 3 rounds, 10 s work, 5 s rest\n",
                                       "- Pick up: W, W each\n",
                                       "- Put away: W and W (W): 1 min\n",
                                       "Set out: W\n",
                                       "- Fetch:\n",
                                       "- W or W or W: 3\n",
                                       "- 10 W, 10 W\n",
                                       "  - record: W\n",
                                       "  - at: W\n",
                                       "  - coach: W\n",
                                       "Family: W\n",
                                       "Coach:\n",
                                       "- For the coach: W\n",
                                       "  ![W](p.png)\n",
                                       "- ![W](p.png)\n",
                                       "  - [W](drills/d.md)\n",
                                       "| W |  |\n",
                                       "W x 10\n"};
  for (unsigned seed = 1; seed <= support::rounds(5000); ++seed) {
    Random random(seed);
    std::string body;
    std::set<std::string> wanted;
    int number = 0;
    for (std::size_t i = 0; i < 12; ++i) {
      for (const char c : random.pick(lines)) {
        if (c != 'W') {
          body += c;
          continue;
        }
        const std::string word = fmt::format("w{}q", number++);
        body += word;
        wanted.insert(word);
      }
    }
    const ReadPlan plan = read_plan(plan_with(body));
    Said said;
    said.session(plan);
    const auto got = words_in(said.all);
    for (const std::string& word : wanted) {
      if (got.count(word) > 0) continue;
      INFO("seed " << seed << "\n" << body);
      CHECK(word == "is missing");
    }
  }
}

}  // namespace
}  // namespace chalkleaf::plan
