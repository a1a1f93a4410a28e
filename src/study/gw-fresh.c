/* gw-fresh.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-fresh.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "engine/gw-body.h"
#include "study/gw-check.h"
#include "study/gw-edit-private.h"
#include "study/gw-edit-whole.h"
#include "study/gw-fresh-private.h"
#include "study/gw-record-json.h"
#include "study/gw-resolve.h"

/* Where bodies would end if there were one, in mean chords ahead of and behind the wing. */
#define NOSE_ROOM 1.2
#define TAIL_ROOM 3.0

/* In the order of the lists of the study. */
static const struct
{
  GwFreshKind  kind;
  GwFreshMaker make; /* NULL: a copy of the option */
} kinds[] = {
  { { "option", "options", N_ ("Option"), N_ ("Add option") }, NULL },
  { { "wing", "surfaces", N_ ("Second wing"), N_ ("Add second wing") }, _gw_fresh_wing },
  { { "tailplane", "surfaces", N_ ("Tailplane"), N_ ("Add tailplane") }, _gw_fresh_tailplane },
  { { "v-tail", "surfaces", N_ ("V-tail"), N_ ("Add V-tail") }, _gw_fresh_v_tail },
  { { "canard", "surfaces", N_ ("Canard"), N_ ("Add canard") }, _gw_fresh_canard },
  { { "fin", "surfaces", N_ ("Fin"), N_ ("Add fin") }, _gw_fresh_fin },
  { { "body", "bodies", N_ ("Body"), N_ ("Add body") }, _gw_fresh_body },
  { { "strut", "struts", N_ ("Strut or wire"), N_ ("Add strut") }, _gw_fresh_strut },
  { { "leg", "legs", N_ ("Leg and wheel"), N_ ("Add leg and wheel") }, _gw_fresh_leg },
  { { "power", "powers", N_ ("Power unit"), N_ ("Add power unit") }, _gw_fresh_power },
  { { "equipment", "equipment", N_ ("Equipment"), N_ ("Add equipment") }, _gw_fresh_item },
  { { "build", "builds", N_ ("Build"), N_ ("Add build") }, _gw_fresh_build },
  { { "spar", "spars", N_ ("Spar"), N_ ("Add spar") }, _gw_fresh_spar },
  { { "material", "materials", N_ ("Own material"), N_ ("Add own material") },
    _gw_fresh_material },
  { { "section", "sections", N_ ("Own section"), N_ ("Add own section") }, _gw_fresh_section },
};

const GwFreshKind *
gw_fresh_kind (guint i)
{
  return i < G_N_ELEMENTS (kinds) ? &kinds[i].kind : NULL;
}

static guint
index_of (const char *what)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (kinds[i].kind.what, what) == 0)
      return i;

  return G_N_ELEMENTS (kinds);
}

const GwFreshKind *
gw_fresh_find (const char *what)
{
  return gw_fresh_kind (index_of (what));
}

static void
frame_clear (GwFreshFrame *frame)
{
  gw_results_clear (&frame->results);
  g_clear_pointer (&frame->assembly, gw_assembly_free);
  g_clear_pointer ((GwStudy **) &frame->study, gw_study_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GwFreshFrame, frame_clear)

static void
measure_bodies (GwFreshFrame *frame)
{
  const GwAircraft *aircraft = &frame->assembly->aircraft;
  const double      mac = frame->shape->mac, root_z = frame->wing->stations[0].at[2];

  frame->nose_x = frame->shape->root_x - NOSE_ROOM * mac;
  frame->tail_x = frame->quarter_x + TAIL_ROOM * mac;
  frame->tail_z = root_z;
  frame->bottom = root_z;
  for (size_t i = 0; i < aircraft->n_bodies; i++)
    {
      const GwBody        *body = &aircraft->bodies[i];
      const GwBodyStation *first = body->stations, *last = &first[body->n_stations - 1];

      if (i == 0 || first->x < frame->nose_x)
        frame->nose_x = first->x;
      if (i == 0 || last->x > frame->tail_x)
        {
          frame->tail_x = last->x;
          frame->tail_z = last->z + 0.5 * last->height;
        }
      if (body->y != 0.0)
        continue;
      /* Both leave what there is where the body does not reach. */
      frame->bottom = fmin (frame->bottom, gw_body_edge (body, frame->quarter_x, false));
      frame->half_width = fmax (frame->half_width, gw_body_half_width (body, frame->quarter_x));
    }
}

static gboolean
frame_init (GwFreshFrame  *frame,
            const GwStudy *study,
            guint          option,
            GError       **error)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  GwStudy *resolved = gw_study_resolve (study, option, problems);
  GwStatus status;

  frame->study = resolved;
  frame->assembly =
    gw_problems_count (problems) == 0 ? gw_assemble (resolved, NULL, problems) : NULL;
  if (!gw_problems_to_error (problems, error))
    return FALSE;

  status = gw_evaluate (&frame->assembly->aircraft, NULL, &frame->results);
  if (status != GW_OK)
    {
      gw_study_status_error (error, status, _ ("The aircraft"));
      return FALSE;
    }

  frame->wing = &frame->assembly->aircraft.surfaces[frame->results.geometry.wing];
  frame->shape = &frame->results.geometry.shapes[frame->results.geometry.wing];
  frame->quarter_x = frame->shape->mac_at[0] + 0.25 * frame->shape->mac;
  measure_bodies (frame);
  return TRUE;
}

static void
number_name (GwRecord   *record,
             const char *wanted_id)
{
  const GwField *field = gw_record_type_field (record->type, "name");
  char         **name = field != NULL ? gw_record_at (record, field) : NULL;
  const char    *id = gw_record_id (record);

  if (name != NULL && g_strcmp0 (id, wanted_id) != 0 && g_str_has_prefix (id, wanted_id))
    {
      char *numbered = g_strdup_printf ("%s %s", *name, id + strlen (wanted_id) + 1);

      g_free (*name);
      *name = numbered;
    }
}

/* A record that is already there under the same id lends it: the next is the second. */
static GwRecord *
append (GwRecord   *owner,
        const char *key,
        JsonObject *object,
        GPtrArray  *problems)
{
  const GwField   *field = gw_record_type_field (owner->type, key);
  GPtrArray       *list = *(GPtrArray **) gw_record_at (owner, field);
  GwRecord        *record = gw_record_new (field->item ());
  g_autofree char *wanted = NULL;

  gw_record_read (record, object, key, problems);
  wanted = g_strdup (gw_record_id (record));
  _gw_edit_give_id (record, list);
  if (wanted != NULL)
    number_name (record, wanted);
  g_ptr_array_add (list, record);
  gw_record_set_present (owner, field, TRUE);
  return record;
}

static const GwStudyBuild *
root_build_of (const GPtrArray *builds,
               const char      *surface)
{
  for (guint i = 0; i < builds->len; i++)
    {
      const GwStudyBuild *build = g_ptr_array_index (builds, i);

      if (g_strcmp0 (build->surface, surface) == 0 && build->first_panel.value <= 1.0)
        return build;
    }

  return NULL;
}

/* As the other surface is built at its root there. */
static gboolean
copy_build (GwRecord   *owner,
            const char *from,
            const char *to)
{
  const GwField      *field = gw_record_type_field (owner->type, "builds");
  GPtrArray          *builds = *(GPtrArray **) gw_record_at (owner, field);
  const GwStudyBuild *found = root_build_of (builds, from);
  GwStudyBuild       *copy;

  if (found == NULL)
    return FALSE;

  copy = (GwStudyBuild *) gw_record_copy (&found->record);
  g_free (copy->surface);
  copy->surface = g_strdup (to);
  gw_record_reset_field (&copy->record, gw_record_type_field (copy->record.type, "first_panel"));
  gw_record_reset_field (&copy->record, gw_record_type_field (copy->record.type, "last_panel"));
  g_ptr_array_add (builds, copy);
  return TRUE;
}

/* A wing as the first one, in every option; what is small, or built nowhere, of foam sheet. */
static void
add_build (GwStudy            *study,
           const GwFreshFrame *frame,
           const char         *surface,
           gboolean            is_wing,
           GPtrArray          *problems)
{
  const char *wing = _gw_fresh_study_wing (frame)->id;
  gboolean    is_built = is_wing && copy_build (&study->record, wing, surface);
  guint       n_built = 0;

  /* Where an option has surfaces of its own, this is none of them. */
  for (guint i = 0; is_wing && i < study->options->len; i++)
    n_built += _gw_edit_has_own (g_ptr_array_index (study->options, i), "surfaces") ||
               copy_build (g_ptr_array_index (study->options, i), wing, surface);
  if (!is_built && n_built < study->options->len)
    {
      g_autoptr (JsonObject) build = _gw_fresh_sheet_build (surface);

      append (&study->record, "builds", build, problems);
    }
}

static GwStudy *
add_option (const GwStudy *study,
            guint          option,
            char         **path,
            GError       **error)
{
  g_autofree char *from =
    gw_record_step ("", "options", g_ptr_array_index (study->options, option), option);

  return gw_edit_duplicate_whole (study, from, path, error);
}

GwStudy *
gw_fresh_add (const GwStudy *study,
              guint          option,
              const char    *what,
              char         **path,
              GError       **error)
{
  const guint i = index_of (what);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) edited = NULL;
  g_autoptr (JsonObject) object = NULL;
  g_auto (GwFreshFrame) frame = { 0 };
  GwRecord        *record;
  const GPtrArray *list;

  g_return_val_if_fail (i < G_N_ELEMENTS (kinds), NULL);
  g_return_val_if_fail (option < study->options->len, NULL);

  if (kinds[i].make == NULL)
    return add_option (study, option, path, error);
  if (!frame_init (&frame, study, option, error))
    return NULL;

  edited = gw_study_copy (study);
  object = kinds[i].make (&frame);
  record = append (&edited->record, kinds[i].kind.list, object, problems);
  if (record->type == gw_study_surface_type ())
    {
      add_build (edited, &frame, gw_record_id (record),
                 ((GwStudySurface *) record)->role == GW_ROLE_SECOND_WING, problems);
      _gw_edit_follow_surfaces (study, edited, NULL, gw_record_id (record));
    }
  if (gw_problems_count (problems) == 0)
    gw_study_check (edited, problems);
  if (!gw_problems_to_error (problems, error))
    return NULL;

  list = *(GPtrArray **) gw_record_at (
    &edited->record, gw_record_type_field (edited->record.type, kinds[i].kind.list));
  *path = gw_record_step ("", kinds[i].kind.list, record, list->len - 1);
  return g_steal_pointer (&edited);
}
