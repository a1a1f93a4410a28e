/* gw-result.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-result.h"

#include <glib/gi18n-lib.h>

/* A new result is one enumerator in engine/gw-evaluate.h, one assignment in the
 * engine and one row here; summary, JSON and bands take it from here. */
static const GwResultInfo results[GW_N_RESULTS] = {
  [GW_RESULT_MASS] = { "mass", N_ ("all-up mass"), GW_G, 0, TRUE },
  [GW_RESULT_WING_MASS] = { "wing_mass", N_ ("wing mass"), GW_G, 0, TRUE },
  [GW_RESULT_WEIGHED_SHARE] = { "weighed", N_ ("weighed so far"), GW_PERCENT, 0, TRUE },
  [GW_RESULT_WING_LOADING] = { "wing_loading", N_ ("wing loading"), GW_G_DM2, 1, TRUE },
  [GW_RESULT_STALL_SPEED] = { "stall_speed", N_ ("stall speed"), GW_M_S, 2, TRUE },
  [GW_RESULT_CL_MAX] = { "cl_max", N_ ("greatest lift coefficient"), GW_RATIO, 2 },
  [GW_RESULT_STALL_PLACE] =
    { "stall_place", N_ ("stall begins, of semispan"), GW_PERCENT, 0 },
  [GW_RESULT_STALL_RE] = { "stall_reynolds", N_ ("Reynolds number there"), GW_RATIO, 0 },
  [GW_RESULT_TARGET_MASS] = { "target_mass", N_ ("mass at wanted stall speed"), GW_G, 0 },
  [GW_RESULT_BALANCE_X] = { "balance_datum", N_ ("balance point from the datum"), GW_MM, 1 },
  [GW_RESULT_BALANCE_ROOT] = { "balance_root", N_ ("balance point"), GW_MM, 0, TRUE },
  [GW_RESULT_BALANCE_MAC] =
    { "balance_chord", N_ ("balance point in the mean chord"), GW_PERCENT, 1 },
  [GW_RESULT_BALANCE_Y] = { "balance_side", N_ ("balance point to starboard"), GW_MM, 1 },
  [GW_RESULT_BALANCE_Z] = { "balance_height", N_ ("balance point height"), GW_MM, 1 },
  [GW_RESULT_NEUTRAL_POINT] = { "neutral_point", N_ ("neutral point from the datum"), GW_MM, 1 },
  [GW_RESULT_STATIC_MARGIN] = { "static_margin", N_ ("static margin"), GW_PERCENT, 0, TRUE },
  [GW_RESULT_AFT_LIMIT] = { "aft_limit", N_ ("aft limit from the datum"), GW_MM, 1 },
  [GW_RESULT_FORWARD_LIMIT] = { "forward_limit", N_ ("forward limit from the datum"), GW_MM, 1 },
  [GW_RESULT_SLIDE] = { "slide", N_ ("slide to balance"), GW_MM, 0, TRUE },
  [GW_RESULT_SLIDE_LEFT] = { "slide_beyond_bay", N_ ("of that beyond the bay"), GW_MM, 0 },
  [GW_RESULT_BALLAST] = { "ballast", N_ ("ballast needed"), GW_G, 0, TRUE },
  [GW_RESULT_TRAVEL_FORE] =
    { "balance_item_fore", N_ ("balance point, item at the fore end"), GW_MM, 1 },
  [GW_RESULT_TRAVEL_AFT] =
    { "balance_item_aft", N_ ("balance point, item at the aft end"), GW_MM, 1 },
  [GW_RESULT_IXX] = { "inertia_roll", N_ ("inertia in roll"), GW_KG_M2, 4 },
  [GW_RESULT_IYY] = { "inertia_pitch", N_ ("inertia in pitch"), GW_KG_M2, 4 },
  [GW_RESULT_IZZ] = { "inertia_yaw", N_ ("inertia in yaw"), GW_KG_M2, 4 },
  [GW_RESULT_IXZ] = { "inertia_product", N_ ("product of inertia"), GW_KG_M2, 4 },
  [GW_RESULT_WING_AREA] = { "wing_area", N_ ("wing area"), GW_M2, 3 },
  [GW_RESULT_SPAN] = { "span", N_ ("span"), GW_MM, 0 },
  [GW_RESULT_ASPECT_RATIO] = { "aspect_ratio", N_ ("aspect ratio"), GW_RATIO, 2 },
  [GW_RESULT_MEAN_CHORD] = { "mean_chord", N_ ("mean chord"), GW_MM, 1 },
  [GW_RESULT_WETTED_AREA] = { "wetted_area", N_ ("wetted area"), GW_M2, 3 },
  [GW_RESULT_LIFT_SLOPE] = { "lift_slope", N_ ("lift slope"), GW_PER_RAD, 2 },
  [GW_RESULT_TAIL_VOLUME] = { "tail_volume", N_ ("tail volume"), GW_RATIO, 2 },
  [GW_RESULT_FIN_VOLUME] = { "fin_volume", N_ ("fin volume"), GW_RATIO, 3 },
  [GW_RESULT_DENSITY] = { "air_density", N_ ("air density"), GW_KG_M3, 3 },
  [GW_RESULT_DENSITY_ALTITUDE] = { "density_altitude", N_ ("density altitude"), GW_M, 0 },
};

static const struct
{
  GwNote      note;
  const char *key;
  const char *text;
} notes[] = {
  { GW_NOTE_TIP_FIRST, "tip-first",
    N_ ("The wing lets go in its outer third first: it will drop a wing. Wash-out or a wider "
        "tip cures it.") },
  { GW_NOTE_AILERON_FIRST, "aileron-first",
    N_ ("The stall begins within the span of the ailerons.") },
  { GW_NOTE_SWEPT, "swept",
    N_ ("Swept or cranked wing: lifting line with the cosine correction, less sure than for a "
        "straight wing.") },
  { GW_NOTE_RE_OUTSIDE, "reynolds-outside",
    N_ ("Section data were asked beyond their range of Reynolds numbers; the end of the table "
        "was taken.") },
  { GW_NOTE_TAIL_LIMIT, "tail-limit",
    N_ ("The trimming surface, not the wing, sets the stall speed.") },
  { GW_NOTE_NO_TRIM_SURFACE, "tailless", N_ ("Tailless: trimmed by elevons.") },
  { GW_NOTE_UNSTABLE, "unstable",
    N_ ("Tail-heavy: the balance point lies behind the neutral point. Do not fly it like "
        "this.") },
  { GW_NOTE_BEHIND_AFT_LIMIT, "behind-aft-limit",
    N_ ("The balance point lies behind its aft limit.") },
  { GW_NOTE_AHEAD_OF_LIMIT, "ahead-of-forward-limit",
    N_ ("The balance point lies ahead of its forward limit: the elevator cannot bring the "
        "wing to its stall.") },
  { GW_NOTE_LATERAL, "lateral",
    N_ ("The balance point lies off the centre line; balance it laterally.") },
  { GW_NOTE_STALL_FAST, "stall-fast", N_ ("It stalls faster than wanted.") },
  { GW_NOTE_HEAVY, "heavy", N_ ("It is heavier than wanted.") },
  { GW_NOTE_BALLAST, "ballast", N_ ("The bay is too short to balance it; ballast is needed.") },
  { GW_NOTE_PROVISIONAL, "provisional",
    N_ ("A section of it is being computed; until then it is taken for the most like one that is "
        "known.") },
  { GW_NOTE_OUTSIDE_BAY, "outside-bay",
    N_ ("Equipment stands where its bay does not reach: move it, or lengthen the bay.") },
};

static const struct
{
  const char *key;
  const char *label;
} kinds[GW_N_PIECE_KINDS] = {
  [GW_PIECE_SKIN] = { "skin", N_ ("skin") },
  [GW_PIECE_CORE] = { "core", N_ ("core") },
  [GW_PIECE_RIB] = { "rib", N_ ("ribs, lattice") },
  [GW_PIECE_CLOSING] = { "closing", N_ ("closing layers") },
  [GW_PIECE_WEB] = { "web", N_ ("webs, strips") },
  [GW_PIECE_EDGE] = { "edge", N_ ("edge strips") },
  [GW_PIECE_SPAR] = { "spar", N_ ("spars") },
  [GW_PIECE_JOINT] = { "joint", N_ ("adhesive") },
  [GW_PIECE_HINGE] = { "hinge", N_ ("hinges") },
  [GW_PIECE_LINKAGE] = { "linkage", N_ ("linkages") },
  [GW_PIECE_FINISH] = { "finish", N_ ("finish") },
  [GW_PIECE_LEAD] = { "lead", N_ ("leads") },
  [GW_PIECE_BODY] = { "body", N_ ("bodies") },
  [GW_PIECE_STRUT] = { "strut", N_ ("struts") },
  [GW_PIECE_LEG] = { "leg", N_ ("legs") },
  [GW_PIECE_WHEEL] = { "wheel", N_ ("wheels") },
  [GW_PIECE_MOTOR] = { "motor", N_ ("motors") },
  [GW_PIECE_PROPELLER] = { "propeller", N_ ("propellers") },
  [GW_PIECE_CONTROLLER] = { "controller", N_ ("controllers") },
  [GW_PIECE_EQUIPMENT] = { "equipment", N_ ("equipment") },
};

const GwResultInfo *
gw_result_info (GwResultId id)
{
  g_return_val_if_fail (id < GW_N_RESULTS, NULL);

  return &results[id];
}

char *
gw_result_key (GwResultId id)
{
  const GwResultInfo *info = gw_result_info (id);

  return g_strconcat (info->key, gw_quantity_unit (info->quantity)->suffix, NULL);
}

double
gw_result_shown (GwResultId id,
                 double     value)
{
  return gw_quantity_from_si (gw_result_info (id)->quantity, value);
}

double
gw_result_shown_change (GwResultId id,
                        double     change)
{
  return change / gw_quantity_unit (gw_result_info (id)->quantity)->factor;
}

const char *
gw_note_text (GwNote note)
{
  for (guint i = 0; i < G_N_ELEMENTS (notes); i++)
    if (notes[i].note == note)
      return _ (notes[i].text);

  return NULL;
}

const char *
gw_note_key (GwNote note)
{
  for (guint i = 0; i < G_N_ELEMENTS (notes); i++)
    if (notes[i].note == note)
      return notes[i].key;

  return NULL;
}

const char *
gw_piece_kind_label (GwPieceKind kind)
{
  g_return_val_if_fail (kind < GW_N_PIECE_KINDS, NULL);

  return kinds[kind].label;
}

const char *
gw_piece_kind_key (GwPieceKind kind)
{
  g_return_val_if_fail (kind < GW_N_PIECE_KINDS, NULL);

  return kinds[kind].key;
}
