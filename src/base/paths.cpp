// The text half of base/files.h: paths as strings. Only resolved_path asks the disk.
#include "base/files.h"

namespace chalkleaf {

std::string join_path(std::string_view folder, std::string_view name) {
  if (name.starts_with('/') || folder.empty()) return std::string(name);
  std::string out(folder);
  if (!out.ends_with('/')) out += '/';
  return out.append(name);
}

std::string normal_path(std::string_view path) {
  const bool absolute = path.starts_with('/');
  std::vector<std::string_view> kept;
  while (!path.empty()) {
    const std::size_t slash = path.find('/');
    const std::string_view step = path.substr(0, slash);
    path.remove_prefix(slash == std::string_view::npos ? path.size() : slash + 1);
    if (step.empty() || step == ".") continue;
    if (step == ".." && !kept.empty() && kept.back() != "..") {
      kept.pop_back();
    } else if (step != ".." || !absolute) {
      kept.push_back(step);
    }
  }
  std::string out = absolute ? "/" : "";
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (i > 0) out += '/';
    out += kept[i];
  }
  return out.empty() ? "." : out;
}

std::string parent_path(std::string_view path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string_view::npos) return ".";
  return std::string(slash == 0 ? "/" : path.substr(0, slash));
}

std::string file_name(std::string_view path) {
  const std::size_t slash = path.rfind('/');
  return std::string(slash == std::string_view::npos ? path : path.substr(slash + 1));
}

std::string file_stem(std::string_view path) {
  std::string name = file_name(path);
  const std::size_t dot = name.rfind('.');
  if (dot != std::string::npos && dot > 0) name.resize(dot);
  return name;
}

std::string resolved_path(const FileSystem& files, const std::string& path) {
  std::string existing = normal_path(path);
  std::string missing;
  while (true) {
    if (const auto real = files.real_path(existing)) {
      return missing.empty() ? *real : normal_path(join_path(*real, missing));
    }
    if (existing == "/" || existing == ".") return normal_path(path);
    missing = missing.empty() ? file_name(existing) : join_path(file_name(existing), missing);
    existing = parent_path(existing);
  }
}

bool is_within(std::string_view path, std::string_view folder) {
  if (folder == "/") return path.starts_with('/');
  return path.starts_with(folder) && (path.size() == folder.size() || path[folder.size()] == '/');
}

std::string relative_to(std::string_view path, std::string_view folder) {
  if (!is_within(path, folder)) return std::string(path);
  path.remove_prefix(folder.size());
  while (path.starts_with('/')) path.remove_prefix(1);
  return path.empty() ? "." : std::string(path);
}

}  // namespace chalkleaf
