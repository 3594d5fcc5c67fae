#include "type/characters.h"

#include <unicode/uchar.h>
#include <unicode/uscript.h>

#include <algorithm>

namespace chalkleaf::type {
namespace {

bool is_no_break_space(char32_t code) { return code == 0x00A0 || code == 0x2007 || code == 0x202F; }

}  // namespace

bool is_line_end(char32_t code) {
  return (code >= 0x0A && code <= 0x0D) || code == 0x85 || code == 0x2028 || code == 0x2029;
}

bool is_blank(char32_t code) {
  if (code < 0x80) return code == ' ' || code == '\t';
  return u_charType(as_icu(code)) == U_SPACE_SEPARATOR;
}

bool is_breaking_space(char32_t code) { return is_blank(code) && !is_no_break_space(code); }

bool is_ignorable(char32_t code) {
  return code >= 0x80 && u_hasBinaryProperty(as_icu(code), UCHAR_DEFAULT_IGNORABLE_CODE_POINT) != 0;
}

bool is_dropped(char32_t code) {
  if (code < 0x80) return (code < 0x20 && code != '\t') || code == 0x7F;
  if (u_charType(as_icu(code)) == U_CONTROL_CHAR) return true;
  // Joiners and variation selectors are default ignorable too, but the shaper needs them.
  return is_ignorable(code) && !is_follower(code);
}

bool is_follower(char32_t code) {
  if (code < 0x80) return false;
  if (code == 0x200C || code == 0x200D) return true;
  if (u_hasBinaryProperty(as_icu(code), UCHAR_EMOJI_MODIFIER) != 0) return true;
  return (U_GET_GC_MASK(as_icu(code)) & U_GC_M_MASK) != 0;  // variation selectors are marks too
}

std::string script_name(char32_t code) {
  UErrorCode status = U_ZERO_ERROR;
  const UScriptCode script = uscript_getScript(as_icu(code), &status);
  if (U_FAILURE(status) || script <= USCRIPT_INHERITED || script == USCRIPT_UNKNOWN) return {};
  const char* name = uscript_getName(script);
  std::string out = name == nullptr ? "" : name;
  std::replace(out.begin(), out.end(), '_', ' ');
  return out;
}

}  // namespace chalkleaf::type
