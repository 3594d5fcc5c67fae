// Fuzzes the reader of drafts: any text becomes a canonical plan, which is read without a crash and
// is left alone when it is read again.
#include <cstddef>
#include <cstdint>
#include <cstdlib>

#include "base/files.h"
#include "draft/lexicon.h"
#include "draft/read.h"
#include "plan/read.h"
#include "source/read.h"
#include "support/places.h"

namespace {

const chalkleaf::draft::Lexicon& words() {
  using namespace chalkleaf;
  static const draft::Lexicon lexicon = [] {
    Diagnostics diagnostics;
    RealFileSystem files;
    const std::string path = support::repository() + "/themes/words/en.yaml";
    const SourcePtr source = source::load(files, path, path, diagnostics);
    return draft::Lexicon::read(*source::read_yaml(source, diagnostics), diagnostics);
  }();
  return lexicon;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace chalkleaf;
  Diagnostics diagnostics;
  const SourcePtr source = source::load_text(
      "draft.md", std::string(reinterpret_cast<const char*>(data), size), diagnostics);
  if (!source) return 0;
  const auto read = draft::read(words(), source);
  if (!read) return 0;
  if (draft::read(words(), read->canonical)) std::abort();  // what tidy writes is canonical
  const plan::Session session =
      plan::read_session(source::read_document(read->canonical, diagnostics), {}, diagnostics);
  for (const Diagnostic& found : diagnostics.all()) {
    const Span at = read->origin.of(found.span);
    if (at.end > source->text().size() || at.begin > at.end) std::abort();
  }
  return 0;
}
