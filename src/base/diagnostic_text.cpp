#include "base/diagnostic_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/text.h"

namespace chalkleaf {
namespace {

constexpr std::size_t kWidestLine = 100;  // longer source lines are cut around the caret

struct Palette {
  std::string_view red, yellow, blue, bold, off;
};
constexpr Palette kPlainPalette{"", "", "", "", ""};
constexpr Palette kAnsiPalette{"\x1b[1;31m", "\x1b[1;33m", "\x1b[1;34m", "\x1b[1m", "\x1b[0m"};

std::string_view colour_of(Severity severity, const Palette& p) {
  switch (severity) {
    case Severity::kError:
      return p.red;
    case Severity::kWarning:
      return p.yellow;
    case Severity::kNote:
      break;
  }
  return p.blue;
}

// The source line with carets under the span. Tabs are shown as one space so that carets line up.
std::string excerpt(const Span& span, const Palette& p, std::string_view caret_colour,
                    std::string_view label) {
  const LineColumn at = span.source->line_column(span.begin);
  std::string_view line = span.source->line(at.line);
  std::size_t from = span.begin - span.source->line_start(at.line);
  from = std::min(from, line.size());
  std::size_t to = std::clamp<std::size_t>(from + span.size(), from, line.size());
  std::string_view lead;
  if (from > kWidestLine / 2) {  // cut on the left, at a character's first byte
    std::size_t cut = from - kWidestLine / 2;
    while (cut < from && (static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U) ++cut;
    line.remove_prefix(cut);
    from -= cut;
    to -= cut;
    lead = "…";
  }
  std::string_view tail;
  if (line.size() > kWidestLine) {
    std::size_t cut = kWidestLine;
    while (cut > 0 && (static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U) --cut;
    line = line.substr(0, cut);
    from = std::min(from, cut);
    to = std::min(to, cut);
    tail = "…";
  }
  const std::string number = std::to_string(at.line);
  const std::string margin(number.size(), ' ');
  const std::size_t indent = display_width(lead) + display_width(printable(line.substr(0, from)));
  const std::size_t carets =
      std::max<std::size_t>(1, display_width(printable(line.substr(from, to - from))));
  std::string out =
      fmt::format(" {}{} |{} {}{}{}\n", p.blue, number, p.off, lead, printable(line), tail);
  out +=
      fmt::format(" {}{} |{} {}{}{}{}{}{}\n", p.blue, margin, p.off, std::string(indent, ' '),
                  caret_colour, std::string(carets, '^'), label.empty() ? "" : " ", label, p.off);
  return out;
}

std::string position(const Span& span) {
  if (!span) return {};
  const LineColumn at = span.source->line_column(span.begin);
  return fmt::format("{}:{}:{}", span.source->path(), at.line, at.column);
}

// The position as a message begins with it; nothing for a diagnostic that is nowhere.
std::string lead_in(const Span& span) {
  return span ? printable(position(span)) + ": " : std::string();
}

std::string render_human(const Diagnostic& d, const Palette& p) {
  const std::string_view colour = colour_of(d.severity, p);
  std::string out = fmt::format("{}{}{}{}{}{}: {} [{}]\n", p.bold, lead_in(d.span), p.off, colour,
                                word_for(d.severity), p.off, printable(d.message), d.name);
  if (d.span) out += excerpt(d.span, p, colour, "");
  for (const Label& label : d.labels) {
    if (!label.span) continue;
    out += fmt::format(" {}{}{}\n", p.blue, printable(position(label.span)), p.off);
    out += excerpt(label.span, p, p.blue, printable(label.message));
  }
  if (!d.hint.empty()) out += fmt::format(" {}change:{} {}\n", p.bold, p.off, printable(d.hint));
  return out;
}

std::string render_short(const Diagnostic& d) {
  std::string out = fmt::format("{}{}: {} [{}]", lead_in(d.span), word_for(d.severity),
                                printable(d.message), d.name);
  if (!d.hint.empty()) out += fmt::format("; {}", printable(d.hint));
  return out + "\n";
}

void add_place(nlohmann::ordered_json& out, const Span& span) {
  LineColumn from{0, 0};
  LineColumn to{0, 0};
  if (span) {
    from = span.source->line_column(span.begin);
    to = span.source->line_column(span.end);
  }
  out["path"] = span ? span.source->path() : "";
  out["line"] = from.line;
  out["column"] = from.column;
  out["end_line"] = to.line;
  out["end_column"] = to.column;
}

std::string render_json(const Diagnostic& d) {
  nlohmann::ordered_json out;
  out["schema"] = kMessageSchema;
  out["name"] = d.name;
  out["severity"] = word_for(d.severity);
  add_place(out, d.span);
  out["message"] = d.message;
  out["hint"] = d.hint;
  out["labels"] = nlohmann::ordered_json::array();
  for (const Label& label : d.labels) {
    nlohmann::ordered_json entry;
    add_place(entry, label.span);
    entry["message"] = label.message;
    out["labels"].push_back(std::move(entry));
  }
  if (!d.edits.empty()) out["edits"] = nlohmann::ordered_json::array();
  for (const Edit& edit : d.edits) {
    nlohmann::ordered_json entry;
    add_place(entry, edit.span);
    entry["text"] = edit.text;
    out["edits"].push_back(std::move(entry));
  }
  // A path or a quoted word may not be UTF-8; the line must still be JSON. ASCII only, so that no
  // control character reaches a terminal.
  return out.dump(-1, ' ', true, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace

std::string printable(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const auto [code, size] = decode_utf8(text, i);
    if (code == '\t') {
      out += ' ';
    } else if (code < 0x20 || code == 0x7F || (code >= 0x80 && code < 0xA0) || code == 0x061C ||
               code == 0x200E || code == 0x200F || (code >= 0x2028 && code <= 0x202E) ||
               (code >= 0x2066 && code <= 0x2069)) {
      append_utf8(out, 0xFFFD);
    } else {
      append_utf8(out, code);
    }
    i += size;
  }
  return out;
}

std::string printable_lines(std::string_view text) {
  std::string out;
  for (std::size_t end; (end = text.find('\n')) != std::string_view::npos;) {
    out += printable(text.substr(0, end)) + '\n';
    text.remove_prefix(end + 1);
  }
  return out += printable(text);
}

std::string render(const Diagnostic& diagnostic, MessageStyle style, Colouring colouring) {
  switch (style) {
    case MessageStyle::kShort:
      return render_short(diagnostic);
    case MessageStyle::kJson:
      return render_json(diagnostic);
    case MessageStyle::kHuman:
      break;
  }
  return render_human(diagnostic, colouring == Colouring::kAnsi ? kAnsiPalette : kPlainPalette);
}

}  // namespace chalkleaf
