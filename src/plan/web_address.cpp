// The address of a page on the web, as a coach writes it (RFC 3986). Declared in plan/values.h.
// Tested by tests/plan/values_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "base/text.h"
#include "plan/values.h"

namespace chalkleaf::plan {
namespace {

tl::unexpected<ValueProblem> no_page(std::string message, std::string hint) {
  return tl::unexpected(ValueProblem{std::move(message), std::move(hint)});
}

// RFC 3986, 3.2.3, and 16 bits; 0 is reserved (RFC 6335, 6).
bool is_port(std::string_view text) {
  int port = 0;
  const char* end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, port);
  return problem == std::errc() && stop == end && port >= 1 && port <= 65'535;
}

// RFC 3986, 3.2.2, as RFC 1123, 2.1 has it for names of hosts: letters, digits and inner hyphens,
// 63 to a label and 253 in all. Four numbers are an address and stay below 256. A name in other
// letters comes as `xn--…` (RFC 5891).
bool is_site_name(std::string_view name) {
  if (name.size() > 253) return false;
  std::size_t numbers = 0;
  std::size_t labels = 0;
  bool ends_in_number = false;
  while (true) {
    const std::size_t dot = std::min(name.find('.'), name.size());
    const std::string_view label = name.substr(0, dot);
    const auto fits = [](char c) {
      return c == '-' || (c >= '0' && c <= '9') ||
             (is_letter(c) && static_cast<unsigned char>(c) < 0x80);
    };
    if (label.empty() || label.size() > 63 || label.front() == '-' || label.back() == '-')
      return false;
    if (!std::all_of(label.begin(), label.end(), fits)) return false;
    int number = 0;
    const char* end = label.data() + label.size();
    const auto [stop, problem] = std::from_chars(label.data(), end, number);
    ends_in_number = stop == end;
    if (ends_in_number && problem == std::errc() && number <= 255) ++numbers;
    ++labels;
    if (dot == name.size()) break;
    name.remove_prefix(dot + 1);
  }
  return !ends_in_number || (labels == 4 && numbers == 4);
}

}  // namespace

Value<std::string> parse_web_address(std::string_view text, PlanPlace place) {
  text = trim(text);
  const char* form = place == PlanPlace::kAllowed
                         ? "write the whole address: `https://your-club.example/plans/{plan}`"
                         : "write the whole address: `https://your-club.example/plans/dish`";
  const auto no_address = [&] {
    return no_page(fmt::format("‘{}’ is not a web address", text), form);
  };
  std::string address(text);
  const std::size_t scheme = address.find("://");
  if (scheme == std::string::npos) {
    if (!starts_with_ignoring_case(address, "www.")) return no_address();
    address.insert(0, "https://");
  } else {
    const std::string name = lower_ascii(address.substr(0, scheme));
    if (name != "https" && name != "http") return no_address();
    address.replace(0, scheme, name);
  }
  if (address.size() > kLongestAddress) {
    return no_page(fmt::format("the web address has {} characters", address.size()),
                   fmt::format("use one of at most {}: the code of a longer one is hard to read",
                               kLongestAddress));
  }
  std::string bare = address;
  if (const std::size_t at = bare.find(kPlanPlace); at != std::string::npos) {
    if (place == PlanPlace::kRefused) {
      return no_page(fmt::format("‘{}’ has a place for a plan's name", text),
                     "a plan's own address needs none: write the whole of it; `{plan}` is for the "
                     "club's address in club.yaml");
    }
    bare.erase(at, kPlanPlace.size());
  }
  const std::size_t host = bare.find("://") + 3;
  const std::size_t host_end = std::min(bare.find_first_of("/?#", host), bare.size());
  const std::string_view name = std::string_view(bare).substr(host, host_end - host);
  if (name.find('@') != std::string_view::npos) {
    return no_page("the web address holds a sign-in", "leave out what stands before the `@`");
  }
  const std::size_t colon = std::min(name.rfind(':'), name.size());
  const std::string_view site = name.substr(0, colon);
  const bool has_dot = site.find('.', 1) != std::string_view::npos && !site.ends_with('.');
  if (!has_dot || site.starts_with('.')) return no_address();
  if (colon < name.size() && !is_port(name.substr(colon + 1))) {
    return no_page(fmt::format("‘{}’ in the web address is no port", name.substr(colon)),
                   "write a number from 1 to 65535 behind the colon, or leave both out");
  }
  if (!std::all_of(bare.begin(), bare.end(), is_uri_character)) {
    return no_page(fmt::format("‘{}’ has a character that a web address cannot have", text),
                   "copy the address from a browser's address bar: it writes such characters as "
                   "`%20` and the like");
  }
  if (!is_site_name(site)) {
    return no_page(fmt::format("‘{}’ in the web address is no name of a web site", site),
                   "copy the address from a browser's address bar; the name is letters, digits and "
                   "hyphens between dots");
  }
  return address;
}

}  // namespace chalkleaf::plan
