// Tested by tests/reason/line_weights_test.cpp.
#include "reason/line_weights.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstring>
#include <utility>

namespace chalkleaf::reason {
namespace {

constexpr std::uint32_t kMagic = 0x31574C43;  // "CLW1"
constexpr std::size_t kHeader = 8;            // bytes
constexpr double kUnit = 0.1;                 // log-odds of a weight of 1
constexpr std::string_view kDanger = "danger";

// FNV-1a (Fowler, Noll, Vo), 32 bits; 0 is kept for a slot that is free.
std::uint32_t hash_of(std::string_view section, std::string_view mark) {
  std::uint32_t out = 2166136261U;
  const auto take = [&](std::string_view text) {
    for (const char c : text) out = (out ^ static_cast<unsigned char>(c)) * 16777619U;
  };
  take(section);
  take("|");
  take(mark);
  return out == 0 ? 1 : out;
}

}  // namespace

double share_of_mark(std::size_t marks) {
  constexpr double kUsual = 80;  // marks
  return std::pow(kUsual / static_cast<double>(std::max<std::size_t>(marks, 1)), 0.25);
}

std::optional<LineWeights> LineWeights::read(std::string_view text) {
  struct Entry {
    std::string_view section;
    std::string_view mark;
    int weight;
  };
  std::vector<Entry> entries;
  std::string_view section;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    if (line.front() == '[' && line.back() == ']') {
      section = line.substr(1, line.size() - 2);
      continue;
    }
    Entry entry{section, {}, 0};
    const auto [rest, error] =
        std::from_chars(line.data(), line.data() + line.size(), entry.weight);
    if (error != std::errc() || section.empty()) return std::nullopt;
    const auto read = static_cast<std::size_t>(rest - line.data());
    if (read < line.size() && line[read] != ' ') return std::nullopt;
    entry.mark = line.substr(std::min(read + 1, line.size()));
    entries.push_back(entry);
  }
  LineWeights out;
  out.size_ = 1024;
  while (out.size_ < entries.size() * 3 / 2) out.size_ *= 2;
  out.own_.resize(out.size_);
  for (const Entry& one : entries) out.add(one.section, one.mark, one.weight);
  return out;
}

void LineWeights::add(std::string_view section, std::string_view mark, int weight) {
  const std::uint32_t hash = hash_of(section, mark);
  std::size_t at = hash & (size_ - 1);
  while (own_[at].hash != 0 && own_[at].hash != hash) at = (at + 1) & (size_ - 1);
  own_[at] = {hash, weight};
}

std::string LineWeights::image() const {
  std::string out(kHeader + size_ * sizeof(Slot), '\0');
  const auto size = static_cast<std::uint32_t>(size_);
  std::memcpy(out.data(), &kMagic, sizeof kMagic);
  std::memcpy(out.data() + sizeof kMagic, &size, sizeof size);
  if (size_ > 0) std::memcpy(out.data() + kHeader, slots(), size_ * sizeof(Slot));
  return out;
}

std::optional<LineWeights> LineWeights::from_image(std::string_view bytes,
                                                   std::shared_ptr<const void> keeper) {
  std::uint32_t magic = 0;
  std::uint32_t size = 0;
  if (bytes.size() < kHeader) return std::nullopt;
  std::memcpy(&magic, bytes.data(), sizeof magic);
  std::memcpy(&size, bytes.data() + sizeof magic, sizeof size);
  const bool power_of_two = size != 0 && (size & (size - 1)) == 0;
  if (magic != kMagic || !power_of_two || bytes.size() != kHeader + size * sizeof(Slot))
    return std::nullopt;
  LineWeights out;
  out.size_ = size;
  out.kept_ = reinterpret_cast<const Slot*>(bytes.data() + kHeader);
  out.keeper_ = std::move(keeper);
  return out;
}

namespace {

// The weight of a hash in a table without gaps before it. Bounded: an image may be full.
template <class Slot>
std::optional<int> look_up(const Slot* slots, std::size_t size, std::uint32_t hash) {
  std::size_t at = hash & (size - 1);
  for (std::size_t tries = 0; tries < size && slots[at].hash != 0; ++tries) {
    if (slots[at].hash == hash) return slots[at].weight;
    at = (at + 1) & (size - 1);
  }
  return std::nullopt;
}

/// Marks as hashes, each once.
class Hashes {
 public:
  explicit Hashes(std::string_view section) : section_(section) { all_.reserve(256); }
  void take(std::string_view mark) { all_.push_back(hash_of(section_, mark)); }
  const std::vector<std::uint32_t>& once() {
    std::sort(all_.begin(), all_.end());
    all_.erase(std::unique(all_.begin(), all_.end()), all_.end());
    return all_;
  }

 private:
  std::string_view section_;
  std::vector<std::uint32_t> all_;
};

}  // namespace

std::optional<int> LineWeights::weight(std::string_view section, std::string_view mark) const {
  return size_ == 0 ? std::nullopt : look_up(slots(), size_, hash_of(section, mark));
}

double LineWeights::danger(const std::vector<LineWords::Word>& words, LinePlace place) const {
  if (size_ == 0) return 0;
  Hashes hashes(kDanger);
  line_marks(words, place, [&](std::string_view mark) { hashes.take(mark); });
  double sum = 0;
  for (const std::uint32_t hash : hashes.once()) sum += look_up(slots(), size_, hash).value_or(0);
  return kUnit * (sum * share_of_mark(hashes.once().size()) + weight(kDanger, "").value_or(0));
}

std::optional<double> LineWeights::fit(const std::vector<LineWords::Word>& words, LinePlace place,
                                       std::string_view check) const {
  const std::optional<int> bias = weight(check, "");
  if (!bias) return std::nullopt;
  Hashes hashes(check);
  line_marks(words, place, [&](std::string_view mark) {
    if (tells_kind(mark)) hashes.take(mark);
  });
  double sum = *bias;
  for (const std::uint32_t hash : hashes.once()) sum += look_up(slots(), size_, hash).value_or(0);
  return kUnit * sum;
}

}  // namespace chalkleaf::reason
