// See the header.
#include "plan/pictures.h"

#include <algorithm>

#include "base/text.h"
#include "plan/lines.h"
#include "plan/words.h"

namespace chalkleaf::plan {

std::vector<Note> pictures_of(const source::MarkNode& paragraph) {
  const std::string_view all = paragraph.text.str();
  std::vector<Note> out;
  std::size_t at = 0;
  for (const source::MarkNode::Link& link : paragraph.links) {
    if (!link.is_image || link.begin < at || !trim(all.substr(at, link.begin - at)).empty()) {
      return {};
    }
    Note note;
    note.kind = Note::Kind::kPicture;
    note.words = plain_words_of(paragraph.text.slice(link.begin, link.end));
    note.words.span = link.span;
    note.picture = link.target;
    out.push_back(std::move(note));
    at = link.end;
  }
  if (!trim(all.substr(at)).empty()) return {};
  return out;
}

std::vector<TextOrPictures> parted_by_pictures(const source::MarkNode& paragraph) {
  const bool has_picture = std::any_of(paragraph.links.begin(), paragraph.links.end(),
                                       [](const auto& link) { return link.is_image; });
  if (!has_picture) return {{paragraph, {}}};
  std::vector<TextOrPictures> out;
  std::size_t begin = 0;  // of the text not yet placed
  const auto place_text = [&](std::size_t end) {
    if (begin >= end) return;
    source::MarkNode text = stretch_of(paragraph, begin, end);
    if (!trim(text.text.str()).empty() || !text.links.empty()) out.push_back({std::move(text), {}});
  };
  for (const ParagraphLine& line : lines_in(paragraph)) {
    std::vector<Note> pictures = pictures_of(stretch_of(paragraph, line.begin, line.end));
    if (pictures.empty()) continue;
    place_text(line.begin);
    out.push_back({{}, std::move(pictures)});
    begin = line.end + 1;
  }
  place_text(paragraph.text.str().size());
  return out;
}

source::MarkNode without_pictures(const source::MarkNode& paragraph, std::vector<Note>& pictures) {
  std::vector<TextOrPictures> pieces = parted_by_pictures(paragraph);
  if (pieces.size() == 1 && pieces[0].pictures.empty()) return paragraph;
  source::MarkNode out = paragraph;
  out.text = {};
  out.links.clear();
  for (TextOrPictures& piece : pieces) {
    append_stretch(out, piece.text);
    pictures.insert(pictures.end(), piece.pictures.begin(), piece.pictures.end());
  }
  return out;
}

}  // namespace chalkleaf::plan
