#include "sheet/typography.h"

#include <algorithm>
#include <array>

namespace chalkleaf::sheet {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_space(char c) { return c == ' ' || c == '\n'; }

/// Walks the text once; what is behind and ahead decides each mark.
class Setter {
 public:
  explicit Setter(std::string_view text, std::span<std::size_t> places = {})
      : text_(text), places_(places) {}

  std::string run() {
    while (at_ < text_.size()) {
      move_places();
      step();
    }
    move_places();
    return std::move(out_);
  }

 private:
  // A place inside a mark of several characters goes behind it.
  void move_places() {
    for (; next_place_ < places_.size() && places_[next_place_] <= at_; ++next_place_)
      places_[next_place_] = out_.size();
  }
  char behind(std::size_t n = 1) const { return at_ >= n ? text_[at_ - n] : ' '; }
  char ahead(std::size_t n = 1) const { return at_ + n < text_.size() ? text_[at_ + n] : ' '; }
  void put(std::string_view mark, std::size_t taken) {
    out_ += mark;
    at_ += taken;
  }

  void step() {
    if (const std::size_t address = address_length(); address > 0)
      return put(text_.substr(at_, address), address);
    switch (text_[at_]) {
      case '\'':
        return put(opens() ? "‘" : "’", 1);
      case '"':
        return put(opens() ? "“" : "”", 1);
      case ' ':
        return space();
      case '-':
        return dash();
      case '.':
        return dots();
      case '1':
      case '3':
        return fraction();
      case 'x':
        return times();
      default:
        return put(text_.substr(at_, 1), 1);
    }
  }

  // The address of a page or of a letter box: what stands up to the next space, as it was typed.
  std::size_t address_length() const {
    if (at_ > 0 && !is_space(behind()) && behind() != '(') return 0;
    const std::size_t end = std::min(text_.find_first_of(" \n", at_), text_.size());
    const std::string_view word = text_.substr(at_, end - at_);
    const bool address = word.find("://") != std::string_view::npos || word.starts_with("www.") ||
                         word.find('@') != std::string_view::npos;
    return address ? word.size() : 0;
  }

  // A quotation mark opens after a space or a bracket. An apostrophe before a figure or after a
  // letter never does.
  bool opens() const {
    const bool free = at_ == 0 || is_space(behind()) || behind() == '(' || behind() == '[';
    return free && !is_space(ahead()) && !(text_[at_] == '\'' && is_digit(ahead()));
  }

  void dash() {
    if (ahead() == '-' && ahead(2) != '-' && behind() != '-') return put("–", 2);
    if (is_space(behind()) && is_space(ahead()) && at_ > 0) return put("–", 1);
    if (is_digit(behind()) && is_digit(ahead()) && !in_chain()) return put("–", 1);
    put("-", 1);
  }

  // Whether the figures about this hyphen are joined to more figures: 3-0-1-0, 2026-12-02.
  bool in_chain() const {
    std::size_t left = at_;
    while (left > 0 && is_digit(text_[left - 1])) --left;
    std::size_t right = at_ + 1;
    while (right < text_.size() && is_digit(text_[right])) ++right;
    return (left > 0 && text_[left - 1] == '-') || (right < text_.size() && text_[right] == '-');
  }

  // Three dots and no more are an ellipsis.
  void dots() {
    std::size_t count = 1;
    while (ahead(count) == '.') ++count;
    if (count == 3 && behind() != '.') return put("…", 3);
    put(text_.substr(at_, count), count);
  }

  // 1/2, 1/4 and 3/4 that stand alone; 21/2, 1/2/26 and 1/2a do not.
  void fraction() {
    const bool begins = !is_digit(behind()) && !is_letter(behind()) && !joins_figures(behind());
    const std::string_view rest = text_.substr(at_, 3);
    const char after = ahead(3);
    const bool ends = !is_digit(after) && !is_letter(after) && after != '/' &&
                      !(joins_figures(after) && is_digit(ahead(4)));
    if (begins && ends) {
      if (rest == "1/2") return put("½", 3);
      if (rest == "1/4") return put("¼", 3);
      if (rest == "3/4") return put("¾", 3);
    }
    put(text_.substr(at_, 1), 1);
  }
  static bool joins_figures(char c) { return c == '/' || c == '.' || c == ',' || c == ':'; }

  bool is_times(std::size_t at) const {
    const auto at_or_space = [&](std::size_t i) { return i < text_.size() ? text_[i] : ' '; };
    if (at == 0 || at >= text_.size() || text_[at] != 'x') return false;
    const char before = text_[at - 1];
    const char after = at_or_space(at + 1);
    if (is_digit(before)) return is_digit(after);
    return before == ' ' && at >= 2 && is_digit(text_[at - 2]) && is_space(after);
  }
  void times() { put(is_times(at_) ? "×" : "x", 1); }

  // A line never ends between a number and its unit, about ×, or before a dash.
  void space() { put(holds() ? kNoBreakSpace : " ", 1); }
  bool holds() const {
    const std::string_view rest = text_.substr(at_ + 1);
    const bool dash = rest.starts_with("–") || rest.starts_with("- ") || rest.starts_with("-- ");
    if (dash) return at_ > 0 && !is_space(behind());
    if (is_number_end())
      return is_times(at_ + 1) || rest.starts_with("×") || begins_with_unit(rest);
    return (out_.ends_with("×")) && is_digit(ahead());
  }
  bool is_number_end() const {
    if (is_digit(behind())) return true;
    return out_.ends_with("½") || out_.ends_with("¼") || out_.ends_with("¾");
  }
  static bool begins_with_unit(std::string_view text) {
    constexpr std::array<std::string_view, 24> kUnits = {
        "s",  "sec", "secs", "min",  "mins", "h",    "hr",  "hrs",  "mm", "cm", "m", "km",
        "kg", "g",   "rep",  "reps", "set",  "sets", "lap", "laps", "°C", "°",  "%", "m/s"};
    return std::any_of(kUnits.begin(), kUnits.end(), [&](std::string_view unit) {
      if (!text.starts_with(unit)) return false;
      const char after = text.size() > unit.size() ? text[unit.size()] : ' ';
      return !is_letter(after) && !is_digit(after) && after != '-' && after != '\'';
    });
  }

  std::string_view text_;
  std::span<std::size_t> places_;
  std::size_t next_place_ = 0;
  std::size_t at_ = 0;
  std::string out_;
};

}  // namespace

std::string typographic(std::string_view text) { return Setter(text).run(); }

std::string typographic(std::string_view text, std::span<std::size_t> places) {
  return Setter(text, places).run();
}

}  // namespace chalkleaf::sheet
