// Puts the items of a line together: which amount belongs to which name. Inside the room; others
// use draft/drills.h. Tested by tests/draft/drills_test.cpp.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "draft/cutter.h"
#include "draft/drills.h"
#include "draft/names.h"

namespace chalkleaf::draft {

using Elements = std::vector<Element>;

/// Puts items together.
class Assembler {
 public:
  Assembler(const Lexicon& words, const Pieces& pieces, std::string_view line,
            const Setting& setting)
      : words_(words),
        pieces_(pieces),
        line_(line),
        setting_(setting),
        names_(words, pieces, line),
        complex_(words.within(Role::kComplex, pieces, 0, pieces.size())) {}

  SpokenLine run(const std::vector<Item>& items);

 private:
  static bool is_element(const Item& item) { return item.kind == Item::Kind::kElement; }
  static bool is_words(const Item& item) { return item.kind == Item::Kind::kWords; }
  static bool has_kind(const Elements& elements, Element::Kind kind);
  static bool has_amount(const Elements& elements);
  bool is(Role role, std::size_t begin, std::size_t end) const;
  bool within(Role role, std::size_t begin, std::size_t end) const;

  // A sentence behind others that begins like a remark, or says when.
  bool is_remark_sentence(const std::vector<Item>& items, std::size_t begin, std::size_t end) const;

  void sentence(const std::vector<Item>& items, std::size_t begin, std::size_t end);

  // Labels and list headers before colons and dashes; returns where the rest begins.
  std::size_t labels(const std::vector<Item>& items, std::size_t begin, std::size_t end);
  bool header_behind(const std::vector<Item>& items, std::size_t at, std::size_t end) const;
  static bool list_behind(const std::vector<Item>& items, std::size_t at, std::size_t end);
  static bool each_behind(const std::vector<Item>& items, std::size_t end);
  // `line 1`, `silver`
  bool is_named_label(const Item& item) const;

  // The right side begins a drill of its own: words and then an amount, or a count and words.
  static bool names_drills(const std::vector<Item>& items, std::size_t at, std::size_t end);

  // `shapes 20 sec ea: hollow, arch` and `3 rounds, 40 on / 20 off: leg lifts, pushups`.
  bool heads_list(const std::vector<Item>& items, std::size_t begin, std::size_t divide,
                  std::size_t end) const;

  bool heads_minutes(const std::vector<Item>& items, std::size_t begin, std::size_t divide,
                     std::size_t end) const;

  void header(const std::vector<Item>& items, std::size_t begin, std::size_t end);

  Group& group();

  bool take_group(const Element& e);
  Elements grouped(const Elements& elements);

  // `run, squat on, land, 5 turns each`: what waits is one thing, which each gymnast does.
  bool is_linked(const Elements& elements) const;
  // `…, two lots`: all drills of the sentence, so many times.
  bool slashes(const Name& name) const;
  bool repeats(const Name& name) const;
  bool are_sided_moves(const Elements& elements) const;
  bool is_of_all(const Elements& elements) const;

  // `three places, 22 min each`: how long each group stays, not what a child does.
  bool is_stay(const Elements& elements) const;

  bool is_body_list(std::size_t from) const;

  SpokenDrill& add(const Name& name, const Elements& elements);

  void reach(SpokenDrill& drill, std::size_t piece_end) const;

  void note(std::size_t begin, std::size_t end);

  // Names without a dose of their own: drills, or remarks of the drill before them.
  void flush();

  // Gives each name that waits the dose; remarks among them stay remarks.
  void distribute(const Elements& elements);

  // All that waits is one drill: `run, jump, land in hoop x6`.
  void join_pending(const Elements& elements);

  void dosed(const Name& name, const Elements& elements);
  // Elements without a name: of what waits, or of the drill before.
  void nameless(const Elements& said);
  // Remarks among what waits are no part of its name.
  void drop_remarks();
  // `silver – x8 over the rope`, `1700 W/U – 3 laps`: the name is the label, or what is counted.
  void of_label(const Elements& elements);
  // `straddle jump, full turn, leap – there and back x2`
  static bool dashed_distribution(const Elements& elements);
  void extend(SpokenDrill& drill, const Elements& elements) const;

  // A rest at the end of a line is that of all its drills done in sets, or else of the last.
  void rest_of_all(const Element& rest);
  static bool in_sets(const Elements& elements, const Element& rest);
  Elements rounds_of(const Name& name, const Elements& elements) const;

  // One clause: names and their elements, in turn.
  void clause(const std::vector<Item>& items, std::size_t at, std::size_t end);
  bool is_again(const Elements& elements) const;
  bool is_way_name(const Item& item) const;
  bool label_of_places();
  bool is_other_way(const Name& name, const Elements& elements);
  // `… or 5 tries, whichever comes first`, `… and at the end hold 10 s`, `stick 3 sec`
  bool is_aside(const std::vector<Item>& items, std::size_t at) const;

  static bool is_in_passing(const Element& e);
  static bool counts_behind(const std::vector<Item>& items, std::size_t words);
  std::size_t stretch(const std::vector<Item>& items, std::size_t i, std::size_t end);

  // `5-4-3-2-1 pull ups + same # dips`: both by the same ladder.
  void ladder(const Name& name, const Elements& elements);

  // Words behind elements with no name before them are the name, unless they only say how.
  bool name_behind(const Item& item, const Elements& elements) const;

  // Words and a rest or sides: `side L+R`, `between it 20 sec pause`.
  void without_amount(const Name& name, const Elements& kept);

  void words_only(const Name& name);
  void fold_rounds();
  void finish();

  const Lexicon& words_;
  const Pieces& pieces_;
  std::string_view line_;
  const Setting& setting_;
  NameReader names_;
  bool complex_;  ///< the line speaks of a complex of moves
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
  std::size_t name_end_ = 0;        ///< pieces; of the drill added last
  bool landed_ = false;             ///< how it ends was said last: `land`
  std::size_t sentence_begin_ = 0;  ///< pieces
  bool stays_ = false;              ///< says how long each group stays somewhere
};

}  // namespace chalkleaf::draft
