/* gw-template-scale.c - a study stretched to another size
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "study/gw-template-private.h"

typedef enum
{
  BY_SPAN,
  BY_BODY, /* along a body: sqrt (span chord) */
  BY_MASS,
  BY_SIZE,    /* of what is carried, and across a body: cbrt (mass) */
  BY_DISC,    /* of a propeller, and of what keeps it off the ground: sqrt (mass) */
  BY_SPAR,    /* cbrt (mass span) */
  BY_CHANNEL, /* a spar's cross-section */
  BY_SPEED,   /* sqrt (mass / (span chord)) */
  BY_TAIL,    /* of a tailplane: its volume stays, S l / (S_wing chord) */
  BY_FIN,     /* of a fin: S l / (S_wing span) stays */
  N_FACTORS,
  BY_SURFACE = N_FACTORS, /* span, tail or fin, as the surface it belongs to is one */
  BY_CHORD,               /* likewise, a wing's by its chord */
  BY_SWEEP,               /* leading edge of a station: a wing keeps its quarter-chord sweep */
  BY_PLACE,               /* along the aircraft: with the wing where it is beside it */
} Factor;

typedef struct
{
  const char *record, *key;
  Factor      by;
  const char *side; /* BY_PLACE: key of the place to starboard */
} Rule;

/* What is not named stays: angles, percents, thicknesses and mass by length or area, as
 * the material is sold. */
static const Rule rules[] = {
  { "station", "y_mm", BY_SURFACE },
  { "station", "x_mm", BY_SWEEP },
  { "station", "z_mm", BY_SURFACE },
  { "station", "chord_mm", BY_CHORD },
  { "control", "from_mm", BY_SURFACE },
  { "control", "to_mm", BY_SURFACE },
  { "control", "linkage_g", BY_MASS },
  { "surface", "x_mm", BY_PLACE, "y_mm" },
  { "surface", "y_mm", BY_SPAN },
  { "surface", "z_mm", BY_SIZE },
  { "spar", "width_mm", BY_SPAR },
  { "spar", "height_mm", BY_SPAR },
  { "spar", "wall_mm", BY_SPAR },
  { "spar", "web_mm", BY_SPAR },
  { "spar", "from_mm", BY_SURFACE },
  { "spar", "to_mm", BY_SURFACE },
  { "hot_wired_core", "channel_mm2", BY_CHANNEL },
  { "body", "y_mm", BY_SPAN },
  { "body_station", "x_mm", BY_PLACE },
  { "body_station", "z_mm", BY_SIZE },
  { "body_station", "width_mm", BY_SIZE },
  { "body_station", "height_mm", BY_SIZE },
  { "leg", "top_x_mm", BY_PLACE },
  { "leg", "top_y_mm", BY_SIZE },
  { "leg", "top_z_mm", BY_SIZE },
  { "leg", "axle_x_mm", BY_PLACE },
  { "leg", "axle_y_mm", BY_SPAN },
  { "leg", "axle_z_mm", BY_DISC },
  { "leg", "mass_g", BY_MASS },
  { "leg", "wheel_mass_g", BY_MASS },
  { "leg", "wheel_diameter_mm", BY_DISC },
  { "leg", "wheel_width_mm", BY_DISC },
  { "power", "x_mm", BY_PLACE, "y_mm" },
  { "power", "y_mm", BY_SPAN },
  { "power", "z_mm", BY_SIZE },
  { "power", "mass_g", BY_MASS },
  { "power", "diameter_mm", BY_SIZE },
  { "power", "length_mm", BY_SIZE },
  { "power", "propeller_x_mm", BY_PLACE, "y_mm" },
  { "power", "propeller_mass_g", BY_MASS },
  { "power", "propeller_diameter_mm", BY_DISC },
  { "power", "propeller_pitch_mm", BY_DISC },
  { "power", "controller_mass_g", BY_MASS },
  { "power", "controller_x_mm", BY_PLACE, "y_mm" },
  { "power", "controller_z_mm", BY_SIZE },
  { "item", "mass_g", BY_MASS },
  { "item", "x_mm", BY_PLACE, "y_mm" },
  { "item", "y_mm", BY_SPAN },
  { "item", "z_mm", BY_SIZE },
  { "item", "length_mm", BY_SIZE },
  { "item", "width_mm", BY_SIZE },
  { "item", "height_mm", BY_SIZE },
  { "item", "bay_from_mm", BY_PLACE, "y_mm" },
  { "item", "bay_to_mm", BY_PLACE, "y_mm" },
  { "item", "lead_x_mm", BY_PLACE, "lead_y_mm" },
  { "item", "lead_y_mm", BY_SPAN },
  { "item", "lead_z_mm", BY_SIZE },
  { "targets", "mass_g", BY_MASS },
  { "targets", "stall_speed_m_s", BY_SPEED },
};

typedef struct
{
  const GwStudy        *from;
  GwStudy              *to;
  const GwStudySurface *wing; /* of the former */
  double                factors[N_FACTORS];
  double                chord; /* factor */
} Scaling;

const GwStudySurface *
_gw_template_wing (const GwStudy *study)
{
  for (guint i = 0; i < study->surfaces->len; i++)
    {
      const GwStudySurface *surface = g_ptr_array_index (study->surfaces, i);

      if (surface->role == GW_ROLE_WING)
        return surface;
    }

  return NULL;
}

static const Rule *
find_rule (const char *record,
           const char *key)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (strcmp (rules[i].record, record) == 0 && strcmp (rules[i].key, key) == 0)
      return &rules[i];

  return NULL;
}

/* Readable, and finer than anyone cuts or weighs. */
static double
rounded (double value)
{
  const double steps = fabs (value) < 10.0 ? 100.0 : 10.0;

  return round (value * steps) / steps;
}

static void
multiply (GwNumber *number,
          double    factor)
{
  switch (number->form)
    {
    case GW_FORM_SPREAD:
      gw_number_set_spread (number, rounded (number->value * factor),
                            rounded (number->spread * factor));
      break;
    case GW_FORM_RANGE:
      gw_number_set_range (number, rounded (number->low * factor),
                           rounded (number->value * factor), rounded (number->high * factor));
      break;
    case GW_FORM_PLAIN:
    default:
      gw_number_set (number, rounded (number->value * factor));
    }
}

/* Chord and leading edge of the wing as it was, aft of its root, at @y to either side. */
static void
wing_at (const GwStudySurface *wing,
         double                y,
         double               *chord,
         double               *leading)
{
  const GwStudyStation *inner = g_ptr_array_index (wing->stations, 0), *outer = inner;
  double                part;

  for (guint i = 1; i < wing->stations->len && outer->y_mm.value < fabs (y); i++)
    {
      inner = outer;
      outer = g_ptr_array_index (wing->stations, i);
    }

  part = outer->y_mm.value > inner->y_mm.value
           ? fmin ((fabs (y) - inner->y_mm.value) / (outer->y_mm.value - inner->y_mm.value), 1.0)
           : 0.0;
  *chord = inner->chord_mm.value + part * (outer->chord_mm.value - inner->chord_mm.value);
  *leading = inner->x_mm.value + part * (outer->x_mm.value - inner->x_mm.value);
}

/* Leading edge behind the root's where both chords change and the quarter-chord line keeps
 * its angle. */
static double
swept (const Scaling        *scaling,
       const GwStudySurface *surface,
       double                chord,
       double                leading)
{
  const GwStudyStation *root = g_ptr_array_index (surface->stations, 0);
  const double          behind = 0.25 * (root->chord_mm.value - chord);

  return scaling->chord * behind + scaling->factors[BY_SPAN] * (leading - behind);
}

/* Ahead of the wing and behind it lengths go with the body, beside it with the chord. */
static double
placed (const Scaling *scaling,
        double         x,
        double         y)
{
  const double body = scaling->factors[BY_BODY];
  const double wing = scaling->wing->x_mm.value;
  double       chord, leading, behind;

  wing_at (scaling->wing, y, &chord, &leading);
  behind = x - wing - leading;
  leading = swept (scaling, scaling->wing, chord, leading);
  return body * wing + leading + body * fmin (behind, 0.0) +
         scaling->chord * CLAMP (behind, 0.0, chord) + body * fmax (behind - chord, 0.0);
}

static double
side_of (GwRecord   *record,
         const Rule *rule)
{
  const GwField *field =
    rule->side != NULL ? gw_record_type_field (record->type, rule->side) : NULL;

  return field != NULL ? ((GwNumber *) gw_record_at (record, field))->value : 0.0;
}

/* The surface that a field lies in or, for a spar, is meant for. */
static const GwStudySurface *
surface_of (const Scaling *scaling,
            const char    *path,
            GwRecord      *record)
{
  g_auto (GStrv) words = g_strsplit (path, "/", 3);
  const char *id = words[1];

  if (record->type == gw_study_spar_type ())
    id = ((GwStudySpar *) record)->surface;
  return (GwStudySurface *) gw_list_find (scaling->from->surfaces, id);
}

/* A field of a surface or of what is built into one. */
static void
scale_in_surface (const Scaling *scaling,
                  const char    *path,
                  GwRecord      *record,
                  Factor         by,
                  GwNumber      *number)
{
  const GwStudySurface *surface = surface_of (scaling, path, record);
  const gboolean        is_wing =
    surface->role == GW_ROLE_WING || surface->role == GW_ROLE_SECOND_WING;

  if (by == BY_SWEEP && is_wing)
    gw_number_set (number, rounded (swept (scaling, surface,
                                           ((GwStudyStation *) record)->chord_mm.value,
                                           number->value)));
  else if (is_wing)
    multiply (number, by == BY_CHORD ? scaling->chord : scaling->factors[BY_SPAN]);
  else
    multiply (number, scaling->factors[surface->role == GW_ROLE_FIN ? BY_FIN : BY_TAIL]);
}

static void
scale_field (const char    *path,
             GwRecord      *record,
             const GwField *field,
             gpointer       data)
{
  const Scaling *scaling = data;
  const Rule    *rule = find_rule (record->type->name, field->key);
  const GwField *same;
  GwNumber      *number;

  if (rule == NULL || !gw_record_has (record, field))
    return;

  number = gw_record_at (gw_record_find (&scaling->to->record, path, &same), field);
  if (rule->by < N_FACTORS)
    multiply (number, scaling->factors[rule->by]);
  else if (rule->by == BY_PLACE)
    gw_number_set (number, rounded (placed (scaling, number->value, side_of (record, rule))));
  else
    scale_in_surface (scaling, path, record, rule->by, number);
}

GwStudy *
_gw_template_scale (const GwStudy *study,
                    double         span,
                    double         chord,
                    double         mass)
{
  GwStudy *scaled = gw_study_copy (study);
  Scaling  scaling = {
     .from = study,
     .to = scaled,
     .wing = _gw_template_wing (study),
     .chord = chord,
     .factors = {
       [BY_SPAN] = span,
       [BY_BODY] = sqrt (span * chord),
       [BY_MASS] = mass,
       [BY_SIZE] = cbrt (mass),
       [BY_DISC] = sqrt (mass),
       [BY_SPAR] = cbrt (mass * span),
       [BY_CHANNEL] = pow (mass * span, 2.0 / 3.0),
       [BY_SPEED] = sqrt (mass / (span * chord)),
       /* Roots of the factors of areas: s c c / sqrt (s c) and s c s / sqrt (s c), the arm
       * growing as the body. */
       [BY_TAIL] = pow (span, 0.25) * pow (chord, 0.75),
       [BY_FIN] = pow (span, 0.75) * pow (chord, 0.25),
    },
  };

  gw_record_each ((GwRecord *) &study->record, "", scale_field, &scaling);
  return scaled;
}
