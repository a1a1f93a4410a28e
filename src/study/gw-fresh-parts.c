/* gw-fresh-parts.c - all that is no surface
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-catalogue.h"
#include "study/gw-fresh-private.h"
#include "study/gw-json.h"
#include "study/gw-record-json.h"

/* All of these common practice, no source. */
#define SPREAD           0.25 /* of a guessed mass */
#define ITEM_MASS        0.020
#define BODY_LENGTH      1.5   /* mean chords, of a pod under the wing */
#define BODY_WIDTH       0.25  /* mean chords */
#define STRUT_PLACE      0.4   /* of the half span */
#define STRUT_LINEAR     0.030 /* [kg/m], an aluminium or carbon tube with its ends */
#define STRUT_DIAMETER   0.005
#define LEG_TRACK        0.1   /* of the span, each side */
#define LEG_HEIGHT       0.5   /* mean chords below the body */
#define WHEEL_DIAMETER   0.28  /* mean chords */
#define LEG_SHARE        0.012 /* of the mass, one leg */
#define WHEEL_SHARE      0.008
#define MOTOR_SHARE      0.07 /* of the mass */
#define CONTROLLER_SHARE 0.02
#define PROPELLER_SHARE  0.015
#define PROPELLER_SPAN   0.2 /* of the span */
#define POWER_PLACE      0.3 /* of the half span, where the nose is taken */
#define SPAR_REACH       0.6 /* of the half span */
#define SPAR_DEPTH       0.6 /* of the depth of the wing there */
#define SPAR_PLACE       0.3 /* of the chord */
#define WALL             0.001
#define SKIN             "foam-board-light"
#define TUBE             "carbon-pultruded"
#define BLOCK            "eps-19"
#define SHEET            "xps-sheet-6"
#define OWN_MATERIAL     "foam-board"
#define OWN_SECTION      "naca-2412"

JsonObject *
_gw_fresh_named (const char *id,
                 const char *name)
{
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "id", id);
  if (name != NULL)
    json_object_set_string_member (object, "name", name);
  return object;
}

void
_gw_fresh_put (JsonObject *object,
               const char *key,
               double      metres)
{
  json_object_set_int_member (object, key, (gint64) round (metres * 1e3));
}

void
_gw_fresh_guess (JsonObject *object,
                 const char *key,
                 double      mass)
{
  JsonObject  *guess = json_object_new ();
  const double tenths = MAX (round (mass * 1e4), 1.0);

  json_object_set_double_member (guess, "value", tenths / 10.0);
  json_object_set_double_member (guess, "spread", MAX (round (SPREAD * tenths), 1.0) / 10.0);
  json_object_set_string_member (guess, "origin", gw_origin_key (GW_ORIGIN_GUESSED));
  json_object_set_object_member (object, key, guess);
}

static double
mass_of (const GwFreshFrame *frame)
{
  return frame->results.balance.mass;
}

/* A place on the wing's leading edge at that part of its half span. */
static void
leading_edge (const GwFreshFrame *frame,
              double              part,
              double              out[3])
{
  const double arc = part * gw_surface_arc (frame->wing, frame->wing->n_stations - 1);
  GwSlice      slice;

  gw_surface_slice (frame->wing, arc, &slice);
  for (int i = 0; i < 3; i++)
    out[i] = slice.at[i];
}

JsonObject *
_gw_fresh_item (const GwFreshFrame *frame)
{
  JsonObject *item = _gw_fresh_named ("equipment", _ ("New equipment"));

  _gw_fresh_guess (item, "mass_g", ITEM_MASS);
  _gw_fresh_put (item, "x_mm", frame->results.balance.centre[0]);
  _gw_fresh_put (item, "z_mm", frame->results.balance.centre[2]);
  return item;
}

/* The fuselage if there is none, else a pod under the wing. */
JsonObject *
_gw_fresh_body (const GwFreshFrame *frame)
{
  static const double places[] = { 0.0, 0.2, 0.6, 1.0 }, widths[] = { 0.4, 1.0, 1.0, 0.2 };
  const gboolean      is_first = frame->study->bodies->len == 0;
  const double        width = BODY_WIDTH * frame->shape->mac;
  const double        from = is_first ? frame->nose_x : frame->shape->root_x;
  const double        length = is_first ? frame->tail_x - from : BODY_LENGTH * frame->shape->mac;
  JsonObject         *body = is_first ? _gw_fresh_named ("fuselage", _ ("Fuselage"))
                                      : _gw_fresh_named ("pod", _ ("Pod"));
  JsonArray          *stations = json_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      JsonObject *station = json_object_new ();

      _gw_fresh_put (station, "x_mm", from + places[i] * length);
      _gw_fresh_put (station, "z_mm", frame->bottom - 0.5 * width);
      _gw_fresh_put (station, "width_mm", widths[i] * width);
      _gw_fresh_put (station, "height_mm", widths[i] * width);
      json_array_add_object_element (stations, station);
    }
  json_object_set_array_member (body, "stations", stations);
  json_object_set_string_member (body, "material", SKIN);
  json_object_set_int_member (body, "extra_percent", 50);
  return body;
}

/* From the side of the body up to the wing. */
JsonObject *
_gw_fresh_strut (const GwFreshFrame *frame)
{
  const double quarter = 0.25 * frame->shape->root_chord;
  double       to[3], length;
  const double from[] = { frame->shape->root_x + quarter, frame->half_width, frame->bottom };
  JsonObject  *strut = _gw_fresh_named ("strut", _ ("Wing strut"));

  leading_edge (frame, STRUT_PLACE, to);
  to[0] += quarter;
  length = hypot (hypot (to[0] - from[0], to[1] - from[1]), to[2] - from[2]);
  _gw_fresh_put (strut, "from_x_mm", from[0]);
  _gw_fresh_put (strut, "from_y_mm", from[1]);
  _gw_fresh_put (strut, "from_z_mm", from[2]);
  _gw_fresh_put (strut, "to_x_mm", to[0]);
  _gw_fresh_put (strut, "to_y_mm", to[1]);
  _gw_fresh_put (strut, "to_z_mm", to[2]);
  _gw_fresh_put (strut, "diameter_mm", STRUT_DIAMETER);
  _gw_fresh_guess (strut, "mass_g", length * STRUT_LINEAR);
  return strut;
}

/* A pair under the wing; once there are legs, one at the tail. */
JsonObject *
_gw_fresh_leg (const GwFreshFrame *frame)
{
  const gboolean is_main = frame->study->legs->len == 0;
  const double   part = is_main ? 1.0 : 0.3;
  const double   x = is_main ? frame->shape->root_x : frame->tail_x;
  const double   y = is_main ? frame->half_width : 0.0;
  const double   z = is_main ? frame->bottom : frame->tail_z;
  JsonObject    *leg = is_main ? _gw_fresh_named ("main", _ ("Main wheel"))
                               : _gw_fresh_named ("tail", _ ("Tail wheel"));

  if (is_main)
    json_object_set_boolean_member (leg, "mirrored", TRUE);
  _gw_fresh_put (leg, "top_x_mm", x);
  _gw_fresh_put (leg, "top_y_mm", y);
  _gw_fresh_put (leg, "top_z_mm", z);
  _gw_fresh_put (leg, "axle_x_mm", x);
  _gw_fresh_put (leg, "axle_y_mm", y + (is_main ? LEG_TRACK * frame->shape->span : 0.0));
  _gw_fresh_put (leg, "axle_z_mm", z - part * LEG_HEIGHT * frame->shape->mac);
  _gw_fresh_guess (leg, "mass_g", part * LEG_SHARE * mass_of (frame));
  _gw_fresh_guess (leg, "wheel_mass_g", part * WHEEL_SHARE * mass_of (frame));
  _gw_fresh_put (leg, "wheel_diameter_mm", part * WHEEL_DIAMETER * frame->shape->mac);
  _gw_fresh_put (leg, "wheel_width_mm", 0.3 * part * WHEEL_DIAMETER * frame->shape->mac);
  return leg;
}

static const char *
battery_of (const GwStudy *study)
{
  for (guint i = 0; i < study->equipment->len; i++)
    {
      const GwStudyItem *item = g_ptr_array_index (study->equipment, i);

      if (item->kind == GW_ITEM_BATTERY)
        return item->id;
    }

  return NULL;
}

/* In the nose; once there is one, a pair on the wing. */
JsonObject *
_gw_fresh_power (const GwFreshFrame *frame)
{
  const gboolean is_pair = frame->study->powers->len > 0;
  const double   part = is_pair ? 0.5 : 1.0;
  double         at[] = { frame->nose_x, 0.0, frame->results.balance.centre[2] };
  JsonObject    *power = _gw_fresh_named ("motor", is_pair ? _ ("Motor on the wing") : _ ("Motor"));

  if (is_pair)
    {
      leading_edge (frame, POWER_PLACE, at);
      json_object_set_boolean_member (power, "mirrored", TRUE);
    }
  _gw_fresh_put (power, "x_mm", at[0]);
  _gw_fresh_put (power, "y_mm", at[1]);
  _gw_fresh_put (power, "z_mm", at[2]);
  _gw_fresh_guess (power, "mass_g", part * MOTOR_SHARE * mass_of (frame));
  _gw_fresh_put (power, "propeller_x_mm", at[0] - 0.03);
  _gw_fresh_guess (power, "propeller_mass_g", part * PROPELLER_SHARE * mass_of (frame));
  _gw_fresh_put (power, "propeller_diameter_mm",
                 CLAMP (sqrt (part) * PROPELLER_SPAN * frame->shape->span, 0.05, 1.0));
  _gw_fresh_put (power, "propeller_pitch_mm",
                 0.5 * CLAMP (sqrt (part) * PROPELLER_SPAN * frame->shape->span, 0.05, 1.0));
  _gw_fresh_guess (power, "controller_mass_g", part * CONTROLLER_SHARE * mass_of (frame));
  _gw_fresh_put (power, "controller_x_mm", at[0] + 0.06);
  _gw_fresh_put (power, "controller_z_mm", at[2]);
  if (battery_of (frame->study) != NULL)
    json_object_set_string_member (power, "battery", battery_of (frame->study));
  return power;
}

/* A carbon tube in the wing that fits where it ends. */
JsonObject *
_gw_fresh_spar (const GwFreshFrame *frame)
{
  const double reach = SPAR_REACH * gw_surface_arc (frame->wing, frame->wing->n_stations - 1);
  JsonObject  *spar = _gw_fresh_named ("spar", NULL);
  GwSlice      slice;
  double       depth;

  gw_surface_slice (frame->wing, reach, &slice);
  depth = slice.chord * (gw_slice_height (&slice, SPAR_PLACE, true) -
                         gw_slice_height (&slice, SPAR_PLACE, false));
  json_object_set_string_member (spar, "surface", _gw_fresh_study_wing (frame)->id);
  json_object_set_string_member (spar, "shape", "tube");
  json_object_set_string_member (spar, "material", TUBE);
  _gw_fresh_put (spar, "width_mm", CLAMP (SPAR_DEPTH * depth, 3e-3, 20e-3));
  _gw_fresh_put (spar, "wall_mm", WALL);
  json_object_set_int_member (spar, "place_percent", (gint64) (100.0 * SPAR_PLACE));
  _gw_fresh_put (spar, "to_mm", reach);
  return spar;
}

static JsonObject *
core_build (const char *surface,
            const char *material)
{
  JsonObject *build = json_object_new (), *core = json_object_new ();

  json_object_set_string_member (build, "surface", surface);
  json_object_set_string_member (build, "construction", "hot-wired-core");
  json_object_set_string_member (core, "material", material);
  json_object_set_object_member (build, "hot_wired_core", core);
  return build;
}

JsonObject *
_gw_fresh_sheet_build (const char *surface)
{
  JsonObject *build = core_build (surface, SHEET);

  json_object_set_int_member (build, "joint_g_m", 0);
  return build;
}

/* For the first surface without a common one; it holds where an option says nothing. */
JsonObject *
_gw_fresh_build (const GwFreshFrame *frame)
{
  const char *surface = _gw_fresh_study_wing (frame)->id;

  for (guint i = 0; i < frame->study->surfaces->len; i++)
    {
      const char *id = ((GwStudySurface *) g_ptr_array_index (frame->study->surfaces, i))->id;
      gboolean    is_built = FALSE;

      for (guint k = 0; k < frame->study->builds->len; k++)
        is_built =
          is_built ||
          g_strcmp0 (((GwStudyBuild *) g_ptr_array_index (frame->study->builds, k))->surface, id) ==
            0;
      if (!is_built)
        {
          surface = id;
          break;
        }
    }

  return core_build (surface, BLOCK);
}

/* A copy from the catalogue under a name of its own. */
static JsonObject *
copy_of (const char *list,
         const char *id,
         const char *fresh_id,
         const char *name)
{
  const GwRecord *record = gw_list_find (gw_catalogue_list (list), id);
  g_autoptr (GString) text = g_string_new (NULL);
  JsonObject *object;

  gw_record_write (record, text, 0);
  object = gw_json_parse (text->str, text->len, NULL);
  json_object_set_string_member (object, "id", fresh_id);
  json_object_set_string_member (object, "name", name);
  return object;
}

JsonObject *
_gw_fresh_material (const GwFreshFrame *frame)
{
  return copy_of ("materials", OWN_MATERIAL, "own-material", _ ("Own material"));
}

JsonObject *
_gw_fresh_section (const GwFreshFrame *frame)
{
  return copy_of ("sections", OWN_SECTION, "own-section", _ ("Own section"));
}
