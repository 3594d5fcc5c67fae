#include "plan/picture_links.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "base/text.h"

namespace chalkleaf::plan {
namespace {

// Different pictures of one plan: each is kept until its sheets are written.
constexpr std::size_t kMostPictures = 60;

// `https:`, `data:`, `//host`: RFC 3986, 3.1 and 4.2. One letter and a colon is a disk of Windows.
bool is_web_address(std::string_view target) {
  if (target.starts_with("//")) return true;
  const std::size_t colon = target.find(':');
  if (colon == std::string_view::npos || colon < 2) return false;
  if (target[0] >= '0' && target[0] <= '9') return false;  // `12:30.png` is a file
  return std::all_of(target.begin(), target.begin() + static_cast<std::ptrdiff_t>(colon),
                     [](char c) {
                       return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                              (c >= '0' && c <= '9') || c == '+' || c == '-' || c == '.';
                     });
}

// What the coach wrote, short enough for a message: a `data:` address can be a whole file.
std::string shown(const std::string& target) {
  constexpr std::size_t kMost = 80;
  if (target.size() <= kMost) return target;
  std::size_t end = kMost;
  while (end > 0 && (static_cast<unsigned char>(target[end]) & 0xC0U) == 0x80U) --end;
  return target.substr(0, end) + "…";
}

}  // namespace

std::string link_path(std::string_view target) {
  const auto digit = [](char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
  };
  target = target.substr(0, target.find_first_of("#?"));
  std::string out;
  for (std::size_t i = 0; i < target.size(); ++i) {
    const bool code = target[i] == '%' && i + 2 < target.size() && digit(target[i + 1]) >= 0 &&
                      digit(target[i + 2]) >= 0;
    if (code) {
      out += static_cast<char>(digit(target[i + 1]) * 16 + digit(target[i + 2]));
      i += 2;
    } else {
      out += target[i];
    }
  }
  return out;
}

void PictureLinks::follow(Note& note, const std::string& from_path) {
  if (note.kind != Note::Kind::kPicture || lookup_ == nullptr) return;
  if (is_web_address(note.picture)) {
    return diagnostics_.error(
        "unreadable-file", note.words.span,
        fmt::format("‘{}’ is not a file of the club's, and nothing is fetched from elsewhere",
                    shown(note.picture)),
        "save the picture in the club's folder, if the club may use it, and name it by its path "
        "there");
  }
  const auto found = lookup_->find(from_path, link_path(note.picture));
  if (!found) return report(note, found.error());
  paths_.insert(found->path);
  if (paths_.size() > kMostPictures) {
    if (paths_.size() == kMostPictures + 1) {
      diagnostics_.error(
          kBadValue, note.words.span,
          fmt::format("with its shared parts this plan has more than {} pictures", kMostPictures),
          "take some out, or split it into several plans");
    }
    return;
  }
  note.picture = found->path;
  note.picture_width = found->width;
  note.picture_height = found->height;
}

void PictureLinks::report(const Note& note, const PictureProblem& problem) {
  using Kind = PictureProblem::Kind;
  const std::string name = shown(note.picture);
  const std::string slashes = replace_all(note.picture, "\\", "/");
  std::string hint = "check the path; it begins at the folder of the file it stands in";
  switch (problem.kind) {
    case Kind::kOutside:
      return diagnostics_.error("outside-folder", note.words.span,
                                fmt::format("‘{}’ is outside the club's folder", name),
                                "copy the picture into the club's folder and name the copy");
    case Kind::kUnreadable:
      return diagnostics_.error("unreadable-file", note.words.span,
                                fmt::format("the picture ‘{}’ {}", name, problem.message),
                                problem.hint);
    case Kind::kMissing:
      break;
  }
  if (note.picture.empty()) {
    return diagnostics_.error("unreadable-file", note.words.span, "this picture names no file",
                              "write its path between the brackets: `![two children on a "
                              "line](../pictures/line.png)`");
  }
  if (slashes != note.picture) {
    hint = fmt::format("write `/` between folders and file: `{}`", shown(slashes));
  } else if (!problem.suggestion.empty()) {
    // As it has to be written: a space would end the path.
    hint = fmt::format("did you mean `{}`?", replace_all(problem.suggestion, " ", "%20"));
  }
  diagnostics_.error("unreadable-file", note.words.span,
                     fmt::format("there is no picture at ‘{}’", name), std::move(hint));
}

void PictureLinks::follow(std::vector<Note>& notes, const std::string& from_path) {
  for (Note& note : notes) follow(note, from_path);
}

void PictureLinks::follow(Drill& drill, const std::string& from_path) {
  follow(drill.notes, from_path);
  for (Substitute& one : drill.substitutes) follow(one.notes, from_path);
  for (Drill& station : drill.stations) follow(station, from_path);
}

void PictureLinks::follow(Step& step, const std::string& from_path) {
  if (auto* drill = std::get_if<Drill>(&step)) follow(*drill, from_path);
  if (auto* note = std::get_if<Note>(&step)) follow(*note, from_path);
}

void link_pictures(LibraryDrill& drill, const std::string& drill_path,
                   const PictureLookup& pictures) {
  PictureLinks links(&pictures, drill.found);
  links.follow(drill.notes, drill_path);
  for (Substitute& one : drill.substitutes) links.follow(one.notes, drill_path);
}

}  // namespace chalkleaf::plan
