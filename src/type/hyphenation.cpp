#include "type/hyphenation.h"

#include <hyphen.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <unordered_map>

#include "base/text.h"
#include "type/packed_patterns.h"

namespace chalkleaf::type {
namespace {

constexpr std::uint64_t kLargestPatterns = 16ULL * 1024 * 1024;
constexpr std::string_view kPackName = "hyphens";
constexpr std::size_t kLongestWord = 100;  // characters
constexpr std::size_t kLeastBefore = 2;
constexpr std::size_t kLeastBehind = 3;

struct DictEnd {
  void operator()(HyphenDict* dict) const { hnj_hyphen_free(dict); }
};

// What a plain language tag stands for, where the file of that name is another's or is not there.
constexpr std::string_view kEnglish = "en_GB";

// `de-AT` → de_AT, de; `en` → en_GB.
std::vector<std::string> file_names(const std::string& language) {
  std::string tag = language;
  std::replace(tag.begin(), tag.end(), '-', '_');
  const std::string plain = tag.substr(0, tag.find('_'));
  // A tag becomes part of a path: letters, digits and its own separator only.
  const bool sound = !plain.empty() && std::all_of(tag.begin(), tag.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
  });
  if (!sound) return {};
  std::vector<std::string> out;
  if (tag != plain) out.push_back(tag);
  out.push_back(plain == "en" ? std::string(kEnglish) : plain);
  return out;
}

// A pattern's letters: what stands before a blank or before `/` and a spelling, without figures.
std::string letters_of(std::string_view line) {
  std::string out;
  for (const char c : line.substr(0, line.find_first_of("/ \t\r\n"))) {
    if (c < '0' || c > '9') out.push_back(c);
  }
  return out;
}

// The patterns without those that a later one of the same letters and level takes the place of:
// libhyphen forgets the first and never frees it (134 in German's, 16 in French's). Nor are there
// comments, whose `#` it takes for one more pattern each.
std::string without_replaced(std::string_view patterns) {
  std::vector<std::string_view> lines;
  std::unordered_map<std::string, std::size_t> at;
  for (std::size_t from = 0; from < patterns.size();) {
    const std::size_t end = std::min(patterns.find('\n', from), patterns.size() - 1) + 1;
    const std::string_view line = patterns.substr(from, end - from);
    from = end;
    if (line.starts_with('#') || line.starts_with('%')) continue;
    lines.push_back(line);
    if (lines.size() == 1) continue;
    if (line.starts_with("NEXTLEVEL")) {
      at.clear();
      continue;
    }
    const auto [known, is_new] = at.try_emplace(letters_of(line), lines.size() - 1);
    if (is_new) continue;
    lines[known->second] = {};
    known->second = lines.size() - 1;
  }
  std::string out;
  out.reserve(patterns.size());
  for (const std::string_view line : lines) out += line;
  return out;
}

}  // namespace

struct Hyphenation::State {
  std::unique_ptr<HyphenDict, DictEnd> read;  ///< or
  std::unique_ptr<PackedPatterns> packed;
  PackPtr pack;                ///< holds what `packed` points to
  HyphenDict* dict = nullptr;  ///< one of the two

  // In the patterns' own characters; empty where one is not among them.
  std::string encoded(std::u32string_view word) const {
    std::string out;
    for (const char32_t code : word) {
      if (dict->utf8 != 0) {
        append_utf8(out, code);
      } else if (code <= 0xFF) {
        out.push_back(static_cast<char>(static_cast<unsigned char>(code)));
      } else {
        return {};
      }
    }
    return out;
  }
};

Hyphenation::Hyphenation(std::unique_ptr<State> state) : state_(std::move(state)) {}
Hyphenation::~Hyphenation() = default;

std::unique_ptr<const Hyphenation> Hyphenation::read(const std::string& patterns) {
  std::string bytes = without_replaced(patterns);
  // The first line names the encoding. libhyphen takes any file, so what we cannot feed is refused.
  const std::string encoding = bytes.substr(0, bytes.find_first_of("\r\n"));
  if (encoding != "UTF-8" && encoding != "ISO8859-1") return nullptr;
  std::FILE* file = fmemopen(bytes.data(), bytes.size(), "r");
  if (file == nullptr) return nullptr;
  auto state = std::make_unique<State>();
  state->read.reset(hnj_hyphen_load_file(file));
  std::fclose(file);
  state->dict = state->read.get();
  if (state->dict == nullptr) return nullptr;
  return std::unique_ptr<const Hyphenation>(new Hyphenation(std::move(state)));
}

std::unique_ptr<const Hyphenation> Hyphenation::from_pack(std::string_view patterns,
                                                          const PackPtr& pack) {
  const auto bytes = pack ? pack->find(pack_key(kPackName, patterns)) : std::nullopt;
  if (!bytes) return nullptr;
  auto state = std::make_unique<State>();
  state->pack = pack;
  state->packed = PackedPatterns::open(*bytes);
  if (state->packed == nullptr) return nullptr;
  state->dict = state->packed->dict();
  return std::unique_ptr<const Hyphenation>(new Hyphenation(std::move(state)));
}

std::optional<std::pair<Hash128, std::string>> Hyphenation::packed(const std::string& patterns) {
  const auto hyphenation = read(patterns);
  if (hyphenation == nullptr) return std::nullopt;
  return std::pair(pack_key(kPackName, patterns), packed_patterns(*hyphenation->state_->dict));
}

std::vector<std::uint32_t> Hyphenation::places(std::u32string_view word) const {
  if (word.size() < kLeastBefore + kLeastBehind || word.size() > kLongestWord) return {};
  const std::string text = state_->encoded(word);
  if (text.empty()) return {};
  std::vector<char> marks(text.size() + 5, '0');
  char** replaced = nullptr;
  int* at = nullptr;
  int* cut = nullptr;
  const int failed =
      hnj_hyphen_hyphenate2(state_->dict, text.c_str(), static_cast<int>(text.size()), marks.data(),
                            nullptr, &replaced, &at, &cut);
  std::vector<std::uint32_t> out;
  for (std::size_t i = 0; failed == 0 && i + 1 < word.size(); ++i) {
    // An odd figure allows a hyphen behind the character. A hyphen that would change the spelling
    // is not for us: the text stays what the coach wrote.
    const bool changes = replaced != nullptr && replaced[i] != nullptr;
    const bool allowed = ((marks[i] - '0') & 1) != 0;
    const std::size_t before = i + 1;
    if (allowed && !changes && before >= kLeastBefore && word.size() - before >= kLeastBehind)
      out.push_back(static_cast<std::uint32_t>(before));
  }
  for (std::size_t i = 0; replaced != nullptr && i < text.size(); ++i) std::free(replaced[i]);
  std::free(replaced);
  std::free(at);
  std::free(cut);
  return out;
}

LazyHyphenation::LazyHyphenation(const FileSystem& files, std::vector<std::string> paths,
                                 std::string language, PackPtr pack)
    : files_(files),
      paths_(std::move(paths)),
      language_(std::move(language)),
      pack_(std::move(pack)) {}

const Hyphenation* LazyHyphenation::get() const {
  std::call_once(once_, [&] {
    for (const std::string& path : paths_) {
      const auto bytes = files_.map(path, kLargestPatterns);
      if (bytes) read_ = Hyphenation::from_pack(bytes->bytes, pack_);
      if (bytes && read_ == nullptr) read_ = Hyphenation::read(std::string(bytes->bytes));
      if (read_ != nullptr) return;
    }
  });
  return read_.get();
}

Hyphenations::Hyphenations(const FileSystem& files, std::vector<std::string> folders, PackPtr pack)
    : files_(files), folders_(std::move(folders)), pack_(std::move(pack)) {}

std::vector<std::string> Hyphenations::usual_folders() {
  return {"/usr/share/hyphen", "/usr/local/share/hyphen"};
}

const LazyHyphenation& Hyphenations::of(const std::string& language) const {
  const std::lock_guard lock(mutex_);
  if (const auto known = known_.find(language); known != known_.end()) return known->second;
  std::vector<std::string> paths;
  for (const std::string& name : file_names(language)) {
    for (const std::string& folder : folders_) paths.push_back(folder + "/hyph_" + name + ".dic");
  }
  return known_.try_emplace(language, files_, std::move(paths), language, pack_).first->second;
}

}  // namespace chalkleaf::type
