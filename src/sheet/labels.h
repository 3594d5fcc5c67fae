// The fixed words of the sheets, read from one file a language (themes/labels/<language>.yaml).
//
// Every phrase the sheets can say is listed in labels.cpp with the places it may fill; a file that
// lacks one, or fills a place that is not there, is refused when it is read, so that no sheet is
// printed with a hole in it. Tested by tests/sheet/labels_test.cpp.
#pragma once

#include <array>
#include <initializer_list>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/date.h"
#include "base/diagnostic.h"
#include "base/duration.h"

namespace chalkleaf::sheet {

class Labels {
 public:
  using Places = std::initializer_list<std::pair<std::string_view, std::string>>;

  /// The phrase with its places filled: `say("page", {{"page", "1"}, {"pages", "2"}})`.
  std::string say(std::string_view key, Places places = {}) const;
  /// The form of a counted phrase for this number, with `{n}` filled.
  std::string count(std::string_view key, std::int64_t n) const;
  /// BCP 47.
  const std::string& language() const { return language_; }
  const std::string& weekday(Weekday day) const { return weekdays_[static_cast<std::size_t>(day)]; }
  const std::string& short_weekday(Weekday day) const {
    return short_weekdays_[static_cast<std::size_t>(day)];
  }
  /// `Tue 1 Dec 2026`, or without its weekday.
  std::string date(Date date) const;
  std::string short_date(Date date) const;
  /// `20 s`, `1 min 30 s`: for the card.
  std::string short_time(Duration time) const;
  /// `20 seconds`, `1 minute 30 seconds`: for families.
  std::string long_time(Duration time) const;
  /// True when a drill of this name is a shape held still, by the words the language has for such
  /// drills.
  bool names_stillness(std::string_view drill_name) const;

 private:
  friend std::shared_ptr<const Labels> read_labels(const SourcePtr&, Diagnostics&);
  std::string language_;
  std::map<std::string, std::string, std::less<>> phrases_;
  std::array<std::string, 7> weekdays_;
  std::array<std::string, 7> short_weekdays_;
  std::array<std::string, 12> months_;
  std::vector<std::string> still_words_;
};

/// Reads a label file. Null when it is not complete and right (reported).
std::shared_ptr<const Labels> read_labels(const SourcePtr& source, Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
