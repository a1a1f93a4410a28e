/* gw-fresh-surfaces.c - surfaces sized by the wing
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-fresh-private.h"

/* All of these common practice, no source. */
#define TAIL_VOLUME     0.5  /* area x arm over wing area x mean chord */
#define FIN_VOLUME      0.04 /* area x arm over wing area x span */
#define CANARD_SHARE    0.15 /* of the wing area */
#define CANARD_ARM      2.0  /* mean chords */
#define SECOND_SHARE    0.9  /* of span and chord of the first wing */
#define SECOND_GAP      1.0  /* mean chords */
#define V_ANGLE         (38.0 * G_PI / 180.0)
#define TAIL_RATIO      4.0 /* aspect ratio */
#define FIN_RATIO       1.5 /* height^2 over area */
#define TAIL_TAPER      0.8
#define FIN_TAPER       0.6
#define SHORTEST_ARM    1.5 /* mean chords */
#define LONGEST_ARM     4.0
#define ARM_OF_BODY     0.85 /* of what there is of it behind the wing */
#define CONTROL_CHORD   40   /* [%] */
#define THROW           22   /* [deg] */
#define SECTION_OF_TAIL "flat-plate-4"

/* A straight-tapered half, from its root. */
typedef struct
{
  double span; /* along the surface */
  double root, tip;
  double rise; /* angle above the horizontal */
} Half;

static Half
half_of (double area,
         double ratio,
         double taper)
{
  const double span = sqrt (ratio * area);
  const double root = 2.0 * area / (span * (1.0 + taper));

  return (Half){ .span = 0.5 * span, .root = root, .tip = taper * root };
}

static double
tail_arm (const GwFreshFrame *frame)
{
  const double mac = frame->shape->mac;

  return CLAMP (ARM_OF_BODY * (frame->tail_x - frame->quarter_x), SHORTEST_ARM * mac,
                LONGEST_ARM * mac);
}

/* Of a surface that is there already, or what is usual. */
static const char *
section_of (const GwFreshFrame *frame,
            gboolean            is_wing)
{
  for (guint i = 0; i < frame->study->surfaces->len; i++)
    {
      const GwStudySurface *surface = g_ptr_array_index (frame->study->surfaces, i);
      const GwStudyStation *root = g_ptr_array_index (surface->stations, 0);

      if (is_wing ? surface == _gw_fresh_study_wing (frame)
                  : surface->role != GW_ROLE_WING && surface->role != GW_ROLE_SECOND_WING)
        return root->section;
    }

  return SECTION_OF_TAIL;
}

static guint
count_of (const GwFreshFrame *frame,
          GwRole              role)
{
  guint n = 0;

  for (guint i = 0; i < frame->study->surfaces->len; i++)
    n += ((GwStudySurface *) g_ptr_array_index (frame->study->surfaces, i))->role == (int) role;
  return n;
}

static void
add_stations (JsonObject *surface,
              const Half *half,
              const char *section)
{
  JsonArray  *stations = json_array_new ();
  JsonObject *root = json_object_new (), *tip = json_object_new ();

  _gw_fresh_put (root, "chord_mm", half->root);
  json_object_set_string_member (root, "section", section);
  _gw_fresh_put (tip, "x_mm", 0.5 * (half->root - half->tip));
  _gw_fresh_put (tip, "y_mm", half->span * cos (half->rise));
  _gw_fresh_put (tip, "z_mm", half->span * sin (half->rise));
  _gw_fresh_put (tip, "chord_mm", half->tip);
  json_array_add_object_element (stations, root);
  json_array_add_object_element (stations, tip);
  json_object_set_array_member (surface, "stations", stations);
}

/* Over nearly all of the span, with throws that sports models have. */
static void
add_control (JsonObject   *surface,
             const Half   *half,
             GwControlKind kind)
{
  const GwField *field = gw_record_type_field (gw_study_control_type (), "kind");
  const char    *word = field->choices[kind].key;
  JsonObject    *control = _gw_fresh_named (word, NULL);
  JsonArray     *controls = json_array_new ();

  json_object_set_string_member (control, "kind", word);
  _gw_fresh_put (control, "from_mm", 0.03 * half->span);
  _gw_fresh_put (control, "to_mm", 0.97 * half->span);
  json_object_set_int_member (control, "chord_percent", CONTROL_CHORD);
  json_object_set_int_member (control, "up_deg", THROW);
  json_object_set_int_member (control, "down_deg", THROW);
  json_array_add_object_element (controls, control);
  json_object_set_array_member (surface, "controls", controls);
}

/* Its quarter chord at @x; one more of its role stands above what there is. */
static JsonObject *
surface_at (const GwFreshFrame *frame,
            const char         *id,
            const char         *name,
            GwRole              role,
            const Half         *half,
            double              x,
            double              z)
{
  const GwField *field = gw_record_type_field (gw_study_surface_type (), "role");
  JsonObject    *surface = _gw_fresh_named (id, name);

  json_object_set_string_member (surface, "role", field->choices[role].key);
  _gw_fresh_put (surface, "x_mm", x - 0.25 * half->root);
  _gw_fresh_put (surface, "z_mm", z + count_of (frame, role) * half->root);
  add_stations (surface, half, section_of (frame, role == GW_ROLE_SECOND_WING));
  return surface;
}

JsonObject *
_gw_fresh_wing (const GwFreshFrame *frame)
{
  const GwSurfaceShape *shape = frame->shape;
  const double          chord = SECOND_SHARE * shape->projected_area / shape->span;
  const Half            half = { 0.5 * SECOND_SHARE * shape->span, chord, chord, 0.0 };

  return surface_at (frame, "second-wing", _ ("Second wing"), GW_ROLE_SECOND_WING, &half,
                     frame->quarter_x, frame->wing->stations[0].at[2] + SECOND_GAP * shape->mac);
}

static double
tail_area (const GwFreshFrame *frame)
{
  return TAIL_VOLUME * frame->results.geometry.area * frame->shape->mac / tail_arm (frame);
}

JsonObject *
_gw_fresh_tailplane (const GwFreshFrame *frame)
{
  const Half  half = half_of (tail_area (frame), TAIL_RATIO, TAIL_TAPER);
  JsonObject *surface;

  surface = surface_at (frame, "tailplane", _ ("Tailplane"), GW_ROLE_TAILPLANE, &half,
                        frame->quarter_x + tail_arm (frame), frame->tail_z);
  add_control (surface, &half, GW_CONTROL_ELEVATOR);
  return surface;
}

/* Acts in pitch by the squared cosine of its angle (Purser & Campbell, NACA Report 823, 1945). */
JsonObject *
_gw_fresh_v_tail (const GwFreshFrame *frame)
{
  const double area = tail_area (frame) / (cos (V_ANGLE) * cos (V_ANGLE));
  Half         half = half_of (area, TAIL_RATIO, TAIL_TAPER);
  JsonObject  *surface;

  half.rise = V_ANGLE;
  surface = surface_at (frame, "v-tail", _ ("V-tail"), GW_ROLE_V_TAIL, &half,
                        frame->quarter_x + tail_arm (frame), frame->tail_z);
  add_control (surface, &half, GW_CONTROL_RUDDERVATOR);
  return surface;
}

JsonObject *
_gw_fresh_canard (const GwFreshFrame *frame)
{
  const double area = CANARD_SHARE * frame->results.geometry.area;
  const Half   half = half_of (area, TAIL_RATIO, TAIL_TAPER);
  JsonObject  *surface;

  surface = surface_at (frame, "canard", _ ("Canard"), GW_ROLE_CANARD, &half,
                        frame->quarter_x - CANARD_ARM * frame->shape->mac, frame->tail_z);
  add_control (surface, &half, GW_CONTROL_ELEVATOR);
  return surface;
}

JsonObject *
_gw_fresh_fin (const GwFreshFrame *frame)
{
  const double area =
    FIN_VOLUME * frame->results.geometry.area * frame->shape->span / tail_arm (frame);
  Half        half = half_of (2.0 * area, 2.0 * FIN_RATIO, FIN_TAPER);
  JsonObject *fin;

  half.rise = G_PI_2;
  fin = surface_at (frame, "fin", _ ("Fin"), GW_ROLE_FIN, &half,
                    frame->quarter_x + tail_arm (frame), frame->tail_z);
  add_control (fin, &half, GW_CONTROL_RUDDER);
  json_object_set_boolean_member (fin, "mirrored", FALSE);
  return fin;
}
