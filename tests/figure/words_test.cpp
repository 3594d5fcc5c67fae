// Poses as they are told to who cannot see them, word for word.
#include "figure/words.h"

#include <catch2/catch.hpp>
#include <set>

#include "reading.h"
#include "seeded.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

std::string words_of(const std::string& keys) {
  const ReadFigures read = read_pose(keys);
  REQUIRE(messages(read.diagnostics) == "");
  return alternative_text(read.figures[0]);
}

}  // namespace

TEST_CASE("standing is told by what the arms and the other leg do") {
  CHECK(words_of("touches: feet") == "Standing, arms by the sides.");
  CHECK(words_of("touches: toes, lean: 0, joints: {shoulder: 178, ankle: -40}") ==
        "Standing on tiptoe, arms overhead.");
  CHECK(words_of("touches: feet, view: front, joints: {hip out: 25, shoulder out: 90}") ==
        "Front view: standing, arms out to the sides, feet wide apart.");
  CHECK(
      words_of("touches: near feet, joints: {far hip: 85, far knee: 110, shoulder out: 90}") ==
      "Standing on one leg, arms out to the sides, the other knee lifted in front to hip height.");
  CHECK(words_of("touches: near feet, joints: {far hip: -40}, hands on: hips") ==
        "Standing on one leg, hands on the hips, the other leg straight, lifted behind half-way.");
  CHECK(words_of(
            "touches: feet, lean: 35, joints: {hip: 100, knee: 100, shoulder: 120}, still: no") ==
        "Squatting, leaning forward, arms forward and up.");
  CHECK(words_of("touches: feet, lean: 105, joints: {hip: 100}, hands on: shins") ==
        "Standing, folded forward, back level, hands on the shins.");
  CHECK(
      words_of("touches: [near feet, far toes], lean: 0, joints: {near hip: 70, near knee: 75, far "
               "hip: -20}, hands on: hips") == "In a lunge, back leg straight, hands on the hips.");
  CHECK(words_of("touches: {feet: floor, back: wall}, lean: 0, joints: {hip: 85, knee: 85}") ==
        "Squatting, back against the wall, arms by the sides.");
  CHECK(words_of(
            "touches: near feet, ground: beam, view: quarter, joints: {far hip: 30, shoulder out: "
            "90}") ==
        "Half turned to you: standing on one leg on the beam, arms out to the sides, the other leg "
        "straight, lifted in front.");
}

TEST_CASE("sitting, kneeling and lying are told by what lies on the floor") {
  CHECK(words_of("touches: [seat, heels], lean: 0, joints: {hip: 90, ankle: -50, shoulder: 176}") ==
        "Sitting, arms overhead, legs straight in front, toes pointed.");
  CHECK(words_of(
            "touches: seat, lean: -25, joints: {spine: 20, hip: 115, knee: 130, ankle: -45}, hands "
            "on: shins") ==
        "Sitting, leaning back, back rounded, hands on the shins, legs fully bent, feet on the "
        "floor, toes pointed.");
  CHECK(words_of(
            "touches: {seat: chair, feet: floor}, lean: 0, joints: {hip: 90, knee: 90}, hands on: "
            "thighs") == "Sitting on a chair, hands on the thighs, legs bent, feet on the floor.");
  CHECK(words_of(
            "touches: [near feet, far knees], lean: 0, joints: {near hip: 90, near knee: 90, far "
            "knee: 90, far ankle: -50}, hands on: {near: near knee, far: far hip}") ==
        "Kneeling on one knee, one hand on one knee, the other hand on one hip.");
  CHECK(words_of("touches: back, joints: {shoulder: 176, ankle: -55}") ==
        "Lying on the back, arms overhead, legs straight along the floor, "
        "toes pointed.");
  CHECK(words_of(
            "touches: back, lean: -80, joints: {spine: 35, hip: 30, shoulder: 150, ankle: -50}") ==
        "Lying on the back, back rounded, arms forward and up and legs straight, both lifted off "
        "the floor, toes pointed.");
  CHECK(words_of("touches: front, joints: {spine: -28, hip: -15, shoulder: 165, ankle: -50}") ==
        "Lying on the front, back arched, arms overhead and legs straight, both lifted off the "
        "floor, toes pointed.");
}

TEST_CASE("supports and hangs are told by what bears, and the line of the body") {
  CHECK(words_of("touches: [hands, toes], joints: {shoulder: 80, ankle: 5}") ==
        "Side view: hands and toes on the floor, body in one line, arms straight.");
  CHECK(words_of("touches: [hands, heels], joints: {shoulder: -60, hip: -6, ankle: -50}, range: "
                 "trained") ==
        "Side view: hands and heels on the floor, belly up, body in one line, arms straight.");
  CHECK(words_of(
            "touches: [hands, feet], joints: {spine: -75, hip: -20, knee: 70, shoulder: 190, neck: "
            "-30}, range: trained") ==
        "Side view: hands and feet on the floor, belly up, back deeply arched, arms straight, "
        "knees bent.");
  CHECK(words_of("touches: {hands: floor, heels: wall}, joints: {shoulder: 178, hip: -4}") ==
        "Upside down on the hands, heels against the wall, arms straight, legs straight.");
  CHECK(words_of("touches: {hands: bar}, height: 0.2, joints: {shoulder: 180, hip: 100, knee: 110, "
                 "ankle: -50}") ==
        "Hanging from the bar, arms straight, legs tucked to the chest, toes pointed.");
  CHECK(
      words_of("height: 0.3, view: front, joints: {shoulder out: 130, hip out: 35, ankle: -50}") ==
      "Front view: in the air, arms up and out, legs apart, straight, toes pointed.");
  CHECK(words_of("touches: feet, joints: {shoulder: 90}, holds: stick") ==
        "Standing, arms forward, holding a stick.");
}
TEST_CASE("a movement is told from where it begins, with what changes") {
  const auto second = [](const std::string& text) {
    const ReadFigures read = read_figures(text);
    REQUIRE(messages(read.diagnostics) == "");
    return alternative_text(read.figures.back());
  };
  const std::string lying = "  lying long: {touches: back, joints: {shoulder: 176, ankle: -55}}\n";
  CHECK(second(lying + "  leg lift: {frames: [lying long, {from: lying long, joints: {hip: 90}}], "
                       "tempo: [fast, slow], returns: yes}\n") ==
        "From lying on the back, arms overhead, legs straight along the floor, toes pointed: the "
        "legs lift to straight, up to the ceiling, quickly, and come back slowly.");
  CHECK(second("  up: {frames: [{touches: feet}, {touches: feet, joints: {shoulder: 178}}], tempo: "
               "slow}\n") ==
        "From standing, arms by the sides: the arms lift to overhead, slowly.");
  CHECK(second("  hop: {show: row, still: no, frames: [{touches: feet}, {height: 0.2, joints: "
               "{shoulder: 178}}]}\n") ==
        "2 pictures: 1, standing, arms by the sides; 2, in the air, arms overhead, legs straight.");
}

TEST_CASE("the file's own words are kept as they are") {
  CHECK(words_of("touches: feet, alt: Tall as a tree") == "Tall as a tree");
}

TEST_CASE("any pose at all has words") {
  Seeded random(11);
  std::set<std::string> all;
  for (int i = 0; i < 400; ++i) {
    Pose pose;
    pose.joints = random.joints();
    pose.view = static_cast<View>(random.below(4));
    pose.still = false;
    const std::size_t contacts = random.below(4);
    for (std::size_t c = 0; c < contacts; ++c) {
      Contact contact;
      contact.part = static_cast<Part>(random.below(kParts));
      if (is_limb(contact.part) && random.coin()) contact.side = Side::kLeft;
      contact.on = random.coin() ? Prop::kFloor : static_cast<Prop>(random.below(kProps));
      pose.contacts.push_back(contact);
    }
    if (random.coin()) {
      pose.reaches.push_back({Side::kRight, static_cast<Target>(random.below(kTargets)), {}, {}});
    }
    const std::string words = describe(pose);
    INFO(words);
    CHECK(words.size() > 10);
    CHECK(words.find(", ,") == std::string::npos);
    CHECK(words.find("  ") == std::string::npos);
    CHECK(words.find(",,") == std::string::npos);
    CHECK(words.find(" ,") == std::string::npos);
    CHECK(words.back() != ',');
    CHECK(words.back() != ' ');
    all.insert(words);
  }
  CHECK(all.size() > 390);
}
