// See the header.
#include "plan/kit_moves.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "base/text.h"
#include "dose/parser.h"
#include "dose/tokens.h"
#include "plan/values.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using Way = KitMove::Way;

struct Verb {
  std::string_view words;
  Way way;
};
constexpr std::array<Verb, 22> kVerbs{
    {{"pick up", Way::kPickUp},   {"set out", Way::kPickUp},   {"set up", Way::kPickUp},
     {"fetch", Way::kPickUp},     {"get", Way::kPickUp},       {"get out", Way::kPickUp},
     {"collect", Way::kPickUp},   {"bring", Way::kPickUp},     {"bring out", Way::kPickUp},
     {"lay out", Way::kPickUp},   {"put out", Way::kPickUp},   {"put away", Way::kPutAway},
     {"put back", Way::kPutAway}, {"put down", Way::kPutAway}, {"clear away", Way::kPutAway},
     {"clear up", Way::kPutAway}, {"tidy up", Way::kPutAway},  {"tidy away", Way::kPutAway},
     {"tidy", Way::kPutAway},     {"pack up", Way::kPutAway},  {"pack away", Way::kPutAway},
     {"take down", Way::kPutAway}}};

// `Pick-up kit` is `pick up`.
std::string verb_of(std::string_view head) {
  std::string out;
  for (const char c : lower_ascii(trim(head))) {
    const bool gap = c == '-' || c == ' ' || c == '\n' || c == '\t';
    if (!gap || (!out.empty() && out.back() != ' ')) out += gap ? ' ' : c;
  }
  for (const std::string_view object : {" kit", " equipment", " the"}) {
    if (out.ends_with(object)) out.resize(out.size() - object.size());
  }
  return out;
}

// A dose begins with its amount; `hoops, two each` only ends with one.
bool is_dose(const source::Text& text) {
  const std::vector<Token> tokens = tokens_of(std::string_view(text.str()).substr(0, kLongestDose));
  if (tokens.empty() ||
      (tokens[0].is(TokenKind::kWord) && !tokens[0].is_word("max") && !tokens[0].is_word("hold"))) {
    return false;
  }
  const auto dose = parse_dose(text);
  return dose && dose->amount.kind != AmountKind::kMoves;  // `6 hoops, 4 cones` are no moves
}

// Words that say how or where rather than name more kit.
bool says_how(std::string_view piece) {
  static constexpr std::array<std::string_view, 44> kHow{
      "in",    "on",   "by",     "to",   "at",     "under", "per",     "behind",  "with",
      "for",   "from", "into",   "near", "next",   "along", "between", "against", "around",
      "round", "each", "one",    "two",  "three",  "four",  "all",     "both",    "every",
      "then",  "when", "while",  "as",   "only",   "so",    "not",     "no",      "keep",
      "leave", "put",  "beside", "over", "across", "after", "before",  "ready"};
  const std::string lower = lower_ascii(trim(piece));
  const std::string_view first = std::string_view(lower).substr(0, lower.find(' '));
  if (std::find(kHow.begin(), kHow.end(), first) != kHow.end()) return true;
  if (lower.find(" each") != std::string::npos || lower.find("(") == 0) return true;
  return std::count(lower.begin(), lower.end(), ' ') > 3;  // a name of kit is shorter
}

// `the hoops` are `hoops`.
source::Text without_article(const source::Text& piece) {
  const source::Text kept = piece.trimmed();
  for (const std::string_view article : {"the ", "a ", "an ", "your ", "our ", "their "}) {
    if (!starts_with_ignoring_case(kept.str(), article)) continue;
    return kept.slice(article.size(), kept.str().size()).trimmed();
  }
  return kept;
}

/// Where a piece of kit ends and the next begins.
struct Cut {
  std::size_t end;
  std::size_t next;
};
// The first comma, semicolon, `and` or `&`; a bracket ends a piece and belongs to what follows.
Cut cut_in(std::string_view text) {
  const std::string lower = lower_ascii(text);
  Cut out{text.size(), text.size()};
  const auto nearer = [&](std::string_view mark, std::size_t taken) {
    const std::size_t at = lower.find(mark);
    if (at < out.end) out = {at, at + taken};
  };
  for (const std::string_view mark : {",", ";"}) nearer(mark, 1);
  for (const std::string_view mark : {" and ", " & ", " plus "}) nearer(mark, mark.size());
  nearer(" (", 1);
  return out;
}

void read_kit(const source::Text& text, KitMove& out) {
  source::Text rest = text.trimmed();
  while (rest.str().ends_with('.')) rest = rest.slice(0, rest.str().size() - 1).trimmed();
  while (!rest.empty()) {
    if (!out.kit.empty() && says_how(rest.str().substr(0, cut_in(rest.str()).end))) break;
    const Cut cut = cut_in(rest.str());
    Words kit = plain_words_of(without_article(rest.slice(0, cut.end)));
    if (!kit.empty()) out.kit.push_back(std::move(kit));
    rest = rest.slice(cut.next, rest.str().size()).trimmed();
  }
  const std::string& how = rest.str();
  if (how.size() > 2 && how[0] == '(' && how.find(')') == how.size() - 1) {
    rest = rest.slice(1, how.size() - 1);
  }
  out.how = plain_words_of(rest);
}

bool begins_with_digit(std::string_view text) {
  text = trim(text);
  return !text.empty() && text[0] >= '0' && text[0] <= '9';
}

// Where the time at the end of a line is cut off: behind a colon, or the last clause between
// commas.
struct TimeCut {
  std::size_t end = 0;    ///< of what stands before it
  std::size_t begin = 0;  ///< of the time; the text's size when there is none
};
TimeCut time_in(const std::string& all) {
  for (std::size_t colon = all.find(':'); colon != std::string::npos;
       colon = all.find(':', colon + 1)) {
    const bool clock = colon > 0 && begins_with_digit(all.substr(colon - 1));  // `1:30 min`
    if (!clock && begins_with_digit(all.substr(colon + 1))) return {colon, colon + 1};
  }
  const std::size_t comma = all.rfind(',');
  if (comma != std::string::npos && parse_duration(all.substr(comma + 1), Zero::kAllowed)) {
    return {comma, comma + 1};
  }
  return {all.size(), all.size()};
}

}  // namespace

std::optional<KitLine> kit_line(const source::Text& text) {
  constexpr std::size_t kLongestVerb = 40;
  const std::string& all = text.str();
  const std::size_t colon = all.substr(0, kLongestVerb).find(':');
  if (colon == std::string::npos || all.size() > kLongestDose) return std::nullopt;
  const std::string verb = verb_of(std::string_view(all).substr(0, colon));
  const auto found = std::find_if(kVerbs.begin(), kVerbs.end(),
                                  [&](const Verb& known) { return known.words == verb; });
  if (found == kVerbs.end()) return std::nullopt;
  KitLine out{found->way, plain_words_of(text.slice(0, colon)),
              text.slice(colon + 1, all.size()).trimmed()};
  if (is_dose(out.rest)) return std::nullopt;
  return out;
}

std::optional<KitMove> read_kit_move(const KitLine& line, const Span& span,
                                     const std::vector<Words>& listed, Diagnostics& diagnostics) {
  KitMove out;
  out.span = span;
  out.way = line.way;
  out.verb = line.verb;
  const std::string& all = line.rest.str();
  const TimeCut cut = time_in(all);
  read_kit(line.rest.slice(0, cut.end), out);
  out.kit.insert(out.kit.end(), listed.begin(), listed.end());
  if (const source::Text written = line.rest.slice(cut.begin, all.size()).trimmed();
      !written.empty()) {
    if (const auto time = parse_duration(written.str(), Zero::kRefused)) {
      out.time = *time;
    } else {
      diagnostics.error(kBadValue, written.span(), time.error().message, time.error().hint);
      append_words(out.how, ", ", plain_words_of(written));
    }
  }
  if (!out.kit.empty()) return out;
  diagnostics.error(kBadValue, line.verb.span,
                    fmt::format("‘{}’ does not say what", line.verb.text),
                    fmt::format("name the kit behind the colon: `{}: hoops`", line.verb.text));
  return std::nullopt;
}

}  // namespace chalkleaf::plan
