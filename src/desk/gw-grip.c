/* gw-grip.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-grip-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-edit-number.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-resolve.h"

#define LEAST_CHORD 5.0 /* [mm] */

void
gw_grip_clear (GwGrip *grip)
{
  g_clear_pointer (&grip->path, g_free);
  grip->kind = GW_GRIP_NONE;
}

void
gw_grip_copy (GwGrip       *to,
              const GwGrip *from)
{
  g_free (to->path);
  *to = *from;
  to->path = g_strdup (from->path);
}

static const GwOutcome *
shown_outcome (GwDocument *document)
{
  return gw_evaluation_outcome (gw_document_get_evaluation (document),
                                gw_document_get_shown (document));
}

/* As the option has it: its own changes and what is tried are in it. */
static GwStudy *
shown_study (GwDocument *document)
{
  return shown_outcome (document)->assembly->study;
}

static GwStudyItem *
item_at (GwDocument *document,
         const char *path)
{
  return g_str_has_prefix (path, "equipment/")
           ? (GwStudyItem *) gw_edit_record (shown_study (document), path)
           : NULL;
}

void
gw_grip_of_item (GwDocument *document,
                 const char *path,
                 GwView      view,
                 gboolean    is_image,
                 GwGrip     *out)
{
  const GwStudyItem *item = item_at (document, path);

  *out = (GwGrip){ .kind = GW_GRIP_NONE };
  if (item == NULL)
    return;

  *out = (GwGrip){ GW_GRIP_ITEM, view, is_image, g_strdup (path), 0.0, 0.0 };
  out->u = 1e-3 * (view == GW_VIEW_TOP ? (is_image ? -1.0 : 1.0) * item->y_mm.value
                                       : item->x_mm.value);
  out->v = 1e-3 * (view == GW_VIEW_TOP ? item->x_mm.value : -item->z_mm.value);
}

static void
add_grip (GArray     *grips,
          GwGripKind  kind,
          GwView      view,
          gboolean    is_image,
          const char *path,
          double      u,
          double      v)
{
  const GwGrip grip = { kind, view, is_image, g_strdup (path), u, v };

  g_array_append_val (grips, grip);
}

static void
add_balance (GArray          *grips,
             const GwOutcome *outcome)
{
  const double *value = outcome->results.value;

  if (outcome->assembly->aircraft.movable < 0)
    return;

  add_grip (grips, GW_GRIP_BALANCE, GW_VIEW_TOP, FALSE, "", 0.0, value[GW_RESULT_BALANCE_X]);
  add_grip (grips, GW_GRIP_BALANCE, GW_VIEW_SIDE, FALSE, "", value[GW_RESULT_BALANCE_X],
            -value[GW_RESULT_BALANCE_Z]);
}

/* A fin is shaped in the side view, all else from above. */
static void
add_stations (GArray          *grips,
              const GwOutcome *outcome,
              const char      *id)
{
  const GPtrArray *list = outcome->assembly->study->surfaces;
  guint            index;

  for (index = 0; index < list->len; index++)
    if (g_strcmp0 (gw_record_id (g_ptr_array_index (list, index)), id) == 0)
      break;
  if (index == list->len)
    return;

  for (size_t i = 0; i < outcome->assembly->aircraft.surfaces[index].n_stations; i++)
    {
      const GwSurface *surface = &outcome->assembly->aircraft.surfaces[index];
      const GwStation *station = &surface->stations[i];
      const double     tail = station->at[0] + station->chord * cos (station->twist);
      g_autofree char *path = g_strdup_printf ("surfaces/%s/stations/%u", id, (guint) i + 1);

      if (surface->role == GW_ROLE_FIN)
        {
          add_grip (grips, GW_GRIP_STATION, GW_VIEW_SIDE, FALSE, path, station->at[0],
                    -station->at[2]);
          add_grip (grips, GW_GRIP_CHORD, GW_VIEW_SIDE, FALSE, path, tail, -station->at[2]);
          continue;
        }
      for (int side = 1; side >= (surface->is_mirrored && station->at[1] != 0.0 ? -1 : 1);
           side -= 2)
        {
          add_grip (grips, GW_GRIP_STATION, GW_VIEW_TOP, side < 0, path, side * station->at[1],
                    station->at[0]);
          add_grip (grips, GW_GRIP_CHORD, GW_VIEW_TOP, side < 0, path, side * station->at[1],
                    tail);
        }
    }
}

static void
clear_grip (gpointer grip)
{
  gw_grip_clear (grip);
}

GArray *
gw_grips_of (GwDocument *document)
{
  GArray *grips = g_array_new (FALSE, FALSE, sizeof (GwGrip));

  g_array_set_clear_func (grips, clear_grip);
  if (gw_document_get_evaluation (document) != NULL)
    {
      const char *selection = gw_document_get_selection (document);
      g_auto (GStrv) steps = g_strsplit (selection, "/", -1);

      add_balance (grips, shown_outcome (document));
      if (steps[0] != NULL && g_str_equal (steps[0], "surfaces") && steps[1] != NULL)
        add_stations (grips, shown_outcome (document), steps[1]);
    }

  return grips;
}

gboolean
_gw_grip_set_field (GwGripMover    *mover,
                    const char     *path,
                    const char     *key,
                    const GwNumber *number,
                    double          value)
{
  g_autofree char *field = g_strdup_printf ("%s/%s", path, key);
  g_autoptr (JsonNode) node = gw_edit_number (number, GW_MM, value);
  GwStudy *edited;

  if (mover->study == NULL || value == number->value)
    return mover->study != NULL;

  edited = gw_edit_set (mover->study, gw_document_get_shown (mover->document),
                        gw_document_get_only_here (mover->document), field, node, mover->error);
  gw_study_unref (mover->study);
  mover->study = edited;
  return edited != NULL;
}

/* To whole steps, so that a drag leaves numbers a person would write [mm]. */
static double
rounded (double            metres,
         const GwGripMove *move)
{
  const double steps = 1e-3 / move->step; /* in a millimetre */

  return round (metres * 1e3 * steps) / steps;
}

static double
within (const GwStudyItem *item,
        double             x)
{
  if (isnan (item->bay_from_mm.value) || isnan (item->bay_to_mm.value))
    return x;

  return CLAMP (x, item->bay_from_mm.value, item->bay_to_mm.value);
}

static void
move_item (GwGripMover      *mover,
           const GwGrip     *grip,
           const GwGripMove *move)
{
  const GwStudyItem *item = item_at (mover->document, grip->path);
  const gboolean     has_bay = !isnan (item->bay_from_mm.value);
  const double       x = grip->view == GW_VIEW_TOP ? move->v : move->u;
  double             y = grip->is_image ? -move->u : move->u;

  if (fabs (y) < move->catch && !item->mirrored)
    y = 0.0;
  _gw_grip_set_field (mover, grip->path, "x_mm", &item->x_mm, within (item, rounded (x, move)));
  /* What sits in a bay slides along it. */
  if (has_bay)
    return;
  if (grip->view == GW_VIEW_TOP)
    _gw_grip_set_field (mover, grip->path, "y_mm", &item->y_mm, rounded (y, move));
  else
    _gw_grip_set_field (mover, grip->path, "z_mm", &item->z_mm, rounded (-move->v, move));
}

static char *
movable_path (GwDocument *document)
{
  const char *id = shown_study (document)->movable;

  return id != NULL ? g_strdup_printf ("equipment/%s", id) : NULL;
}

/* The item's own lead follows it in part, so a place is only nearly right; the next move starts
 * from what this one came to. */
static void
move_balance (GwGripMover      *mover,
              const GwGrip     *grip,
              const GwGripMove *move)
{
  const GwOutcome   *outcome = shown_outcome (mover->document);
  g_autofree char   *path = movable_path (mover->document);
  const GwStudyItem *item = path != NULL ? item_at (mover->document, path) : NULL;
  const double       wanted = grip->view == GW_VIEW_TOP ? move->v : move->u;
  double             place, mass;

  if (item == NULL)
    return;

  mass = item->mass_g.value * 1e-3 * (item->mirrored ? 2.0 : 1.0);
  if (gw_balance_place (outcome->results.value[GW_RESULT_MASS],
                        outcome->results.value[GW_RESULT_BALANCE_X], mass, item->x_mm.value * 1e-3,
                        wanted, &place) != GW_OK)
    return;

  _gw_grip_set_field (mover, path, "x_mm", &item->x_mm, within (item, rounded (place, move)));
}

static guint
station_number (const char *path)
{
  return (guint) g_ascii_strtoull (strrchr (path, '/') + 1, NULL, 10);
}

static char *
surface_path (const char *station)
{
  g_auto (GStrv) steps = g_strsplit (station, "/", 3);

  return g_strdup_printf ("%s/%s", steps[0], steps[1]);
}

/* Stations keep their order along the span. */
static double
between (const GPtrArray *stations,
         guint            index,
         gsize            offset,
         double           value)
{
  const char *before = g_ptr_array_index (stations, index - 1);
  const char *after =
    index + 1 < stations->len ? g_ptr_array_index (stations, index + 1) : NULL;

  value = fmax (value, ((const GwNumber *) (before + offset))->value + GW_GRIP_LEAST_PANEL);
  if (after != NULL)
    value = fmin (value, ((const GwNumber *) (after + offset))->value - GW_GRIP_LEAST_PANEL);
  return value;
}

static void
move_root (GwGripMover      *mover,
           const GwGrip     *grip,
           const GwGripMove *move,
           const char       *path)
{
  const GwStudySurface *surface =
    (const GwStudySurface *) gw_edit_record (shown_study (mover->document), path);

  _gw_grip_set_field (mover, path, "x_mm", &surface->x_mm,
                      rounded (grip->view == GW_VIEW_TOP ? move->v : move->u, move));
}

static void
move_station (GwGripMover      *mover,
              const GwGrip     *grip,
              const GwGripMove *move)
{
  g_autofree char      *root = surface_path (grip->path);
  const GwStudySurface *surface =
    (const GwStudySurface *) gw_edit_record (shown_study (mover->document), root);
  const guint           index = station_number (grip->path) - 1;
  const GwStudyStation *station = g_ptr_array_index (surface->stations, index);
  const gboolean        is_top = grip->view == GW_VIEW_TOP;
  const double          out = is_top ? (grip->is_image ? -move->u : move->u) : -move->v;
  const double          aft = is_top ? move->v : move->u;

  if (grip->kind == GW_GRIP_CHORD)
    {
      const double edge = surface->x_mm.value + station->x_mm.value;

      _gw_grip_set_field (mover, grip->path, "chord_mm", &station->chord_mm,
                          fmax (rounded (aft, move) - edge, LEAST_CHORD));
      return;
    }
  if (index == 0)
    {
      move_root (mover, grip, move, root);
      return;
    }

  _gw_grip_set_field (mover, grip->path, "x_mm", &station->x_mm,
                      rounded (aft, move) - surface->x_mm.value);
  if (is_top)
    _gw_grip_set_field (mover, grip->path, "y_mm", &station->y_mm,
                        between (surface->stations, index, G_STRUCT_OFFSET (GwStudyStation, y_mm),
                                 rounded (out, move) - surface->y_mm.value));
  else
    _gw_grip_set_field (mover, grip->path, "z_mm", &station->z_mm,
                        between (surface->stations, index, G_STRUCT_OFFSET (GwStudyStation, z_mm),
                                 rounded (out, move) - surface->z_mm.value));
  _gw_grip_carry_controls (mover, surface, root);
}

GwStudy *
gw_grip_move (const GwGrip     *grip,
              GwDocument       *document,
              const GwGripMove *move,
              GError          **error)
{
  /* A span is typed digit by digit, and each of them starts from what is not tried yet. */
  GwStudy *start = grip->kind == GW_GRIP_SPAN ? gw_document_get_study (document)
                                              : gw_document_get_evaluation (document)->study;
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  GwGripMover mover = { document, gw_study_ref (start), problems, error };

  switch (grip->kind)
    {
    case GW_GRIP_ITEM:
      move_item (&mover, grip, move);
      break;
    case GW_GRIP_BALANCE:
      move_balance (&mover, grip, move);
      break;
    case GW_GRIP_STATION:
    case GW_GRIP_CHORD:
      move_station (&mover, grip, move);
      break;
    case GW_GRIP_SPAN:
      _gw_grip_move_span (&mover, grip, move);
      break;
    case GW_GRIP_NONE:
    default:
      break;
    }

  return mover.study;
}

static char *
name_of (GwDocument *document,
         const char *path)
{
  GwRecord *record = gw_edit_record (shown_study (document), path);

  return record != NULL ? gw_edit_record_name (record) : g_strdup ("");
}

char *
gw_grip_name (const GwGrip *grip,
              GwDocument   *document)
{
  g_autofree char *path = NULL, *name = NULL;

  switch (grip->kind)
    {
    case GW_GRIP_ITEM:
      name = name_of (document, grip->path);
      return g_strdup_printf (_ ("Move %s"), name);
    case GW_GRIP_BALANCE:
      return g_strdup (_ ("Move the balance point"));
    case GW_GRIP_STATION:
    case GW_GRIP_CHORD:
      path = surface_path (grip->path);
      name = name_of (document, path);
      return g_strdup_printf (_ ("Shape %s"), name);
    case GW_GRIP_SPAN:
      name = name_of (document, grip->path);
      return g_strdup_printf (_ ("Span of %s"), name);
    case GW_GRIP_NONE:
    default:
      return g_strdup ("");
    }
}

static char *
length_text (double         mm,
             const GwUnits *units)
{
  g_autofree char *number =
    gw_entry_text (mm, units->of[GW_MM], gw_units_shown (units, GW_MM, 1.0) < 0.1 ? 2 : 1);

  return g_strdup_printf ("%s %s", number, gw_units_name (units, GW_MM));
}

static char *
item_text (const GwStudyItem *item,
           GwView             view,
           const GwUnits     *units)
{
  g_autofree char *name = gw_edit_record_name (&item->record);
  g_autofree char *aft = length_text (item->x_mm.value, units);
  g_autofree char *other = NULL;

  if (!isnan (item->bay_from_mm.value) && item->x_mm.value <= item->bay_from_mm.value)
    return g_strdup_printf (_ ("%s: %s aft, the fore end of its bay"), name, aft);
  if (!isnan (item->bay_from_mm.value) && item->x_mm.value >= item->bay_to_mm.value)
    return g_strdup_printf (_ ("%s: %s aft, the rear end of its bay"), name, aft);
  if (!isnan (item->bay_from_mm.value))
    return g_strdup_printf (_ ("%s: %s aft"), name, aft);

  other = length_text (view == GW_VIEW_TOP ? item->y_mm.value : item->z_mm.value, units);
  return g_strdup_printf (view == GW_VIEW_TOP ? _ ("%s: %s aft, %s out") : _ ("%s: %s aft, %s up"),
                          name, aft, other);
}

/* Lead at the nose or tail for what is left of the way to @wanted [m]. */
static char *
lead_text (GwDocument    *document,
           double         wanted,
           const GwUnits *units)
{
  const GwOutcome *outcome = shown_outcome (document);
  const double     mass = outcome->results.value[GW_RESULT_MASS];
  const double     x = outcome->results.value[GW_RESULT_BALANCE_X];
  const double     root = x - outcome->results.value[GW_RESULT_BALANCE_ROOT];
  double           nose, tail, ballast;
  g_autofree char *at = NULL, *lead = NULL;

  if (fabs (wanted - x) < 0.5e-3)
    return NULL;

  gw_aircraft_ends (&outcome->assembly->aircraft, &nose, &tail);
  if (gw_balance_ballast (mass, x, wanted < x ? nose : tail, wanted, &ballast) != GW_OK)
    return NULL;

  at = length_text ((wanted - root) * 1e3, units);
  lead = gw_entry_text (ballast * 1e3, units->of[GW_G], 1);
  return g_strdup_printf (wanted < x ? _ ("%s takes %s %s of lead in the nose besides")
                                     : _ ("%s takes %s %s of lead in the tail besides"),
                          at, lead, gw_units_name (units, GW_G));
}

static gboolean
is_at_end (const GwStudyItem *item,
           double             towards)
{
  const double beyond = item->x_mm.value + towards;

  return within (item, beyond) != beyond;
}

/* What the item cannot do any more, lead has to. */
static char *
balance_text (GwDocument       *document,
              const GwGripMove *move,
              GwView            view,
              const GwUnits    *units)
{
  const double      *value = shown_outcome (document)->results.value;
  g_autofree char   *path = movable_path (document);
  const GwStudyItem *item = item_at (document, path);
  const double       wanted = view == GW_VIEW_TOP ? move->v : move->u;
  g_autofree char   *at = length_text (value[GW_RESULT_BALANCE_ROOT] * 1e3, units);
  g_autofree char   *name = gw_edit_record_name (&item->record);
  g_autofree char   *place = length_text (item->x_mm.value, units);
  const gboolean     is_end =
    is_at_end (item, wanted < value[GW_RESULT_BALANCE_X] ? -0.01 : 0.01);
  g_autofree char *lead = is_end ? lead_text (document, wanted, units) : NULL;
  g_autofree char *text =
    g_strdup_printf (is_end ? _ ("balance point %s; %s at the end of its bay, %s aft")
                            : _ ("balance point %s; %s %s aft"),
                     at, name, place);

  return lead != NULL ? g_strdup_printf ("%s; %s", text, lead) : g_steal_pointer (&text);
}

static char *
station_text (const GwGrip  *grip,
              GwDocument    *document,
              const GwUnits *units)
{
  const GwStudyStation *station =
    (const GwStudyStation *) gw_edit_record (shown_study (document), grip->path);
  g_autofree char *chord = NULL, *aft = NULL, *out = NULL;

  if (station == NULL)
    return g_strdup ("");

  chord = length_text (station->chord_mm.value, units);
  if (grip->kind == GW_GRIP_CHORD)
    return g_strdup_printf (_ ("chord %s"), chord);

  aft = length_text (station->x_mm.value, units);
  out = length_text (grip->view == GW_VIEW_TOP ? station->y_mm.value : station->z_mm.value, units);
  return g_strdup_printf (grip->view == GW_VIEW_TOP ? _ ("%s out, leading edge %s aft")
                                                    : _ ("%s up, leading edge %s aft"),
                          out, aft);
}

static char *
span_text (const GwGrip  *grip,
           GwDocument    *document,
           const GwUnits *units)
{
  g_autofree char *span = length_text (2e3 * gw_grip_half_span (document, grip->path), units);

  return g_strdup_printf (_ ("span %s"), span);
}

char *
gw_grip_text (const GwGrip     *grip,
              GwDocument       *document,
              const GwGripMove *move,
              const GwUnits    *units)
{
  switch (grip->kind)
    {
    case GW_GRIP_ITEM:
      return item_text (item_at (document, grip->path), grip->view, units);
    case GW_GRIP_BALANCE:
      return balance_text (document, move, grip->view, units);
    case GW_GRIP_STATION:
    case GW_GRIP_CHORD:
      return station_text (grip, document, units);
    case GW_GRIP_SPAN:
      return span_text (grip, document, units);
    case GW_GRIP_NONE:
    default:
      return g_strdup ("");
    }
}

static const char *
number_key (const GwGrip *grip)
{
  if (grip->kind == GW_GRIP_CHORD)
    return "chord_mm";
  if (grip->kind == GW_GRIP_STATION && !g_str_has_suffix (grip->path, "/1"))
    return grip->view == GW_VIEW_TOP ? "y_mm" : "z_mm";

  return "x_mm";
}

const GwNumber *
gw_grip_number (const GwGrip *grip,
                GwDocument   *document,
                char        **path)
{
  g_autofree char *owner = NULL;
  const GwField   *field = NULL;
  GwRecord        *record;

  *path = NULL;
  if (grip->kind == GW_GRIP_NONE || grip->kind == GW_GRIP_SPAN)
    return NULL;
  if (grip->kind == GW_GRIP_BALANCE)
    owner = movable_path (document);
  else if (grip->kind == GW_GRIP_STATION && g_str_has_suffix (grip->path, "/1"))
    owner = surface_path (grip->path);
  else
    owner = g_strdup (grip->path);
  if (owner == NULL)
    return NULL;

  *path = g_strdup_printf ("%s/%s", owner, number_key (grip));
  record = gw_record_find (&shown_study (document)->record, *path, &field);
  return record != NULL ? gw_record_at (record, field) : NULL;
}
