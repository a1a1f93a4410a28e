/* gw-derivation-methods.c - what each result is, and by which method it is found
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "report/gw-derivation-private.h"

/* Methods and sources are those that the headers of the engine state. */

static const char build_method[] =
  N_ ("Every piece is a length, an area or a volume of the lofted shape times what lies there; a "
      "mass that is stated takes the place of the computed one. All pieces are added.");
static const char build_source[] =
  N_ ("Geometry. That the flow, not the temperature, sets the mass of foaming filament: Yousefi "
      "Kanani, Rennie, Rahim: Additively manufactured foamed polylactic acid for lightweight "
      "structures, Rapid Prototyping Journal 29(1), 2023.");
static const char balance_source[] = N_ ("Definition of the first moment.");
static const char inertia_method[] =
  N_ ("The second moments of all pieces about the datum are added and carried over to the balance "
      "point by the parallel-axis theorem.");
static const char inertia_source[] =
  N_ ("Definition of the second moment; parallel-axis theorem.");
static const char solver_source[] = N_ ("Derived from sum (m x) = M x of the balance point.");
static const char stall_method[] =
  N_ ("Sought is the speed at which what the aircraft carries is its mass: V = sqrt (2 m g / (rho "
      "S CLmax)), with CLmax at that same speed. The wing is at its greatest lift when its first "
      "station reaches the greatest lift of its section at its own Reynolds number (lifting line, "
      "critical-section method); the trimming surface carries what balances the moments about the "
      "balance point.");
static const char stall_source[] =
  N_ ("Critical-section method: Anderson, NACA Report 572, 1936. Lifting line: Glauert, The "
      "Elements of Aerofoil and Airscrew Theory, Cambridge 1926, ch. XI; Multhopp, Die Berechnung "
      "der Auftriebsverteilung von Tragfluegeln, Luftfahrtforschung 15, 1938, 153-169. Aspect "
      "ratio and sweep, from memory: Helmbold, 1942; Diederich, NACA TN 2335, 1951. Balance of "
      "moments: e.g. Anderson J. D., Introduction to Flight, ch. 7. Flap: Glauert, ARC R&M 1095, "
      "1927.");
static const char neutral_method[] =
  N_ ("The lift slopes of all surfaces at the stall speed, times area and arm, less the downwash "
      "behind the wing; the bodies move it forward. Stick fixed, power off.");
static const char neutral_source[] =
  N_ ("Lift slopes: lifting line, Glauert 1926 and Multhopp 1938. Downwash, recalled: Hoak et al., "
      "USAF Stability and Control Datcom, 1960-78, section 4.4.1. Bodies, from memory: Multhopp, "
      "Aerodynamics of the fuselage, NACA TM 1036, 1942.");
static const char shape_source[] = N_ ("Geometry of the stations, straight between them.");
static const char air_source[] =
  N_ ("Pressure: ISO 2533:1975, Standard Atmosphere. Moist air: Picard, Davis, Glaeser, Fujii: "
      "Revised formula for the density of moist air (CIPM-2007), Metrologia 45, 2008, 149-155.");
static const char volume_source[] =
  N_ ("Common practice, no source. V-tail: Purser & Campbell, NACA Report 823, 1945.");

#define USE_MASS \
 (GW_USE_WINGS | GW_USE_TAILS | GW_USE_BODIES | GW_USE_BUILDS | GW_USE_MASSES)
/* A longer lead weighs more, so places are a part of the mass too. */
#define USE_BALANCE (USE_MASS | GW_USE_PLACES)
#define USE_STALL   (USE_BALANCE | GW_USE_SECTIONS | GW_USE_THROWS | GW_USE_DAY)
#define USE_SOLVER  (USE_STALL | GW_USE_MARGIN | GW_USE_BALANCE | GW_USE_BAY)
#define USE_INERTIA (USE_BALANCE | GW_USE_SIZES)

static const GwDerivationMethod methods[GW_N_RESULTS] = {
  [GW_RESULT_MASS] = { N_ ("The mass of the aircraft, ready to fly."), build_method, build_source,
                       USE_BALANCE },
  [GW_RESULT_WING_MASS] = { N_ ("The mass of all wings with all that is built into them: spars, "
                                "hinges, linkages, adhesive, finish."),
                            build_method, build_source, GW_USE_WINGS | GW_USE_WING_BUILDS },
  [GW_RESULT_WEIGHED_SHARE] = { N_ ("How much of the all-up mass has been on a scale."),
                                N_ ("The masses of origin “weighed” over the all-up mass."),
                                N_ ("Definition."), USE_BALANCE },
  [GW_RESULT_WING_LOADING] = { N_ ("The all-up mass by wing area."),
                               N_ ("All-up mass over the projected area of all wings."),
                               N_ ("Definition."), USE_BALANCE },
  [GW_RESULT_STALL_SPEED] = { N_ ("The least speed of level flight, trimmed, flaps up, power off."),
                              stall_method, stall_source, USE_STALL },
  [GW_RESULT_CL_MAX] = { N_ ("The greatest lift coefficient of the whole aircraft, the trim load "
                             "included, on the wing area."),
                         stall_method, stall_source, USE_STALL },
  [GW_RESULT_STALL_PLACE] = { N_ ("Where along the semispan the wing lets go first: 0 % is the "
                                  "root, 100 % the tip."),
                              stall_method, stall_source, USE_STALL },
  [GW_RESULT_STALL_RE] = { N_ ("The Reynolds number where the wing lets go first."),
                           N_ ("Re = rho V c / mu with the chord there, at the stall speed."),
                           N_ ("Definition. Viscosity: Sutherland's law with the constants of ISO "
                               "2533:1975."),
                           USE_STALL },
  [GW_RESULT_TARGET_MASS] = { N_ ("The mass that it may come to and still keep the wanted stall "
                                  "speed."),
                              N_ ("The balance of the stall, once, at the wanted speed; the "
                                  "balance point stays where it is."),
                              stall_source, USE_STALL | GW_USE_SPEED },
  [GW_RESULT_BALANCE_X] = { N_ ("How far the balance point lies behind the datum."),
                            N_ ("The sum of mass times place over the sum of the masses."),
                            balance_source, USE_BALANCE },
  [GW_RESULT_BALANCE_ROOT] = { N_ ("How far the balance point lies behind the leading edge of the "
                                   "wing's root."),
                               N_ ("The sum of mass times place over the sum of the masses, "
                                   "counted from the root's leading edge."),
                               balance_source, USE_BALANCE },
  [GW_RESULT_BALANCE_MAC] = { N_ ("Where the balance point lies along the mean chord: 0 % is its "
                                  "leading edge."),
                              N_ ("Its distance from the leading edge of the mean chord, over the "
                                  "mean chord."),
                              balance_source, USE_BALANCE },
  [GW_RESULT_BALANCE_Y] = { N_ ("How far the balance point lies off the centre line, to "
                                "starboard."),
                            N_ ("The sum of mass times place over the sum of the masses."),
                            balance_source, USE_BALANCE },
  [GW_RESULT_BALANCE_Z] = { N_ ("How high the balance point lies above the datum."),
                            N_ ("The sum of mass times height over the sum of the masses."),
                            balance_source, USE_BALANCE },
  [GW_RESULT_NEUTRAL_POINT] = { N_ ("Where the balance point would have to lie for the aircraft to "
                                    "be neither stable nor unstable in pitch."),
                                neutral_method, neutral_source, USE_STALL },
  [GW_RESULT_STATIC_MARGIN] = { N_ ("How far the balance point lies ahead of the neutral point, of "
                                    "the mean chord; below nothing it is tail-heavy."),
                                N_ ("Neutral point less balance point, over the mean chord."),
                                neutral_source, USE_STALL },
  [GW_RESULT_AFT_LIMIT] = { N_ ("The rearmost balance point that keeps the wanted static margin."),
                            N_ ("Neutral point less the wanted static margin times the mean "
                                "chord."),
                            neutral_source, USE_STALL | GW_USE_MARGIN },
  [GW_RESULT_FORWARD_LIMIT] = { N_ ("The foremost balance point from which the elevator, fully up, "
                                    "still brings the wing to its stall."),
                                N_ ("The balance of moments at the stall with the whole throw of "
                                    "the control that trims."),
                                stall_source, USE_STALL },
  [GW_RESULT_SLIDE] = { N_ ("How far aft the item that is moved must go to bring the balance point "
                            "where it is wanted; forward is negative."),
                        N_ ("The item's place + (wanted - present balance point) x all-up mass / "
                            "the item's mass, less its place."),
                        solver_source, USE_SOLVER },
  [GW_RESULT_SLIDE_LEFT] = { N_ ("What of that its bay does not allow, aft positive."),
                             N_ ("The place the item must have, less the nearest place in its "
                                 "bay."),
                             solver_source, USE_SOLVER },
  [GW_RESULT_BALLAST] = { N_ ("The lead that is needed in the nose or the tail once the item that "
                              "is moved is as near as its bay allows."),
                          N_ ("All-up mass x (wanted - reached balance point) / (place of the lead "
                              "- wanted balance point)."),
                          solver_source, USE_SOLVER },
  [GW_RESULT_TRAVEL_FORE] = { N_ ("The balance point with the item at the fore end of its bay."),
                              N_ ("Balance point + the item's mass x (end of the bay - its place) "
                                  "/ all-up mass."),
                              solver_source, USE_BALANCE | GW_USE_BAY },
  [GW_RESULT_TRAVEL_AFT] = { N_ ("The balance point with the item at the aft end of its bay."),
                             N_ ("Balance point + the item's mass x (end of the bay - its place) / "
                                 "all-up mass."),
                             solver_source, USE_BALANCE | GW_USE_BAY },
  [GW_RESULT_IXX] = { N_ ("How much it resists being rolled, about the balance point."),
                      inertia_method, inertia_source, USE_INERTIA },
  [GW_RESULT_IYY] = { N_ ("How much it resists being pitched, about the balance point."),
                      inertia_method, inertia_source, USE_INERTIA },
  [GW_RESULT_IZZ] = { N_ ("How much it resists being yawed, about the balance point."),
                      inertia_method, inertia_source, USE_INERTIA },
  [GW_RESULT_IXZ] = { N_ ("How roll and yaw are coupled by masses that lie high and aft or low and "
                          "forward."),
                      inertia_method, inertia_source, USE_INERTIA },
  [GW_RESULT_WING_AREA] = { N_ ("The area of all wings as seen from above."),
                            N_ ("The sum of the panels: mean of both chords times the distance "
                                "between the stations, both sides."),
                            shape_source, GW_USE_WINGS },
  [GW_RESULT_SPAN] = { N_ ("From tip to tip, of the widest wing."),
                       N_ ("Twice the distance from the root to the tip, seen from above."),
                       shape_source, GW_USE_WINGS },
  [GW_RESULT_ASPECT_RATIO] = { N_ ("How slender the main wing is."), N_ ("Span squared over area."),
                               N_ ("Definition."), GW_USE_WINGS },
  [GW_RESULT_MEAN_CHORD] = { N_ ("The mean aerodynamic chord of the main wing; places along the "
                                 "chord are counted on it."),
                             N_ ("2 / S times the integral of the chord squared over the "
                                 "semispan."),
                             N_ ("Definition of the mean aerodynamic chord."), GW_USE_WINGS },
  [GW_RESULT_WETTED_AREA] = { N_ ("The area that the air touches: all surfaces and bodies."),
                              N_ ("The outlines of the sections along the lofted panels; "
                                  "superelliptic cross-sections, straight between them, for "
                                  "bodies."),
                              shape_source, GW_USE_WINGS | GW_USE_TAILS | GW_USE_BODIES },
  [GW_RESULT_LIFT_SLOPE] = { N_ ("How fast the lift coefficient of the aircraft grows with its "
                                 "angle."),
                             N_ ("The lift slopes of all surfaces at the stall speed, times area, "
                                 "less the downwash, over the wing area."),
                             neutral_source, USE_STALL },
  [GW_RESULT_TAIL_VOLUME] = { N_ ("Area and arm of the surface that trims, against wing area and "
                                  "mean chord."),
                              N_ ("Its area times the distance between its aerodynamic centre and "
                                  "the wing's, over wing area times mean chord."),
                              volume_source, USE_STALL },
  [GW_RESULT_FIN_VOLUME] = { N_ ("Area and arm of the fins, against wing area and span."),
                             N_ ("The area of each fin times the distance of its quarter mean "
                                 "chord behind the wing's aerodynamic centre, over wing area times "
                                 "span."),
                             volume_source, USE_STALL },
  [GW_RESULT_DENSITY] = { N_ ("The density of the air at the field on that day."),
                          N_ ("The pressure reduced to sea level, carried up to the field by the "
                              "standard lapse; density of moist air from temperature and "
                              "humidity."),
                          air_source, GW_USE_DAY },
  [GW_RESULT_DENSITY_ALTITUDE] = { N_ ("The height at which standard air is as thin as the air of "
                                       "that day."),
                                   N_ ("The density of the day, looked up in standard air."),
                                   air_source, GW_USE_DAY },
};

const GwDerivationMethod *
_gw_derivation_method (GwResultId id)
{
  g_return_val_if_fail (id < GW_N_RESULTS, NULL);

  return &methods[id];
}
