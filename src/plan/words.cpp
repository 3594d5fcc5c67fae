// See the header.
#include "plan/words.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::plan {
namespace {

bool is_space(char c) { return c == ' ' || (c >= '\t' && c <= '\r'); }

bool is_web_page(std::string_view target) {
  return target.find("://") != std::string_view::npos ||
         starts_with_ignoring_case(target, "mailto:");
}

// A sentence begins with a capital, a digit, a quotation mark or a letter beyond ASCII.
bool begins_sentence(char c) {
  return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '"' || c == '\'' || c == '(' ||
         static_cast<unsigned char>(c) >= 0x80;
}

// Behind the mark at `at`: closing quotes and brackets belong to the sentence.
std::size_t behind_closing(std::string_view text, std::size_t at) {
  while (at < text.size()) {
    if (text[at] == '"' || text[at] == '\'' || text[at] == ')' || text[at] == '.' ||
        text[at] == '!' || text[at] == '?') {
      ++at;
    } else if (text.substr(at).starts_with("”") || text.substr(at).starts_with("’")) {
      at += 3;
    } else {
      break;
    }
  }
  return at;
}

}  // namespace

Words plain_words_of(const source::Text& text) {
  Words out = words_of(text);
  out.emphasis.clear();
  return out;
}

void append_words(Words& to, std::string_view between, const Words& more) {
  if (!to.empty() && !more.empty()) to.text += between;
  const std::size_t at = to.text.size();
  to.text += more.text;
  to.span = to.span.joined(more.span);
  for (const Emphasis& one : more.emphasis) {
    to.emphasis.push_back({at + one.begin, at + one.end, one.strong});
  }
}

source::MarkNode without_comments(const source::MarkNode& node) {
  const std::string_view all = node.text.str();
  if (all.find("<!--") == std::string_view::npos) return node;
  source::MarkNode out = node;
  out.text = {};
  // Where each byte of the old text stands in the new one.
  std::vector<std::size_t> moved(all.size() + 1);
  for (std::size_t at = 0; at < all.size();) {
    std::size_t comment = all.find("<!--", at);
    const std::size_t close =
        comment == std::string_view::npos ? comment : all.find("-->", comment);
    if (close == std::string_view::npos) comment = all.size();
    for (std::size_t i = at; i < comment; ++i) moved[i] = out.text.str().size() + i - at;
    out.text.append(node.text.slice(at, comment));
    if (comment == all.size()) break;
    for (std::size_t i = comment; i < close + 3; ++i) moved[i] = out.text.str().size();
    at = close + 3;
  }
  moved[all.size()] = out.text.str().size();
  for (auto& link : out.links) link.begin = moved[link.begin], link.end = moved[link.end];
  return out;
}

source::Text printed_text(const source::MarkNode& node) {
  const source::MarkNode clean = without_comments(node);
  source::Text out;
  std::size_t at = 0;
  for (const auto& link : clean.links) {
    const std::string_view text = std::string_view(clean.text.str()).substr(0, link.end);
    const std::string_view label = text.substr(std::min(link.begin, link.end));
    const bool nameless = link.is_image && trim(label).empty();
    const bool web = !link.is_image && is_web_page(link.target) && label != link.target &&
                     "mailto:" + std::string(label) != link.target;
    if ((!nameless && !web) || link.end < at) continue;
    out.append(clean.text.slice(at, link.end));
    out.append(nameless ? link.target : fmt::format(" ({})", link.target), link.span);
    at = link.end;
  }
  if (at == 0 && out.empty()) return clean.text;
  out.append(clean.text.slice(at, clean.text.str().size()));
  return out;
}

std::vector<Words> sentences_of(const source::Text& text) {
  const std::string_view all = text.str();
  std::vector<Words> out;
  std::size_t begin = 0;
  const auto cut = [&](std::size_t end) {
    Words words = words_of(text.slice(begin, end));
    if (!words.empty()) out.push_back(std::move(words));
    begin = end;
  };
  for (std::size_t at = 0; at < all.size(); ++at) {
    if (all[at] == '\n') cut(at);
    if (all[at] != '.' && all[at] != '!' && all[at] != '?') continue;
    const std::size_t end = behind_closing(all, at + 1);
    std::size_t next = end;
    while (next < all.size() && is_space(all[next])) ++next;
    if (next > end && next < all.size() && begins_sentence(all[next])) cut(end);
    at = end - 1;
  }
  cut(all.size());
  return out;
}

std::string suggestion(std::string_view word, const std::vector<std::string>& known,
                       std::string_view kind) {
  constexpr std::size_t kMostCompared = 200;  // a person's list is shorter
  const std::vector<std::string> first(
      known.begin(),
      known.begin() + static_cast<std::ptrdiff_t>(std::min(known.size(), kMostCompared)));
  if (const auto meant = closest(word, first)) return fmt::format("did you mean `{}`?", *meant);
  constexpr std::size_t kMostNamed = 12;
  std::vector<std::string> quoted;
  for (const std::string& name : known) {
    if (quoted.size() < kMostNamed) quoted.push_back(fmt::format("`{}`", name));
  }
  if (known.size() > kMostNamed)
    quoted.push_back(fmt::format("{} more", known.size() - kMostNamed));
  if (quoted.size() == 1) return fmt::format("there is only {}", quoted[0]);
  return fmt::format("the {} are {}", kind, join_list(quoted));
}

}  // namespace chalkleaf::plan
