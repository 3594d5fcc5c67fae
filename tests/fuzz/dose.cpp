// Fuzzes the dose: one line of a drill, as an item of a list.
#include <cstddef>
#include <cstdint>

#include "plan/read.h"
#include "source/read.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace chalkleaf;
  const std::string text = "---\ntitle: T\nplace: gym\n---\n\n## Warm-up\n\n- Drill: " +
                           std::string(reinterpret_cast<const char*>(data), size) + "\n";
  Diagnostics diagnostics;
  const SourcePtr source = source::load_text("plan.md", text, diagnostics);
  if (!source) return 0;
  plan::read_session(source::read_document(source, diagnostics), {}, diagnostics);
  return 0;
}
