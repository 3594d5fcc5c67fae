#include "figure/ranges.h"

namespace chalkleaf::figure {
namespace {

constexpr std::nullopt_t kUnpublished = std::nullopt;

// AAOS: American Academy of Orthopaedic Surgeons 1965, Joint Motion. CFR: 38 CFR 4.71a, plates I,
// II and V. Soucie: Soucie et al. 2011, Haemophilia 17:500-507, ages 2 to 8, girls and boys; the
// larger is taken. What is possible is ours.
constexpr std::array<Range, kJoints> kRanges = {{
    // spine: extension 30 (AAOS 20 to 30, CFR 30), flexion 90 (CFR; AAOS 80)
    {-30, 90, -150, 160, true},
    // spine side: CFR 30 each way (value from memory)
    {-30, 30, -90, 90, true},
    // spine turn: CFR 30 each way (value from memory)
    {-30, 30, -110, 110, true},
    // neck: 45 and 45 (AAOS, CFR)
    {-45, 45, -90, 90, false},
    // neck side: CFR 45 (value from memory)
    {-45, 45, -90, 90, false},
    // neck turn: CFR 80 (value from memory)
    {-80, 80, -110, 110, false},
    // shoulder: extension 60 (AAOS), flexion 180 (AAOS, CFR; Soucie 178.6)
    {-60, 180, -120, 220, true},
    // shoulder out: abduction 180 (AAOS, CFR)
    {kUnpublished, 180, -90, 220, true},
    // shoulder turn
    {kUnpublished, kUnpublished, -150, 150, true},
    // shoulder lift: the blade's turn, for which no published range is used
    {kUnpublished, kUnpublished, -35, 45, true},
    // elbow: flexion 152.9 (Soucie, girls; AAOS 150, CFR 145)
    {kUnpublished, 152.9, -15, 160, false},
    // wrist: extension 70, flexion 80 (AAOS, CFR)
    {-70, 80, -100, 100, false},
    // hip: extension 30 (AAOS, CFR; Soucie 28.3), flexion 140.8 (Soucie, girls; CFR 125, AAOS 120)
    {-30, 140.8, -110, 170, true},
    // hip out: abduction 45 (AAOS, CFR)
    {kUnpublished, 45, -70, 120, true},
    // hip turn
    {kUnpublished, kUnpublished, -120, 120, true},
    // knee: hyperextension 10 (AAOS; Soucie 5.4), flexion 152.6 (Soucie, girls; CFR 140, AAOS 135)
    {-10, 152.6, -15, 165, false},
    // ankle: plantarflexion 67.1, dorsiflexion 24.8 (Soucie, girls; CFR 45 and 20, AAOS 50 and 20)
    {-67.1, 24.8, -95, 50, true},
    // toes
    {kUnpublished, kUnpublished, -100, 110, false},
}};

}  // namespace

const Range& range_of(Joint joint) { return kRanges[static_cast<std::size_t>(joint)]; }

}  // namespace chalkleaf::figure
