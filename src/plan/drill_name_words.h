// The English words by which plan/drill_names.h tells where a name's drill ends. Common practice in
// the words of plans, no published source.
#pragma once

#include <array>
#include <string_view>

namespace chalkleaf::plan::name_words {

/// Behind these only the where and how of a drill is said.
inline constexpr std::array<std::string_view, 31> kQualify{
    "above", "across", "against", "along",   "around",  "as",      "at",    "behind",
    "below", "beside", "between", "by",      "for",     "holding", "in",    "like",
    "near",  "on",     "over",    "round",   "through", "under",   "until", "using",
    "while", "within", "wearing", "without", "toward",  "towards", "with"};
/// `Jump down` is another drill than `Jump`, and `Dish to arch` than `Dish`; `Roll down the wedge`
/// is a roll, and `Run to the wall` a run.
inline constexpr std::array<std::string_view, 7> kQualifyBeforeArticle{"down", "up",   "to", "from",
                                                                       "into", "onto", "out"};
inline constexpr std::array<std::string_view, 5> kArticles{"the", "a", "an", "your", "our"};

/// Words, without their plural, behind which a drill is not what its first words say. Moves of
/// their own: `Tuck jump with half turn` is another drill than `Tuck jump`.
inline constexpr std::array<std::string_view, 36> kMoves{
    "turn",  "twist",   "jump",       "roll",  "handstand", "hop",     "kick",    "leap",  "spin",
    "half",  "full",    "cartwheel",  "walk",  "rotation",  "bounce",  "salto",   "run",   "swing",
    "flip",  "walking", "somersault", "split", "pirouette", "bridge",  "lunge",   "squat", "catch",
    "throw", "press",   "push",       "pull",  "running",   "rebound", "jumping", "off",   "jack"};
/// Parts of the body held otherwise, and loads: `Splits with a foot on the bench`.
inline constexpr std::array<std::string_view, 36> kOtherwise{
    "raised",   "elevated", "lifted",   "blindfold", "blindfolded", "closed", "shut",   "one",
    "single",   "foot",     "feet",     "leg",       "knee",        "elbow",  "bent",   "wide",
    "apart",    "straddle", "tuck",     "tucked",    "pike",        "piked",  "weight", "weighted",
    "vest",     "dumbbell", "backward", "inverted",  "upside",      "place",  "shape",  "split",
    "rucksack", "backpack", "toe",      "heel"};
/// Things that change what a drill is when it is done on them or at them.
inline constexpr std::array<std::string_view, 26> kThings{
    "bench",  "block",     "box",     "stack", "chair",    "sofa",  "couch",  "counter", "table",
    "stool",  "step",      "stair",   "bed",   "wall",     "door",  "ladder", "horse",   "buck",
    "plinth", "trampette", "trampet", "tramp", "mushroom", "shelf", "frame",  "worktop"};
/// Hand apparatus: `Skips with a rope` is rope skipping, `Cartwheel over the rope` a cartwheel.
inline constexpr std::array<std::string_view, 6> kHandApparatus{"ball", "hoop",  "ribbon",
                                                                "club", "scarf", "rope"};
/// Of these, the ones whose part has drills of its own: a bounce with a ball is no small jump.
inline constexpr std::array<std::string_view, 4> kInTheHand{"ball", "hoop", "ribbon", "parachute"};
/// Behind these a thing is only near, and nothing is done on it or at it.
inline constexpr std::array<std::string_view, 6> kNear{"beside", "near", "behind",
                                                       "along",  "by",   "next"};
/// At the end of a name these say which side, and not what.
inline constexpr std::array<std::string_view, 8> kSides{"left", "right", "l",    "r",
                                                        "side", "each",  "both", "and"};
/// Done with someone's help, a drill stays what it is.
inline constexpr std::array<std::string_view, 8> kHelped{
    "spot", "spotting", "spotted", "supporting", "support", "help", "supported", "helping"};

/// A place of the hall, and the words by which plans and drills call it.
struct Apparatus {
  std::string_view name;
  std::array<std::string_view, 6> words;  ///< without their plural; the rest is empty
};
inline constexpr std::array<Apparatus, 9> kApparatus{{
    {"beam", {"beam", "bb"}},
    {"parallelbar", {"parallel", "pb"}},
    {"bar", {"bar", "hb", "ub", "highbar"}},
    {"vault", {"vault", "vaulting", "vt", "springboard"}},
    {"trampette", {"trampette", "trampet", "minitramp", "mini", "tramp"}},
    {"trampoline", {"trampoline"}},
    {"ring", {"ring", "sr"}},
    {"pommel", {"pommel", "ph", "mushroom"}},
    {"floor", {"floor", "fx", "tumbling", "tumble", "strip"}},
}};

}  // namespace chalkleaf::plan::name_words
