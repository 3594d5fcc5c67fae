// See the header.
#include "draft/drills.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "draft/spoken_dose.h"

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;
using PKind = Piece::Kind;

/// A run of words, an element, a bracket or a mark between clauses.
struct Item {
  enum class Kind { kWords, kElement, kBracket, kComma, kStop, kDivide };
  Kind kind = Kind::kWords;
  std::size_t begin = 0;  ///< pieces
  std::size_t end = 0;
  Element element = {};
};

/// Cuts a line into items.
class Cutter {
 public:
  Cutter(const Lexicon& words, const Pieces& pieces, std::string_view line)
      : words_(words), pieces_(pieces), reader_(words, pieces, line) {}

  std::vector<Item> run(Place begin = Place::kFirst) {
    place_ = begin;
    std::size_t dashes = 0;
    for (std::size_t i = 0; i < pieces_.size(); ++i) dashes += is_spaced_dash(i) ? 1 : 0;
    dash_list_ = dashes > 2;
    cut(0, pieces_.size());
    return std::move(out_);
  }

 private:
  bool is_spaced_dash(std::size_t i) const {
    const Piece& piece = pieces_[i];
    return piece.is(PKind::kDash) && (piece.space_before || piece.space_after) && i > 0;
  }
  void mark(Item::Kind kind, std::size_t begin, std::size_t end) {
    out_.push_back({kind, begin, end, {}});
    place_ = Place::kFirst;
  }
  void word(std::size_t at) {
    if (!out_.empty() && out_.back().kind == Item::Kind::kWords && out_.back().end == at) {
      ++out_.back().end;
    } else {
      out_.push_back({Item::Kind::kWords, at, at + 1, {}});
    }
    place_ = Place::kInside;
  }

  // What stands in brackets: the elements, if there is nothing else, or all of it as a remark.
  std::size_t bracket(std::size_t at, std::size_t end) {
    std::size_t close = at + 1;
    while (close < end && !pieces_[close].is(PKind::kClose)) ++close;
    std::vector<Element> inside;
    std::size_t i = at + 1;
    while (i < close) {
      const auto found = reader_.read(i, close, Place::kInside);
      if (!found) break;
      inside.push_back(*found);
      i = found->next;
    }
    const bool minutes =
        inside.size() == 1 && inside[0].kind == EKind::kCount && inside[0].unit == Unit::kBare;
    const bool divides =
        close + 1 < end && (pieces_[close + 1].is(PKind::kColon) || is_spaced_dash(close + 1));
    if (i == close && !inside.empty() && !minutes && !divides) {
      for (const Element& one : inside) {
        out_.push_back({Item::Kind::kElement, one.begin, one.next, one});
      }
    } else if (close > at + 1) {
      out_.push_back({Item::Kind::kBracket, at + 1, close, {}});
    }
    return std::min(close + 1, end);
  }

  void cut(std::size_t at, std::size_t end) {
    while (at < end) {
      const Piece& piece = pieces_[at];
      if (piece.is(PKind::kOpen)) {
        at = bracket(at, end);
        continue;
      }
      if (const auto found = reader_.read(at, end, place_)) {
        out_.push_back({Item::Kind::kElement, at, found->next, *found});
        at = found->next;
        const bool group = found->kind == EKind::kRounds || found->kind == EKind::kEmom;
        place_ = group ? Place::kFirst : Place::kInside;  // `three rounds of eight tuck-ups`
        continue;
      }
      if (piece.is(PKind::kComma) || piece.is(PKind::kSemicolon)) {
        mark(Item::Kind::kComma, at, at + 1);
      } else if (piece.is(PKind::kStop)) {
        mark(Item::Kind::kStop, at, at + 1);
      } else if (piece.is(PKind::kColon) || is_spaced_dash(at)) {
        mark(dash_list_ && !piece.is(PKind::kColon) ? Item::Kind::kComma : Item::Kind::kDivide, at,
             at + 1);
      } else if (piece.is(PKind::kSlash) && piece.space_before && piece.space_after &&
                 !out_.empty() && out_.back().kind == Item::Kind::kElement) {
        mark(Item::Kind::kComma, at, at + 1);
      } else if (piece.is(PKind::kClose)) {
        ++at;
        continue;
      } else if (const std::size_t odd = words_.match(Role::kOddEven, pieces_, at, end); odd > 0) {
        mark(Item::Kind::kComma, at, at + odd);
        at += odd;
        continue;
      } else if (const std::size_t then = words_.match(Role::kThen, pieces_, at, end);
                 then > 0 && place_ == Place::kInside) {
        mark(Item::Kind::kComma, at, at + then);
        at += then;
        continue;
      } else if (then > 0) {
        at += then;  // `, then …`
        continue;
      } else if (const std::size_t both = words_.match(Role::kAnd, pieces_, at, end);
                 both > 0 && (begins_count(at + both, end) || parts_doses(at + both, end))) {
        mark(Item::Kind::kComma, at, at + both);
        at += both;
        continue;
      } else {
        word(at);
      }
      ++at;
    }
  }
  // `… + 10 press ups`, `… and five big breaths`
  bool begins_count(std::size_t at, std::size_t end) const {
    if (out_.empty()) return false;
    const auto found = reader_.read(at, end, Place::kFirst);
    return found && found->kind == EKind::kCount && found->leads;
  }

  // `pull-ups 5 + box jumps 8`: behind a dose it begins another drill.
  bool parts_doses(std::size_t at, std::size_t end) const {
    if (out_.empty() || out_.back().kind != Item::Kind::kElement ||
        !out_.back().element.is_amount())
      return false;
    for (std::size_t i = at; i < end && !reader_.is_clause_end(i, end); ++i) {
      const auto found = reader_.read(i, end, Place::kInside);
      if (found && found->is_amount() && !found->held) return i > at;
      if (found) i = found->next - 1;
    }
    return false;
  }

  const Lexicon& words_;
  const Pieces& pieces_;
  ElementReader reader_;
  std::vector<Item> out_;
  Place place_ = Place::kFirst;
  bool dash_list_ = false;
};

/// Puts items together.
class Assembler {
 public:
  Assembler(const Lexicon& words, const Pieces& pieces, std::string_view line,
            const Setting& setting)
      : words_(words), pieces_(pieces), line_(line), setting_(setting) {}

  SpokenLine run(const std::vector<Item>& items) {
    for (std::size_t begin = 0; begin < items.size();) {
      std::size_t end = begin;
      while (end < items.size() && items[end].kind != Item::Kind::kStop) ++end;
      sentence(items, begin, end);
      begin = end + 1;
    }
    flush();
    finish();
    return std::move(out_);
  }

 private:
  /// Words that wait for a dose, perhaps with sides of their own.
  struct Name {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::vector<Element> own = {};
  };
  using Elements = std::vector<Element>;

  static bool is_element(const Item& item) { return item.kind == Item::Kind::kElement; }
  static bool is_words(const Item& item) { return item.kind == Item::Kind::kWords; }
  static bool has_kind(const Elements& elements, EKind kind) {
    return std::any_of(elements.begin(), elements.end(),
                       [&](const Element& e) { return e.kind == kind; });
  }
  static bool has_amount(const Elements& elements) {
    return std::any_of(elements.begin(), elements.end(),
                       [](const Element& e) { return e.is_amount(); });
  }
  bool is(Role role, std::size_t begin, std::size_t end) const {
    return words_.is(role, pieces_, begin, end);
  }
  bool within(Role role, std::size_t begin, std::size_t end) const {
    return words_.within(role, pieces_, begin, end);
  }

  std::string raw(std::size_t begin, std::size_t end) const {
    if (begin >= end) return {};
    const std::size_t from = pieces_[begin].begin;
    return std::string(trim(line_.substr(from, pieces_[end - 1].end - from)));
  }

  // The name with trade shorthand spelled out.
  std::string spelled(std::size_t begin, std::size_t end) const {
    std::string out;
    for (std::size_t at = begin; at < end;) {
      if (at > begin && pieces_[at].space_before) out += ' ';
      const Lexicon::Spelled found = words_.spelled(pieces_, at, end);
      if (found.pieces > 0) {
        out += found.text;
        at += found.pieces;
        continue;
      }
      out += raw(at, at + 1);
      ++at;
    }
    return out;
  }

  // A clause that says when, who or how, and names no drill.
  bool is_remark(const Name& name) const {
    constexpr std::size_t kMostWords = 8;
    return name.end - name.begin > kMostWords || within(Role::kCondition, name.begin, name.end) ||
           is(Role::kRemark, name.begin, name.end) || is(Role::kQualifier, name.begin, name.end) ||
           (is(Role::kManner, name.begin, name.end) && name.end - name.begin > 1) ||
           pieces_[name.begin].is(PKind::kNumber) || counts_something(name);
  }

  // `teams of 4`
  bool counts_something(const Name& name) const {
    for (std::size_t i = name.begin + 1; i < name.end; ++i) {
      if (pieces_[i].is(PKind::kNumber) && is(Role::kNoAmountBehind, i - 1, i)) return true;
    }
    return false;
  }

  // A sentence behind others that begins like a remark, or says when.
  bool is_remark_sentence(const std::vector<Item>& items, std::size_t begin,
                          std::size_t end) const {
    if (out_.drills.empty() || begin >= end || !is_words(items[begin])) return false;
    const std::size_t from = items[begin].begin;
    if (is(Role::kRemark, from, pieces_.size())) return true;
    std::size_t words_end = from;
    for (std::size_t i = begin; i < end && items[i].kind != Item::Kind::kComma; ++i) {
      if (is_words(items[i])) words_end = items[i].end;
    }
    return within(Role::kCondition, from, words_end);
  }

  void sentence(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
    if (begin >= end) return;
    label_.clear();
    listed_.clear();
    list_ = false;
    sentence_drills_.clear();
    if (is_remark_sentence(items, begin, end)) {
      flush();
      return note(items[begin].begin, items[end - 1].end);
    }
    // `…, jellyfish jumps. 2 goes of each`: what waits may be meant.
    const bool nameless = is_element(items[begin]) && !items[begin].element.leads;
    if (!nameless) flush();
    begin = labels(items, begin, end);
    for (std::size_t at = begin; at < end;) {
      std::size_t clause_end = at;
      while (clause_end < end && items[clause_end].kind != Item::Kind::kComma &&
             items[clause_end].kind != Item::Kind::kDivide) {
        ++clause_end;
      }
      if (clause_end > at) clause(items, at, clause_end);
      divided_ = clause_end < end && items[clause_end].kind == Item::Kind::kDivide;
      at = clause_end + 1;
    }
    listed_.clear();
    list_ = false;
  }

  // Labels and list headers before colons and dashes; returns where the rest begins.
  std::size_t labels(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i) {
      if (items[i].kind != Item::Kind::kDivide) continue;
      const auto from = items.begin() + static_cast<std::ptrdiff_t>(begin);
      const bool amounts =
          std::any_of(from, items.begin() + static_cast<std::ptrdiff_t>(i), is_element);
      if (amounts) {
        if (!heads_list(items, begin, i, end)) break;
        header(items, begin, i);
        begin = i + 1;
        continue;
      }
      if (begin == i || !(names_drills(items, i + 1, end) || is_named_label(items[begin]))) break;
      if (!label_.empty()) label_ += ", ";
      label_ += raw(items[begin].begin, items[i].begin);
      begin = i + 1;
    }
    return begin;
  }
  // `line 1`, `silver`
  bool is_named_label(const Item& item) const {
    if (!is_words(item)) return false;
    const bool numbered =
        is(Role::kNameBeforeNumber, item.begin, item.end) && item.end == item.begin + 2;
    const std::size_t level = words_.match(Role::kLevel, pieces_, item.begin, item.end);
    return numbered || (level > 0 && level == item.end - item.begin);
  }

  // The right side begins a drill of its own: words and then an amount, or a count and words.
  static bool names_drills(const std::vector<Item>& items, std::size_t at, std::size_t end) {
    std::size_t words = 0;
    for (; at < end && items[at].kind != Item::Kind::kStop; ++at) {
      if (is_words(items[at])) ++words;
      if (!is_element(items[at])) continue;
      const Element& e = items[at].element;
      if (e.kind == EKind::kSides || e.kind == EKind::kEach || e.kind == EKind::kRest) continue;
      if (words > 0 || e.leads) return true;
      // `3 times slow without music, 3 times with music`, but not `6 goes off the block`
      return at + 1 < end && is_words(items[at + 1]) && e.kind == EKind::kCount &&
             e.unit != Unit::kBare &&
             std::any_of(items.begin() + static_cast<std::ptrdiff_t>(at) + 1,
                         items.begin() + static_cast<std::ptrdiff_t>(end), [](const Item& item) {
                           return is_element(item) && item.element.is_amount();
                         });
    }
    return false;
  }

  // `shapes 20 sec ea: hollow, arch` and `3 rounds, 40 on / 20 off: leg lifts, pushups`.
  bool heads_list(const std::vector<Item>& items, std::size_t begin, std::size_t divide,
                  std::size_t end) const {
    bool group = false;
    bool each = false;
    bool timed = false;
    const bool colon = pieces_[items[divide].begin].is(PKind::kColon);
    for (std::size_t i = begin; i < divide; ++i) {
      if (!is_element(items[i])) continue;
      const EKind kind = items[i].element.kind;
      group = group || kind == EKind::kOnOff || kind == EKind::kRounds || kind == EKind::kEmom ||
              kind == EKind::kAsMany;
      each = each || kind == EKind::kEach;
      timed = timed || kind == EKind::kTime;
    }
    if (group) return true;
    std::size_t names = 0;
    bool amounts = false;
    for (std::size_t i = divide + 1; i < end; ++i) {
      if (is_words(items[i])) ++names;
      amounts = amounts || (is_element(items[i]) && items[i].element.is_amount());
    }
    if (names < 2 || amounts) return false;
    // `shapes 20 sec ea - hollow, arch`; not `6 passes each - no spot tonight`.
    const Item& first = items[divide + 1];
    const bool remark = is_words(first) && is_remark({first.begin, first.end, {}});
    return colon || (each && timed && !remark);
  }

  void header(const std::vector<Item>& items, std::size_t begin, std::size_t end) {
    std::string said;
    Elements found;
    for (std::size_t i = begin; i < end; ++i) {
      if (is_words(items[i]) && !is(Role::kQualifier, items[i].begin, items[i].end)) {
        said += (said.empty() ? "" : " ") + raw(items[i].begin, items[i].end);
      }
      if (is_element(items[i])) found.push_back(items[i].element);
    }
    for (const Element& e : grouped(found)) listed_.push_back(e);
    list_ = true;
    if (has_kind(found, EKind::kAsMany) && !found.front().values.empty()) {
      // `AMRAP 8 mins – 5 ring rows, 8 press ups`: the list has doses of its own.
      as_many_ = raw(items[begin].begin, items[end - 1].end);
    }
    if (!said.empty()) label_ = said;
  }

  Group& group() {
    if (!out_.group) out_.group.emplace();
    return *out_.group;
  }

  bool take_group(const Element& e) {
    switch (e.kind) {
      case EKind::kRounds:
        group().rounds = e.values.front();
        group().has_rounds = true;
        return true;
      case EKind::kOnOff:
        group().work = e.values[0];
        group().rest = e.values[1];
        group_timed_ = true;
        return true;
      case EKind::kEmom:
        if (!e.values.empty()) {
          group().rounds = e.values.front() / 60;
          group().has_rounds = true;
        }
        group().superset = true;
        emom_ = true;
        return true;
      case EKind::kCount:  // `40 on / 20 off x2`
        if (e.unit != Unit::kTimes || !group_timed_ || !out_.drills.empty() || group().has_rounds)
          return false;
        group().rounds = e.values.front();
        group().has_rounds = true;
        return true;
      case EKind::kRest:
        if (!e.between_rounds || !out_.group) return false;
        group().between = e.values.front();
        return true;
      default:
        return false;
    }
  }
  Elements grouped(const Elements& elements) {
    Elements kept;
    for (const Element& e : elements) {
      if (!take_group(e)) kept.push_back(e);
    }
    return kept;
  }

  bool is_body_list(std::size_t from) const {
    return std::all_of(pending_.begin() + static_cast<std::ptrdiff_t>(from), pending_.end(),
                       [&](const Name& name) {
                         return within(Role::kBody, name.begin, name.end) &&
                                name.end - name.begin < 4;
                       });
  }

  SpokenDrill& add(const Name& name, const Elements& elements) {
    SpokenDrill made;
    made.label = label_;
    made.name = spelled(name.begin, name.end);
    made.elements = name.own;
    made.elements.insert(made.elements.end(), elements.begin(), elements.end());
    made.where = {pieces_[name.begin].begin, pieces_[name.end - 1].end};
    made.notes = std::move(early_notes_);
    early_notes_.clear();
    if (!elements.empty()) reach(made, elements.back().next);
    out_.drills.push_back(std::move(made));
    sentence_drills_.push_back(out_.drills.size() - 1);
    return out_.drills.back();
  }

  void reach(SpokenDrill& drill, std::size_t piece_end) const {
    if (piece_end > 0) drill.where.end = std::max(drill.where.end, pieces_[piece_end - 1].end);
  }

  void note(std::size_t begin, std::size_t end) {
    const std::string said = raw(begin, end);
    if (said.empty()) return;
    if (out_.drills.empty() || !pending_.empty()) {
      early_notes_.push_back(said);
    } else {
      out_.drills.back().notes.push_back(said);
      reach(out_.drills.back(), end);
    }
  }

  // Names without a dose of their own: drills, or remarks of the drill before them.
  void flush() {
    const std::vector<Name> names = std::exchange(pending_, {});
    for (const Name& name : names) {
      if (!out_.drills.empty() && is_remark(name)) {
        note(name.begin, name.end);
        continue;
      }
      add(name, listed_);
    }
    if (!early_notes_.empty() && !out_.drills.empty()) {
      auto& notes = out_.drills.back().notes;
      notes.insert(notes.end(), early_notes_.begin(), early_notes_.end());
      early_notes_.clear();
    }
  }

  // Gives each name that waits the dose; remarks among them stay remarks.
  void distribute(const Elements& elements) {
    std::vector<Name> names = std::exchange(pending_, {});
    std::vector<Name> remarks;
    for (Name& name : names) {
      if (name.own.size() == 1 && name.own[0].kind == EKind::kSides && name.own[0].ways.empty() &&
          elements.front().kind == EKind::kCount) {
        name.own.clear();  // `cartwheels L + R`: each of them is one
      }
      if (is_remark(name)) {
        remarks.push_back(name);
      } else {
        add(name, elements);
      }
    }
    if (out_.drills.empty() && !remarks.empty()) {
      add(remarks.front(), elements);
      remarks.erase(remarks.begin());
    }
    for (const Name& remark : remarks) note(remark.begin, remark.end);
  }

  // All that waits is one drill: `run, jump, land in hoop x6`.
  void join_pending(const Elements& elements) {
    Name all = pending_.front();
    all.end = pending_.back().end;
    for (std::size_t i = 1; i < pending_.size(); ++i) {
      all.own.insert(all.own.end(), pending_[i].own.begin(), pending_[i].own.end());
    }
    pending_.clear();
    add(all, elements);
  }

  void dosed(const Name& name, const Elements& elements) {
    const bool each = has_kind(elements, EKind::kEach);
    const bool lengths =
        elements.front().kind == EKind::kCount && elements.front().unit == Unit::kLengths;
    const bool complex = within(Role::kComplex, 0, pieces_.size());
    std::vector<Name> halves = each || lengths ? parted(name, each) : std::vector<Name>{name};
    if (is_ladder_name(name)) halves = {name};
    if (!pending_.empty() && each && !complex) {
      pending_.insert(pending_.end(), halves.begin(), halves.end());
      if (is_body_list(0) || (pending_.size() > 1 && is_body_list(1)))
        return join_pending(elements);
      return distribute(elements);
    }
    if (halves.size() > 1) {
      flush();
      pending_ = halves;
      return distribute(elements);
    }
    const bool joins =
        !pending_.empty() && sentence_drills_.empty() && !is_remark(pending_.front());
    if (joins) {
      pending_.push_back(name);
      return join_pending(elements);
    }
    flush();
    add(name, elements);
  }
  bool is_ladder_name(const Name& name) const { return is(Role::kLadder, name.begin, name.end); }

  // `leaps + split jumps`, `walkover fwd and back`: two drills where each has a dose.
  std::vector<Name> parted(const Name& name, bool each) const {
    for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
      if (!is(Role::kAnd, at, name.end)) continue;
      const bool sign = pieces_[at].is(PKind::kOther);
      const bool plural = pieces_[at - 1].text.ends_with('s') && (each || sign);
      const bool way = each && is(Role::kForwardBack, at - 1, name.end) &&
                       is(Role::kForwardBack, at + 1, name.end);
      if (!(plural || way || (sign && !each))) continue;
      if (is(Role::kBody, at - 1, name.end)) continue;
      return {{name.begin, at}, {at + 1, name.end}};
    }
    return {name};
  }

  // Elements without a name: of what waits, or of the drill before.
  void nameless(const Elements& said) {
    const Elements kept = grouped(said);
    if (kept.empty()) return;
    const bool amount = has_amount(kept);
    const bool each = has_kind(kept, EKind::kEach);
    const bool sides = kept.front().kind == EKind::kSides;
    const bool only_remarks = std::all_of(pending_.begin(), pending_.end(),
                                          [&](const Name& name) { return is_remark(name); });
    if (amount && out_.drills.empty() && !setting_.name.empty() && only_remarks &&
        !pending_.empty()) {
      for (const Name& name : std::exchange(pending_, {}))
        early_notes_.push_back(raw(name.begin, name.end));
      return of_label(kept);  // `obstacle relay, teams of 4, x2 each`
    }
    if (!pending_.empty() && (amount || (sides && out_.drills.empty()))) {
      const bool several = pending_.size() > 1;
      const bool dashed = divided_ && dashed_distribution(kept);
      if (several && (each || dashed) && !is_body_list(0) && !is_body_list(1))
        return distribute(kept);
      if (several && !sentence_drills_.empty()) {  // the last one alone
        const Name last = pending_.back();
        pending_.pop_back();
        flush();
        pending_ = {last};
      }
      if (!sentence_drills_.empty() && is_remark(pending_.back())) {
        flush();
        return extend(out_.drills.back(), kept);
      }
      drop_remarks();
      return join_pending(kept);
    }
    if (out_.drills.empty() || (sentence_drills_.empty() && !label_.empty() && amount))
      return of_label(kept);
    if (kept.size() == 1 && kept.front().kind == EKind::kRest) return rest_of_all(kept.front());
    if (each && amount && sentence_drills_.size() != 1) {  // `… . 2 goes at each`, `x3 for all`
      for (SpokenDrill& drill : out_.drills) extend(drill, kept);
      return;
    }
    if (kept.front().kind == EKind::kSides && divided_) {  // `Bronze 5, Silver 8 – both legs`
      for (const std::size_t i : sentence_drills_) extend(out_.drills[i], kept);
      return;
    }
    extend(out_.drills.back(), kept);
  }
  // Remarks among what waits are no part of its name.
  void drop_remarks() {
    while (pending_.size() > 1 && is_remark(pending_.back())) {
      early_notes_.push_back(raw(pending_.back().begin, pending_.back().end));
      pending_.pop_back();
    }
  }
  // `silver – x8 over the rope`, `1700 W/U – 3 laps`: the name is the label, or what is counted.
  void of_label(const Elements& elements) {
    const Element& first = elements.front();
    const bool counts = first.kind == EKind::kCount && first.unit == Unit::kLengths &&
                        first.remark.empty() && first.next < pieces_.size();
    if (label_.empty() && !setting_.name.empty() && has_amount(elements)) label_ = setting_.name;
    if (label_.empty() && !counts) {
      out_.defaults.insert(out_.defaults.end(), elements.begin(), elements.end());
      return;
    }
    SpokenDrill& made = add({first.begin, first.next}, elements);
    made.name = label_.empty() ? raw(first.next - 1, first.next) : label_;
    made.label.clear();
  }
  // `straddle jump, full turn, leap – there and back x2`
  static bool dashed_distribution(const Elements& elements) {
    return elements.front().kind == EKind::kCount && elements.front().unit == Unit::kLengths;
  }
  void extend(SpokenDrill& drill, const Elements& elements) const {
    drill.elements.insert(drill.elements.end(), elements.begin(), elements.end());
    reach(drill, elements.back().next);
  }

  // A rest at the end of a line is that of all its drills done in sets, or else of the last.
  void rest_of_all(const Element& rest) {
    if (out_.group && !group_timed_) {
      group().between = rest.values.front();
      return;
    }
    const bool dosed =
        std::any_of(out_.drills.begin(), out_.drills.end(),
                    [](const SpokenDrill& drill) { return has_amount(drill.elements); });
    if (!dosed) {  // of the whole part
      out_.defaults.push_back(rest);
      return;
    }
    bool any = false;
    for (SpokenDrill& drill : out_.drills) {
      const bool sets = std::any_of(
          drill.elements.begin(), drill.elements.end(),
          [](const Element& e) { return e.kind == EKind::kSetsOf || e.values.size() > 2; });
      if (!sets) continue;
      extend(drill, {rest});
      any = true;
    }
    if (!any) extend(out_.drills.back(), {rest});
  }

  // One clause: names and their elements, in turn.
  void clause(const std::vector<Item>& items, std::size_t at, std::size_t end) {
    while (at < end) {
      if (items[at].kind == Item::Kind::kBracket) {
        note(items[at].begin, items[at].end);
        ++at;
        continue;
      }
      if (is_words(items[at]) && is_aside(items, at))
        return note(items[at].begin, items[end - 1].end);
      at = stretch(items, at, end);
    }
  }
  // `… or 5 tries, whichever comes first`, `… and at the end hold 10 s`, `stick 3 sec`
  bool is_aside(const std::vector<Item>& items, std::size_t at) const {
    const Item& item = items[at];
    if (out_.drills.empty() && pending_.empty()) return false;
    if (is(Role::kOr, item.begin, item.end)) return true;
    const std::size_t finish = words_.match(Role::kFinish, pieces_, item.begin, item.end);
    if (finish > 0 && finish == item.end - item.begin) return true;
    const bool behind = at > 0 && is_element(items[at - 1]) && items[at - 1].element.is_amount();
    return behind && is(Role::kAnd, item.begin, item.end) && item.end - item.begin > 2;
  }

  std::size_t stretch(const std::vector<Item>& items, std::size_t i, std::size_t end) {
    Name name{};
    Elements elements;
    const auto take = [&] {
      bool leads = false;
      while (i < end && is_element(items[i]) && !leads) {
        if (items[i].element.leads && !elements.empty()) break;
        elements.push_back(items[i].element);
        leads = items[i].element.leads;
        ++i;
      }
    };
    if (is_words(items[i])) {
      name = {items[i].begin, items[i].end, {}};
      ++i;
      while (i + 1 < end && items[i].kind == Item::Kind::kBracket) {
        name.end = std::min(items[i].end + 1, pieces_.size());  // `candle (lie, legs up) hold 5`
        ++i;
      }
    }
    take();
    if (elements.empty()) {
      words_only(name);
      return i;
    }
    const bool named = name.end > name.begin;
    if (named && is_ladder_name(name) && i < end &&
        is_words(items[i])) {  // `ladder 5-4-3-2-1 pull ups`
      name = {items[i].begin, items[i].end, {}};
      ++i;
      ladder(name, elements);
      return i;
    }
    if (!named && i < end && is_words(items[i]) && name_behind(items[i], elements)) {
      name = {items[i].begin, items[i].end, {}};  // `10 star jumps`, `two laps jogging`
      named_behind_ = true;
      ++i;
      while (i < end && is_element(items[i]) && !items[i].element.leads)
        elements.push_back(items[i++].element);
      elements = grouped(elements);
      if (elements.size() > 1 && elements[0].leads && elements[1].kind == EKind::kCount &&
          elements[1].unit == Unit::kTimes) {
        name.begin = elements[0].begin;  // `2 box layers x6`
        elements.erase(elements.begin());
      }
      elements.empty() ? words_only(name) : dosed(name, elements);
      return i;
    }
    if (!named) {
      nameless(elements);
      return i;
    }
    elements = grouped(elements);
    if (elements.empty()) {
      words_only(name);
    } else if (has_amount(elements)) {
      dosed(name, elements);
    } else {
      without_amount(name, elements);
    }
    return i;
  }

  // `5-4-3-2-1 pull ups + same # dips`: both by the same ladder.
  void ladder(const Name& name, const Elements& elements) {
    for (std::size_t at = name.begin + 1; at + 1 < name.end; ++at) {
      if (!is(Role::kAnd, at, name.end) || !is(Role::kSame, at + 1, name.end)) continue;
      add({name.begin, at, {}}, elements);
      add({at + 1, name.end, {}}, elements);
      return;
    }
    add(name, elements);
  }

  // Words behind elements with no name before them are the name, unless they only say how.
  bool name_behind(const Item& item, const Elements& elements) const {
    const Element& e = elements.back();
    if (e.leads || e.kind == EKind::kSides) return pending_.empty() || e.leads;
    if (e.kind == EKind::kRounds) return true;
    if (!pending_.empty() || !has_amount(elements)) return false;
    const bool counts = e.kind == EKind::kTime ||
                        (e.kind == EKind::kCount && e.unit != Unit::kBare && e.unit != Unit::kSets);
    const bool again = named_behind_ && !sentence_drills_.empty();
    if ((!label_.empty() || again) && counts) return true;
    if (is(Role::kQualifier, item.begin, item.end) || is(Role::kRemark, item.begin, item.end))
      return false;
    return counts && (sentence_drills_.empty() || e.unit == Unit::kLengths);
  }

  // Words and a rest or sides: `side L+R`, `between it 20 sec pause`.
  void without_amount(const Name& name, const Elements& kept) {
    const bool effective = std::any_of(kept.begin(), kept.end(), [](const Element& e) {
      return e.kind != EKind::kNothing && e.kind != EKind::kEach;
    });
    if (!effective) return words_only(name);
    if (kept.front().kind == EKind::kRest && !out_.drills.empty()) {
      rest_of_all(kept.front());
      return note(name.begin, name.end);
    }
    if (list_) {
      Elements all = listed_;
      all.insert(all.end(), kept.begin(), kept.end());
      add(name, all);
      return;
    }
    pending_.push_back({name.begin, std::max(name.end, kept.back().next), kept});
    if (!has_kind(kept, EKind::kSides)) pending_.back().end = name.end;
  }

  void words_only(const Name& name) {
    if (name.end <= name.begin) return;
    if (!pending_.empty() && pending_.back().end == name.begin && !starts_clause(name.begin)) {
      pending_.back().end = name.end;  // `splits right/left with front leg on chair`
      return;
    }
    if (list_) {
      if (is_remark(name) && !out_.drills.empty()) return note(name.begin, name.end);
      add(name, listed_);
      return;
    }
    // Behind a dose in the same clause it is a remark: `x6 land quiet like a cat`.
    const bool behind = !out_.drills.empty() && name.begin > 0 && !starts_clause(name.begin);
    if (behind) return note(name.begin, name.end);
    pending_.push_back(name);
  }
  bool starts_clause(std::size_t piece) const {
    if (piece == 0) return true;
    const Piece& before = pieces_[piece - 1];
    return before.is(PKind::kComma) || before.is(PKind::kSemicolon) || before.is(PKind::kStop) ||
           before.is(PKind::kColon) || before.is(PKind::kDash) || before.is(PKind::kSlash) ||
           is(Role::kAnd, piece - 1, piece) || is(Role::kThen, piece - 1, piece);
  }

  void finish() {
    for (SpokenDrill& drill : out_.drills) {
      drill.typed =
          std::string(line_.substr(drill.where.begin, drill.where.end - drill.where.begin));
      if (!as_many_.empty()) drill.notes.push_back(as_many_);
      drill.dose = resolve(words_, drill, setting_);
    }
    if (!out_.group) return;
    // `odd 6 press negatives, even 10 tuck jumps`: each minute is one of them.
    if (emom_ && out_.group->has_rounds && out_.drills.size() == 2 &&
        within(Role::kOddEven, 0, pieces_.size())) {
      out_.group->rounds /= 2;
    }
  }

  const Lexicon& words_;
  const Pieces& pieces_;
  std::string_view line_;
  const Setting& setting_;
  SpokenLine out_;
  std::string label_;
  std::string as_many_;
  Elements listed_;  ///< of the list behind a colon
  bool list_ = false;
  std::vector<Name> pending_;
  std::vector<std::string> early_notes_;
  std::vector<std::size_t> sentence_drills_;
  bool divided_ = false;       ///< the clause stands behind a colon or dash
  bool named_behind_ = false;  ///< names stand behind their counts in this line
  bool group_timed_ = false;
  bool emom_ = false;
};

}  // namespace

bool SpokenLine::has_dose() const {
  return std::any_of(drills.begin(), drills.end(),
                     [](const SpokenDrill& drill) { return drill.dose.has_value(); });
}

SpokenDrill read_named(const Lexicon& words, std::string_view name, std::string_view dose,
                       const Setting& setting) {
  const Pieces pieces = pieces_of(dose);
  SpokenDrill out;
  out.name = name;
  out.typed = std::string(name) + " " + std::string(dose);
  for (const Item& item : Cutter(words, pieces, dose).run(Place::kInside)) {
    if (item.kind == Item::Kind::kElement) out.elements.push_back(item.element);
    if (item.kind != Item::Kind::kWords && item.kind != Item::Kind::kBracket) continue;
    const std::size_t begin = pieces[item.begin].begin;
    out.notes.emplace_back(trim(dose.substr(begin, pieces[item.end - 1].end - begin)));
  }
  out.dose = resolve(words, out, setting);
  return out;
}

SpokenLine read_drills(const Lexicon& words, std::string_view line, const Setting& setting) {
  const Pieces pieces = pieces_of(line);
  return Assembler(words, pieces, line, setting).run(Cutter(words, pieces, line).run());
}

}  // namespace chalkleaf::draft
