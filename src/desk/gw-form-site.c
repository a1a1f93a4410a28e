/* gw-form-site.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-site.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-check.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-fresh.h"
#include "study/gw-resolve.h"

struct _GwFormSite
{
  GObject parent_instance;

  GwDocument *document;
  GwUnits     units;

  /* As of the last refresh. */
  GwStudy *study;    /* all options */
  GwStudy *resolved; /* the shown one alone, its changes applied */
  guint    shown;
};

G_DEFINE_FINAL_TYPE (GwFormSite, gw_form_site, G_TYPE_OBJECT)

enum
{
  HELP,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
forget (GwFormSite *self)
{
  g_clear_pointer (&self->study, gw_study_unref);
  g_clear_pointer (&self->resolved, gw_study_unref);
}

static void
gw_form_site_dispose (GObject *object)
{
  GwFormSite *self = GW_FORM_SITE (object);

  forget (self);
  g_clear_object (&self->document);

  G_OBJECT_CLASS (gw_form_site_parent_class)->dispose (object);
}

static void
gw_form_site_class_init (GwFormSiteClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gw_form_site_dispose;
  signals[HELP] = g_signal_new ("help", GW_TYPE_FORM_SITE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
gw_form_site_init (GwFormSite *self)
{
  self->units = *gw_units_standard ();
}

GwFormSite *
gw_form_site_new (void)
{
  return g_object_new (GW_TYPE_FORM_SITE, NULL);
}

GwDocument *
gw_form_site_get_document (GwFormSite *self)
{
  return self->document;
}

void
gw_form_site_set_document (GwFormSite *self,
                           GwDocument *document)
{
  forget (self);
  g_set_object (&self->document, document);
}

const GwUnits *
gw_form_site_get_units (GwFormSite *self)
{
  return &self->units;
}

void
gw_form_site_set_units (GwFormSite    *self,
                        const GwUnits *units)
{
  self->units = *units;
}

/* The evaluation has it ready, unless the study as it is now could not be computed. */
static GwStudy *
resolve (const GwEvaluation *evaluation,
         GwStudy            *study,
         guint               option)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  if (evaluation->study == study)
    return gw_study_ref (gw_evaluation_outcome (evaluation, option)->assembly->study);

  return gw_study_resolve (study, option, problems);
}

gboolean
gw_form_site_refresh (GwFormSite *self)
{
  GwEvaluation *evaluation =
    self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;

  forget (self);
  if (evaluation == NULL)
    return FALSE;

  self->study = gw_study_ref (gw_document_get_former (self->document) != NULL
                                ? evaluation->study
                                : gw_document_get_study (self->document));
  self->shown = MIN (gw_document_get_shown (self->document), self->study->options->len - 1);
  self->resolved = resolve (evaluation, self->study, self->shown);
  return TRUE;
}

GwStudy *
gw_form_site_get_study (GwFormSite *self)
{
  return self->study;
}

guint
gw_form_site_get_shown (GwFormSite *self)
{
  return self->shown;
}

static gboolean
lies_in (const char *path,
         const char *key)
{
  const gsize n = strlen (key);

  return strncmp (path, key, n) == 0 && (path[n] == '/' || path[n] == '\0');
}

gboolean
gw_form_site_can_differ (const char *path)
{
  return gw_edit_can_differ (path);
}

/* The resolved study has lost its other options and its baseline. */
GwStudy *
gw_form_site_get_view (GwFormSite *self,
                       const char *path)
{
  return lies_in (path, "options") ? self->study : self->resolved;
}

GwRecord *
gw_form_site_record (GwFormSite *self,
                     const char *path)
{
  return self->study != NULL ? gw_edit_record (gw_form_site_get_view (self, path), path) : NULL;
}

char *
gw_form_site_changed_at (GwFormSite *self,
                         const char *path)
{
  return self->study != NULL ? g_strdup (gw_edit_changed_at (self->study, self->shown, path))
                             : NULL;
}

gboolean
gw_form_site_is_in_own_list (GwFormSite *self,
                             const char *path)
{
  g_autofree char *changed = gw_form_site_changed_at (self, path);
  const GwField   *field = NULL;

  return changed != NULL && !g_str_equal (changed, path) &&
         gw_record_find (&self->study->record, changed, &field) != NULL &&
         field->kind == GW_FIELD_LIST;
}

gboolean
gw_form_site_is_here (GwFormSite *self,
                      const char *path)
{
  return self->study != NULL &&
         gw_edit_is_here (self->study, self->shown, gw_document_get_only_here (self->document),
                          path);
}

/* What is only tried is no part of what is edited. */
static GwStudy *
edited (GwFormSite *self,
        const char *path,
        JsonNode   *value,
        GError    **error)
{
  GwStudy       *study = gw_document_get_study (self->document);
  const gboolean is_only_here = gw_document_get_only_here (self->document);

  if (value != NULL && gw_fresh_is_construction (study, path))
    return gw_fresh_construction (study, self->shown, is_only_here, path, value, error);
  if (value != NULL && gw_fresh_is_filament (study, path))
    return gw_fresh_filament (study, self->shown, is_only_here, path, value, error);

  if (value != NULL && gw_fresh_is_size (study, path))
    return gw_fresh_size (study, self->shown, is_only_here, path, value, error);

  return gw_edit_set (study, self->shown, is_only_here, path, value, error);
}

static gboolean
can_edit (GwFormSite *self)
{
  return self->document != NULL && self->study != NULL;
}

gboolean
gw_form_site_can_clear (GwFormSite *self,
                        const char *path)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) cleared = can_edit (self) ? edited (self, path, NULL, NULL) : NULL;

  /* Not as for a try: what is offered must also compute. */
  if (cleared != NULL)
    gw_study_check (cleared, problems);

  return cleared != NULL && gw_problems_count (problems) == 0;
}

gboolean
gw_form_site_try (GwFormSite *self,
                  const char *path,
                  JsonNode   *value,
                  GError    **error)
{
  g_autoptr (GwStudy) study = can_edit (self) ? edited (self, path, value, error) : NULL;

  return study != NULL && gw_document_try (self->document, study, error);
}

gboolean
gw_form_site_edit (GwFormSite *self,
                   const char *path,
                   JsonNode   *value,
                   GError    **error)
{
  g_autofree char *name = can_edit (self) ? gw_edit_name (self->study, path) : NULL;

  return name != NULL && gw_form_site_put (self, name, edited (self, path, value, error), error);
}

void
gw_form_site_take (GwFormSite *self,
                   const char *path)
{
  g_autofree char *name = NULL;

  if (!can_edit (self))
    return;

  name = gw_edit_name (self->study, path);
  gw_document_take (self->document, name);
}

void
gw_form_site_leave (GwFormSite *self)
{
  if (self->document != NULL)
    gw_document_leave (self->document);
}

gboolean
gw_form_site_take_back (GwFormSite *self,
                        guint       option,
                        const char *path,
                        GError    **error)
{
  const GwField   *field = NULL;
  GwRecord        *record;
  g_autofree char *owner = NULL;
  g_autofree char *name = NULL;

  if (!can_edit (self))
    return FALSE;

  record = gw_record_find (&self->study->record, path, &field);
  if (record == NULL)
    name = g_strdup (_ ("Take back a change"));
  else
    {
      owner = gw_edit_record_name (record);
      name = g_strdup_printf (_ ("Take back %s of %s"),
                              g_dgettext (GETTEXT_PACKAGE, field->label), owner);
    }

  return gw_form_site_put (
    self, name,
    gw_edit_take_back (gw_document_get_study (self->document), option, path, error), error);
}

gboolean
gw_form_site_put (GwFormSite *self,
                  const char *name,
                  GwStudy    *edited,
                  GError    **error)
{
  g_autoptr (GwStudy) study = edited;

  return study != NULL && can_edit (self) &&
         gw_document_edit (self->document, name, study, NULL, error);
}

void
gw_form_site_show_help (GwFormSite *self,
                        const char *help)
{
  g_signal_emit (self, signals[HELP], 0, help);
}
