// Pictures named in plans, parts and drills: found, or said why not.
#include "plan/picture_links.h"

#include <catch2/catch.hpp>

#include "base/files.h"
#include "reading.h"

namespace chalkleaf::plan {
namespace {

/// What was asked for, and answers that depend on the path's words alone.
class Asked final : public PictureLookup {
 public:
  tl::expected<FoundPicture, PictureProblem> find(const std::string& from_path,
                                                  const std::string& target) const override {
    using Kind = PictureProblem::Kind;
    asked.push_back(from_path + " " + target);
    if (target.find("out") != std::string::npos) {
      return tl::unexpected(PictureProblem{Kind::kOutside, "", "", ""});
    }
    if (target.find("bad") != std::string::npos) {
      return tl::unexpected(
          PictureProblem{Kind::kUnreadable, "", "is cut short", "save it again as PNG or JPEG"});
    }
    if (target.find("lnie") != std::string::npos) {
      return tl::unexpected(PictureProblem{Kind::kMissing, "../pictures/on a line.png", "", ""});
    }
    if (target.empty() || target.find("no") != std::string::npos) {
      return tl::unexpected(PictureProblem{});
    }
    return FoundPicture{normal_path(join_path(parent_path(from_path), target)), 40, 30};
  }
  mutable std::vector<std::string> asked;
};

class OnePart final : public PartLookup {
 public:
  tl::expected<std::shared_ptr<const FoundPart>, LinkProblem> find(
      const std::string&, const std::string&) const override {
    auto found = std::make_shared<FoundPart>();
    found->path = "/c/parts/deep/line.md";
    const auto source = source::load_text(
        "parts/deep/line.md",
        "Lay a line.\n\n![a line](../../pictures/part.png)\n\n- Walk: 1 min\n", found->diagnostics);
    found->file = read_part(source::read_document(source, found->diagnostics), found->diagnostics);
    return found;
  }
};

struct LinkedPictures {
  ReadPlan plan;
  Asked pictures;
  std::string said;
};
LinkedPictures link_pictures_of(const std::string& body) {
  LinkedPictures out{read_plan(plan_with(body)), {}, {}};
  link_parts(out.plan.session, "/c/sessions/p.md", OnePart(), out.plan.diagnostics, &out.pictures);
  out.said = messages(out.plan.diagnostics);
  return out;
}

std::string said_of(const std::string& target) {
  return link_pictures_of("## Main\n\n![two children](" + target + ")\n\n- Hold: 20 s\n").said;
}

}  // namespace

TEST_CASE("each picture is asked for from the file it stands in, wherever it stands") {
  const LinkedPictures linked = link_pictures_of(
      "Before.\n\n![one](../pictures/one.png)\n\n## Main\n\n![two](two%20b.jpg)\n\n- Hold: 20 s\n\n"
      "  ![three](three.png)\n\n[the line](../parts/deep/line.md)\n");
  CHECK(linked.said == "");
  CHECK(linked.pictures.asked ==
        std::vector<std::string>{"/c/sessions/p.md ../pictures/one.png",
                                 "/c/sessions/p.md two b.jpg", "/c/sessions/p.md three.png",
                                 "/c/parts/deep/line.md ../../pictures/part.png"});
  const Session& session = linked.plan.session;
  const Note* first = nullptr;
  for (const Note& note : session.introduction) {
    if (note.kind == Note::Kind::kPicture) first = &note;
  }
  REQUIRE(first != nullptr);
  CHECK(first->picture == "/c/pictures/one.png");
  CHECK(first->picture_width == 40);
  CHECK(first->picture_height == 30);
  CHECK(first->words.text == "one");
}

TEST_CASE("what is wrong with a picture is said at its place") {
  const auto error = [](const std::string& name, const std::string& message,
                        const std::string& hint) {
    return "plan.md:7:1: error: " + message + " [" + name + "]; " + hint + "\n";
  };
  CHECK(said_of("../out.png") ==
        error("outside-folder", "‘../out.png’ is outside the club's folder",
              "copy the picture into the club's folder and name the copy"));
  CHECK(said_of("bad.png") == error("unreadable-file", "the picture ‘bad.png’ is cut short",
                                    "save it again as PNG or JPEG"));
  CHECK(said_of("lnie.png") == error("unreadable-file", "there is no picture at ‘lnie.png’",
                                     "did you mean `../pictures/on%20a%20line.png`?"));
  CHECK(said_of("none.png") ==
        error("unreadable-file", "there is no picture at ‘none.png’",
              "check the path; it begins at the folder of the file it stands in"));
  CHECK(said_of("..\\none.png") == error("unreadable-file", "there is no picture at ‘..\\none.png’",
                                         "write `/` between folders and file: `../none.png`"));
  CHECK(said_of("") == error("unreadable-file", "this picture names no file",
                             "write its path between the brackets: `![two children on a "
                             "line](../pictures/line.png)`"));
}

TEST_CASE("nothing is fetched from the web") {
  const auto refused = [](const std::string& shown) {
    return "plan.md:7:1: error: ‘" + shown +
           "’ is not a file of the club's, and nothing is fetched from elsewhere "
           "[unreadable-file]; save the picture in the club's folder, if the club may use it, and "
           "name it by its path there\n";
  };
  CHECK(said_of("https://example.org/a.png") == refused("https://example.org/a.png"));
  CHECK(said_of("HTTP://example.org/a.png") == refused("HTTP://example.org/a.png"));
  CHECK(said_of("//example.org/a.png") == refused("//example.org/a.png"));
  CHECK(said_of("file:///etc/hostname") == refused("file:///etc/hostname"));
  CHECK(link_pictures_of("## Main\n\n![x](12:30.png)\n").pictures.asked ==
        std::vector<std::string>{"/c/sessions/p.md 12:30.png"});
  const std::string data = "data:image/png;base64," + std::string(500, 'A');
  CHECK(said_of(data) == refused(data.substr(0, 80) + "…"));
  CHECK(link_pictures_of("## Main\n\n![x](https://example.org/a.png)\n").pictures.asked.empty());
}

TEST_CASE("a plan may have sixty different pictures, and each as often as it likes") {
  const auto plan_of = [](int count, int times) {
    std::string body = "## Main\n\n- Hold: 20 s\n\n";
    for (int i = 0; i < count * times; ++i) {
      body += "![p](p" + std::to_string(i % count) + ".png)\n\n";
    }
    return link_pictures_of(body).said;
  };
  CHECK(plan_of(60, 3) == "");
  CHECK(plan_of(62, 1).find("with its shared parts this plan has more than 60 pictures "
                            "[bad-value]; take some out, or split it into several plans\n") !=
        std::string::npos);
  CHECK(plan_of(62, 2).find("pictures", plan_of(62, 2).find("60 pictures") + 12) ==
        std::string::npos);
}

TEST_CASE("without a lookup pictures stay as they were written") {
  ReadPlan plan = read_plan(plan_with("## Main\n\n![x](a%20b.png)\n"));
  link_parts(plan.session, "/c/p.md", OnePart(), plan.diagnostics);
  const Note& note = std::get<Note>(plan.session.parts.at(0).steps.at(0));
  CHECK(note.picture == "a%20b.png");
  CHECK(note.picture_width == 0);
}

TEST_CASE("a target is decoded as a web browser would") {
  CHECK(link_path("../a%20b%2Fc.png") == "../a b/c.png");
  CHECK(link_path("100%25.png") == "100%.png");
  CHECK(link_path("100%.png") == "100%.png");
  CHECK(link_path("%zz%2") == "%zz%2");
  CHECK(link_path("a.png#left?x") == "a.png");
}

TEST_CASE("the pictures of a drill's file are found from there, and what is wrong kept with it") {
  LibraryDrill drill;
  Note good;
  good.kind = Note::Kind::kPicture;
  good.picture = "dish.png";
  Note bad = good;
  bad.picture = "bad.png";
  drill.notes = {good};
  drill.substitutes.push_back({});
  drill.substitutes[0].notes = {bad};
  const Asked pictures;
  link_pictures(drill, "/c/drills/dish.md", pictures);
  CHECK(drill.notes[0].picture == "/c/drills/dish.png");
  CHECK(drill.substitutes[0].notes[0].picture_width == 0);
  REQUIRE(drill.found.all().size() == 1);
  CHECK(drill.found.all()[0].message == "the picture ‘bad.png’ is cut short");
}

}  // namespace chalkleaf::plan
