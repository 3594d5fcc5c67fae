// Fuzzes the front matter of a plan, of a drill file, and the club file.
#include <cstddef>
#include <cstdint>

#include "plan/read.h"
#include "source/read.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace chalkleaf;
  const std::string yaml(reinterpret_cast<const char*>(data), size);
  Diagnostics diagnostics;
  const std::string text = "---\n" + yaml + "\n---\n\n## Warm-up\n\n- Jog: 2 min\n";
  if (const SourcePtr source = source::load_text("plan.md", text, diagnostics)) {
    const source::Document document = source::read_document(source, diagnostics);
    plan::read_session(document, {}, diagnostics);
    plan::read_drill(document, diagnostics);
    plan::read_part(document, diagnostics);
  }
  if (const SourcePtr source = source::load_text("club.yaml", yaml, diagnostics)) {
    if (const auto root = source::read_yaml(source, diagnostics)) {
      plan::read_club(source, *root, diagnostics);
    }
  }
  return 0;
}
