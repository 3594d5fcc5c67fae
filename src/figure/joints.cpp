#include "figure/joints.h"

namespace chalkleaf::figure {
namespace {

constexpr std::array<std::string_view, kJoints> kJointNames = {
    "spine",    "spine side",   "spine turn",    "neck",          "neck side", "neck turn",
    "shoulder", "shoulder out", "shoulder turn", "shoulder lift", "elbow",     "wrist",
    "hip",      "hip out",      "hip turn",      "knee",          "ankle",     "toes"};

}  // namespace

std::string_view joint_name(Joint joint) { return kJointNames[static_cast<std::size_t>(joint)]; }

const std::vector<std::string>& joint_names() {
  static const std::vector<std::string> names(kJointNames.begin(), kJointNames.end());
  return names;
}

std::optional<Side> take_side(std::string_view& text) {
  struct Word {
    std::string_view word;
    Side side;
  };
  constexpr std::array<Word, 4> kWords = {{{"near ", Side::kRight},
                                           {"right ", Side::kRight},
                                           {"far ", Side::kLeft},
                                           {"left ", Side::kLeft}}};
  for (const Word& one : kWords) {
    if (!text.starts_with(one.word)) continue;
    text.remove_prefix(one.word.size());
    return one.side;
  }
  return std::nullopt;
}

std::optional<JointName> read_joint_name(std::string_view text) {
  JointName out;
  out.side = take_side(text);
  for (std::size_t i = 0; i < kJoints; ++i) {
    if (kJointNames[i] != text) continue;
    out.joint = static_cast<Joint>(i);
    if (out.side && !has_sides(out.joint)) return std::nullopt;
    return out;
  }
  return std::nullopt;
}

Joints Joints::between(const Joints& a, const Joints& b, double t) {
  Joints out;
  for (std::size_t i = 0; i < out.values_.size(); ++i) {
    out.values_[i] = a.values_[i] * (1 - t) + b.values_[i] * t;
  }
  return out;
}

Joints Joints::mirrored() const {
  Joints out;
  for (std::size_t i = 0; i < kJoints; ++i) {
    const auto joint = static_cast<Joint>(i);
    if (has_sides(joint)) {
      out.set(joint, Side::kRight, get(joint, Side::kLeft));
      out.set(joint, Side::kLeft, get(joint, Side::kRight));
    } else {
      const bool sideways = joint != Joint::kSpine && joint != Joint::kNeck;
      out.set(joint, sideways ? -get(joint) : get(joint));
    }
  }
  return out;
}

}  // namespace chalkleaf::figure
