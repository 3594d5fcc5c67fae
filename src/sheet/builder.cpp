#include "sheet/builder.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "page/filing.h"
#include "page/layout.h"
#include "sheet/typography.h"

namespace chalkleaf::sheet {

Builder::Builder(Kind kind, const Context& context, const Look& look, type::Typesetter& typesetter,
                 Arrangement arrangement)
    : kind_(kind),
      arrangement_(arrangement),
      context_(context),
      look_(look),
      typesetter_(typesetter) {
  const Size paper = paper_size(context.paper);
  margins_ = Insets::all(look_.margin.at(context.paper));
  if (arrangement_ == Arrangement::kDense) margins_ = Insets::all(margins_.top * 17 / 20);
  if (arrangement_ == Arrangement::kClose) margins_ = Insets::all(margins_.top * 3 / 4);
  if (context.filing != plan::Filing::kNone) margins_ = page::with_filing_margin(paper, margins_);
  // The foot is light: it may stand lower, as far as every printer prints.
  margins_.bottom = std::min(margins_.bottom, std::max(Length::mm(5), margins_.bottom * 3 / 4));
  width_ = paper.width - margins_.left - margins_.right;
  tree_.push_back({});
  for (std::size_t i = 0; i < styles_.size(); ++i) {
    // The catalogue was checked when it was loaded; a role it lacks is set in its first style.
    styles_[i] =
        typesetter.fonts()
            .style(look_.font, static_cast<type::Weight>(i / 2), static_cast<type::Slant>(i % 2))
            .value_or(0);
  }
}

Length Builder::page_height() const {
  const Length foot = look_.text(TextRole::kFoot).leading * 7 / 2;  // of three lines, and its gap
  return paper_size(context_.paper).height - margins_.top - margins_.bottom - foot;
}

Length Builder::height_of(const Block& block, Length width) {
  return page::Layout(typesetter_).measure(block, width).size.height;
}

Length Builder::baseline_of(const Block& block, Length width) {
  return page::Layout(typesetter_).measure(block, width).baseline;
}

Length Builder::natural_width(const Block& block) {
  return page::Layout(typesetter_).natural_width(block);
}

NodeId Builder::node(NodeId parent, Role role) {
  page::Node made;
  made.role = role;
  made.parent = parent;
  tree_.push_back(std::move(made));
  return static_cast<NodeId>(tree_.size() - 1);
}

type::Inline Builder::piece(TextRole role, std::string text, Span origin) const {
  const TextLook& look = look_.text(role);
  type::Inline out;
  out.text = origin ? typographic(text) : std::move(text);
  out.style = style(look.weight, look.slant);
  out.size = look.size;
  out.colour = colour(look.colour);
  out.origin = origin;
  const bool column = role == TextRole::kClock || role == TextRole::kColumn;
  if (column) out.figures = type::Figures::kTabular;
  return out;
}

bool Builder::is_running(TextRole role) const {
  if (kind_ == Kind::kHomeSheet) return false;
  return role == TextRole::kCue || role == TextRole::kVariation || role == TextRole::kBoxText ||
         role == TextRole::kNote;
}

std::vector<type::Inline> Builder::pieces(TextRole role, const plan::Words& words) const {
  if (words.emphasis.empty()) {
    std::vector<type::Inline> whole_text = {piece(role, words.text, words.span)};
    whole_text[0].hyphenate = is_running(role);
    return whole_text;
  }
  std::vector<std::size_t> ends;  // of the stretches, plain and set off by turns
  for (const plan::Emphasis& one : words.emphasis) {
    const std::size_t from = std::max(one.begin, ends.empty() ? 0 : ends.back());
    ends.push_back(std::min(from, words.text.size()));
    ends.push_back(std::clamp(one.end, ends.back(), words.text.size()));
  }
  ends.push_back(words.text.size());
  // The marks are set in the whole text: what a quotation mark is depends on its neighbours.
  const std::string text = typographic(words.text, ends);
  std::vector<type::Inline> out;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < ends.size(); ++i) {
    type::Inline stretch = piece(role, text.substr(begin, ends[i] - begin));
    begin = ends[i];
    if (stretch.text.empty()) continue;
    stretch.origin = words.span;
    stretch.hyphenate = is_running(role);
    if (i % 2 == 1) {
      const TextLook& look = look_.text(role);
      const bool italic = look.slant == type::Slant::kItalic;
      stretch.style =
          words.emphasis[i / 2].strong
              ? style(type::Weight::kBold, look.slant)
              : style(look.weight, italic ? type::Slant::kUpright : type::Slant::kItalic);
    }
    out.push_back(std::move(stretch));
  }
  return out;
}

std::vector<type::Inline> Builder::said(TextRole role, std::string_view key, std::string_view place,
                                        const plan::Words& words) const {
  return filled(role, labels().say(key, {{place, std::string(kHole)}}), words);
}

std::vector<type::Inline> Builder::filled(TextRole role, const std::string& phrase,
                                          const plan::Words& words) const {
  const std::size_t at = phrase.find(kHole);
  if (at == std::string::npos) return {piece(role, phrase)};
  // Without anything set off it is one text, found as such.
  if (words.emphasis.empty()) {
    std::string whole_text = phrase;
    whole_text.replace(at, kHole.size(), words.text);
    std::vector<type::Inline> one = {piece(role, std::move(whole_text), words.span)};
    one[0].hyphenate = is_running(role);
    return one;
  }
  std::vector<type::Inline> out;
  if (at > 0) out.push_back(piece(role, phrase.substr(0, at)));
  for (type::Inline& one : pieces(role, words)) out.push_back(std::move(one));
  const std::size_t behind = at + kHole.size();
  if (behind < phrase.size()) out.push_back(piece(role, phrase.substr(behind)));
  return out;
}

type::Inline Builder::whole(TextRole role, std::string text, Span origin) const {
  type::Inline out = piece(role, std::move(text), origin);
  out.unbroken = true;
  return out;
}

type::Inline Builder::label(TextRole role, std::string text) const {
  return piece(role, text.append(kNoBreakSpace));
}

type::Inline Builder::mark(std::string_view key, TextRole role) const {
  type::Inline out = piece(role, key == "easier" ? "\u25BC" : "\u25B2");
  out.colour = context_.theme.inks[static_cast<std::size_t>(figure::Ink::kAccent)];
  return out;
}

Block Builder::paragraph(std::vector<type::Inline> pieces, TextRole role, Owner owner,
                         page::Align align) const {
  return {page::TextBlock{std::move(pieces), look_.text(role).leading, align, owner}};
}

Block Builder::text(TextRole role, std::string words, Owner owner, Span origin,
                    page::Align align) const {
  std::vector<type::Inline> pieces;
  pieces.push_back(piece(role, std::move(words), origin));
  pieces.back().hyphenate = is_running(role);
  return paragraph(std::move(pieces), role, owner, align);
}

Block Builder::text(TextRole role, const plan::Words& words, Owner owner) const {
  return paragraph(pieces(role, words), role, owner);
}

Block Builder::run_together(std::vector<Block> paragraphs, const type::Inline& between) {
  page::TextBlock out;
  for (Block& one : paragraphs) {
    auto& text = std::get<page::TextBlock>(one.content);
    if (text.text.empty()) continue;
    if (out.text.empty()) {
      out.leading = text.leading;
      out.owner = text.owner;
    } else {
      out.text.push_back(between);  // of the one before it
    }
    const std::size_t first = out.text.size();
    out.owners.push_back({first, text.owner});
    for (const page::PieceOwner& owner : text.owners)
      out.owners.push_back({first + owner.piece, owner.owner});
    for (page::ReadAs& read : text.read_as)
      out.read_as.push_back({first + read.piece, std::move(read.words)});
    for (page::Inlaid& inlaid : text.inlaid)
      out.inlaid.push_back({first + inlaid.piece, std::move(inlaid.drawing)});
    for (type::Inline& piece : text.text) out.text.push_back(std::move(piece));
  }
  return {std::move(out)};
}

// As high as the title's line, so that it takes no room from the sheet, and at most a quarter wide.
Size Builder::logo_size() const {
  const Logo* logo = context_.logo;
  if (logo == nullptr || logo->width <= 0 || logo->height <= 0) return {};
  const Length high = look_.text(TextRole::kTitle).leading;
  const double shape = static_cast<double>(logo->width) / logo->height;
  const Size size{high.scaled(shape), high};
  return size.width > width_ / 4 ? Size{width_ / 4, (width_ / 4).scaled(1 / shape)} : size;
}

Block Builder::logo() {
  const NodeId figure = node(kRoot, Role::kFigure);
  at(figure).alternative_text = labels().say("logo-of", {{"club", context_.club.name.text}});
  return {page::PictureBlock{logo_size(), context_.logo->source, Owner::of(figure),
                             page::Align::kStart}};
}

Block Builder::title(const plan::Words& words, Owner owner) {
  const Size size = logo_size();
  if (size.width <= Length()) return title_words(words, owner, width_);
  page::RowBlock row;
  row.gap = look_.gap;
  row.align = page::RowAlign::kMiddle;
  row.cells.push_back(
      {page::Track::flexible(), title_words(words, owner, width_ - size.width - look_.gap)});
  row.cells.push_back({page::Track::fixed(size.width), logo()});
  return {std::move(row)};
}

std::optional<Block> Builder::title_line(const plan::Words& words, Owner owner, const Block& behind,
                                         Length width) {
  const Size size = logo_size();
  const Length logo_room = size.width > Length() ? size.width + look_.gap : Length();
  const Length room = width_ - logo_room - look_.gap - width;
  if (text_width(TextRole::kTitle, words.text) + Length::pt(1) > room) return std::nullopt;
  page::RowBlock line;
  line.gap = look_.gap;
  line.align = page::RowAlign::kBaseline;
  line.cells.push_back({page::Track::flexible(), title_words(words, owner, room)});
  line.cells.push_back({page::Track::fixed(width), behind});
  if (size.width <= Length()) return Block{std::move(line)};
  page::RowBlock row;
  row.gap = look_.gap;
  row.align = page::RowAlign::kMiddle;
  row.cells.push_back({page::Track::flexible(), {std::move(line)}});
  row.cells.push_back({page::Track::fixed(size.width), logo()});
  return Block{std::move(row)};
}

Block Builder::title_words(const plan::Words& words, Owner owner, Length width) {
  type::Inline line = piece(TextRole::kTitle, words.text, words.span);
  Length widest;
  for (std::size_t at = 0; at < line.text.size();) {
    const std::size_t end = std::min(line.text.find(' ', at), line.text.size());
    widest = std::max(widest, text_width(TextRole::kTitle, line.text.substr(at, end - at)));
    at = end + 1;
  }
  const TextLook& look = look_.text(TextRole::kTitle);
  Length leading = look.leading;
  if (widest > width) {
    const double factor = width.in_pt() / widest.in_pt();
    line.size =
        std::max(look.size.scaled(factor * 0.999), look_.minimum);  // a hair less, for rounding
    leading = look.leading.scaled(line.size.in_pt() / look.size.in_pt());
  }
  return {page::TextBlock{{std::move(line)}, leading, page::Align::kStart, owner}};
}

Length Builder::text_width(TextRole role, std::string words) {
  const type::Inline one = piece(role, std::move(words));
  return typesetter_.natural_width({&one, 1});
}

Length Builder::longest_word(std::span<const type::Inline> all) {
  // Words end at spaces only, so a word is never thought shorter than the line breaker finds it.
  Length widest;
  std::vector<type::Inline> word;
  const auto finish = [&] {
    if (!word.empty()) widest = std::max(widest, typesetter_.natural_width(word));
    word.clear();
  };
  for (const type::Inline& one : all) {
    for (std::size_t at = 0; at <= one.text.size();) {
      const std::size_t end = std::min(one.text.find_first_of(" \n", at), one.text.size());
      if (end > at) {
        word.push_back(one);
        word.back().text = one.text.substr(at, end - at);
      }
      if (end < one.text.size()) finish();
      at = end + 1;
    }
  }
  finish();
  return widest;
}

Block Builder::stack(std::vector<Block> children, Length gap) {
  return {page::StackBlock{std::move(children), gap, false}};
}

Block Builder::space(Length height) { return {page::SpaceBlock{height}}; }

Block Builder::foot(const std::string& first, const std::string& second, std::size_t page_index,
                    std::size_t pages, Length number_width) const {
  const Owner owner = Owner::none(Artifact::kFooter);
  page::RowBlock row;
  row.gap = look_.gap;
  row.align = page::RowAlign::kLastBaseline;
  if (second.empty()) {
    row.cells.push_back({page::Track::flexible(), text(TextRole::kFoot, first, owner)});
  } else {
    row.cells.push_back({page::Track::flexible(), stack({text(TextRole::kFoot, first, owner),
                                                         text(TextRole::kFoot, second, owner)})});
  }
  const Numbering numbering = context_.numbering.value_or(Numbering{1, pages});
  const std::string number =
      labels().say("page", {{"page", std::to_string(numbering.first + page_index)},
                            {"pages", std::to_string(numbering.pages)}});
  row.cells.push_back({page::Track::fixed(number_width),
                       text(TextRole::kFoot, number, owner, {}, page::Align::kEnd)});
  return {std::move(row)};
}

std::vector<type::Inline> Builder::kit_pieces(const plan::KitItem& item, TextRole name,
                                              TextRole description) const {
  std::vector<type::Inline> out = {piece(name, item.name.text, item.name.span)};
  if (!item.description.empty()) {
    out.push_back(piece(description, "\u00A0– "));  // no line begins with a dash
    out.push_back(piece(description, item.description.text, item.description.span));
  }
  return out;
}

std::string Builder::kit_move_verb(const plan::KitMove& move) const {
  if (move.way == plan::KitMove::Way::kPutAway)
    return move.verb.empty() ? labels().say("put-away") : move.verb.text + ":";
  const std::string pick_up = labels().say("pick-up");
  const std::string verb = move.verb.empty() ? pick_up : move.verb.text + ":";
  const bool usual = lower_ascii(verb) == lower_ascii(pick_up);
  return usual && kind_ == Kind::kHomeSheet ? labels().say("fetch") : verb;
}

std::vector<type::Inline> Builder::kit_move_pieces(const plan::KitMove& move) const {
  std::vector<type::Inline> out = {label(TextRole::kStation, kit_move_verb(move))};
  out.back().origin = move.verb.span;
  const auto add = [&](const plan::Words& words) {
    for (type::Inline& one : pieces(TextRole::kCue, words)) out.push_back(std::move(one));
  };
  for (std::size_t i = 0; i < move.kit.size(); ++i) {
    if (i > 0) out.push_back(piece(TextRole::kCue, ", "));
    add(move.kit[i]);
  }
  if (!move.how.empty()) {
    if (!move.kit.empty()) out.push_back(piece(TextRole::kCue, ", "));
    add(move.how);
  }
  if (move.time) {
    out.push_back(piece(TextRole::kPartDetail, "\u2002"));
    out.push_back(whole(TextRole::kPartDetail, kind_ == Kind::kHomeSheet
                                                   ? labels().long_time(*move.time)
                                                   : labels().short_time(*move.time)));
  }
  return out;
}

std::string Builder::ages(const plan::Group& group) const {
  if (!group.youngest) return {};
  const std::string from = std::to_string(group.youngest->value);
  if (!group.oldest) return labels().say("from-age", {{"from", from}});
  if (group.oldest->value == group.youngest->value)
    return labels().say("one-age", {{"from", from}});
  return labels().say("ages", {{"from", from}, {"to", std::to_string(group.oldest->value)}});
}

std::string Builder::part_time(Duration time) const {
  if (time < Duration::minutes(1))
    return labels().short_time(Duration::seconds(time.rounded_seconds()));
  return labels().say("minutes", {{"n", std::to_string(time.rounded_minutes())}});
}

std::vector<page::ChosenWay> Builder::choose(std::vector<page::Section> sections,
                                             const plan::Session& session,
                                             std::string_view kind_label) {
  page::Flow flow = finish(std::move(sections), session, kind_label);
  std::vector<page::Node> tree = std::move(flow.tree);
  std::vector<page::ChosenWay> out = page::choose_ways(std::move(flow), typesetter_);
  tree_ = std::move(tree);
  return out;
}

page::Flow Builder::finish(std::vector<page::Section> sections, const plan::Session& session,
                           std::string_view kind_label) {
  page::Flow flow;
  flow.paper = paper_size(context_.paper);
  flow.margins = margins_;
  flow.sections = std::move(sections);
  keep_pictures(flow.sections);
  flow.tree = std::move(tree_);
  flow.info.title = fmt::format("{} – {}", session.title.text, kind_label);
  flow.info.author = context_.club.name.text;
  flow.info.subject = session.group_name.text;
  flow.info.language = labels().language();
  flow.info.producer = context_.producer;
  flow.info.created = context_.created;
  flow.foot_gap =
      look_.text(TextRole::kFoot).leading / (arrangement_ == Arrangement::kClose ? 3 : 2);

  // A page that is dropped must find its way back: what, for whom and when on one line, whose on
  // the other.
  std::vector<std::string> what = {typographic(session.title.text)};
  if (!session.group_name.empty()) what.push_back(session.group_name.text);
  if (session.date) what.push_back(unbroken(labels().date(session.date->value)));
  std::vector<std::string> whose;
  const std::string club = typographic(context_.club.name.text);
  const bool named = context_.club.name.text == session.title.text;  // a booklet's cover
  if (!club.empty() && !named) whose.push_back(club);
  whose.emplace_back(kind_label);
  if (!context_.revision.empty())
    whose.push_back(labels().say("revision", {{"revision", context_.revision}}));
  const std::string written =
      context_.revision_date ? unbroken(labels().short_date(*context_.revision_date)) : "";
  if (!written.empty()) whose.push_back(written);
  // As wide on every page of however many: the foot's height must be known before they are.
  const std::string many = arrangement_ == Arrangement::kRoomy ? "888" : "88";
  const Length number_width =
      text_width(TextRole::kFoot, labels().say("page", {{"page", many}, {"pages", many}})) +
      Length::pt(1);
  // A line may end behind a dot, not before it, and never inside a date.
  std::string first = fmt::format("{}", fmt::join(what, page::kSeparator));
  std::string second = fmt::format("{}", fmt::join(whose, page::kSeparator));
  // On one line where that holds all of it, the date in short.
  const auto in_one_line = [&] {
    std::vector<std::string> all = what;
    if (session.date) all.back() = unbroken(labels().short_date(session.date->value));
    all.insert(all.end(), whose.begin(), whose.end());
    std::string line = fmt::format("{}", fmt::join(all, page::kSeparator));
    if (text_width(TextRole::kFoot, line) > width_ - number_width - look_.gap) return false;
    first = std::move(line);
    second.clear();
    return true;
  };
  bool set = arrangement_ == Arrangement::kRoomy || in_one_line();
  // Else without what is known from elsewhere: the kind of sheet, which is seen; where paper is
  // dear the club, which stands above the plan, and when it was changed, which its revision tells.
  for (const std::string& known : {std::string(kind_label), club, written}) {
    if (set) break;
    whose.erase(std::remove(whose.begin(), whose.end(), known), whose.end());
    set = in_one_line();
    if (!is_dense()) break;
  }
  flow.foot = [this, first = std::move(first), second = std::move(second), number_width](
                  std::size_t page_index, std::size_t pages) {
    return foot(first, second, page_index, pages, number_width);
  };
  return flow;
}

std::string Builder::unbroken(const std::string& text) { return replace_all(text, " ", "\u00A0"); }

Duration whole_minutes_up(Duration time) {
  return Duration::milliseconds((time.in_milliseconds() + 59'999) / 60'000 * 60'000);
}

bool says_stop(const plan::Session& session, const Labels& labels) {
  const auto said = [&](const std::vector<plan::Safety>& notes) {
    return std::any_of(notes.begin(), notes.end(), [&](const plan::Safety& safety) {
      return lower_ascii(safety.words.text).find(labels.say("stop-word")) != std::string::npos;
    });
  };
  return said(session.safety) ||
         std::any_of(session.parts.begin(), session.parts.end(),
                     [&](const plan::Part& part) { return said(part.safety); });
}

std::string clock(const reason::Timetable& timetable, Duration since_start) {
  return timetable.start ? clock_text(*timetable.start + since_start) : stopwatch_text(since_start);
}

}  // namespace chalkleaf::sheet
