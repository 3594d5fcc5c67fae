#include "figure/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <functional>
#include <set>

#include "base/text.h"
#include "figure/arrows.h"
#include "figure/hints.h"
#include "figure/motion.h"
#include "source/read.h"

namespace chalkleaf::figure {

using source::YamlNode;

namespace {

constexpr std::size_t kMostFrames = 4;
// Figures that begin from figures that begin from figures: deeper than any honest file, and a bound
// on all of it together.
constexpr std::size_t kDeepest = 8;
constexpr std::size_t kMostFollowed = 10'000;
// Of what one key lists: it is read again wherever another figure begins from it.
constexpr std::size_t kMostListed = 10;

// `‘a’ begins from ‘b’, which begins from ‘a’`
std::string circle(const std::vector<std::string>& names) {
  if (names.size() == 1) return quoted(names.front()) + " begins from itself";
  std::string out = quoted(names.front());
  for (std::size_t i = 1; i < names.size(); ++i) {
    out += (i == 1 ? " begins from " : ", which begins from ") + quoted(names[i]);
  }
  return out + ", which begins from " + quoted(names.front());
}

}  // namespace

/// Reads one figure after the other; follows `from`.
class FigureReader {
 public:
  FigureReader(const Descriptions& all, Diagnostics& diagnostics)
      : all_(all), diagnostics_(diagnostics) {}

  std::optional<Figure> read(const Descriptions::Entry& entry) {
    broken_ = false;
    too_deep_ = false;
    Figure figure;
    figure.name = {entry.name, entry.span};
    figure.family = entry.family;
    Pose pose;
    std::vector<std::string> trail = {entry.name};
    with_node(entry,
              [&](const YamlNode& node) { read_map(node, figure, pose, trail, Depth::kOwn); });
    if (figure.poses.empty()) {
      pose.span = entry.span;
      figure.poses.push_back(std::move(pose));
    } else if (figure.poses.size() > 1) {
      for (Pose& one : figure.poses) one.span = one.span ? one.span : entry.span;
    }
    if (broken_) {
      broken_figures_.insert(entry.name);
      return std::nullopt;
    }
    return figure;
  }

 private:
  enum class Depth { kOwn, kInherited };

  // A packed description is unpacked each time: few are asked for, most of them once.
  template <class Read>
  void with_node(const Descriptions::Entry& entry, Read read) {
    if (!entry.packed) return read(entry.node);
    if (const auto node = entry.packed->unpacked()) read(*node);
  }

  // `touches` and the like of this node go over what `from` brought.
  void read_map(const YamlNode& node, Figure& figure, Pose& pose, std::vector<std::string>& trail,
                Depth depth) {
    if (node.kind == YamlNode::Kind::kNull && node.unreadable) return;
    if (node.kind != YamlNode::Kind::kMap) {
      return bad(node.span, "a figure is described by keys below its name",
                 "write `touches:`, `joints:` and so on, two spaces further in");
    }
    std::set<std::string> seen;
    for (const auto& [key, value] : node.entries) {
      if (!seen.insert(key.text).second) {
        error("duplicate-key", key.span, quoted(key.text) + " stands here twice",
              "keep one of them");
      }
      const std::vector<std::string>& keys = figure_keys();
      if (std::find(keys.begin(), keys.end(), key.text) == keys.end()) {
        error("unknown-key", key.span, "a figure has no key " + quoted(key.text),
              hint_for(key.text, keys));
      }
    }
    if (const YamlNode* from = get(node, "from")) follow(*from, figure, pose, trail);
    read_stance(node, pose);
    read_body(node, pose);
    if (depth == Depth::kOwn) read_words(node, figure);
    read_movement(node, figure, pose, trail);
  }

  static const YamlNode* get(const YamlNode& node, std::string_view key) {
    for (const auto& [name, value] : node.entries) {
      if (name.text == key) return &value;
    }
    return nullptr;
  }

  // Counted here: of one name the collector keeps only the first.
  void error(std::string name, Span span, std::string message, std::string hint) {
    broken_ = true;
    diagnostics_.error(std::move(name), span, std::move(message), std::move(hint));
  }
  void bad(Span span, std::string message, std::string hint) {
    error(kBadValue, span, std::move(message), std::move(hint));
  }
  // Whether a list is short enough to be read.
  bool is_short(const YamlNode& node, std::size_t most, std::string_view what) {
    if (std::max(node.items.size(), node.entries.size()) <= most) return true;
    bad(node.span, fmt::format("{} lists more than {}", what, most), "keep those that matter");
    return false;
  }

  void follow(const YamlNode& from, Figure& figure, Pose& pose, std::vector<std::string>& trail) {
    const auto found = all_.by_name_.find(from.text);
    if (found == all_.by_name_.end()) {
      // Whoever misspells more than this mends these first.
      constexpr std::size_t kMostGuessed = 50;
      std::vector<std::string> names;
      if (++unknown_ <= kMostGuessed) {
        for (const auto& entry : all_.entries_) names.push_back(entry.name);
      }
      const auto meant = closest(from.text, names);
      error("unknown-figure", from.span, "there is no figure " + quoted(from.text),
            meant ? "did you mean " + quoted(*meant) + "?"
                  : "name a figure of the catalogue or of the club's `figures` folder");
      return;
    }
    if (broken_figures_.count(from.text) > 0) {
      broken_ = true;  // and it was said there why
      return;
    }
    const auto again = std::find(trail.begin(), trail.end(), from.text);
    if (again != trail.end()) {
      // Whichever figure led here: all of the circle are broken, and it is said once.
      const std::vector<std::string> round(again, trail.end());
      broken_figures_.insert(round.begin(), round.end());
      error("figure-cycle", from.span, circle(round),
            round.size() == 1 ? "give this figure a name of its own, or describe it without `from`"
                              : "describe one of them without `from`");
      return;
    }
    if (trail.size() >= kDeepest || ++followed_ > kMostFollowed) {
      too_deep_ = true;
      bad(from.span, "this figure begins from too many others",
          "describe it by its own keys, or begin from one figure that is described in full");
      return;
    }
    trail.push_back(from.text);
    const bool sound = !broken_;
    Figure other;
    with_node(all_.entries_[found->second],
              [&](const YamlNode& node) { read_map(node, other, pose, trail, Depth::kInherited); });
    // A pose that begins from a movement begins from where it ends.
    if (!other.poses.empty()) pose = other.poses.back();
    figure.show = other.show;
    trail.pop_back();
    if (sound && broken_ && !too_deep_) broken_figures_.insert(from.text);
  }

  std::optional<double> number(const YamlNode& node, double least, double most,
                               std::string_view what) {
    const std::string_view text = trim(node.text);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool whole = error == std::errc() && end == text.data() + text.size();
    if (!node.is_scalar() || !whole || !(value >= least && value <= most)) {
      bad(node.span, fmt::format("{} must be a number from {} to {}", what, least, most),
          "write plain degrees or metres, such as `20` or `-50`");
      return std::nullopt;
    }
    return value;
  }
  void read_number(const YamlNode& node, std::string_view key, double least, double most,
                   std::optional<double>& out) {
    const YamlNode* value = get(node, key);
    if (value == nullptr) return;
    if (value->text == "solved") {
      out.reset();
    } else if (const auto read = number(*value, least, most, quoted(key))) {
      out = read;
    }
  }
  bool yes(const YamlNode& node, std::string_view key, bool otherwise) {
    const YamlNode* value = get(node, key);
    if (value == nullptr) return otherwise;
    if (value->text == "yes" || value->text == "no") return value->text == "yes";
    bad(value->span, quoted(key) + " must be yes or no", "write `" + std::string(key) + ": yes`");
    return otherwise;
  }
  template <class T>
  void choose(const YamlNode& node, std::string_view key,
              const std::vector<std::pair<std::string, T>>& words, T& out) {
    const YamlNode* value = get(node, key);
    if (value == nullptr) return;
    std::vector<std::string> known;
    for (const auto& [word, meaning] : words) {
      known.push_back(word);
      if (word == value->text) {
        out = meaning;
        return;
      }
    }
    bad(value->span, fmt::format("‘{}’ is no {}", value->text, key), hint_for(value->text, known));
  }

  void read_stance(const YamlNode& node, Pose& pose) {
    choose<View>(node, "view",
                 {{"side", View::kSide},
                  {"front", View::kFront},
                  {"back", View::kBack},
                  {"quarter", View::kQuarter},
                  {"above", View::kAbove}},
                 pose.view);
    read_number(node, "lean", -360, 360, pose.lean);
    read_number(node, "tilt", -360, 360, pose.tilt);
    std::optional<double> turn = pose.turn;
    read_number(node, "turn", -180, 180, turn);
    pose.turn = turn.value_or(0);
    std::optional<double> height = pose.height;
    read_number(node, "height", 0, 3, height);
    pose.height = height.value_or(0);
    pose.still = yes(node, "still", pose.still);
    bool trained = pose.trained;
    choose<bool>(node, "range", {{"trained", true}, {"usual", false}}, trained);
    pose.trained = trained;
    read_touches(node, pose);
    const auto prop = [&](std::string_view key, std::optional<Prop>& out) {
      const YamlNode* value = get(node, key);
      if (value == nullptr) return;
      out = read_prop(value->text);
      if (!out && value->text != "nothing") {
        bad(value->span, fmt::format("‘{}’ is nothing that can be drawn", value->text),
            hint_for(value->text, prop_names()));
      }
    };
    prop("holds", pose.holds);
    prop("ground", pose.ground);
  }

  // `[hands, near toes]`, or `{hands: wall}`.
  void read_touches(const YamlNode& node, Pose& pose) {
    const YamlNode* touches = get(node, "touches");
    if (touches == nullptr || !is_short(*touches, kMostListed, "‘touches’")) return;
    pose.contacts.clear();
    const auto add = [&](const YamlNode& name, const YamlNode* on) {
      Contact contact;
      contact.span = name.span;
      std::string_view text = name.text;
      contact.side = take_side(text);
      const auto part = read_part(text);
      if (!part || (contact.side && !is_limb(*part))) {
        bad(name.span, fmt::format("‘{}’ is no part of the body that can bear weight", name.text),
            hint_for(text, part_names()));
        return;
      }
      contact.part = *part;
      if (on != nullptr) {
        const auto prop = read_prop(on->text);
        if (!prop) {
          bad(on->span, fmt::format("‘{}’ is nothing that can be touched", on->text),
              hint_for(on->text, prop_names()));
          return;
        }
        contact.on = *prop;
      }
      pose.contacts.push_back(contact);
    };
    if (touches->kind == YamlNode::Kind::kScalar) {
      if (touches->text != "nothing") add(*touches, nullptr);
    } else {
      for (const YamlNode& item : touches->items) add(item, nullptr);
      for (const auto& [name, on] : touches->entries) add(name, &on);
    }
  }

  void read_body(const YamlNode& node, Pose& pose) {
    if (const YamlNode* joints = get(node, "joints")) {
      if (joints->kind != YamlNode::Kind::kMap) {
        bad(joints->span, "‘joints’ must name joints and their angles",
            "write `joints: {hip: 90, knee: 90}`");
      }
      std::set<std::string> seen;
      for (const auto& [name, value] : joints->entries) {
        if (!seen.insert(name.text).second) {
          error("duplicate-key", name.span, quoted(name.text) + " stands here twice",
                "keep one of them");
        }
      }
      // What is said of both sides first, so that one side may differ.
      for (const bool both : {true, false}) {
        for (const auto& [name, value] : joints->entries) read_joint(name, value, both, pose);
      }
    }
    const YamlNode* adjust = get(node, "adjust");
    if (adjust != nullptr && is_short(*adjust, kMostListed, "‘adjust’")) {
      pose.adjust.clear();
      const auto add = [&](const YamlNode& item) {
        if (const auto joint = known_joint(item)) pose.adjust.push_back(*joint);
      };
      if (adjust->is_scalar()) add(*adjust);
      for (const YamlNode& item : adjust->items) add(item);
    }
    read_hands(node, pose);
  }

  std::optional<JointName> known_joint(const YamlNode& name) {
    auto joint = read_joint_name(name.text);
    if (joint) return joint;
    std::string_view text = name.text;
    take_side(text);
    bad(name.span, fmt::format("‘{}’ is no joint", name.text), hint_for(text, joint_names()));
    return std::nullopt;
  }

  void read_joint(const YamlNode& name, const YamlNode& value, bool both, Pose& pose) {
    std::string_view text = name.text;
    const bool sided = take_side(text).has_value();
    if (sided == both) return;
    const auto joint = known_joint(name);
    if (!joint) return;
    const auto angle = number(value, -360, 360, quoted(name.text));
    if (!angle) return;
    for (const Side side : kSides) {
      if (joint->side && *joint->side != side) continue;
      pose.joints.set(joint->joint, side, *angle);
      pose.joint_spans[{joint->joint, side}] = name.span.joined(value.span);
    }
  }

  // `hands on: knees`, `hands on: {near: knee, far: far shoulder}`.
  void read_hands(const YamlNode& node, Pose& pose) {
    const YamlNode* hands = get(node, "hands on");
    if (hands == nullptr || !is_short(*hands, 2, "‘hands on’")) return;
    pose.reaches.clear();
    const auto add = [&](const YamlNode& where, Side hand) {
      std::string_view text = where.text;
      Reach reach{hand, Target::kHips, take_side(text), where.span};
      const auto target = read_target(text);
      if (!target) {
        bad(where.span, fmt::format("hands cannot be put on ‘{}’", where.text),
            hint_for(text, target_names()));
        return;
      }
      reach.target = *target;
      pose.reaches.push_back(reach);
    };
    if (hands->is_scalar()) {
      if (hands->text == "nothing") return;
      for (const Side side : kSides) add(*hands, side);
      return;
    }
    for (const auto& [key, where] : hands->entries) {
      const std::string spaced = key.text + " ";
      std::string_view text = spaced;
      const auto side = take_side(text);
      if (!side) {
        bad(key.span, fmt::format("‘{}’ is no hand", key.text), "write `near:` or `far:`");
        continue;
      }
      add(where, *side);
    }
  }

  void read_words(const YamlNode& node, Figure& figure) {
    if (const YamlNode* alt = get(node, "alt")) {
      if (!alt->is_scalar() || trim(alt->text).empty()) {
        bad(alt->span, "‘alt’ must say what the picture shows",
            "write a short sentence, or leave it out");
      }
      figure.alternative = {std::string(trim(alt->text)), alt->span};
    }
    const YamlNode* also = get(node, "also");
    if (also != nullptr && is_short(*also, kMostListed, "‘also’")) {
      if (also->is_scalar()) figure.also.push_back({also->text, also->span});
      for (const YamlNode& item : also->items) figure.also.push_back({item.text, item.span});
    }
  }

  // One name or a list of them.
  void read_parts(const YamlNode& node, std::string_view key, const std::vector<std::string>& known,
                  std::vector<std::string>& out) {
    const YamlNode* value = get(node, key);
    if (value == nullptr) return;
    out.clear();
    const auto add = [&](const YamlNode& item) {
      if (std::find(known.begin(), known.end(), item.text) == known.end()) {
        return bad(item.span, fmt::format("‘{}’ cannot be shown by an arrow here", item.text),
                   hint_for(item.text, known));
      }
      if (out.size() < kMostFrames) out.push_back(item.text);
    };
    if (value->is_scalar()) add(*value);
    for (const YamlNode& item : value->items) add(item);
  }

  void read_movement(const YamlNode& node, Figure& figure, const Pose& pose,
                     std::vector<std::string>& trail) {
    choose<Show>(node, "show", {{"arrow", Show::kArrow}, {"row", Show::kRow}}, figure.show);
    figure.returns = yes(node, "returns", figure.returns);
    read_parts(node, "moves", travelling_parts(), figure.moves);
    read_parts(node, "circles", circling_parts(), figure.circles);
    std::vector<std::string> turns;
    read_parts(node, "turns", turning_parts(), turns);
    if (!turns.empty()) figure.turns = turns.front();
    const YamlNode* tempo = get(node, "tempo");
    if (tempo != nullptr && is_short(*tempo, 2, "‘tempo’")) {
      const auto add = [&](const YamlNode& item) {
        if (item.text == "fast") return figure.tempo.push_back(Speed::kFast);
        if (item.text == "slow") return figure.tempo.push_back(Speed::kSlow);
        if (item.text == "even") return figure.tempo.push_back(Speed::kEven);
        bad(item.span, fmt::format("‘{}’ is no speed", item.text), "write fast, slow or even");
      };
      if (tempo->is_scalar()) add(*tempo);
      for (const YamlNode& item : tempo->items) add(item);
    }
    const YamlNode* frames = get(node, "frames");
    if (frames == nullptr) return;
    figure.poses.clear();
    if (frames->items.empty() || frames->items.size() > kMostFrames) {
      bad(frames->span, fmt::format("‘frames’ must list 1 to {} poses", kMostFrames),
          "write `frames: [one pose, another pose]`");
      return;
    }
    for (const YamlNode& item : frames->items) {
      Pose frame = pose;
      Figure ignored;
      if (item.is_scalar()) {
        follow(item, ignored, frame, trail);
      } else {
        read_map(item, ignored, frame, trail, Depth::kInherited);
      }
      frame.span = item.span;
      if (frames->items.size() > 1 && (!item.is_scalar() && get(item, "still") == nullptr)) {
        frame.still = pose.still;
      }
      figure.poses.push_back(std::move(frame));
    }
  }

  const Descriptions& all_;
  Diagnostics& diagnostics_;
  std::size_t followed_ = 0;
  std::size_t unknown_ = 0;
  bool broken_ = false;                   ///< the figure that is read now
  bool too_deep_ = false;                 ///< and only by the way it was come to
  std::set<std::string> broken_figures_;  ///< those read before
};

std::vector<Figure> Descriptions::resolve(Diagnostics& diagnostics) const {
  std::vector<Figure> out;
  FigureReader reader(*this, diagnostics);
  for (const Entry& entry : entries_) {
    if (entry.packed) continue;
    if (auto figure = reader.read(entry)) out.push_back(std::move(*figure));
  }
  return out;
}

std::optional<Figure> Descriptions::resolve(std::size_t place, Diagnostics& diagnostics) const {
  return FigureReader(*this, diagnostics).read(entries_[place]);
}

}  // namespace chalkleaf::figure
