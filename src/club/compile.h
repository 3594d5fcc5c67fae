// One plan becomes its sheets, as a flat list of passes.
//
// Everything a worker shares is read-only and handed in; what it found comes back as a value. No
// clock: who wants to time the passes (tests/bench) listens to them. Tested by
// tests/club/build_test.cpp.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/files.h"
#include "club/broken.h"
#include "club/figures.h"
#include "club/looks.h"
#include "club/options.h"
#include "club/pictures.h"
#include "club/revision.h"
#include "club/turns.h"
#include "draft/read.h"
#include "pdf/write.h"
#include "plan/read.h"
#include "reason/group_week.h"
#include "reason/guard.h"
#include "reason/timetable.h"
#include "rota/words.h"
#include "sheet/sheets.h"

namespace chalkleaf::club {

/// Called with a pass's name as it begins; may be empty.
using OnPass = std::function<void(std::string_view pass)>;

/// What all plans of one club share.
struct ClubTools {
  plan::Club club;
  /// False: the sheets' words could not be read, so nothing is printed: every sheet needs them.
  bool sound = true;
  BrokenClub broken_club = {};                  ///< whom the mistakes of club.yaml concern
  std::shared_ptr<const sheet::Labels> labels;  ///< null when there are none: then not sound
  std::unique_ptr<const plan::PartLookup> parts;
  std::unique_ptr<const Pictures> pictures;
  /// Never null; sessions point into it.
  std::shared_ptr<const plan::DrillBook> drills = std::make_shared<const plan::DrillBook>();
  /// Why some of the drills could not be read: it concerns plans with a drill that is not known.
  Diagnostics missing_drills = {};
  std::shared_ptr<const Looks> looks;  ///< null when no sheet is made
  /// What drafts are read with; null: only plans in the taught form are.
  std::shared_ptr<const draft::Lexicon> words = {};
  std::shared_ptr<const plan::HallBook> hall = {};  ///< null: times are the plain sums of the doses
  std::shared_ptr<const rota::Words> rota = {};     ///< null: rotations are not read
  std::shared_ptr<const reason::Guard> guard = {};  ///< null when its language has no words
  std::optional<Revisions> revisions;               ///< none when no sheet is made
  /// Null when neither checked nor printed.
  std::shared_ptr<const Figures> figures;
  BrokenFigures broken_figures = {};
  std::optional<sheet::Logo> logo = {};
};

/// What the whole run shares.
struct RunTools {
  FileSystem& files;
  const pdf::Writer& writer;
  std::optional<Paper> paper = {};  ///< asked for; none: the club's, else the kind's own
  TwoUp two_up = TwoUp::kNo;        ///< of sheets on A5 and half-letter; others stay as they are
  std::string look = {};            ///< asked for, and known; empty: the plan's or the club's
  Only only = Only::kBoth;
  Purpose purpose = Purpose::kBuild;
  Strictness strictness = Strictness::kNormal;
  int dots = 80;                                 ///< an inch, for pictures of pages
  std::optional<std::int64_t> source_date = {};  ///< SOURCE_DATE_EPOCH
  std::string producer = {};  ///< written into the PDFs: the program and its version
  OnPass on_pass = {};
  Turns* turns = nullptr;  ///< where large plans wait for each other; null: they do not
};

/// A plan as read and timed, before any sheet.
struct Studied {
  Turns::Turn turn;  ///< held as long as this is
  plan::Session session;
  reason::Timetable timetable;  ///< points into `session`
  Diagnostics diagnostics;
  bool readable = false;                   ///< false: no session, only diagnostics
  std::optional<draft::Draft> draft = {};  ///< the file was no plan in the taught form
};

/// One plan's way: what to call it, where it stands, where its sheets go.
struct PlanPaths {
  std::string path;          ///< absolute
  std::string display;       ///< as the user is told
  std::string sheets;        ///< absolute, without `-card.pdf`
  std::string shown_sheets;  ///< the same as the user is told
  std::string out = {};      ///< absolute: the folder all sheets of the club go into
  std::string earlier = {};  ///< absolute: where sheets go that are no longer of any plan
};

/// What becomes of the older sheets of a plan that are not replaced by new ones.
enum class Older {
  kStay,      ///< a fault kept new ones from being made
  kMoveAway,  ///< the plan has mistakes, or has no such sheet any more
};

/// A sheet that is written, but not yet where it belongs.
struct StagedSheet {
  StagedFile file;
  std::string shown;  ///< its place as the user is told
  sheet::Kind kind = sheet::Kind::kCoachCard;
};

struct Compiled {
  Diagnostics diagnostics;
  std::vector<SourcePtr> sources;   ///< what the diagnostics point into
  std::vector<StagedSheet> staged;  ///< PDFs, for club::put_in_place()
  Older older = Older::kStay;
  std::optional<reason::WeekSession> week = {};  ///< for its group's week; not of a draft
  std::size_t written = 0;                       ///< pictures, now on the disk
  bool failed = false;           ///< the plan was not set: it, or what it needs, has errors
  bool home_sheet_held = false;  ///< too dangerous for a home; its coach card is there
  bool not_written = false;      ///< the disk would not take a sheet
  bool internal_error = false;   ///< a mistake of ours ended it
  bool skipped = false;          ///< the run was stopped before: nothing was done
};

/// Reads, links, times and checks. The session is on the heap because the timetable points into it.
std::unique_ptr<Studied> study(const PlanPaths& plan, const ClubTools& club,
                               const FileSystem& files, const OnPass& on_pass,
                               Turns* turns = nullptr);

/// What a sheet of the session is set with.
sheet::Context context_for(sheet::Kind kind, const plan::Session& session,
                           const sheet::Theme& theme, const ClubTools& club, const RunTools& run,
                           const std::string& path);
/// What sheets look like: as was asked for, else as the plan or the club says. Null when there is
/// no such look or it is broken (reported).
std::shared_ptr<const sheet::Theme> look_for(const plan::Printing& printing, const ClubTools& club,
                                             const RunTools& run, Diagnostics& diagnostics);
/// All passes. Never throws for anything a plan can hold.
Compiled compile(const PlanPaths& plan, const ClubTools& club, const RunTools& run,
                 type::Typesetter& typesetter);

}  // namespace chalkleaf::club
