#include "base/diagnostic.h"

#include <algorithm>
#include <tuple>

namespace chalkleaf {
namespace {

auto order_key(const Diagnostic& d) {
  const std::string_view path =
      d.span ? std::string_view(d.span.source->path()) : std::string_view();
  return std::make_tuple(path, d.span.begin, d.span.end, d.severity, std::string_view(d.name),
                         std::string_view(d.message));
}

// Without its middle when it is too long: a sentence's point is at its beginning or its end, what
// it quotes is in between.
void shorten(std::string& text) {
  if (text.size() <= Diagnostics::kLongestText) return;
  const auto is_inside = [&](std::size_t at) {  // of a character
    return (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;
  };
  constexpr std::size_t kKept = Diagnostics::kLongestText / 2 - 8;
  std::size_t head = kKept;
  std::size_t tail = text.size() - kKept;
  while (head > 0 && is_inside(head)) --head;
  while (tail < text.size() && is_inside(tail)) ++tail;
  text = text.substr(0, head) + " … " + text.substr(tail);
}

}  // namespace

std::string_view word_for(Severity severity) {
  switch (severity) {
    case Severity::kError:
      return "error";
    case Severity::kWarning:
      return "warning";
    case Severity::kNote:
      break;
  }
  return "note";
}

void Diagnostics::add(Diagnostic diagnostic) {
  const std::size_t before = counts_[{diagnostic.name, diagnostic.severity}]++;
  if (before > kMostOfOneName) return;
  if (before == kMostOfOneName) {
    diagnostic.message = "there is more like this from here on, which is not listed";
    diagnostic.hint = "mend what is listed, and check again";
    diagnostic.labels.clear();
    diagnostic.edits.clear();
  }
  shorten(diagnostic.message);
  shorten(diagnostic.hint);
  for (Label& label : diagnostic.labels) shorten(label.message);
  if (diagnostic.severity == Severity::kError) ++errors_;
  all_.push_back(std::move(diagnostic));
}

void Diagnostics::error(std::string name, Span span, std::string message, std::string hint) {
  add({Severity::kError, std::move(name), span, std::move(message), {}, std::move(hint)});
}

void Diagnostics::warning(std::string name, Span span, std::string message, std::string hint) {
  add({Severity::kWarning, std::move(name), span, std::move(message), {}, std::move(hint)});
}

void Diagnostics::note(std::string name, Span span, std::string message, std::string hint) {
  add({Severity::kNote, std::move(name), span, std::move(message), {}, std::move(hint)});
}

std::size_t Diagnostics::warning_count() const {
  return static_cast<std::size_t>(std::count_if(all_.begin(), all_.end(), [](const Diagnostic& d) {
    return d.severity == Severity::kWarning;
  }));
}

std::vector<Diagnostic> Diagnostics::sorted() const {
  std::vector<Diagnostic> out = all_;
  std::stable_sort(out.begin(), out.end(), [](const Diagnostic& a, const Diagnostic& b) {
    return order_key(a) < order_key(b);
  });
  const auto same = [](const Diagnostic& a, const Diagnostic& b) {
    return order_key(a) == order_key(b);
  };
  out.erase(std::unique(out.begin(), out.end(), same), out.end());
  return out;
}

void Diagnostics::append(const Diagnostics& other) {
  for (const Diagnostic& diagnostic : other.all()) add(diagnostic);
  kept_.insert(kept_.end(), other.kept_.begin(), other.kept_.end());
}

void Diagnostics::revise(const std::function<std::optional<Severity>(const Diagnostic&)>& decide) {
  std::vector<Diagnostic> kept;
  kept.reserve(all_.size());
  errors_ = 0;
  for (Diagnostic& diagnostic : all_) {
    const std::optional<Severity> severity = decide(diagnostic);
    if (!severity) continue;
    diagnostic.severity = *severity;
    if (*severity == Severity::kError) ++errors_;
    kept.push_back(std::move(diagnostic));
  }
  all_ = std::move(kept);
}

void Diagnostics::make_strict() {
  for (Diagnostic& diagnostic : all_) {
    if (diagnostic.severity == Severity::kWarning) {
      diagnostic.severity = Severity::kError;
      ++errors_;
    }
  }
}

}  // namespace chalkleaf
