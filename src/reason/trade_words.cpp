// Chosen by what a parent asks at the door, not by what is in a dictionary. Common practice, no
// source. Tested by tests/reason/hard_words_test.cpp.
#include "reason/trade_words.h"

#include <functional>
#include <map>
#include <string>

#include "base/text.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

constexpr auto kAlways = TradeUse::kAlways;
constexpr auto kNoun = TradeUse::kNoun;
constexpr auto kName = TradeUse::kName;

constexpr TradeWord kTradeWords[] = {
    {"abduction", kAlways, "moving away from the middle of the body"},
    {"aerial", kName, "a cartwheel without hands"},
    {"arabesque", kAlways, "standing on one leg, the other lifted straight behind"},
    {"arch", kNoun, "a long bow, lying on the tummy"},
    {"backbend", kAlways, "leaning back until the hands reach the floor"},
    {"battement", kAlways, "a straight leg swung up"},
    {"cast", kName, "a push away from the bar"},
    {"cat-leap", kAlways, "a jump with one knee up, then the other"},
    {"chasse", kAlways, "a gallop step in which one foot chases the other"},
    {"chaine", kAlways, "a turn on two feet, step by step"},
    {"degage", kAlways, "a pointed foot brushed off the floor"},
    {"demi-plie", kAlways, "a small bend of the knees"},
    {"dish", kAlways, "a shallow curve, lying on the back"},
    {"dorsiflexion", kAlways, "pulling the toes up towards the shin"},
    {"eccentric", kAlways, "lowering slowly"},
    {"flic", kAlways, "a jump backwards on to the hands and on to the feet"},
    {"flic-flac", kAlways, "a jump backwards on to the hands and on to the feet"},
    {"flyspring", kAlways, "a spring over the hands from two feet"},
    {"handspring", kAlways, "a spring over the hands on to the feet"},
    {"headspring", kAlways, "a spring over the head and hands on to the feet"},
    {"hollow", kNoun, "a shallow curve, lying on the back"},
    {"isometric", kAlways, "holding still"},
    {"jete", kAlways, "a leap from one foot to the other"},
    {"kip", kAlways, "a swing that carries the body up over the bar"},
    {"layout", kName, "a turn in the air with a straight body"},
    {"lever", kName, "holding the body up on straight arms, legs in front"},
    {"needle", kName, "hands on the floor and one leg straight up"},
    {"passe", kAlways, "one toe at the other knee"},
    {"pike", kAlways, "folded at the hips, with straight legs"},
    {"planche", kAlways, "holding the whole body level on the hands"},
    {"plantarflexion", kAlways, "pointing the toes away"},
    {"plie", kAlways, "a bend of the knees"},
    {"plyometric", kAlways, "quick and springy"},
    {"prone", kAlways, "lying on the tummy"},
    {"proprioception", kAlways, "feeling where the body is"},
    {"protraction", kAlways, "pushing the shoulders forwards"},
    {"pullover", kName, "going up and round the bar, hips first"},
    {"rebound", kName, "a quick jump straight out of a landing"},
    {"releve", kAlways, "rising on to tiptoe"},
    {"retraction", kAlways, "pulling the shoulders back"},
    {"roundoff", kAlways, "a cartwheel that lands on two feet together"},
    {"salto", kAlways, "a somersault in the air"},
    {"saute", kAlways, "a small jump"},
    {"scapula", kAlways, "the shoulder blade"},
    {"scapular", kAlways, "of the shoulder blade"},
    {"sissone", kAlways, "a jump from two feet on to one"},
    {"sissonne", kAlways, "a jump from two feet on to one"},
    {"straddle", kAlways, "with legs wide apart"},
    {"supine", kAlways, "lying on the back"},
    {"tendu", kAlways, "a foot slid along the floor until it points"},
    {"tuck", kNoun, "knees pulled to the chest, small as a ball"},
    {"tuckup", kAlways, "lying on the back, knees and chest meet"},
    {"turnout", kAlways, "legs turned outwards from the hips"},
    {"undershoot", kAlways, "a swing under the bar and away from it"},
    {"vsit", kAlways, "sitting with legs lifted, like the letter V"},
    {"walkover", kAlways, "from standing over the hands to standing, one leg after the other"},
};

// The table is written with hyphens where the word is; both sides of the comparison lose them.
std::string key(std::string_view word) { return replace_all(word, "-", ""); }

}  // namespace

std::span<const TradeWord> trade_words() { return kTradeWords; }

const TradeWord* find_trade_word(std::string_view word) {
  static const std::map<std::string, const TradeWord*, std::less<>> kByKey = [] {
    std::map<std::string, const TradeWord*, std::less<>> out;
    for (const TradeWord& entry : kTradeWords) out.emplace(key(entry.word), &entry);
    return out;
  }();
  for (const std::string& wanted : {key(word), key(singular(word))}) {
    if (const auto found = kByKey.find(wanted); found != kByKey.end()) return found->second;
  }
  return nullptr;
}

}  // namespace chalkleaf::reason
