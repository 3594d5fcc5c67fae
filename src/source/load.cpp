// Bytes from the disk become a Source, or one clear message why they cannot.
//
// Everything behind this point may trust that text is UTF-8 (Unicode 15, table 3-7) and has no NUL.
// Tested by tests/source/load_test.cpp.
#include <fmt/format.h>

#include "base/text.h"
#include "source/cost.h"
#include "source/read.h"
#include "source/read_yaml.h"

namespace chalkleaf::source {
namespace {

constexpr const char* kUnreadableFile = "unreadable-file";
constexpr const char* kSaveAsUtf8 = "open the file in your text editor and save it as UTF-8";

// What to do about a file that could not be opened.
std::string hint_for(FileError::Kind kind) {
  switch (kind) {
    case FileError::Kind::kNotFound:
      return "check the name and the folder";
    case FileError::Kind::kIsFolder:
      return "name a file, not the folder it lies in";
    case FileError::Kind::kNoPermission:
      return "change the file's permissions so that you may read it";
    case FileError::Kind::kTooLarge:
      return "a plan is a page or two of text; check that this is the right file";
    case FileError::Kind::kNoSpace:
    case FileError::Kind::kOther:
      break;
  }
  return "check that it is a plain text file";
}

SourcePtr refuse_whole(const std::string& display_path, const FileError& error,
                       Diagnostics& diagnostics) {
  auto nothing = std::make_shared<const Source>(display_path, "");
  diagnostics.error(kUnreadableFile, {nothing.get(), 0, 0},
                    fmt::format("this file cannot be read: {}", error.message),
                    hint_for(error.kind));
  diagnostics.keep(std::move(nothing));
  return nullptr;
}

// The first byte that no text file of ours may have, and why.
struct BadByte {
  std::size_t at;
  std::string what;
  std::string hint;
};
std::optional<BadByte> first_bad_byte(std::string_view text) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    return BadByte{0, "it is saved as UTF-16, not as UTF-8", kSaveAsUtf8};
  }
  const std::size_t nul = text.find('\0');
  const auto invalid = first_invalid_utf8(text.substr(0, nul));
  if (invalid) {
    return BadByte{*invalid,
                   fmt::format("the byte 0x{:02X} here is not UTF-8",
                               static_cast<unsigned>(static_cast<unsigned char>(text[*invalid]))),
                   kSaveAsUtf8};
  }
  if (nul != std::string_view::npos) {
    return BadByte{nul, "it has a NUL byte here, which no text has",
                   "check that it is a plain text file; a word processor's document must be saved "
                   "as plain text"};
  }
  return std::nullopt;
}

}  // namespace

SourcePtr load(const FileSystem& files, const std::string& path, const std::string& display_path,
               Diagnostics& diagnostics) {
  auto text = files.read(path, kLargestFile);
  if (!text) return refuse_whole(display_path, text.error(), diagnostics);
  return load_text(display_path, std::move(*text), diagnostics);
}

SourcePtr load_shipped(const FileSystem& files, const std::string& path,
                       const std::string& display_path, const PackPtr& pack,
                       Diagnostics& diagnostics) {
  auto text = files.read(path, kLargestFile);
  if (!text) return refuse_whole(display_path, text.error(), diagnostics);
  // Text that is known to the pack was sound when it was packed.
  if (pack && (pack->find(yaml_key(*text)) || pack->find(front_key(*text))))
    return std::make_shared<const Source>(display_path, std::move(*text), pack);
  return load_text(display_path, std::move(*text), diagnostics);
}

SourcePtr load_text(const std::string& display_path, std::string text, Diagnostics& diagnostics) {
  if (text.size() > kLargestFile) {
    const FileError error{FileError::Kind::kTooLarge,
                          fmt::format("it is larger than {} KB", kLargestFile / 1024)};
    return refuse_whole(display_path, error, diagnostics);
  }
  auto source = std::make_shared<const Source>(display_path, std::move(text));
  const auto refuse_at = [&](std::size_t at, const std::string& what, const std::string& hint) {
    const auto begin = static_cast<std::uint32_t>(at);
    diagnostics.error(kUnreadableFile, {source.get(), begin, begin + 1},
                      fmt::format("this file cannot be read: {}", what), hint);
    diagnostics.keep(source);
    return nullptr;
  };
  if (const auto bad = first_bad_byte(source->text())) {
    return refuse_at(bad->at, bad->what, bad->hint);
  }
  if (const auto cost = costly_shape(source->text())) {
    return refuse_at(cost->at, cost->what, cost->hint);
  }
  return source;
}

}  // namespace chalkleaf::source
