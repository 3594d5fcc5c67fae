// See the header.
#include "source/yaml_spans.h"

namespace chalkleaf::source {
namespace {

std::size_t indent_of(std::string_view line) {
  const std::size_t n = line.find_first_not_of(' ');
  return n == std::string_view::npos ? line.size() : n;
}

}  // namespace

std::size_t plain_end(std::string_view yaml, std::size_t begin, std::string_view value) {
  std::size_t at = begin;
  for (std::size_t i = 0; i < value.size() && at < yaml.size();) {
    if (yaml[at] == value[i] && !is_blank(value[i])) {
      ++at;
      ++i;
    } else if (is_blank(value[i]) && is_blank(yaml[at])) {
      while (i < value.size() && is_blank(value[i])) ++i;
      while (at < yaml.size() && is_blank(yaml[at])) ++at;
    } else {
      break;  // not what we were told: point at what did match
    }
  }
  return at;
}

std::optional<std::size_t> quoted_end(std::string_view yaml, std::size_t begin) {
  const char quote = yaml[begin];
  for (std::size_t at = begin + 1; at < yaml.size(); ++at) {
    if (quote == '"' && yaml[at] == '\\') {
      ++at;
    } else if (yaml[at] == quote) {
      if (quote == '"' || at + 1 >= yaml.size() || yaml[at + 1] != quote) return at + 1;
      ++at;  // '' is an apostrophe
    }
  }
  return std::nullopt;
}

std::size_t block_end(std::string_view yaml, std::size_t begin) {
  std::size_t at = yaml.find('\n', begin);
  if (at == std::string_view::npos) at = yaml.size();
  std::size_t end = at;  // of the header line, should no content follow
  std::optional<std::size_t> indent;
  while (at < yaml.size()) {
    const std::size_t start = at + 1;
    std::size_t stop = yaml.find('\n', start);
    if (stop == std::string_view::npos) stop = yaml.size();
    std::string_view line = yaml.substr(start, stop - start);
    while (!line.empty() && is_blank(line.back())) line.remove_suffix(1);
    if (!line.empty()) {
      if (!indent) indent = indent_of(line);
      if (*indent == 0 || indent_of(line) < *indent) break;
      end = start + line.size();
    }
    at = stop;
  }
  while (end > begin && is_blank(yaml[end - 1])) --end;
  return end;
}

std::size_t skip_blank(std::string_view yaml, std::size_t at) {
  while (at < yaml.size()) {
    if (is_blank(yaml[at])) {
      ++at;
    } else if (yaml[at] == '#') {
      at = yaml.find('\n', at);
      if (at == std::string_view::npos) return yaml.size();
    } else {
      break;
    }
  }
  return at;
}

}  // namespace chalkleaf::source
