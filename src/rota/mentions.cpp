// See the header.
#include "rota/mentions.h"

#include <algorithm>
#include <charconv>

#include "base/text.h"
#include "rota/interpret.h"
#include "rota/table.h"

namespace chalkleaf::rota {
namespace {

int number_of(const Token& token) {
  int out = 0;
  std::from_chars(token.text.data(), token.text.data() + token.text.size(), out);
  return out;
}

bool has_capital(std::string_view text, const Token& token) {
  return text[token.begin] >= 'A' && text[token.begin] <= 'Z';
}

// `groups: …`: the words behind a key of the notation, nothing where the line has another.
std::optional<std::string_view> behind_key(std::string_view text, std::string_view key) {
  if (!starts_with_ignoring_case(text, key)) return std::nullopt;
  std::string_view rest = trim(text.substr(key.size()));
  if (!rest.starts_with(':')) return std::nullopt;
  return trim(rest.substr(1));
}

/// Reads what lines say of groups and stations.
class MentionReader {
 public:
  MentionReader(const Source& source, const std::vector<Line>& lines, const Words& words,
                Rotation& rotation)
      : source_(source), lines_(lines), words_(words), out_(rotation), mentions_(words, rotation) {}

  void run() {
    for (const Line& line : lines_) {
      const bool own = out_.form == Rotation::Form::kOrder;
      const bool grid =
          std::find(out_.lines.begin(), out_.lines.end(), line.number) != out_.lines.end();
      if (line.blank || line.end - line.begin > 300) continue;
      if (grid && line.pipe) {
        row_labels(line);
        continue;
      }
      if (grid && !own) {
        if (!line.pipe) row_labels(line);
        continue;
      }
      this->line(line);
    }
  }

 private:
  void line(const Line& line) {
    const std::string_view text = line.words(source_);
    const std::vector<Token> tokens = tokens_of(text);
    const std::vector<Mention> found = mentions_.in(text, tokens);
    all_of_one_size(tokens);
    if (const auto rest = behind_key(text, "rest")) {
      const std::vector<Token> number = tokens_of(*rest);
      if (!number.empty() && number[0].is_number()) out_.stays_out = number_of(number[0]);
      return;
    }
    if (hall(text)) return;
    if (rule(line, text)) return;
    if (found.empty()) return;
    takes(tokens, found);
    sizes(line, text, tokens, found);
    hours(text, tokens, found);
    often(tokens, found);
    if (!behind_key(text, "groups")) coaches(line, text);
  }

  // `A (6)`: in the grid's own names.
  void row_labels(const Line& line) {
    const std::string_view text = source_.text().substr(line.begin, line.end - line.begin);
    const std::vector<Token> tokens = tokens_of(text);
    for (const Mention& one : mentions_.in(text, tokens)) {
      if (one.what != Mention::What::kGroup) continue;
      const std::size_t open = one.at + one.size;
      const bool bracket = open + 2 < tokens.size() && tokens[open].text == "(" &&
                           tokens[open + 1].is_number() && tokens[open + 2].text == ")";
      if (bracket) set_size(one.which, number_of(tokens[open + 1]));
    }
  }

  void set_size(std::size_t group, int size) {
    constexpr int kMost = 40;
    if (size > 0 && size <= kMost && !out_.groups[group].size) out_.groups[group].size = size;
  }

  // `4 groups of 5`
  void all_of_one_size(const std::vector<Token>& tokens) {
    for (std::size_t i = 0; i + 2 < tokens.size(); ++i) {
      if (match(words_.group, tokens, i) == 0 || tokens[i + 1].text != "of" ||
          !tokens[i + 2].is_number())
        continue;
      for (std::size_t g = 0; g < out_.groups.size(); ++g) set_size(g, number_of(tokens[i + 2]));
    }
  }

  void sizes(const Line& line, std::string_view text, const std::vector<Token>& tokens,
             const std::vector<Mention>& found) {
    const auto groups = std::count_if(found.begin(), found.end(), [](const Mention& one) {
      return one.what == Mention::What::kGroup;
    });
    if (groups < 2 && !behind_key(text, "groups")) return;
    for (const Mention& one : found) {
      const std::size_t end = one.at + one.size;
      const bool bracket = end < tokens.size() && tokens[end].text == "(";
      if (one.what == Mention::What::kGroup && (!line.clock || bracket)) size_behind(tokens, one);
    }
  }
  // Up to the next name: a number that is no age and no clock.
  void size_behind(const std::vector<Token>& tokens, const Mention& one) {
    constexpr std::size_t kFar = 9;
    bool open = false;
    for (std::size_t i = one.at + one.size; i < std::min(tokens.size(), one.at + one.size + kFar);
         ++i) {
      const Token& token = tokens[i];
      open = open || token.text == "(";
      if (token.text == "," || token.text == ";" || token.text == ".") return;
      if (!token.is_number()) continue;
      const auto sign = [&](std::size_t k, std::string_view text) {
        return k < tokens.size() && tokens[k].text == text;
      };
      const bool range =
          sign(i + 1, "-") || sign(i + 1, "–") ||
          (i > 0 && (sign(i - 1, "-") || sign(i - 1, "–")) && i > 1 && tokens[i - 2].is_number());
      const bool clock =
          ((sign(i + 1, ".") || sign(i + 1, ":")) && i + 2 < tokens.size() &&
           tokens[i + 2].is_number()) ||
          ((sign(i - 1, ".") || sign(i - 1, ":")) && i > 1 && tokens[i - 2].is_number());
      const bool age = match(words_.years, tokens, i + 1) > 0;
      const bool dose = sign(i + 1, "x") || sign(i - 1, "x");
      const bool behind =
          i == one.at + one.size || sign(i - 1, "(") || sign(i - 1, "=") || sign(i - 1, ":");
      if (range || clock || age || dose) continue;
      if (behind || open || match(words_.children, tokens, i + 1) > 0) {
        set_size(one.which, number_of(token));
        return;
      }
    }
  }

  // `Juniors finish 19:15`, `C 4 from 9.55`
  void hours(std::string_view text, const std::vector<Token>& tokens,
             const std::vector<Mention>& found) {
    for (const Mention& one : found) {
      if (one.what != Mention::What::kGroup) continue;
      constexpr std::size_t kFar = 6;
      for (std::size_t i = one.at + one.size; i < std::min(tokens.size(), one.at + one.size + kFar);
           ++i) {
        if (tokens[i].text == ",") break;
        const std::size_t from = match(words_.from, tokens, i);
        const std::size_t until = match(words_.until, tokens, i);
        const std::size_t n = std::max(from, until);
        if (n == 0 || i + n >= tokens.size()) continue;
        const auto clock = read_clock(text.substr(tokens[i + n].begin));
        if (!clock) continue;
        (from >= until ? out_.groups[one.which].from : out_.groups[one.which].until) =
            clock->clock.minutes;
        break;
      }
    }
  }

  // `Oaks get beam twice and no vault`, `beam twice for F`
  void often(const std::vector<Token>& tokens, const std::vector<Mention>& found) {
    const auto near = [&](const Mention& station, std::string_view word) {
      const std::size_t end = station.at + station.size;
      return (end < tokens.size() && tokens[end].text == word) ||
             (station.at > 0 && tokens[station.at - 1].text == word);
    };
    std::optional<std::size_t> group;  // the one named last
    for (const Mention& one : found) {
      if (one.what == Mention::What::kGroup) {
        group = one.which;
        continue;
      }
      const bool no =
          one.at > 0 && (tokens[one.at - 1].text == "no" || tokens[one.at - 1].text == "skip");
      const bool twice = near(one, "twice");
      std::optional<std::size_t> whose = group;
      const std::size_t end = one.at + one.size + (twice ? 1 : 0);
      const auto behind = std::find_if(found.begin(), found.end(), [&](const Mention& other) {
        return other.what == Mention::What::kGroup && other.at == end + 1 &&
               tokens[end].text == "for";
      });
      if (behind != found.end()) whose = behind->which;
      if (!whose) continue;
      if (twice) out_.groups[*whose].twice.push_back(one.which);
      if (no) out_.groups[*whose].skips.push_back(one.which);
    }
  }

  // `beam max 6`, `no more than 6 on beam`
  void takes(const std::vector<Token>& tokens, const std::vector<Mention>& found) {
    for (std::size_t at = 0; at < tokens.size(); ++at) {
      const std::size_t n = match(words_.most, tokens, at);
      if (n == 0) continue;
      // The number is behind the word, or just before it: `6 max on beam`.
      std::optional<std::size_t> number;
      if (at + n < tokens.size() && tokens[at + n].is_number()) number = at + n;
      if (!number && at > 0 && tokens[at - 1].is_number()) number = at - 1;
      if (!number || number_of(tokens[*number]) == 0 || number_of(tokens[*number]) > 60) continue;
      if (match(words_.minutes, tokens, *number + 1) > 0) continue;
      const Mention* nearest = nullptr;
      constexpr std::size_t kFar = 5;
      const auto off = [&](const Mention& one) {
        return one.at > *number ? one.at - *number : *number - one.at;
      };
      for (const Mention& one : found) {
        if (one.what != Mention::What::kStation || off(one) > kFar) continue;
        if (nearest == nullptr || off(one) < off(*nearest)) nearest = &one;
      }
      if (nearest != nullptr) out_.stations[nearest->which].takes = number_of(tokens[*number]);
    }
  }

  bool hall(std::string_view text) {
    if (!starts_with_ignoring_case(text, "hall ")) return false;
    const std::size_t colon = text.find(':');
    if (colon > 30) return false;  // npos, where there is no colon, is longer too
    const std::string_view rest = text.substr(colon + 1);
    const std::vector<Token> tokens = tokens_of(rest);
    const std::vector<Mention> found = mentions_.in(rest, tokens);
    if (found.empty()) return false;
    const std::size_t which = out_.halls.size();
    out_.halls.emplace_back(trim(text.substr(0, colon)));
    for (const Mention& one : found) {
      if (one.what == Mention::What::kStation) out_.stations[one.which].hall = which;
    }
    return true;
  }

  bool rule(const Line& line, std::string_view text) {
    for (const std::string_view key : {"musts", "must", "wishes", "wish"}) {
      const auto rest = behind_key(text, key);
      if (!rest) continue;
      Rule made = read_rule(words_, out_, *rest);
      made.weight = key[0] == 'm' ? Rule::Weight::kMust : Rule::Weight::kWish;
      made.span = {&source_, static_cast<std::uint32_t>(line.end - rest->size()), line.end};
      out_.rules.push_back(std::move(made));
      return true;
    }
    return false;
  }

  /// One coach and what he or she has.
  struct Pair {
    std::string name;
    Span span;
    std::vector<Mention> has;
  };

  // `Jo vault / Sam bars`, `Dana = bars`, `Lene goes with the Oaks`
  void coaches(const Line& line, std::string_view text) {
    const auto keyed = behind_key(text, "coaches");
    std::size_t from = keyed ? static_cast<std::size_t>(keyed->data() - text.data()) : 0;
    // `Main: Ezra vault, …`
    if (const std::size_t colon = text.find(':'); !keyed && colon < 16 && text.find(',') > colon)
      from = colon + 1;
    std::vector<Pair> found;
    std::size_t begin = from;
    for (std::size_t i = from; i <= text.size(); ++i) {
      std::size_t size = 0;
      for (const std::string_view mark : {",", ";", " / ", ". ", " and "}) {
        if (text.substr(i).starts_with(mark)) size = std::max(size, mark.size());
      }
      if (size == 0 && i < text.size()) continue;
      piece(line, text.substr(begin, i - begin), found, keyed.has_value());
      begin = i + std::max<std::size_t>(size, 1);
    }
    if (found.size() < 2 && !keyed) return;
    for (Pair& one : found) add(std::move(one));
  }

  void piece(const Line& line, std::string_view text, std::vector<Pair>& found, bool keyed) {
    const std::vector<Token> tokens = tokens_of(text);
    const std::vector<Mention> has = mentions_.in(text, tokens);
    if (has.empty()) return;
    if (has.front().at == 0 && group_with(text, tokens, has.front(), found)) return;
    if (has.front().at == 0) {  // `…, floor`: of the coach before it
      if (!found.empty() && has.front().size == tokens.size())
        found.back().has.insert(found.back().has.end(), has.begin(), has.end());
      return;
    }
    std::size_t name = 0;
    if (match(words_.coach, tokens, 0) > 0 && tokens[0].text.size() > 1) ++name;
    std::size_t end = name;
    while (end < has.front().at && end < name + 2 && tokens[end].is_word() &&
           match(words_.at, tokens, end) == 0 && match(words_.with, tokens, end) == 0)
      ++end;
    if (end == name) return;
    const bool person = has_capital(text, tokens[name]) || tokens[name].text == "me" || keyed;
    if (!person) return;
    for (std::size_t i = end; i < has.front().at; ++i) {
      const bool link = match(words_.at, tokens, i) > 0 || match(words_.with, tokens, i) > 0 ||
                        tokens[i].text == "the" || tokens[i].text == "/" || tokens[i].text == "(" ||
                        (i > 0 && match(words_.with, tokens, i - 1) > 1);
      if (!link) return;
    }
    Pair made;
    const std::size_t offset = static_cast<std::size_t>(text.data() - source_.text().data());
    made.name = std::string(text.substr(tokens[0].begin, tokens[end - 1].end - tokens[0].begin));
    made.span = {&source_, static_cast<std::uint32_t>(offset + tokens[0].begin),
                 static_cast<std::uint32_t>(offset + tokens[end - 1].end)};
    // What is named one behind another; `beam + keeps an eye on floor` is beam.
    std::size_t next = has.front().at;
    for (const Mention& one : has) {
      const bool linked =
          one.at == next ||
          (one.at == next + 1 &&
           (tokens[next].text == "/" || tokens[next].text == "+" || tokens[next].text == "&"));
      if (!linked) break;
      made.has.push_back(one);
      next = one.at + one.size;
    }
    (void)line;
    found.push_back(std::move(made));
  }

  // `G1 (4 boys) w/ Ray`
  bool group_with(std::string_view text, const std::vector<Token>& tokens, const Mention& group,
                  std::vector<Pair>& found) const {
    if (group.what != Mention::What::kGroup) return false;
    std::size_t at = group.at + group.size;
    if (at < tokens.size() && tokens[at].text == "(") {
      while (at < tokens.size() && tokens[at].text != ")") ++at;
      ++at;
    }
    std::size_t n = at < tokens.size() ? match(words_.with, tokens, at) : 0;
    if (n > 0 && at + n < tokens.size() && tokens[at + n].text == "/") ++n;
    const std::size_t name = at + n;
    if (n == 0 || name >= tokens.size() || !tokens[name].is_word()) return false;
    if (!has_capital(text, tokens[name]) && tokens[name].text != "me") return false;
    const auto offset = static_cast<std::size_t>(text.data() - source_.text().data());
    Pair made;
    made.name = std::string(text.substr(tokens[name].begin, tokens[name].end - tokens[name].begin));
    made.span = {&source_, static_cast<std::uint32_t>(offset + tokens[name].begin),
                 static_cast<std::uint32_t>(offset + tokens[name].end)};
    made.has.push_back(group);
    found.push_back(std::move(made));
    return true;
  }

  void add(Pair pair) {
    const auto known = std::find_if(
        out_.coaches.begin(), out_.coaches.end(),
        [&](const Coach& one) { return lower_ascii(one.name.text) == lower_ascii(pair.name); });
    if (known != out_.coaches.end()) return;
    Coach made;
    made.name = {pair.name, pair.span};
    for (const Mention& one : pair.has) {
      auto& list = one.what == Mention::What::kGroup ? made.groups : made.stations;
      if (std::find(list.begin(), list.end(), one.which) == list.end()) list.push_back(one.which);
    }
    out_.coaches.push_back(std::move(made));
  }

  const Source& source_;
  const std::vector<Line>& lines_;
  const Words& words_;
  Rotation& out_;
  Mentions mentions_;
};

}  // namespace

Mentions::Mentions(const Words& words, const Rotation& rotation) : words_(words) {
  for (std::size_t i = 0; i < rotation.groups.size(); ++i) {
    add(Mention::What::kGroup, i, rotation.groups[i].name.text);
  }
  for (std::size_t i = 0; i < rotation.stations.size(); ++i) {
    add(Mention::What::kStation, i, rotation.stations[i].name.text);
  }
  // The longest first, so that `Reds 2` is not taken for `Reds`.
  std::stable_sort(known_.begin(), known_.end(), [](const Known& a, const Known& b) {
    return a.tokens.size() > b.tokens.size();
  });
}

void Mentions::add(Mention::What what, std::size_t which, std::string_view name) {
  const std::string key = key_of(words_, name);
  std::vector<std::string> all;
  for (const Token& token : tokens_of(key)) all.push_back(token.text);
  if (all.empty()) return;
  known_.push_back({what, which, all});
  const auto also = [&](const std::string& word) {
    const bool there = std::any_of(known_.begin(), known_.end(), [&](const Known& one) {
      return one.tokens == std::vector{word};
    });
    if (!there) known_.push_back({what, which, {word}});
  };
  if (all.size() == 1) {
    if (all[0].size() > 2)
      also(all[0].ends_with('s') ? all[0].substr(0, all[0].size() - 1) : all[0] + "s");
  }
  if (what != Mention::What::kStation) return;
  for (const std::string& word : all) {
    const bool place = match(words_.stations, {{word, 0, word.size()}}, 0) == 1;
    if (place && all.size() > 1) also(word);
    for (const auto& pair : words_.same) {
      if (pair.size() == 2 && pair[0] == word && place) also(pair[1]);
      if (pair.size() == 2 && pair[1] == word && place) also(pair[0]);
    }
  }
}

std::vector<Mention> Mentions::in(std::string_view text, const std::vector<Token>& tokens) const {
  std::vector<Mention> out;
  for (std::size_t at = 0; at < tokens.size(); ++at) {
    for (const Known& one : known_) {
      if (at + one.tokens.size() > tokens.size()) continue;
      const bool same = std::equal(
          one.tokens.begin(), one.tokens.end(), tokens.begin() + static_cast<std::ptrdiff_t>(at),
          [](const std::string& a, const Token& b) { return a == b.text; });
      if (!same) continue;
      // A letter names a group only where it is a capital; `A` may be an article.
      const bool letter = one.tokens.size() == 1 && one.tokens[0].size() == 1;
      if (letter && one.what == Mention::What::kGroup && !has_capital(text, tokens[at])) continue;
      out.push_back({one.what, one.which, at, one.tokens.size()});
      at += one.tokens.size() - 1;
      break;
    }
  }
  return out;
}

std::optional<std::size_t> Mentions::station_of_title(std::string_view title) const {
  const std::vector<Token> tokens = tokens_of(title);
  const std::vector<Mention> found = in(title, tokens);
  for (const Mention& one : found) {
    if (one.what == Mention::What::kStation && one.at == 0) return one.which;
  }
  return std::nullopt;
}

void read_mentions(const Source& source, const std::vector<Line>& lines, const Words& words,
                   Rotation& rotation) {
  MentionReader(source, lines, words, rotation).run();
}

}  // namespace chalkleaf::rota
