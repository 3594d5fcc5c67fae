#include "reason/raw_text.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::reason {
namespace {

void blank(std::string& text, std::size_t begin, std::size_t end) {
  for (std::size_t i = begin; i < std::min(end, text.size()); ++i) {
    if (text[i] != '\n') text[i] = ' ';
  }
}

std::size_t digits(std::string_view line) {
  std::size_t out = 0;
  while (out < line.size() && line[out] >= '0' && line[out] <= '9') ++out;
  return out;
}

// The bytes of `- `, `* `, `1. ` or `1) `; 0 when the line is no list entry.
std::size_t marker(std::string_view line) {
  if (line.size() >= 2 && (line[0] == '-' || line[0] == '*' || line[0] == '+') && line[1] == ' ')
    return 2;
  const std::size_t number = digits(line);
  if (number > 0 && number < 4 && line.size() > number + 1 &&
      (line[number] == '.' || line[number] == ')') && line[number + 1] == ' ')
    return number + 2;
  return 0;
}

// The bytes of `without towel:` or `uses:`, which says nothing of what is done.
std::size_t key_before(std::string_view entry) {
  for (const std::string_view key : {"without ", "uses:", "at:", "figure:", "record:"}) {
    const std::size_t colon = entry.find(':');
    if (entry.starts_with(key) && colon != std::string_view::npos) return colon + 1;
  }
  return 0;
}

// A key of the front matter whose value is prose.
bool is_prose_key(std::string_view line) {
  for (const std::string_view key : {"title:", "safety:", "note:"}) {
    if (line.starts_with(key)) return true;
  }
  return line.starts_with("  ");  // what a piece of kit is
}

RawUnit::Kind front_kind(std::string_view line) {
  if (line.starts_with("title:")) return RawUnit::Kind::kTitle;
  return line.starts_with("  ") ? RawUnit::Kind::kKit : RawUnit::Kind::kFront;
}

}  // namespace

std::string readable(std::string_view text) {
  std::string out(text);
  for (std::size_t at = out.find("<!--"); at != std::string::npos; at = out.find("<!--", at + 1)) {
    const std::size_t end = out.find("-->", at);
    blank(out, at, end == std::string::npos ? out.size() : end + 3);
  }
  for (std::size_t at = out.find("]("); at != std::string::npos; at = out.find("](", at + 1)) {
    const std::size_t end = out.find_first_of(")\n", at);
    if (end != std::string::npos) blank(out, at, end + 1);
  }
  std::replace_if(
      out.begin(), out.end(), [](char c) { return c == '_' || c == '`' || c == '~'; }, ' ');
  for (std::size_t i = 0; i < out.size(); ++i) {
    const bool bullet = out[i] == '*' && i + 1 < out.size() && out[i + 1] == ' ' &&
                        (i == 0 || out[i - 1] == '\n' || out[i - 1] == ' ');
    if (out[i] == '*' && !bullet) out[i] = ' ';
  }
  return out;
}

std::vector<RawUnit> raw_units(std::string_view text) {
  std::vector<RawUnit> out;
  bool front = text.starts_with("---");
  bool open = false;  // the last unit may go on
  std::size_t at = 0;
  bool first = true;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    const std::string_view whole = text.substr(at, end - at);
    const std::size_t indent = std::min(whole.find_first_not_of(" \t"), whole.size());
    const std::string_view line = trim(whole);
    const auto begin_unit = [&](RawUnit::Kind kind, std::size_t skip) {
      out.push_back({kind, static_cast<std::uint32_t>(at + indent + skip),
                     static_cast<std::uint32_t>(end), static_cast<std::uint32_t>(indent)});
    };
    if (front) {
      if (!first && line == "---") front = false;
      const std::size_t colon = line.find(':');
      if (!first && front && is_prose_key(whole) && colon != std::string_view::npos)
        begin_unit(front_kind(whole), colon + 1);
      open = false;
    } else if (line.empty()) {
      open = false;
    } else if (line.front() == '#') {
      begin_unit(RawUnit::Kind::kHeading, std::min(line.find_first_not_of('#'), line.size()));
      open = false;
    } else if (const std::size_t skip = marker(line); skip > 0) {
      begin_unit(RawUnit::Kind::kItem, skip + key_before(line.substr(skip)));
      open = true;
    } else if (line.front() == '>') {
      if (open && out.back().kind == RawUnit::Kind::kQuote) {
        out.back().end = static_cast<std::uint32_t>(end);
      } else {
        begin_unit(RawUnit::Kind::kQuote, 1);
      }
      open = true;
    } else if (open && line.front() != '|') {
      out.back().end = static_cast<std::uint32_t>(end);
    } else {
      begin_unit(RawUnit::Kind::kText, 0);
      open = line.front() != '|';
    }
    first = false;
    at = end + 1;
  }
  return out;
}

}  // namespace chalkleaf::reason
