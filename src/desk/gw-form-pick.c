/* gw-form-pick.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-pick.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "desk/gw-chooser.h"
#include "desk/gw-form-candidates.h"
#include "desk/gw-form-words.h"
#include "report/gw-amount.h"
#include "report/gw-section-brief.h"

struct _GwFormPick
{
  GwFormField parent_instance;

  GtkWidget    *chooser;
  GCancellable *briefing; /* (nullable): of what the sections of the list do */

  char    *present; /* the id when the list was opened; "": none */
  char    *pending; /* what is to be tried next */
  guint    idle;
  gboolean has_tried;
};

G_DEFINE_FINAL_TYPE (GwFormPick, gw_form_pick, GW_TYPE_FORM_FIELD)

static GwFormSite *
site_of (GwFormPick *self)
{
  return _gw_form_field_site (GW_FORM_FIELD (self));
}

static const char *
path_of (GwFormPick *self)
{
  return gw_form_field_get_path (GW_FORM_FIELD (self));
}

/* That holds the field, as the shown option has it. */
static GwRecord *
record_of (GwFormPick *self)
{
  g_autofree char *path = g_path_get_dirname (path_of (self));

  return gw_form_site_record (site_of (self), g_str_equal (path, ".") ? "" : path);
}

static const GwField *
field_of (GwFormPick *self)
{
  return _gw_form_field_field (GW_FORM_FIELD (self));
}

static const char *
id_in (GwFormPick *self,
       GwRecord   *record)
{
  gpointer    at = gw_record_at (record, field_of (self));
  const char *id;

  if (field_of (self)->kind == GW_FIELD_CHOICE)
    return field_of (self)->choices[*(int *) at].key;

  id = *(char **) at;
  return id != NULL ? id : "";
}

static JsonNode *
node_of (const char *id)
{
  return *id != '\0' ? json_node_init_string (json_node_alloc (), id) : NULL;
}

static void
leave (GwFormPick *self)
{
  const gboolean has_tried = self->has_tried;

  self->has_tried = FALSE;
  if (has_tried)
    gw_form_site_leave (site_of (self));
}

static void
drop_pending (GwFormPick *self)
{
  g_clear_handle_id (&self->idle, g_source_remove);
  g_clear_pointer (&self->pending, g_free);
}

/* "−42 g", or NULL where it makes no difference that can be seen. */
static char *
change_text (GwFormPick *self,
             GwResultId  id)
{
  GwDocument         *document = gw_form_site_get_document (site_of (self));
  const GwUnits      *units = gw_form_site_get_units (site_of (self));
  const guint         shown = gw_document_get_shown (document);
  const GwResultInfo *info = gw_result_info (id);
  const double        after =
    gw_evaluation_outcome (gw_document_get_evaluation (document), shown)->results.value[id];
  const double before =
    gw_evaluation_outcome (gw_document_get_former (document), shown)->results.value[id];
  g_autofree char *change =
    gw_amount_change (units, info->quantity, after - before, info->decimals);

  if (!isfinite (after - before) ||
      gw_amount_is_nothing (units, info->quantity, after - before, info->decimals))
    return NULL;

  return g_strdup_printf ("%s %s", change, gw_units_name (units, info->quantity));
}

static void
show_effect (GwFormPick *self,
             const char *id)
{
  g_autofree char *mass = change_text (self, GW_RESULT_MASS);
  g_autofree char *speed = change_text (self, GW_RESULT_STALL_SPEED);
  g_autofree char *both = mass != NULL && speed != NULL
                            ? g_strdup_printf (_ ("%s, %s"), mass, speed)
                            : g_strdup (mass != NULL ? mass : speed);

  gw_chooser_set_effect (GW_CHOOSER (self->chooser), id, both != NULL ? both : _ ("no change"));
}

static gboolean
try_id (GwFormPick *self,
        const char *id,
        GError    **error)
{
  g_autoptr (JsonNode) node = node_of (id);

  self->has_tried = TRUE;
  if (gw_form_site_try (site_of (self), path_of (self), node, error))
    return TRUE;

  leave (self);
  return FALSE;
}

/* One a turn of the main loop: whoever runs down the list does not wait for each. */
static gboolean
preview_idle_cb (gpointer data)
{
  GwFormPick      *self = data;
  g_autofree char *id = g_steal_pointer (&self->pending);
  g_autoptr (GError) error = NULL;

  self->idle = 0;
  if (g_str_equal (id, self->present))
    leave (self);
  else if (try_id (self, id, &error))
    show_effect (self, id);
  else
    {
      g_autofree char *reason = gw_form_reason (error, path_of (self));

      gw_chooser_set_note (GW_CHOOSER (self->chooser), reason);
    }

  return G_SOURCE_REMOVE;
}

static void
preview_cb (GwFormPick *self,
            const char *id)
{
  g_free (self->pending);
  self->pending = g_strdup (id != NULL ? id : self->present);
  if (self->idle == 0)
    self->idle = g_idle_add (preview_idle_cb, self);
}

static void
taken_cb (GwFormPick *self,
          const char *id)
{
  g_autoptr (GError) error = NULL;

  drop_pending (self);
  if (g_strcmp0 (id, self->present) == 0)
    leave (self);
  else if (try_id (self, id, &error))
    {
      self->has_tried = FALSE;
      _gw_form_field_take (GW_FORM_FIELD (self));
    }
  _gw_form_field_refuse (GW_FORM_FIELD (self), error);
}

static void
left_cb (GwFormPick *self)
{
  drop_pending (self);
  leave (self);
}

/* What the thread is to tell of the sections. */
typedef struct
{
  GwStudy *study;
  double   re;
  GwUnits  units;
} Place;

static void
place_free (gpointer data)
{
  Place *place = data;

  gw_study_unref (place->study);
  g_free (place);
}

static void
brief_worker (GTask        *task,
              gpointer      source,
              gpointer      data,
              GCancellable *cancellable)
{
  const Place *place = data;

  g_task_return_pointer (task, gw_section_briefs (place->study, place->re, &place->units),
                         (GDestroyNotify) g_hash_table_unref);
}

static void
briefed_cb (GObject      *none,
            GAsyncResult *result,
            gpointer      data)
{
  g_autoptr (GHashTable) briefs = g_task_propagate_pointer (G_TASK (result), NULL);

  if (briefs != NULL) /* else it is closed, or gone */
    gw_chooser_set_briefs (GW_CHOOSER (GW_FORM_PICK (data)->chooser), briefs);
}

/* At the stall, by the chord of the station or the mean chord; NAN: it has no stall speed. */
static double
reynolds_of (GwFormPick *self)
{
  GwDocument      *document = gw_form_site_get_document (site_of (self));
  const GwResults *results = &gw_evaluation_outcome (gw_document_get_evaluation (document),
                                                     gw_document_get_shown (document))
                                ->results;
  GwRecord    *record = record_of (self);
  const double chord = record != NULL && record->type == gw_study_station_type ()
                         ? ((GwStudyStation *) record)->chord_mm.value * 1e-3
                         : results->value[GW_RESULT_MEAN_CHORD];

  return results->value[GW_RESULT_STALL_SPEED] * chord * results->air.density /
         results->air.viscosity;
}

/* Polars may have to be read: the list is there before. */
static void
brief_sections (GwFormPick *self)
{
  const double re = reynolds_of (self);
  g_autoptr (GTask) task = NULL;
  Place *place;

  g_cancellable_cancel (self->briefing);
  g_clear_object (&self->briefing);
  if (!isfinite (re))
    return;

  place = g_new (Place, 1);
  *place = (Place){ gw_study_ref (gw_form_site_get_study (site_of (self))), re,
                    *gw_form_site_get_units (site_of (self)) };
  self->briefing = g_cancellable_new ();
  task = g_task_new (NULL, self->briefing, briefed_cb, self);
  g_task_set_task_data (task, place, place_free);
  g_task_run_in_thread (task, brief_worker);
}

static void
opening_cb (GwFormPick *self)
{
  const GwField *field = field_of (self);
  const gboolean can_clear =
    field->kind == GW_FIELD_REF && gw_form_site_can_clear (site_of (self), path_of (self));

  gw_chooser_set_items (GW_CHOOSER (self->chooser),
                        gw_form_candidates (gw_form_site_get_study (site_of (self)),
                                            record_of (self), field,
                                            gw_form_site_get_units (site_of (self)), can_clear));
  if (g_strcmp0 (field->collection, "sections") == 0)
    brief_sections (self);
}

static void
gw_form_pick_setup (GwFormField *field)
{
  GwFormPick *self = GW_FORM_PICK (field);

  self->chooser = gw_chooser_new ();
  gtk_widget_add_css_class (self->chooser, "wide");
  gtk_widget_set_valign (self->chooser, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (self->chooser, "opening", G_CALLBACK (opening_cb), self);
  g_signal_connect_swapped (self->chooser, "preview", G_CALLBACK (preview_cb), self);
  g_signal_connect_swapped (self->chooser, "taken", G_CALLBACK (taken_cb), self);
  g_signal_connect_swapped (self->chooser, "left", G_CALLBACK (left_cb), self);
  _gw_form_field_set_editor (field, self->chooser, FALSE);
  _gw_form_field_name (field, gw_chooser_get_button (GW_CHOOSER (self->chooser)), NULL, NULL);
  gw_chooser_set_label (GW_CHOOSER (self->chooser), gw_form_label (field_of (self)));
}

static void
gw_form_pick_update (GwFormField *field,
                     GwRecord    *record)
{
  GwFormPick      *self = GW_FORM_PICK (field);
  GwDocument      *document = gw_form_site_get_document (site_of (self));
  const char      *id = id_in (self, record);
  g_autofree char *text = NULL;

  if (self->has_tried && gw_document_get_former (document) == NULL)
    self->has_tried = FALSE; /* an edit from elsewhere has overtaken it */

  /* While the list is open it is the former value that Escape brings back. */
  if (!self->has_tried)
    {
      g_free (self->present);
      self->present = g_strdup (id);
    }

  text = gw_form_field_text (gw_form_site_get_study (site_of (self)), record, field_of (self),
                             gw_form_site_get_units (site_of (self)));
  gw_chooser_set_value (GW_CHOOSER (self->chooser), id, text);
}

static void
gw_form_pick_settle (GwFormField *field)
{
  left_cb (GW_FORM_PICK (field));
}

static void
gw_form_pick_dispose (GObject *object)
{
  GwFormPick *self = GW_FORM_PICK (object);

  drop_pending (self);
  g_cancellable_cancel (self->briefing);
  g_clear_object (&self->briefing);
  g_clear_pointer (&self->present, g_free);

  G_OBJECT_CLASS (gw_form_pick_parent_class)->dispose (object);
}

static void
gw_form_pick_class_init (GwFormPickClass *klass)
{
  GwFormFieldClass *field_class = GW_FORM_FIELD_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_form_pick_dispose;
  field_class->setup = gw_form_pick_setup;
  field_class->update = gw_form_pick_update;
  field_class->settle = gw_form_pick_settle;
}

static void
gw_form_pick_init (GwFormPick *self)
{
}
