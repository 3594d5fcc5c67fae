#include "sheet/typography.h"

namespace chalkleaf::sheet {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_space(char c) { return c == ' ' || c == '\n'; }
// A letter, or a byte of one: every byte past ASCII.
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

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
    switch (text_[at_]) {
      case '\'':
        return put(opens() ? "‘" : "’", 1);
      case '"':
        return put(opens() ? "“" : "”", 1);
      case '-':
        return dash();
      case 'x':
        return times();
      default:
        return put(text_.substr(at_, 1), 1);
    }
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

  void times() {
    const bool spaced =
        is_space(behind()) && is_digit(behind(2)) && is_space(ahead()) && is_digit(ahead(2));
    const bool close = is_digit(behind()) && is_digit(ahead());
    const bool in_word = is_letter(behind()) || is_letter(ahead());
    put((spaced || close) && !in_word ? "×" : "x", 1);
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
