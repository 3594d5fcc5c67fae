// See the header.
#include "plan/part_links.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using Link = source::MarkNode::Link;

bool ends_with_md(std::string_view path) {
  return path.size() > 3 && lower_ascii(path.substr(path.size() - 3)) == ".md";
}
std::string_view last_piece(std::string_view path) {
  return path.substr(path.find_last_of('/') + 1);  // npos + 1 is 0
}

// `#heading` and `?query` do not count; nothing for an address on the web or within this file.
std::string_view path_of(const Link& link) {
  std::string_view target = link.target;
  if (link.is_image || target.find("://") != std::string_view::npos ||
      starts_with_ignoring_case(target, "mailto:")) {
    return {};
  }
  return target.substr(0, target.find_first_of("#?"));
}

bool leads_to_part(const Link& link) { return ends_with_md(path_of(link)); }

// A file without its ending, or a folder.
bool may_lead_to_part(const Link& link) {
  const std::string_view path = path_of(link);
  if (path.empty() || path.find(':') != std::string_view::npos) return false;
  return last_piece(path).find('.') == std::string_view::npos;
}

bool has_letters(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80;
  });
}

template <class Leads>
LinksFound find(const source::MarkNode& paragraph, Leads leads) {
  LinksFound out;
  std::size_t at = 0;
  bool more = false;
  for (const Link& link : paragraph.links) {
    if (!leads(link) || link.begin < at) continue;
    const Words text = plain_words_of(paragraph.text.slice(link.begin, link.end));
    out.links.push_back(
        {text.empty() ? Words{link.target, link.span} : text, link.target, link.span});
    more = more || has_letters(paragraph.text.slice(at, link.begin).str());
    at = link.end;
  }
  more = more || has_letters(paragraph.text.slice(at, paragraph.text.str().size()).str());
  out.only_links = !out.links.empty() && !more;
  return out;
}

std::string with_ending(std::string_view path) {
  return fmt::format("{}{}", path, ends_with_md(path) || path.ends_with('/') ? "" : ".md");
}

// `../parts/gym-warm-up.md` is called `gym warm up` when nobody says otherwise.
std::string name_of(std::string_view path) {
  std::string out(last_piece(path));
  if (ends_with_md(out)) out.resize(out.size() - 3);
  std::replace(out.begin(), out.end(), '-', ' ');
  std::replace(out.begin(), out.end(), '_', ' ');
  return out.empty() ? "name" : out;
}

std::string whole_link(std::string_view name, std::string_view path) {
  return fmt::format("`[{}]({})`", trim(name), with_ending(path));
}

bool is_path(std::string_view text) {
  if (text.empty() || text.find("://") != std::string_view::npos) return false;
  if (text.find_first_of(" \t()[]<>") != std::string_view::npos) return false;
  const bool has_name = has_letters(last_piece(text));
  return ends_with_md(text) || (has_name && (text.starts_with("../") || text.starts_with("./") ||
                                             starts_with_ignoring_case(text, "parts/")));
}

LinkSlip not_yet(std::string_view name, std::string_view path) {
  return {"this is not yet a link to a part",
          fmt::format("write {}", whole_link(trim(name).empty() ? name_of(path) : name, path))};
}

// `[name](some path.md)`: Markdown ends the address at the first space, and then sees no link.
LinkSlip spaces_in(std::string_view name, std::string_view path) {
  const std::string whole = with_ending(path);
  const std::string shown = trim(name).empty() ? name_of(path) : std::string(trim(name));
  return {"the address of a link cannot have a space as it is",
          fmt::format("write %20 for each space, `[{0}]({1})`, or put the address in < >, "
                      "`[{0}](<{2}>)`",
                      shown, replace_all(whole, " ", "%20"), whole)};
}

// A line that begins with `[`.
std::optional<LinkSlip> slip_in_brackets(std::string_view raw) {
  if (raw.starts_with("[[") && raw.ends_with("]]")) {
    std::string_view name = trim(raw.substr(2, raw.size() - 4));
    name = name.substr(0, name.find('|'));
    if (name.empty() || name.find_first_of("[]") != std::string_view::npos) return std::nullopt;
    const bool path = name.find('/') != std::string_view::npos;
    return not_yet(
        "", path ? std::string(name) : "../parts/" + replace_all(lower_ascii(name), " ", "-"));
  }
  const std::size_t close = raw.find(']');
  if (close == std::string_view::npos) return std::nullopt;
  const std::string_view name = raw.substr(1, close - 1);
  const std::string_view tail = trim(raw.substr(close + 1));
  if (tail.starts_with('(') && tail.ends_with(')')) {
    const std::string_view path = trim(tail.substr(1, tail.size() - 2));
    if (path.find_first_of("<>\"'()") != std::string_view::npos) return std::nullopt;
    const bool meant = ends_with_md(path) || path.find('/') != std::string_view::npos;
    if (!meant || path.find("://") != std::string_view::npos) return std::nullopt;
    if (path.find(' ') != std::string_view::npos) return spaces_in(name, path);
    return not_yet(name, path);
  }
  std::string_view path = tail;  // `[name](../parts/a.md`, `[name]../parts/a.md`
  while (!path.empty() && (path.front() == '(' || path.front() == ':' || path.front() == ' ')) {
    path.remove_prefix(1);
  }
  while (path.ends_with(')')) path.remove_suffix(1);
  if (tail.starts_with(':') || !is_path(path)) return std::nullopt;
  return not_yet(name, path);
}

}  // namespace

LinksFound part_links(const source::MarkNode& paragraph) {
  LinksFound sure = find(paragraph, leads_to_part);
  if (sure.only_links || !sure.links.empty()) return sure;
  LinksFound likely = find(paragraph, may_lead_to_part);
  return likely.only_links ? likely : sure;
}

std::optional<LinkSlip> link_slip(std::string_view raw) {
  constexpr std::size_t kLongest = 300;  // a line, not an essay
  raw = trim(raw);
  if (raw.empty() || raw.size() > kLongest) return std::nullopt;
  if (raw.starts_with('[')) return slip_in_brackets(raw);
  std::string_view path = raw;
  if (path.starts_with('(') && path.ends_with(')')) path = trim(path.substr(1, path.size() - 2));
  if (!is_path(path)) return std::nullopt;
  return not_yet("", path);
}

}  // namespace chalkleaf::plan
