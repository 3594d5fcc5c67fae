// Walks a session and asks of every place in it that it lies in its file and nests in what holds
// it.
#pragma once

#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {

/// Checks every place of a model: in the file, and inside what holds it.
class Places {
 public:
  explicit Places(const Source* source) : source_(source) {}
  void inside(const Span& inner, const Span& outer) {
    if (!inner) return;
    in_file(inner);
    if (!outer.contains(inner)) ok = false;
  }
  void in_file(const Span& span) {
    if (!span) return;
    if (span.source != source_ || span.begin > span.end || span.end > source_->text().size()) {
      ok = false;
    }
  }
  // Emphasis lies in the text, in order, between characters.
  void emphasis(const Words& words) {
    const auto is_inside_character = [&](std::size_t at) {
      return at < words.text.size() &&
             (static_cast<unsigned char>(words.text[at]) & 0xC0U) == 0x80U;
    };
    std::size_t last = 0;
    for (const Emphasis& one : words.emphasis) {
      if (one.begin < last || one.begin >= one.end || one.end > words.text.size()) ok = false;
      if (is_inside_character(one.begin) || is_inside_character(one.end)) ok = false;
      last = one.end;
    }
  }
  // A name is set in a type of its own.
  void plain(const Words& words) {
    if (!words.emphasis.empty()) ok = false;
  }
  void words(const Words& all, const Span& outer) {
    inside(all.span, outer);
    emphasis(all);
  }
  void words(const std::vector<Words>& all, const Span& outer) {
    for (const Words& w : all) words(w, outer);
  }
  void note(const Note& n) {
    emphasis(n.words);
    for (const Words& cell : n.cells) words(cell, n.words.span);
  }
  void notes(const std::vector<Note>& all, const Span& outer) {
    for (const Note& n : all) inside(n.words.span, outer), note(n);
  }
  void safety(const std::vector<Safety>& all) {
    for (const Safety& s : all) {
      in_file(s.words.span);
      emphasis(s.words);
      words(s.sentences, s.words.span);
    }
  }
  void dose(const std::optional<Dose>& d, const Span& outer) {
    if (!d) return;
    inside(d->span, outer);
    for (const Words& w : d->ways) inside(w.span, d->span);
    for (const Words& w : d->remarks) inside(w.span, d->span);
  }
  void drill(const Drill& d) {
    inside(d.name.span, d.span);
    plain(d.name);
    for (const Words& choice : d.choices) inside(choice.span, d.name.span), plain(choice);
    dose(d.dose, d.span);
    words(d.cues, d.span);
    words(d.easier, d.span);
    words(d.harder, d.span);
    inside(d.record.span, d.span);
    inside(d.at.span, d.span);
    if (d.circuit) {
      inside(d.circuit->span, d.span);
      if (d.dose || d.stations.empty()) ok = false;
    }
    for (const Drill& station : d.stations) {
      if (!d.circuit || station.circuit) ok = false;
      inside(station.span, d.span);
      drill(station);
    }
    for (const KitUse& u : d.uses) inside(u.kit.span, d.span), inside(u.how.span, d.span);
    notes(d.notes, d.span);
    for (const Substitute& s : d.substitutes) {
      inside(s.span, d.span);
      inside(s.kit.span, s.span);
      inside(s.name.span, s.span);
      dose(s.dose, s.span);
      for (const Words& w : s.easier) inside(w.span, s.span);
      notes(s.notes, s.span);
    }
  }
  void session(const Session& s) {
    for (const Note& n : s.introduction) in_file(n.words.span), note(n);
    safety(s.safety);
    plain(s.title);
    for (const Part& part : s.parts) {
      in_file(part.span);
      plain(part.title);
      safety(part.safety);
      in_file(part.title.span);  // a part without a heading has the plan's title
      for (const Step& step : part.steps) {
        if (const auto* d = std::get_if<Drill>(&step)) inside(d->span, part.span), drill(*d);
        if (const auto* n = std::get_if<Note>(&step)) inside(n->words.span, part.span), note(*n);
        if (const auto* k = std::get_if<KitMove>(&step)) kit_move(*k, part.span);
        if (const auto* l = std::get_if<PartLink>(&step)) inside(l->span, part.span);
      }
    }
  }
  void kit_move(const KitMove& move, const Span& outer) {
    inside(move.span, outer);
    for (const Words& kit : move.kit) inside(kit.span, move.span), plain(kit);
    inside(move.how.span, move.span);
    if (move.kit.empty()) ok = false;
  }
  bool ok = true;

 private:
  const Source* source_;
};

}  // namespace chalkleaf::plan
