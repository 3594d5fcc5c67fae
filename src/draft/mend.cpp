// See the header.
#include "draft/mend.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "draft/drills.h"
#include "draft/lines.h"
#include "draft/write.h"

namespace chalkleaf::draft {
namespace {

class Mender {
 public:
  Mender(const Lexicon& words, const SourcePtr& coach)
      : words_(words), coach_(coach), out_(coach) {}

  std::optional<Draft> run(const std::vector<Diagnostic>& findings) {
    for (const Diagnostic& one : findings) {
      if (one.span.source != coach_.get()) continue;
      const bool inside = std::all_of(one.edits.begin(), one.edits.end(), [&](const Edit& edit) {
        return edit.span.source == coach_.get();
      });
      if (one.edits.empty() || !inside) {
        wrong_[one.span.begin] = &one;
      } else {
        for (const Edit& edit : one.edits) {
          if (!is_there(edit)) edits_.emplace(edit.span.begin, &edit);
        }
      }
    }
    const std::vector<Line> lines = lines_of(*coach_, 0);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const bool last = i + 1 == lines.size();
      take(lines[i],
           last ? static_cast<std::uint32_t>(coach_->text().size()) + 1 : lines[i + 1].begin);
    }
    if (!mended_) return std::nullopt;
    Draft draft{std::make_shared<const Source>(coach_->path(), std::move(text_)), std::move(out_),
                std::move(typed_)};
    draft.taught = true;
    draft.read_as = std::move(read_as_);
    return draft;
  }

 private:
  bool is_there(const Edit& edit) const {
    const auto [from, to] = edits_.equal_range(edit.span.begin);
    return std::any_of(from, to, [&](const auto& other) {
      return other.second->span.end == edit.span.end && other.second->text == edit.text;
    });
  }

  // `behind`: where the next line begins.
  void take(const Line& line, std::uint32_t behind) {
    const auto next = [&](const auto& places) {
      const auto found = places.lower_bound(line.begin);
      return found != places.end() && found->first < behind;
    };
    if (next(edits_)) return edited(line, behind);
    if (next(wrong_) && reread(line)) return;
    put_as_it_is(line.begin, line.end);
    text_ += '\n';
  }

  void put_as_it_is(std::uint32_t begin, std::uint32_t end) {
    const auto at = static_cast<std::uint32_t>(text_.size());
    text_ += coach_->text().substr(begin, end - begin);
    out_.add(at, static_cast<std::uint32_t>(text_.size()), {coach_.get(), begin, end});
  }

  void put_new(std::string_view text, const Line& line) {
    const auto at = static_cast<std::uint32_t>(text_.size());
    text_ += text;
    out_.add(at, static_cast<std::uint32_t>(text_.size()), {coach_.get(), line.begin, line.end});
  }

  void edited(const Line& line, std::uint32_t behind) {
    const std::size_t begin = text_.size();
    std::uint32_t at = line.begin;
    for (auto edit = edits_.lower_bound(line.begin); edit != edits_.end() && edit->first < behind;
         ++edit) {
      if (edit->first < at || edit->second->span.end > behind) continue;
      put_as_it_is(at, edit->first);
      put_new(edit->second->text, line);
      at = edit->second->span.end;
    }
    if (at < line.end) put_as_it_is(at, line.end);
    mended(line, text_.substr(begin));
    text_ += '\n';
  }

  void mended(const Line& line, std::string_view as) {
    mended_ = true;
    typed_.push_back({coach_.get(), line.begin, line.end});
    read_as_.emplace_back(as);
  }

  // As a draft's line is read. What stands below a drill belongs to it whatever it says, and rounds
  // need the lines around them.
  bool reread(const Line& line) {
    const bool list = line.mark == Line::Mark::kBullet || line.mark == Line::Mark::kNumber;
    if ((!list && line.mark != Line::Mark::kNone) || line.indent >= 2 || line.blank || line.table)
      return false;
    // Behind a colon stands what was meant as a dose; to read it with less care could lose some.
    if (line.words(*coach_).find(':') != std::string_view::npos) return false;
    const SpokenLine spoken = read_drills(words_, line.words(*coach_), {});
    if (spoken.group) return false;
    if (!spoken.has_dose()) {
      if (list) return false;
      // A sentence that hangs on to a list.
      text_ += '\n';
      put_as_it_is(line.begin, line.end);
      text_ += '\n';
      return mended_ = true;
    }
    const std::size_t begin = text_.size();
    for (const SpokenDrill& drill : spoken.drills) put_new(item_text(drill), line);
    mended(line, text_.substr(begin));
    return true;
  }

  const Lexicon& words_;
  const SourcePtr& coach_;
  Origin out_;
  std::string text_;
  std::vector<Span> typed_;
  std::vector<std::string> read_as_;
  std::multimap<std::uint32_t, const Edit*> edits_;
  std::map<std::uint32_t, const Diagnostic*> wrong_;
  bool mended_ = false;
};

}  // namespace

std::optional<Draft> mend(const Lexicon& words, const SourcePtr& coach,
                          const std::vector<Diagnostic>& findings) {
  return Mender(words, coach).run(findings);
}

}  // namespace chalkleaf::draft
