// Every sheet of the demo club, in every look and on every paper: nothing lies on anything else,
// and nothing is off the paper or in its margin.
#include <catch2/catch.hpp>

#include "club/outputs.h"
#include "club/select.h"
#include "club/setup.h"
#include "support/inspect.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;

namespace {

class Silent : public Listener {
 public:
  void problem(const std::string& sentence) override { FAIL(sentence); }
  void found(const Diagnostic& diagnostic) override { FAIL(diagnostic.message); }
  void progress(std::size_t, std::size_t) override {}
};

/// The demo club, opened as a run opens it.
class DemoClub {
 public:
  DemoClub() : around_{files_, environment_, support::program()}, teller_(listener_, summary_) {
    const std::string folder = support::repository() + "/plans";
    request_.standing = folder;
    selection_ = select_plans(files_, {folder, {}, std::nullopt});
    press_ = set_up_press(around_, teller_, summary_);
    REQUIRE(press_);
    auto opened =
        open_club(selection_.roots.at(0), request_, files_, press_->data, press_->shelf, teller_);
    REQUIRE(opened);
    club_ = std::move(*opened);
    worker_.emplace(*press_->fonts, *press_->hyphenations);
    for (const PlanFile& plan : selection_.plans) {
      plans_.push_back(study(paths_of(plan, selection_.roots[0], request_), club_, files_, {}));
      REQUIRE(plans_.back()->readable);
    }
  }

  const Looks& looks() const { return *club_.looks; }

  /// What is wrong with the sheets in that look on that paper; the number of sheets.
  std::size_t inspect(const std::string& look, std::optional<Paper> paper, std::string& wrong) {
    RunTools run{files_, *press_->writer};
    run.look = look;
    run.paper = paper;
    Diagnostics found;
    const auto theme = look_for(club_.club.printing, club_, run, found);
    REQUIRE(theme);
    std::size_t sheets = 0;
    for (const auto& plan : plans_) {
      const Rotations rotations = rotations_of(plan->timetable);
      for (const sheet::Kind kind :
           kinds_to_print(plan->session.place.value, rotations, Only::kBoth)) {
        const sheet::Context context =
            context_for(kind, plan->session, *theme, club_, run, plan->session.source->path());
        const page::DisplayList list = sheet::make(kind, plan->session, plan->timetable, context,
                                                   worker_->typesetter(club_), found);
        const bool compact = kind == sheet::Kind::kCoachCard ||
                             kind == sheet::Kind::kStationCards ||
                             plan->session.printing.layout == plan::SheetLayout::kCompact;
        const sheet::Look& usual = theme->look(kind);
        const sheet::Look as_set = compact ? usual.compacted(kind) : usual;
        Insets margins = Insets::all(as_set.margin.at(context.paper));
        // As Builder has it; the letters of the foot's tight lines hang a little below their line.
        margins = Insets::all(margins.top * 3 / 4);  // where paper is dear
        margins.bottom = std::min(margins.bottom, Length::mm(5));
        for (const page::Flaw& flaw : page::inspect(list, *press_->fonts, margins)) {
          wrong += look + " " + std::string(paper_key(context.paper)) + " " +
                   plan->session.title.text + ": " + page::describe(flaw) + "\n";
        }
        ++sheets;
      }
    }
    return sheets;
  }

 private:
  RealFileSystem files_;
  ProcessEnvironment environment_;
  Surroundings around_;
  Silent listener_;
  Summary summary_;
  Teller teller_;
  Request request_;
  Selection selection_;
  std::optional<Press> press_;
  ClubTools club_;
  std::optional<Worker> worker_;
  std::vector<std::unique_ptr<Studied>> plans_;
};

}  // namespace

TEST_CASE("nothing lies on anything else, in any look") {
  DemoClub demo;
  CHECK(demo.looks().names().size() >= 6);
  for (const std::string& look : demo.looks().names()) {
    std::string wrong;
    CHECK(demo.inspect(look, std::nullopt, wrong) == 34);
    INFO(wrong);
    CHECK(wrong.empty());
  }
}

TEST_CASE("nothing lies on anything else, on any paper") {
  DemoClub demo;
  for (const Paper paper : kPapers) {
    std::string wrong;
    CHECK(demo.inspect("classic", paper, wrong) == 34);
    INFO(wrong);
    CHECK(wrong.empty());
  }
}
