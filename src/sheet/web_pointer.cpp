#include "sheet/web_pointer.h"

#include "sheet/qr_code.h"

namespace chalkleaf::sheet {

std::optional<WebPointer> web_pointer(const plan::Words& address, TextRole words, Length module,
                                      NodeId parent, Builder& builder) {
  const std::optional<QrCode> code = qr_code(address.text);
  if (!code) return std::nullopt;
  WebPointer out;
  const NodeId figure = builder.node(parent, Role::kFigure);
  builder.at(figure).alternative_text =
      builder.labels().say("web-code", {{"address", address.text}});
  page::DrawingBlock drawing =
      qr_drawing(*code, module, Owner::of(figure), builder.colour(Use::kInk));
  out.side = drawing.size.width;
  out.code = {std::move(drawing)};

  std::vector<Block> lines;
  lines.push_back(builder.text(words, builder.labels().say("web-words"),
                               Owner::of(builder.node(parent, Role::kP))));
  const NodeId link = builder.node(builder.node(parent, Role::kP), Role::kLink);
  builder.at(link).web_address = address.text;
  // The scheme says nothing to a reader; the rest is printed as it must be typed.
  const std::string shown = address.text.substr(address.text.find("://") + 3);
  type::Inline piece = builder.piece(words, shown);
  piece.origin = address.span;
  std::vector<type::Inline> pieces;
  pieces.push_back(std::move(piece));
  lines.push_back(builder.paragraph(std::move(pieces), words, Owner::of(link)));
  out.words = Builder::stack(std::move(lines));
  return out;
}

Block web_row(WebPointer pointer, Builder& builder) {
  page::RowBlock row;
  row.gap = builder.look().gap;
  row.align = page::RowAlign::kMiddle;
  row.cells.push_back({page::Track::fixed(pointer.side), std::move(pointer.code)});
  row.cells.push_back({page::Track::flexible(), std::move(pointer.words)});
  return {std::move(row)};
}

}  // namespace chalkleaf::sheet
