// See the header.
#include "draft/markdown_text.h"

#include "base/text.h"

namespace chalkleaf::draft {

std::string escaped(std::string_view text) {
  static constexpr std::string_view kSpecial = "\\`*_[]<>&~";
  std::string out;
  for (const char c : text) {
    if (kSpecial.find(c) != std::string_view::npos) out += '\\';
    out += c;
  }
  return out;
}

std::string escaped_line(std::string_view text) {
  std::string out = escaped(trim(text));
  if (out.empty()) return out;
  std::size_t digits = 0;
  while (digits < out.size() && out[digits] >= '0' && out[digits] <= '9') ++digits;
  if (digits > 0 && digits < out.size() && (out[digits] == '.' || out[digits] == ')')) {
    out.insert(digits, "\\");
  } else if (std::string_view("#-+=|:").find(out[0]) != std::string_view::npos) {
    out.insert(0, "\\");
  }
  return out;
}

std::string with_capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

std::string yaml_string(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c == '\t' ? ' ' : c;
  }
  return out + "\"";
}

std::string name_text(std::string_view name) {
  std::string out;
  for (const char c : trim(name)) {
    if (c == ':') {
      out += " –";
    } else if (c == '\t') {
      out += ' ';
    } else {
      out += c;
    }
  }
  const auto is_loose = [](char c) {
    return c == ' ' || c == ',' || c == '-' || c == '.' || c == ';' || c == '/';
  };
  while (!out.empty() && is_loose(out.back())) out.pop_back();
  std::size_t begin = 0;
  while (begin < out.size() && is_loose(out[begin])) ++begin;
  return out.substr(begin);
}

}  // namespace chalkleaf::draft
