// See the header.
#include "plan/printing.h"

#include <fmt/format.h>

#include "base/text.h"

namespace chalkleaf::plan {
namespace {

Value<Filing> parse_filing(std::string_view text) {
  const std::string word = replace_all(lower_ascii(trim(text)), "-", " ");
  if (word == "both sides" || word == "two sided" || word == "duplex") return Filing::kBothSides;
  if (word == "one side" || word == "left") return Filing::kOneSide;
  if (const auto asked = parse_yes_no(word)) return *asked ? Filing::kOneSide : Filing::kNone;
  return tl::unexpected(
      ValueProblem{fmt::format("‘{}’ is not a margin for filing", trim(text)),
                   "write `yes`, `no`, or `both sides` for paper printed on both sides"});
}

Value<SheetLayout> parse_layout(std::string_view text) {
  const std::string word = lower_ascii(trim(text));
  if (word == "roomy") return SheetLayout::kRoomy;
  if (word == "compact") return SheetLayout::kCompact;
  return tl::unexpected(
      ValueProblem{fmt::format("‘{}’ is not a way to set a home sheet", trim(text)),
                   "write `roomy` for a framed panel for each drill, or `compact`"});
}

}  // namespace

void read_printing(const Keys& keys, Printing& printing) {
  auto paper = keys.each_sheet("paper", parse_paper);
  if (paper.card) printing.card_paper = std::move(paper.card);
  if (paper.sheet) printing.sheet_paper = std::move(paper.sheet);
  if (const auto filing = keys.value("filing-margin", parse_filing))
    printing.filing = filing->value;
  if (const auto layout = keys.value("sheet", parse_layout)) printing.layout = layout->value;
  if (Words look = keys.text("look"); !look.empty()) printing.look = std::move(look);
  const Words slip = keys.text("return-slip");
  if (slip.empty()) return;
  const auto asked = parse_yes_no(slip.text);
  if (!asked) {
    printing.return_slip = ReturnSlip{slip};
  } else {
    printing.return_slip = *asked ? std::optional(ReturnSlip{}) : std::nullopt;
  }
}

}  // namespace chalkleaf::plan
