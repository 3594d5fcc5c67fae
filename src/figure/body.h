// How long, how heavy and how thick the parts of a body are.
//
// Lengths: Drillis & Contini 1966, as fractions of stature, after Winter 2009, fig. 4.1 (secondary
// copy). Masses and centres: Dempster after Winter, table 4.1; of children, Jensen 1986 and 1989.
// Statures: CDC 2000 stature-for-age, medians. A child's head is larger than these fractions say:
// its share of the stature is a draughtsman's canon (a sixth at six years, a seventh at twelve;
// value from memory), and what it takes is taken from all other lengths alike. How thick the limbs
// are is ours, for the eye. Tested by tests/figure/body_test.cpp.
#pragma once

#include <optional>

namespace chalkleaf::figure {

/// A segment's share of the mass, and where its centre lies from its near end (hip, shoulder …).
struct Mass {
  double share = 0;
  double from_near_end = 0;
};

/// Shares of the body's mass; one of each pair of limbs. All of them sum to 1.
struct Masses {
  Mass head;  ///< with the neck; its centre is the head's own, at the height of the ear
  Mass trunk;
  Mass upper_arm;
  Mass forearm;
  Mass hand;
  Mass thigh;
  Mass shank;
  Mass foot;
};

/// Lengths in metres.
struct Body {
  double stature = 1;
  double head = 0;      ///< chin to crown
  double chin = 0;      ///< height of the chin when standing
  double shoulder = 0;  ///< likewise
  double hip = 0;
  double knee = 0;
  double ankle = 0;
  double upper_arm = 0;
  double forearm = 0;
  double hand = 0;
  double foot = 0;            ///< heel to toes
  double shoulder_width = 0;  ///< over both shoulders
  double hip_width = 0;
  Masses masses;

  double thigh() const { return hip - knee; }
  double shank() const { return knee - ankle; }
  double trunk() const { return shoulder - hip; }
  /// The height of the eyes, where the head's centre of mass is put.
  double eye() const { return stature - 0.064 * head / 0.130; }

  /// The published fractions as they are.
  static Body adult(double stature);
  /// Of a child of that many years (5 to 16, clamped): median stature, the mean of girls and boys.
  static Body of_age(double years);
};

/// CDC 2000 median stature in metres, the mean of girls' and boys', between whole years by a
/// straight line; years from 5 to 16, clamped.
double median_stature(double years);
/// Jensen's shares for 6 to 15 years, between his ages by a straight line, made to sum to 1; the
/// centres are Dempster's.
Masses child_masses(double years);
/// Dempster's.
Masses adult_masses();

}  // namespace chalkleaf::figure
