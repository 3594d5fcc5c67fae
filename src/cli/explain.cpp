// See the header. Tested by tests/mistakes.py.
#include "cli/explain.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "reason/checks.h"

namespace chalkleaf::cli {
namespace {

using reason::CheckInfo;

constexpr std::size_t kColumns = 79;
constexpr std::size_t kIndent = 9;  // behind `Example  `

// The text in lines no wider than the terminal's usual, all but the first indented.
std::string wrapped(std::string_view text, std::size_t indent) {
  std::string out;
  std::size_t column = indent;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t stop = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, stop - at);
    const std::size_t width = display_width(word);
    if (column > indent && column + 1 + width > kColumns) {
      out += "\n" + std::string(indent, ' ');
      column = indent;
    } else if (column > indent) {
      out += ' ';
      ++column;
    }
    out += word;
    column += width;
    at = stop + 1;
  }
  return out;
}

std::string paragraph(std::string_view label, std::string_view text) {
  return fmt::format("{:<{}}{}\n\n", label, kIndent, wrapped(text, kIndent));
}

// Lines as they stand, each indented.
std::string example(std::string_view lines) {
  return fmt::format("{:<{}}{}\n", "Example", kIndent,
                     replace_all(lines, "\n", "\n" + std::string(kIndent, ' ')));
}

std::string whole(const CheckInfo& info) {
  std::string out = fmt::format("{} ({})\n\n", info.name, word_for(info.severity));
  out += paragraph("What", info.what);
  out += paragraph("Why", info.why);
  out += paragraph("Source", info.source);
  out += paragraph("Cure", info.cure);
  out += example(info.example);
  out += "\n";
  out += paragraph(
      "Yours", info.adjustable ? fmt::format("A club may change how serious this is, in club.yaml: "
                                             "‘checks: {{{}: warning}}’ (or error, note, off).",
                                             info.name)
                               : "This one cannot be switched off.");
  out.pop_back();
  return out;
}

std::string list() {
  std::size_t widest = 0;
  for (const CheckInfo& info : reason::all_checks()) widest = std::max(widest, info.name.size());
  std::string out;
  for (const CheckInfo& info : reason::all_checks()) {
    const std::size_t indent = widest + 2 + 9;
    out += fmt::format("{:<{}}{:<9}{}\n", info.name, widest + 2, word_for(info.severity),
                       wrapped(info.what, indent));
  }
  return out + "\nchalkleaf explain NAME says more of one.\n";
}

}  // namespace

tl::expected<std::string, std::string> explain(const std::string& name) {
  if (name.empty()) return list();
  std::vector<std::string> names;
  for (const CheckInfo& info : reason::all_checks()) {
    if (info.name == lower_ascii(name)) return whole(info);
    names.emplace_back(info.name);
  }
  const auto close = closest(name, names);
  return tl::unexpected(
      fmt::format("there is no check ‘{}’{}", name,
                  close ? fmt::format(": did you mean {}?", *close)
                        : std::string("; ‘chalkleaf explain’ alone lists them all")));
}

}  // namespace chalkleaf::cli
