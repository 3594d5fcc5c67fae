// What the tests of this room share: figures read from a string, and messages in words.
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic_text.h"
#include "figure/picture.h"
#include "figure/read.h"
#include "figure/truth.h"
#include "source/read.h"

namespace chalkleaf::figure {

/// Figures of one file, with everything their spans need.
struct ReadFigures {
  std::vector<SourcePtr> sources;
  std::vector<Figure> figures;
  Diagnostics diagnostics;
};
inline ReadFigures read_file(const std::string& text) {
  ReadFigures out;
  Descriptions all;
  out.sources.push_back(source::load_text("figures.yaml", text, out.diagnostics));
  all.take(out.sources.back(), false, out.diagnostics);
  out.figures = all.resolve(out.diagnostics);
  return out;
}
/// Figures without the file's head; their lines are counted from 3.
inline ReadFigures read_figures(const std::string& text) {
  return read_file("family: Test\nfigures:\n" + text);
}
/// One pose from its keys, such as `touches: feet`.
inline ReadFigures read_pose(const std::string& keys) {
  return read_figures("  shape: {" + keys + "}\n");
}

/// Every message with its hint, one line each, as `--messages short` prints them.
inline std::string messages(const Diagnostics& diagnostics) {
  std::string out;
  for (const Diagnostic& d : diagnostics.sorted()) {
    out += render(d, MessageStyle::kShort, Colouring::kPlain);
  }
  return out;
}

/// What `check` says of a figure.
inline std::string found(const ReadFigures& read, const Body& body = Body::of_age(9)) {
  Diagnostics diagnostics;
  for (const Figure& figure : read.figures) check(figure, show(figure, body), diagnostics);
  return messages(diagnostics);
}

}  // namespace chalkleaf::figure
