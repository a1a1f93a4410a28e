/* gw-drawer-actions.c - what can be done with a row of the outline
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-drawer-private.h"
#include "desk/gw-dropped-text.h"
#include "desk/gw-outline-text.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit-whole.h"
#include "study/gw-fresh.h"

/* The record of the current row, if it stands in a list of the study as it is worked on. */
typedef struct
{
  GwStudy   *study; /* that edits begin with: the study, or its view as one option has it */
  char      *path, *name, *key;
  GPtrArray *list;
  guint      index;
} Target;

static void
target_clear (Target *target)
{
  g_clear_pointer (&target->study, gw_study_unref);
  g_clear_pointer (&target->path, g_free);
  g_clear_pointer (&target->name, g_free);
  g_clear_pointer (&target->key, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Target, target_clear)

/* (transfer full) */
static GwStudy *
open_list (GwDrawer   *self,
           const char *list)
{
  return gw_edit_open (gw_document_get_study (self->document),
                       gw_document_get_shown (self->document),
                       gw_document_get_only_here (self->document), list);
}

static gboolean
find_target (GwDrawer *self,
             Target   *target)
{
  const char *slash;
  GwRecord   *record;

  *target = (Target){ 0 };
  if (self->current == NULL || self->document == NULL)
    return FALSE;

  target->path = g_strdup (gw_outline_row_get_path (self->current));
  slash = strchr (target->path, '/');
  if (gw_document_get_study (self->document) == NULL || slash == NULL)
    return FALSE;

  target->key = g_strndup (target->path, (gsize) (slash - target->path));
  target->study = open_list (self, target->key);
  target->list = _gw_drawer_list_of (target->study, target->key);
  record = gw_edit_record (target->study, target->path);
  if (record == NULL || !g_ptr_array_find (target->list, record, &target->index))
    return FALSE;

  target->name = gw_outline_name (target->study, record);
  return TRUE;
}

static gboolean
is_option (const Target *target)
{
  return g_str_equal (target->key, "options");
}

static gboolean
can_compute (GwDrawer *self)
{
  return self->document != NULL && gw_document_get_study (self->document) != NULL &&
         gw_document_get_evaluation (self->document) != NULL;
}

void
_gw_drawer_update_actions (GwDrawer *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  g_auto (Target) target = { 0 };
  const gboolean is_in_list = can_compute (self) && find_target (self, &target);
  const guint    n = is_in_list ? target.list->len : 0;

  gtk_widget_action_set_enabled (widget, "outline.add", can_compute (self));
  gtk_widget_action_set_enabled (widget, "outline.rename", self->current != NULL);
  gtk_widget_action_set_enabled (widget, "outline.duplicate", is_in_list);
  /* A study without an option is none. */
  gtk_widget_action_set_enabled (widget, "outline.remove",
                                 is_in_list && (n > 1 || !is_option (&target)));
  gtk_widget_action_set_enabled (widget, "outline.up", is_in_list && target.index > 0);
  gtk_widget_action_set_enabled (widget, "outline.down", is_in_list && target.index + 1 < n);
  gtk_widget_action_set_enabled (widget, "outline.baseline",
                                 is_in_list && is_option (&target) &&
                                   target.index != gw_study_baseline (target.study));
}

/* Takes @study, made of @opened. */
static gboolean
edit (GwDrawer      *self,
      const char    *name,
      const GwStudy *opened,
      GwStudy       *study,
      GError        *error)
{
  g_autoptr (GError) reason = error;
  g_autoptr (GwStudy) edited =
    gw_edit_close (gw_document_get_study (self->document), gw_document_get_shown (self->document),
                   opened, study, &reason);

  if (edited != NULL && gw_document_edit (self->document, name, edited, NULL, &reason))
    return TRUE;

  if (reason != NULL)
    {
      /* Translators: what was to be done, then why it was not: "Remove Battery: …" */
      g_autofree char *text = g_strdup_printf (_ ("%s: not done. %s"), name, reason->message);

      _gw_drawer_say (self, text);
    }
  return FALSE;
}

/* The keys go on working on what comes next. */
static void
settle (GwDrawer     *self,
        GwOutlineRow *row,
        gboolean      had_focus)
{
  if (row == NULL)
    return;

  _gw_drawer_choose (self, row);
  if (had_focus)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}

static gboolean
has_focus (GwDrawer *self)
{
  return gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL;
}

static void
add_cb (GtkWidget  *widget,
        const char *action,
        GVariant   *what)
{
  GwDrawer          *self = GW_DRAWER (widget);
  const GwFreshKind *kind = gw_fresh_find (g_variant_get_string (what, NULL));
  g_autofree char   *path = NULL;
  g_autoptr (GwStudy) opened = NULL;
  GError  *error = NULL;
  GwStudy *study;
  guint    option;

  if (kind == NULL || !can_compute (self))
    return;

  /* A view has the option alone. */
  opened = open_list (self, kind->list);
  option = opened == gw_document_get_study (self->document)
             ? gw_document_get_shown (self->document)
             : 0;
  study = gw_fresh_add (opened, option, kind->what, &path, &error);
  if (!edit (self, g_dgettext (GETTEXT_PACKAGE, kind->edit), opened, study, error))
    return;

  /* What is new wants a name. */
  settle (self, _gw_drawer_find_row (self, path), FALSE);
  _gw_drawer_rename (self);
}

static void
duplicate_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  GwDrawer      *self = GW_DRAWER (widget);
  const gboolean had_focus = has_focus (self);
  g_auto (Target) target = { 0 };
  g_autofree char *name = NULL, *copy = NULL;
  GError          *error = NULL;
  GwStudy         *study;

  if (!find_target (self, &target))
    return;

  name = g_strdup_printf (_ ("Duplicate %s"), target.name);
  study = gw_edit_duplicate_whole (target.study, target.path, &copy, &error);
  if (edit (self, name, target.study, study, error))
    settle (self, _gw_drawer_find_row (self, copy), had_focus);
}

/* What takes its place is selected, else what stood before it. */
static void
remove_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  GwDrawer      *self = GW_DRAWER (widget);
  const gboolean had_focus = has_focus (self);
  g_auto (Target) target = { 0 };
  g_autoptr (GPtrArray) dropped =
    g_ptr_array_new_with_free_func ((GDestroyNotify) gw_dropped_change_free);
  g_autofree char *name = NULL;
  GError          *error = NULL;
  GwStudy         *study;
  GtkListBox      *list;
  GtkListBoxRow   *row;
  int              place;

  if (!find_target (self, &target))
    return;

  list = GTK_LIST_BOX (gtk_widget_get_parent (GTK_WIDGET (self->current)));
  place = gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (self->current));
  name = g_strdup_printf (_ ("Remove %s"), target.name);
  study = gw_edit_remove_whole (target.study, target.path, dropped, &error);
  if (!edit (self, name, target.study, study, error))
    return;

  row = gtk_list_box_get_row_at_index (list, place);
  if (row == NULL && place > 0)
    row = gtk_list_box_get_row_at_index (list, place - 1);
  settle (self, (GwOutlineRow *) row, had_focus);

  if (dropped->len > 0)
    {
      g_autofree char *text = gw_dropped_text (target.study, dropped);

      _gw_drawer_say (self, text);
    }
}

static void
move (GwDrawer *self,
      gboolean  is_up)
{
  const gboolean had_focus = has_focus (self);
  g_auto (Target) target = { 0 };
  g_autofree char *name = NULL, *moved = NULL;
  GError          *error = NULL;
  GwStudy         *study;

  if (!find_target (self, &target))
    return;

  name = g_strdup_printf (is_up ? _ ("Move %s up") : _ ("Move %s down"), target.name);
  study = gw_edit_move (target.study, target.path, is_up ? target.index - 1 : target.index + 1,
                        &moved, &error);
  if (edit (self, name, target.study, study, error))
    settle (self, _gw_drawer_find_row (self, moved), had_focus);
}

static void
up_cb (GtkWidget  *widget,
       const char *action,
       GVariant   *parameter)
{
  move (GW_DRAWER (widget), TRUE);
}

static void
down_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  move (GW_DRAWER (widget), FALSE);
}

static void
baseline_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  GwDrawer *self = GW_DRAWER (widget);
  g_auto (Target) target = { 0 };
  g_autoptr (JsonNode) id = NULL;
  g_autofree char *name = NULL;
  GError          *error = NULL;
  GwStudy         *study;

  if (!find_target (self, &target) || !is_option (&target))
    return;

  id = json_node_new (JSON_NODE_VALUE);
  json_node_set_string (id, gw_record_id (g_ptr_array_index (target.list, target.index)));
  name = g_strdup_printf (_ ("Make %s the baseline"), target.name);
  study = gw_study_edit (target.study, "baseline", id, &error);
  edit (self, name, target.study, study, error);
}

static void
rename_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  _gw_drawer_rename (GW_DRAWER (widget));
}

static void
select_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *path)
{
  GwDrawer     *self = GW_DRAWER (widget);
  GwOutlineRow *row = _gw_drawer_find_row (self, g_variant_get_string (path, NULL));

  if (row != NULL && self->document != NULL)
    _gw_drawer_choose (self, row);
}

static void
menu_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *path)
{
  GwDrawer *self = GW_DRAWER (widget);

  select_cb (widget, action, path);
  if (self->current != NULL)
    _gw_drawer_popup (self);
}

void
_gw_drawer_install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "outline.select", "s", select_cb);
  gtk_widget_class_install_action (widget_class, "outline.menu", "s", menu_cb);
  gtk_widget_class_install_action (widget_class, "outline.add", "s", add_cb);
  gtk_widget_class_install_action (widget_class, "outline.duplicate", NULL, duplicate_cb);
  gtk_widget_class_install_action (widget_class, "outline.remove", NULL, remove_cb);
  gtk_widget_class_install_action (widget_class, "outline.up", NULL, up_cb);
  gtk_widget_class_install_action (widget_class, "outline.down", NULL, down_cb);
  gtk_widget_class_install_action (widget_class, "outline.baseline", NULL, baseline_cb);
  gtk_widget_class_install_action (widget_class, "outline.rename", NULL, rename_cb);
}
