#include "club/shared_files.h"

#include "source/read.h"

namespace chalkleaf::club {

Diagnostics check_part(const FileSystem& files, const std::string& path, const std::string& display,
                       const plan::PartLookup& parts, const plan::PictureLookup* pictures) {
  Diagnostics found;
  const SourcePtr source = source::load(files, path, display, found);
  if (!source) return found;
  found.keep(source);
  plan::PartFile file = plan::read_part(source::read_document(source, found), found);
  // A session of this part alone, so that its links are followed as a plan's are.
  plan::Session session;
  session.source = source;
  plan::Part part;
  part.title = file.title;
  part.steps = std::move(file.steps);
  session.parts.push_back(std::move(part));
  plan::link_parts(session, path, parts, found, pictures);
  for (const SourcePtr& other : session.sources) found.keep(other);
  return found;
}

}  // namespace chalkleaf::club
