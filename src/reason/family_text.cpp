// Tested by tests/reason/hard_words_test.cpp.
#include "reason/family_text.h"

#include <algorithm>

#include "plan/library.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

using plan::Drill;
using plan::Note;
using plan::Words;
using TextKind = FamilyText::Kind;

constexpr std::size_t kSentenceWords = 4;  // words that can say what a drill is

bool describe(const std::vector<Note>& notes) {
  return std::any_of(notes.begin(), notes.end(), [](const Note& note) {
    return note.reader != Note::For::kCoach && words_in(note.words.text).size() >= kSentenceWords;
  });
}

bool is_described(const Drill& drill) {
  return (drill.known != nullptr && !drill.known->plain.empty()) || describe(drill.notes);
}

class Collector {
 public:
  std::vector<FamilyText> run(const plan::Session& session) {
    add(session.title);
    for (const plan::KitItem& item : session.equipment) {
      add(item.name);
      add(item.description);
    }
    add(session.introduction);
    add(session.safety);
    for (const plan::Part& part : session.parts) {
      add(part.title);
      add(part.safety);
      for (const plan::Step& step : part.steps) {
        drill_ = nullptr;
        if (const auto* note = std::get_if<Note>(&step)) add(*note);
        if (const auto* drill = std::get_if<Drill>(&step)) add(*drill);
        if (const auto* move = std::get_if<plan::KitMove>(&step)) {
          add(move->kit);
          add(move->how);
        }
      }
    }
    return std::move(out_);
  }

 private:
  void add(const Words& words, TextKind kind = TextKind::kText) {
    if (!words.empty()) out_.push_back({&words, drill_, kind});
  }
  void add_name(const Words& words, bool described) {
    if (!words.empty()) out_.push_back({&words, drill_, TextKind::kName, described});
  }
  void add(const std::vector<Words>& list, TextKind kind = TextKind::kText) {
    for (const Words& words : list) add(words, kind);
  }
  void add(const Note& note) {
    if (note.reader == Note::For::kCoach) return;
    const std::size_t begin = out_.size();
    if (note.kind != Note::Kind::kTableRow || note.cells.empty()) {
      add(note.words);
    } else {
      add(note.cells);
    }
    for (std::size_t i = begin; i < out_.size(); ++i) {
      out_[i].addressed = note.reader == Note::For::kFamily;
    }
  }
  void add(const std::vector<Note>& notes) {
    for (const Note& note : notes) add(note);
  }
  void add(const std::vector<plan::Safety>& notes) {
    for (const plan::Safety& note : notes) add(note.words);
  }
  void add(const Drill& drill) {
    drill_ = &drill;
    const bool described = is_described(drill);
    add_name(drill.name, described);
    if (drill.dose) {
      for (const plan::Move& move : drill.dose->moves) add_name(move.name, described);
      add(drill.dose->ways);
      add(drill.dose->remarks);
    }
    add(drill.cues);
    for (const plan::KitUse& use : drill.uses) {
      add(use.kit);
      add(use.how);
    }
    add(drill.easier, TextKind::kRung);
    add(drill.harder, TextKind::kRung);
    add(drill.notes);
    add(drill.record);
    for (const plan::Substitute& one : drill.substitutes) {
      add_name(one.name, describe(one.notes));
      add(one.cues);
      add(one.easier, TextKind::kRung);
      add(one.harder, TextKind::kRung);
      add(one.notes);
    }
    for (const Drill& station : drill.stations) add(station);
  }

  std::vector<FamilyText> out_;
  const Drill* drill_ = nullptr;
};

}  // namespace

std::vector<FamilyText> family_texts(const plan::Session& session) {
  return Collector().run(session);
}

}  // namespace chalkleaf::reason
