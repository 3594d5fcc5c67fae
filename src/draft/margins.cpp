// See the header.
#include "draft/margins.h"

#include <string>

#include "base/text.h"
#include "draft/line_scores.h"

namespace chalkleaf::draft {

namespace {

class MarginReader {
 public:
  MarginReader(const Source& source, std::vector<DraftLine>& lines)
      : source_(source), lines_(lines) {}

  void run() {
    find_underlined();
    find_stamps();
    find_numbered();
    find_lettered();
    find_codes();
  }

 private:
  std::vector<DraftLine>& lines() { return lines_; }

  // A short line right above a rule is a heading, unless rules stand all over.
  void find_underlined() {
    constexpr std::uint32_t kLongest = 60;
    for (std::size_t i = 0; i + 1 < lines().size(); ++i) {
      Line& line = lines()[i].line;
      const bool under = lines()[i + 1].line.rule && !line.blank && line.mark == Line::Mark::kNone;
      const bool above = i > 0 && lines()[i - 1].line.rule;
      if (!under || above || line.end - line.begin > kLongest) continue;
      line.mark = Line::Mark::kHash;
      line.level = i == 0 ? 1 : 2;
    }
  }

  // `A1 jog`, `A2 kicks`, `B1 …`: codes that count lines, from 1 within each letter.
  void find_codes() {
    std::vector<DraftLine*> found;
    char letter = 0;
    char next = '1';
    for (DraftLine& one : lines()) {
      const std::string_view text = one.line.words(source_);
      const bool code = !one.line.blank && one.line.mark == Line::Mark::kNone && !one.line.clock &&
                        text.size() > 4 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= '1' &&
                        text[1] <= '9' && (text[2] == ' ' || text[2] == ')' || text[2] == '.');
      if (!code) continue;
      if (text[0] != letter) next = '1';
      letter = text[0];
      if (text[1] != next++) return;
      found.push_back(&one);
    }
    if (found.size() < 4) return;
    for (DraftLine* one : found) {
      one->line.mark = Line::Mark::kNumber;
      one->line.level = 2;
      one->line.text += 2;
      while (one->line.text < one->line.end &&
             std::string_view(" ).:").find(source_.text()[one->line.text]) !=
                 std::string_view::npos)
        ++one->line.text;
      one->from = one->line.text;
    }
  }

  // `[18:05] hollow hold 30 s`: each a minute or so behind the last, it is when a message was sent;
  // else the plan's clock.
  void find_stamps() {
    constexpr int kSoon = 4;  // minutes
    struct Stamp {
      Line* line;
      Clock clock;
      std::size_t size;
    };
    std::vector<Stamp> found;
    bool sent = true;
    for (DraftLine& one : lines()) {
      const std::string_view text = one.line.words(source_);
      if (one.line.blank || !text.starts_with('[')) continue;
      const auto read = read_clock(text.substr(1));
      if (!read || !text.substr(1 + read->size).starts_with(']')) continue;
      const int later = found.empty() ? 0 : read->clock.minutes - found.back().clock.minutes;
      if (later < 0) return;
      sent = sent && later <= kSoon;
      std::size_t size = read->size + 2;
      while (size < text.size() && text[size] == ' ') ++size;
      found.push_back({&one.line, read->clock, size});
    }
    if (found.size() < 3) return;
    for (const Stamp& one : found) {
      one.line->text += static_cast<std::uint32_t>(one.size);
      if (!sent) one.line->clock = one.clock;
    }
  }

  // `A) PREP – 10 MIN`, `B) EMOM 12 MIN`: letters in their order, with what is done below each.
  void find_lettered() {
    std::vector<std::size_t> found;
    std::size_t between = 0;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      const Line& line = lines()[i].line;
      if (line.blank || line.table) continue;
      const std::string_view text = trim(source_.text().substr(line.begin, line.end - line.begin));
      const bool lettered = text.size() > 3 && text[0] == static_cast<char>('A' + found.size()) &&
                            (text[1] == ')' || text[1] == '.') && text[2] == ' ';
      if (lettered) found.push_back(i);
      between += !lettered && !found.empty() ? 1 : 0;
    }
    if (found.size() < 3 || between < found.size()) return;
    for (const std::size_t i : found) {
      Line& line = lines()[i].line;
      line.mark = Line::Mark::kHash;
      line.level = 2;
      line.text = static_cast<std::uint32_t>(source_.text().find(
                      ' ', source_.text().find_first_not_of(" \t", line.begin))) +
                  1;
      lines()[i].from = line.text;
    }
  }

  // `1 rope walk`, …, `2 bottle jumps`: bare numbers that count lines, three or more of them.
  void find_numbered() {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      Line& line = lines()[i].line;
      const bool clock = line.clock && line.clock_end == 0;
      if (line.blank || line.mark != Line::Mark::kNone || clock) continue;
      const std::string_view text = line.words(source_);
      const std::size_t next = found.size() + 1;
      const std::string number = std::to_string(next) + " ";
      // `s1 safety vault`
      const std::size_t letter = !text.empty() && text[0] == 's' ? 1 : 0;
      if (text.substr(letter).starts_with(number) && text.size() > number.size() + letter &&
          is_letter(text[number.size() + letter])) {
        found.push_back(i);
      }
    }
    if (found.size() < 3) return;
    for (std::size_t n = 0; n < found.size(); ++n) {
      Line& line = lines()[found[n]].line;
      line.mark = Line::Mark::kNumber;
      const std::uint32_t letter = source_.text()[line.text] == 's' ? 1 : 0;
      line.text += letter + static_cast<std::uint32_t>(std::to_string(n + 1).size() + 1);
      lines()[found[n]].from = line.text;
    }
  }

  const Source& source_;
  std::vector<DraftLine>& lines_;
};

}  // namespace

void mark_margins(const Source& source, std::vector<DraftLine>& lines) {
  MarginReader(source, lines).run();
}

bool quotes_are_bullets(const Lexicon& words, const Source& source,
                        const std::vector<DraftLine>& lines) {
  std::size_t quotes = 0;
  std::size_t dosed = 0;
  for (const DraftLine& one : lines) {
    if (one.line.mark != Line::Mark::kQuote) continue;
    ++quotes;
    const std::string_view text = one.line.words(source).substr(0, kLongestLine);
    dosed += read_drills(words, text, {}).has_dose() ? 1 : 0;
  }
  return quotes > 2 && dosed * 2 > quotes;
}

}  // namespace chalkleaf::draft
