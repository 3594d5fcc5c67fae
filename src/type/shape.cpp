#include "type/shape.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "type/characters.h"

namespace chalkleaf::type {
namespace {

constexpr std::size_t kLongestKnown = 64;  // bytes; longer words hardly come back
constexpr std::size_t kMostKnownWords = 50'000;

// What stands in for a character that no font has, in order of preference: the replacement
// character, a white square, a question mark.
constexpr std::array<char32_t, 3> kStandIns{0xFFFD, 0x25A1, U'?'};

// The character to ask this face for, or 0 when it has none that will do. HarfBuzz itself makes
// the spaces of U+0020 and U+2011 of U+2010 when they are missing.
char32_t available(const Face& face, char32_t code) {
  if (code == '\t') return face.has(' ') ? U' ' : 0;
  if (face.has(code)) return code;
  if (is_blank(code)) return face.has(' ') ? code : 0;
  if (code == kNoBreakHyphen && face.has(kHyphenSign)) return code;
  if ((code == kNoBreakHyphen || code == kHyphenSign) && face.has('-')) return '-';
  return is_ignorable(code) ? code : 0;
}

bool has_mark(const Face& face, char32_t base, char32_t mark) {
  hb_codepoint_t composed = 0;
  return available(face, mark) != 0 ||
         (hb_unicode_compose(hb_unicode_funcs_get_default(), base, mark, &composed) != 0 &&
          face.has(composed));
}

// The script, or nothing for what every script uses.
hb_script_t script_of(char32_t code) {
  if (code < 0x80) {
    const bool letter = (code >= 'A' && code <= 'Z') || (code >= 'a' && code <= 'z');
    return letter ? HB_SCRIPT_LATIN : HB_SCRIPT_COMMON;
  }
  const hb_script_t script = hb_unicode_script(hb_unicode_funcs_get_default(), code);
  return script == HB_SCRIPT_INHERITED || script == HB_SCRIPT_UNKNOWN ? HB_SCRIPT_COMMON : script;
}

void add_missing(ShapedWord& out, std::string_view character) {
  if (std::find(out.missing.begin(), out.missing.end(), character) == out.missing.end()) {
    out.missing.emplace_back(character);
  }
}

}  // namespace

struct Shaper::Character {
  char32_t code = 0;
  char32_t shown = 0;  // what the shaper is given; 0: nothing
  std::uint32_t begin = 0;
  std::uint32_t size = 0;
  FaceId face = 0;
  const Face* font = nullptr;
};

Shaper::Shaper(const Fonts& fonts, const std::string& language)
    : fonts_(fonts),
      language_(hb_language_from_string(language.c_str(), static_cast<int>(language.size()))),
      buffer_(hb_buffer_create()) {}

void Shaper::begin_paragraph() {
  loose_.clear();
  if (known_count_ < kMostKnownWords) return;
  known_.clear();
  known_count_ = 0;
}

const ShapedWord& Shaper::shape(const Manner& manner, std::string_view word) {
  const std::size_t place =
      static_cast<std::size_t>(manner.style) * 2 + (manner.figures == Figures::kTabular ? 1 : 0);
  if (known_.size() <= place) known_.resize(place + 1);
  Known& known = known_[place];
  if (const auto found = known.find(word); found != known.end()) return found->second;
  if (word.size() > kLongestKnown || known_count_ >= kMostKnownWords) {
    return loose_.emplace_back(shape_now(manner, word));
  }
  ++known_count_;
  return known.emplace(std::string(word), shape_now(manner, word)).first->second;
}

std::vector<Shaper::Character> Shaper::read(std::string_view word) const {
  std::vector<Character> out;
  for (std::size_t i = 0; i < word.size();) {
    const Decoded decoded = decode_utf8(word, i);
    const bool shown_hyphen = decoded.code == kSoftHyphen && i + decoded.size == word.size();
    if (shown_hyphen || !is_dropped(decoded.code)) {
      Character character;
      character.code = shown_hyphen ? kHyphenSign : decoded.code;
      character.begin = static_cast<std::uint32_t>(i);
      character.size = static_cast<std::uint32_t>(decoded.size);
      out.push_back(character);
    }
    i += decoded.size;
  }
  return out;
}

// The first face that has a character and all that stands on it; else the first that has the
// character itself; else whatever can stand in for it.
void Shaper::choose_face(StyleId style, Character* begin, Character* end, ShapedWord& out) const {
  const Face* best = nullptr;
  FaceId best_id = 0;
  for (const FaceId id : fonts_.chain(style)) {
    const Face* face = fonts_.face(id);
    if (face == nullptr || available(*face, begin->code) == 0) continue;
    if (best == nullptr) {
      best = face;
      best_id = id;
    }
    const bool all = std::all_of(begin + 1, end, [&](const Character& mark) {
      return has_mark(*face, begin->code, mark.code);
    });
    if (!all) continue;
    best = face;
    best_id = id;
    break;
  }
  for (Character* c = begin; c != end; ++c) {
    c->face = best_id;
    c->font = best;
    if (best != nullptr) {
      c->shown = available(*best, c->code);
      if (c->shown == 0) c->shown = c->code;  // a mark: it may still be composed
    }
  }
  if (best != nullptr) return;
  std::string text;
  append_utf8(text, begin->code);
  if (!is_ignorable(begin->code)) add_missing(out, text);
  for (const char32_t stand_in : kStandIns) {
    for (const FaceId id : fonts_.chain(style)) {
      const Face* face = fonts_.face(id);
      if (face == nullptr || !face->has(stand_in)) continue;
      for (Character* c = begin; c != end; ++c) {
        c->face = id;
        c->font = face;
      }
      begin->shown = stand_in;
      return;
    }
  }
}

ShapedWord Shaper::shape_now(const Manner& manner, std::string_view word) {
  ShapedWord out;
  std::vector<Character> characters = read(word);
  Character* const all_end = characters.data() + characters.size();
  for (Character* begin = characters.data(); begin != all_end;) {
    Character* end = begin + 1;
    while (end != all_end && is_follower(end->code)) ++end;
    choose_face(manner.style, begin, end, out);
    begin = end;
  }
  for (const Character* begin = characters.data(); begin != all_end;) {
    const Character* end = begin;
    hb_script_t script = HB_SCRIPT_COMMON;
    for (; end != all_end && end->font == begin->font; ++end) {
      const hb_script_t here = script_of(end->code);
      if (here == HB_SCRIPT_COMMON || here == script) continue;
      if (script != HB_SCRIPT_COMMON && !is_follower(end->code)) break;
      script = here;
    }
    if (begin->font != nullptr) shape_run(begin, end, word, manner.figures, out);
    begin = end;
  }
  return out;
}

void Shaper::shape_run(const Character* begin, const Character* end, std::string_view word,
                       Figures figures, ShapedWord& out) {
  ShapedRun run;
  run.face = begin->face;
  run.font = begin->font;
  hb_buffer_t* buffer = buffer_.get();
  hb_buffer_clear_contents(buffer);
  hb_buffer_set_content_type(buffer, HB_BUFFER_CONTENT_TYPE_UNICODE);
  hb_buffer_set_cluster_level(buffer, HB_BUFFER_CLUSTER_LEVEL_MONOTONE_CHARACTERS);
  hb_buffer_set_flags(buffer, HB_BUFFER_FLAG_REMOVE_DEFAULT_IGNORABLES);
  for (const Character* c = begin; c != end; ++c) {
    const auto at = static_cast<unsigned>(run.text.size());
    run.text += word.substr(c->begin, c->size);
    if (c->shown != 0) hb_buffer_add(buffer, c->shown, at);
  }
  hb_buffer_guess_segment_properties(buffer);
  hb_buffer_set_language(buffer, language_);
  // In a column figures must not move towards their neighbours either.
  constexpr std::array kTabular = {
      hb_feature_t{HB_TAG('t', 'n', 'u', 'm'), 1, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END},
      hb_feature_t{HB_TAG('k', 'e', 'r', 'n'), 0, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END}};
  hb_shape(run.font->data().font.get(), buffer, kTabular.data(),
           figures == Figures::kTabular ? static_cast<unsigned>(kTabular.size()) : 0U);

  unsigned count = 0;
  const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer, &count);
  const hb_glyph_position_t* places = hb_buffer_get_glyph_positions(buffer, &count);
  run.glyphs.reserve(count);
  for (unsigned i = 0; i < count; ++i) {
    if (infos[i].codepoint == 0 || infos[i].codepoint > 0xFFFF) {
      const std::size_t size = decode_utf8(run.text, infos[i].cluster).size;
      add_missing(out, std::string_view(run.text).substr(infos[i].cluster, size));
      continue;
    }
    run.glyphs.push_back({static_cast<std::uint16_t>(infos[i].codepoint), places[i].x_advance,
                          places[i].x_offset, places[i].y_offset, infos[i].cluster});
    run.units += places[i].x_advance;
  }
  if (!run.glyphs.empty()) out.runs.push_back(std::move(run));
}

}  // namespace chalkleaf::type
