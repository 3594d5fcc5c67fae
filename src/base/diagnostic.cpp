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

}  // namespace

void Diagnostics::add(Diagnostic diagnostic) {
  const std::size_t before = counts_[{diagnostic.name, diagnostic.severity}]++;
  if (before > kMostOfOneName) return;
  if (before == kMostOfOneName) {
    diagnostic.message = "there is more like this from here on, which is not listed";
    diagnostic.hint = "mend what is listed, and check again";
    diagnostic.labels.clear();
  }
  if (diagnostic.severity == Severity::kError) ++errors_;
  all_.push_back(std::move(diagnostic));
}

void Diagnostics::error(std::string name, Span span, std::string message, std::string hint) {
  add({Severity::kError, std::move(name), span, std::move(message), {}, std::move(hint)});
}

void Diagnostics::warning(std::string name, Span span, std::string message, std::string hint) {
  add({Severity::kWarning, std::move(name), span, std::move(message), {}, std::move(hint)});
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
  for (Diagnostic& diagnostic : all_) diagnostic.severity = Severity::kError;
  errors_ = all_.size();
}

}  // namespace chalkleaf
