// The compiled danger book in bytes, and back: numbers of 32 bits in the machine's order, strings
// behind their length. A pack is checked byte by byte (base/pack.h), but what is read here is
// bounded all the same.
#include <algorithm>
#include <cstring>

#include "reason/word_parts.h"
#include "reason/word_patterns.h"

namespace chalkleaf::reason {
namespace {

class ImageWriter {
 public:
  void number(std::uint64_t value) {
    const auto narrow = static_cast<std::uint32_t>(value);
    out_.append(reinterpret_cast<const char*>(&narrow), sizeof narrow);
  }
  void real(double value) { out_.append(reinterpret_cast<const char*>(&value), sizeof value); }
  void text(std::string_view value) {
    number(value.size());
    out_ += value;
  }
  void atoms(const Atoms& run) {
    number(run.size());
    for (const Atom& one : run) {
      number(static_cast<std::uint32_t>(one.kind));
      number(static_cast<std::uint32_t>(one.id));
      real(one.limit);
    }
  }
  void flags(const std::vector<bool>& all) {
    number(all.size());
    for (const bool one : all) out_.push_back(one ? '\1' : '\0');
  }
  void words(const WordSet& set) {
    number(set.bits().size());
    out_.append(reinterpret_cast<const char*>(set.bits().data()), set.bits().size() * 8);
  }
  std::string take() { return std::move(out_); }

 private:
  std::string out_;
};

class ImageReader {
 public:
  explicit ImageReader(std::string_view in) : in_(in) {}
  bool well() const { return well_; }
  bool at_end() const { return in_.empty(); }

  std::uint32_t number() {
    std::uint32_t out = 0;
    bytes(&out, sizeof out);
    return out;
  }
  // How many follow, each of `size` bytes at least.
  std::size_t count(std::size_t size) {
    const std::size_t out = number();
    if (out > in_.size() / size) well_ = false;
    return well_ ? out : 0;
  }
  double real() {
    double out = 0;
    bytes(&out, sizeof out);
    return out;
  }
  std::string_view text() {
    const std::size_t size = count(1);
    const std::string_view out = in_.substr(0, size);
    in_.remove_prefix(size);
    return out;
  }
  Atoms atoms() {
    Atoms out(count(16));
    for (Atom& one : out) {
      const std::uint32_t kind = number();
      if (kind > static_cast<std::uint32_t>(Atom::Kind::kNumber)) well_ = false;
      one.kind = static_cast<Atom::Kind>(kind);
      one.id = static_cast<int>(number());
      one.limit = real();
    }
    return out;
  }
  std::vector<bool> flags() {
    const std::string_view all = text();
    std::vector<bool> out(all.size());
    for (std::size_t i = 0; i < all.size(); ++i) out[i] = all[i] != '\0';
    return out;
  }
  WordSet words() {
    WordSet out;
    out.bits().resize(count(8));
    bytes(out.bits().data(), out.bits().size() * 8);
    return out;
  }

 private:
  void bytes(void* to, std::size_t size) {
    if (in_.size() < size) {
      well_ = false;
      in_ = {};
      return;
    }
    if (size > 0) std::memcpy(to, in_.data(), size);
    in_.remove_prefix(size);
  }

  std::string_view in_;
  bool well_ = true;
};

// Every word and concept that is named is there.
bool names_known(const Atoms& run, std::size_t words, std::size_t concepts) {
  return std::all_of(run.begin(), run.end(), [&](const Atom& one) {
    const auto id = static_cast<std::size_t>(one.id);
    return one.kind == Atom::Kind::kWord      ? id < words
           : one.kind == Atom::Kind::kConcept ? id < concepts
                                              : true;
  });
}

constexpr std::uint32_t kForm = 2;  // another form, or another meaning of a pattern, has another

}  // namespace

std::string WordPatterns::image() const {
  ImageWriter out;
  out.number(kForm);
  out.number(vocabulary_.size());
  for (const auto& [word, id] : vocabulary_) {
    out.text(word);
    out.number(static_cast<std::uint32_t>(id));
  }
  for (const auto* values : {&numbers_, &units_}) {
    out.number(values->size());
    for (const auto& [word, value] : *values) {
      out.text(word);
      out.real(value);
    }
  }
  out.number(contractions_.size());
  for (const auto& [word, left] : contractions_) {
    out.text(word);
    out.text(left);
  }
  for (const auto* all : {&fillers_, &negators_, &joiners_, &turns_}) out.flags(*all);
  out.number(concepts_.size());
  for (const Concept& one : concepts_) {
    out.number(one.any_first ? 1 : 0);
    out.words(one.first);
    out.number(one.ways.size());
    for (const Atoms& way : one.ways) out.atoms(way);
  }
  out.number(patterns_.size());
  for (const auto& one : patterns_) {
    out.number(one->has_negation ? 1 : 0);
    out.number(one->clauses.size());
    for (const Clause& clause : one->clauses) {
      out.number((clause.ordered ? 1U : 0U) + (clause.absent ? 2U : 0U));
      out.number(clause.window);
      out.atoms(clause.run);
    }
  }
  return out.take();
}

bool WordPatterns::image_is_sound() const {
  const std::size_t words = vocabulary_.size();
  const auto known = [&](const Atoms& run) { return names_known(run, words, concepts_.size()); };
  return std::all_of(vocabulary_.begin(), vocabulary_.end(),
                     [&](const auto& one) {
                       return one.second >= 0 && static_cast<std::size_t>(one.second) < words;
                     }) &&
         std::all_of(concepts_.begin(), concepts_.end(),
                     [&](const Concept& one) {
                       return one.first.bits().size() == (words + 63) / 64 &&
                              std::all_of(one.ways.begin(), one.ways.end(), known);
                     }) &&
         std::all_of(patterns_.begin(), patterns_.end(), [&](const auto& one) {
           return !one->clauses.empty() &&
                  std::all_of(one->clauses.begin(), one->clauses.end(),
                              [&](const Clause& clause) { return known(clause.run); });
         });
}

bool WordPatterns::take_image(std::string_view image) {
  ImageReader in(image);
  if (in.number() != kForm) return false;
  for (std::size_t left = in.count(8); left > 0; --left) {
    std::string word(in.text());
    vocabulary_.emplace_hint(vocabulary_.end(), std::move(word), static_cast<int>(in.number()));
  }
  for (auto* values : {&numbers_, &units_}) {
    for (std::size_t left = in.count(12); left > 0; --left) {
      std::string word(in.text());
      values->emplace_hint(values->end(), std::move(word), in.real());
    }
  }
  for (std::size_t left = in.count(8); left > 0; --left) {
    std::string word(in.text());
    contractions_.emplace_hint(contractions_.end(), std::move(word), std::string(in.text()));
  }
  for (auto* all : {&fillers_, &negators_, &joiners_, &turns_}) *all = in.flags();
  concepts_.resize(in.count(12));
  for (Concept& one : concepts_) {
    one.any_first = in.number() != 0;
    one.first = in.words();
    one.ways.resize(in.count(4));
    for (Atoms& way : one.ways) way = in.atoms();
  }
  for (std::size_t left = in.count(8); left > 0; --left) {
    auto one = std::make_unique<Pattern>();
    one->has_negation = in.number() != 0;
    one->clauses.resize(in.count(12));
    for (Clause& clause : one->clauses) {
      const std::uint32_t how = in.number();
      clause.ordered = (how & 1U) != 0;
      clause.absent = (how & 2U) != 0;
      clause.window = in.number();
      clause.run = in.atoms();
    }
    patterns_.push_back(std::move(one));
  }
  if (in.well() && in.at_end() && image_is_sound()) return true;
  vocabulary_.clear();
  numbers_.clear();
  units_.clear();
  contractions_.clear();
  concepts_.clear();
  patterns_.clear();
  for (auto* all : {&fillers_, &negators_, &joiners_, &turns_}) all->clear();
  return false;
}

}  // namespace chalkleaf::reason
