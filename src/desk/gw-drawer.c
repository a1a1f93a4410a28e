/* gw-drawer.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-drawer-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-option-row.h"
#include "desk/gw-outline-text.h"
#include "desk/gw-reveal.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-fresh.h"

G_DEFINE_FINAL_TYPE (GwDrawer, gw_drawer, GTK_TYPE_WIDGET)

enum
{
  MESSAGE,
  RENAME,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Bit i: part i is folded away. A new window begins as the last one was left. */
static guint folded;

static const char *const part_names[GW_N_PARTS] = { "options", "airframe", "equipment", "study",
                                                    "own" };

/* Lists of the study by the part that shows them. */
static const struct
{
  guint       part;
  const char *key;
} study_lists[] = {
  { GW_PART_AIRFRAME, "surfaces" },
  { GW_PART_AIRFRAME, "bodies" },
  { GW_PART_AIRFRAME, "struts" },
  { GW_PART_AIRFRAME, "legs" },
  { GW_PART_AIRFRAME, "powers" },
  { GW_PART_AIRFRAME, "spars" },
  { GW_PART_AIRFRAME, "builds" },
  { GW_PART_EQUIPMENT, "equipment" },
  { GW_PART_OWN, "materials" },
  { GW_PART_OWN, "sections" },
  { GW_PART_OWN, "methods" },
};

/* What there is once. */
static const struct
{
  const char *path, *name;
} single[] = {
  { "day", N_ ("Day and field") },
  { "targets", N_ ("What is wanted") },
  { "", N_ ("The study") },
};

GPtrArray *
_gw_drawer_list_of (const GwStudy *study,
                    const char    *key)
{
  return *(GPtrArray **) gw_record_at ((GwRecord *) &study->record,
                                       gw_record_type_field (study->record.type, key));
}

char *
_gw_drawer_path_of (const GwStudy *study,
                    const char    *key,
                    guint          i)
{
  return gw_record_step ("", key, g_ptr_array_index (_gw_drawer_list_of (study, key), i), i);
}

void
_gw_drawer_say (GwDrawer   *self,
                const char *text)
{
  g_signal_emit (self, signals[MESSAGE], 0, text);
}

void
_gw_drawer_rename (GwDrawer *self)
{
  g_signal_emit (self, signals[RENAME], 0);
}

GwOutlineRow *
_gw_drawer_row_at (GwDrawer *self,
                   guint     part,
                   int       i)
{
  return (GwOutlineRow *) gtk_list_box_get_row_at_index (self->lists[part], i);
}

GwOutlineRow *
_gw_drawer_find_row (GwDrawer   *self,
                     const char *path)
{
  for (guint part = 0; part < GW_N_PARTS; part++)
    {
      GwOutlineRow *row;

      for (int i = 0; (row = _gw_drawer_row_at (self, part, i)) != NULL; i++)
        if (g_str_equal (gw_outline_row_get_path (row), path))
          return row;
    }

  return NULL;
}

/* Of what is selected, or of the record that holds it. */
static GwOutlineRow *
find_holder (GwDrawer   *self,
             const char *selection)
{
  g_autofree char *path = g_strdup (selection);

  for (;;)
    {
      GwOutlineRow *row = _gw_drawer_find_row (self, path);
      char         *slash = strrchr (path, '/');

      if (row != NULL || slash == NULL)
        return row;
      *slash = '\0';
    }
}

/* Rows are kept where they can be, and the focus with them. */
static GwOutlineRow *
need_row (GwDrawer *self,
          guint     part,
          int       i)
{
  GtkWidget *row = (GtkWidget *) _gw_drawer_row_at (self, part, i);

  if (row == NULL)
    {
      row = part == GW_PART_OPTIONS ? gw_option_row_new () : gw_outline_row_new ();
      gtk_list_box_append (self->lists[part], row);
    }

  return GW_OUTLINE_ROW (row);
}

static void
drop_rows (GwDrawer *self,
           guint     part,
           int       n)
{
  GwOutlineRow *row;

  while ((row = _gw_drawer_row_at (self, part, n)) != NULL)
    {
      if (row == self->current)
        self->current = NULL;
      gtk_list_box_remove (self->lists[part], GTK_WIDGET (row));
    }
}

/* Of a list that is the option's own, what is done to a row is done there alone. */
static char *
row_detail (const GwOutcome *outcome,
            const char      *path,
            gboolean         is_own,
            const GwUnits   *units)
{
  g_autofree char *detail = gw_outline_detail (outcome, path, units);

  if (!is_own)
    return g_steal_pointer (&detail);

  /* Translators: an option, then what the row says: "only in Core: 178 g, 155 mm aft" */
  return *detail != '\0' ? g_strdup_printf (_ ("only in %s: %s"), outcome->short_name, detail)
                         : g_strdup_printf (_ ("only in %s"), outcome->short_name);
}

static void
update_rows (GwDrawer           *self,
             const GwEvaluation *evaluation,
             guint               shown)
{
  const GwStudy   *study = evaluation->study;
  const GwOutcome *outcome = gw_evaluation_outcome (evaluation, shown);
  int              n[GW_N_PARTS] = { 0 };

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    gw_option_row_update (
      GW_OPTION_ROW (need_row (self, GW_PART_OPTIONS, n[GW_PART_OPTIONS]++)), evaluation, i,
      &self->units, self->is_dark);

  for (guint k = 0; k < G_N_ELEMENTS (study_lists); k++)
    {
      const char    *key = study_lists[k].key;
      const guint    part = study_lists[k].part;
      const gboolean is_own =
        gw_edit_can_differ (key) && gw_edit_change_of (study, shown, key) != NULL;
      const GwStudy   *holder = is_own ? outcome->assembly->study : study;
      const GPtrArray *list = _gw_drawer_list_of (holder, key);

      for (guint i = 0; i < list->len; i++)
        {
          g_autofree char *path = _gw_drawer_path_of (holder, key, i);
          g_autofree char *name = gw_outline_name (holder, g_ptr_array_index (list, i));
          g_autofree char *detail = row_detail (outcome, path, is_own, &self->units);

          gw_outline_row_set (need_row (self, part, n[part]++), path, name, detail);
        }
    }

  for (guint i = 0; i < G_N_ELEMENTS (single); i++)
    {
      g_autofree char *detail = gw_outline_detail (outcome, single[i].path, &self->units);

      gw_outline_row_set (need_row (self, GW_PART_STUDY, n[GW_PART_STUDY]++),
                          single[i].path, _ (single[i].name), detail);
    }

  for (guint part = 0; part < GW_N_PARTS; part++)
    drop_rows (self, part, n[part]);
}

static void
show_text (GtkWidget  *part,
           GtkLabel   *label,
           const char *text)
{
  if (text == NULL)
    text = "";
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
  gtk_widget_set_visible (part, *text != '\0');
}

static char *
hint_text (const GPtrArray *problems)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < problems->len; i++)
    {
      const GwProblem *problem = g_ptr_array_index (problems, i);

      if (!problem->is_error)
        g_string_append_printf (text, "%s%s%s%s", text->len > 0 ? "\n" : "", problem->path,
                                *problem->path != '\0' ? ": " : "", problem->message);
    }

  return g_string_free (text, FALSE);
}

static void
update_notes (GwDrawer           *self,
              const GwEvaluation *evaluation,
              guint               shown)
{
  const GwStudyOption *option = g_ptr_array_index (evaluation->study->options, shown);
  g_autofree char     *hints = hint_text (gw_document_get_problems (self->document));

  show_text (self->option_part, self->option_note, option->note);
  show_text (self->study_part, self->study_note, evaluation->study->note);
  show_text (self->hint_part, self->hints, hints);
}

/* The shown option is the selected row of its list, whatever is looked at. */
static void
follow_selection (GwDrawer *self)
{
  GwOutlineRow *here = NULL;
  GtkWidget    *list;

  if (self->document != NULL)
    here = find_holder (self, gw_document_get_selection (self->document));

  self->is_following = TRUE;
  list = here != NULL ? gtk_widget_get_parent (GTK_WIDGET (here)) : NULL;
  for (guint part = 0; part < GW_N_PARTS; part++)
    {
      GwOutlineRow *wanted = GTK_WIDGET (self->lists[part]) == list ? here : NULL;

      if (part == GW_PART_OPTIONS && self->document != NULL)
        wanted = _gw_drawer_row_at (self, part, (int) gw_document_get_shown (self->document));
      if (gtk_list_box_get_selected_row (self->lists[part]) != (GtkListBoxRow *) wanted)
        gtk_list_box_select_row (self->lists[part], (GtkListBoxRow *) wanted);
    }
  self->is_following = FALSE;

  if (self->current != here && self->current != NULL)
    gw_outline_row_set_here (self->current, FALSE);
  self->current = here;
  if (here != NULL)
    gw_outline_row_set_here (here, TRUE);
  _gw_drawer_update_actions (self);
}

static void
update (GwDrawer *self)
{
  const GwEvaluation *evaluation =
    self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;

  self->is_following = TRUE;
  if (evaluation != NULL)
    {
      update_rows (self, evaluation, gw_document_get_shown (self->document));
      update_notes (self, evaluation, gw_document_get_shown (self->document));
    }
  else
    for (guint part = 0; part < GW_N_PARTS; part++)
      drop_rows (self, part, 0);
  self->is_following = FALSE;
  follow_selection (self);
}

static void
bring_into_view (GwDrawer *self)
{
  GtkWidget *list = gtk_widget_get_parent (GTK_WIDGET (self->current));

  for (guint part = 0; part < GW_N_PARTS; part++)
    if (GTK_WIDGET (self->lists[part]) == list)
      gw_outline_heading_set_folded (self->headings[part], FALSE);
  gw_reveal (GTK_SCROLLED_WINDOW (self->scroller), GTK_WIDGET (self->current));
}

/* The study is what is looked at when nothing is: no reason to leave the place. */
static void
selection_cb (GwDrawer *self)
{
  follow_selection (self);
  if (self->current != NULL && *gw_document_get_selection (self->document) != '\0')
    bring_into_view (self);
}

/* An option that is looked at is the one on the sheet, however that was chosen. */
static void
shown_cb (GwDrawer *self)
{
  update (self);
  if (g_str_has_prefix (gw_document_get_selection (self->document), "options/"))
    {
      GwOutlineRow *row =
        _gw_drawer_row_at (self, GW_PART_OPTIONS, (int) gw_document_get_shown (self->document));

      if (row != NULL)
        gw_document_set_selection (self->document, gw_outline_row_get_path (row));
    }
}

void
_gw_drawer_choose (GwDrawer     *self,
                   GwOutlineRow *row)
{
  g_autofree char *path = g_strdup (gw_outline_row_get_path (row));
  const int        i = gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row));

  if (GW_IS_OPTION_ROW (row))
    gw_document_set_shown (self->document, (guint) i);
  gw_document_set_selection (self->document, path);
}

static void
row_selected_cb (GwDrawer      *self,
                 GtkListBoxRow *row)
{
  if (row != NULL && !self->is_following && self->document != NULL)
    _gw_drawer_choose (self, GW_OUTLINE_ROW (row));
}

static void
folded_cb (GwDrawer *self)
{
  folded = 0;
  for (guint part = 0; part < GW_N_PARTS; part++)
    folded |= (guint) gw_outline_heading_get_folded (self->headings[part]) << part;
}

static void
gw_drawer_dispose (GObject *object)
{
  GwDrawer *self = GW_DRAWER (object);

  gw_document_unfollow (&self->document, self);
  self->current = NULL;
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_DRAWER);

  G_OBJECT_CLASS (gw_drawer_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-drawer.ui");
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, scroller);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, row_menu);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, option_part);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, option_note);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, study_part);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, study_note);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, hint_part);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, hints);
  for (guint part = 0; part < GW_N_PARTS; part++)
    {
      g_autofree char *heading = g_strconcat (part_names[part], "_heading", NULL);
      const gssize     size = (gssize) sizeof (gpointer);

      gtk_widget_class_bind_template_child_full (
        widget_class, part_names[part], FALSE,
        (gssize) G_STRUCT_OFFSET (GwDrawer, lists) + part * size);
      gtk_widget_class_bind_template_child_full (
        widget_class, heading, FALSE,
        (gssize) G_STRUCT_OFFSET (GwDrawer, headings) + part * size);
    }
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
}

static void
gw_drawer_class_init (GwDrawerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_drawer_dispose;
  signals[MESSAGE] = g_signal_new ("message", GW_TYPE_DRAWER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[RENAME] = g_signal_new ("rename", GW_TYPE_DRAWER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "drawer");
  g_type_ensure (GW_TYPE_OUTLINE_HEADING);
  bind_template (widget_class);
  _gw_drawer_install_actions (widget_class);
}

/* All kinds that are added to the lists of @part. */
static void
add_kinds (GwDrawer *self,
           guint     part)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  const GwFreshKind *kind;

  for (guint i = 0; (kind = gw_fresh_kind (i)) != NULL; i++)
    for (guint k = 0; k < G_N_ELEMENTS (study_lists); k++)
      if (study_lists[k].part == part && g_str_equal (study_lists[k].key, kind->list))
        {
          g_autofree char *action = g_strdup_printf ("outline.add::%s", kind->what);

          g_menu_append (menu, g_dgettext (GETTEXT_PACKAGE, kind->label), action);
        }
  gw_outline_heading_set_menu (self->headings[part], G_MENU_MODEL (menu));
}

static void
gw_drawer_init (GwDrawer *self)
{
  const guint was_folded = folded;

  gtk_widget_init_template (GTK_WIDGET (self));
  self->units = *gw_units_standard ();
  for (guint part = 0; part < GW_N_PARTS; part++)
    {
      _gw_drawer_watch_list (self, self->lists[part]);
      gw_outline_heading_set_folded (self->headings[part], (was_folded >> part & 1) != 0);
      g_signal_connect_swapped (self->headings[part], "notify::folded", G_CALLBACK (folded_cb),
                                self);
    }
  add_kinds (self, GW_PART_AIRFRAME);
  add_kinds (self, GW_PART_OWN);
  update (self);
}

void
gw_drawer_set_document (GwDrawer   *self,
                        GwDocument *document)
{
  g_return_if_fail (GW_IS_DRAWER (self));

  if (gw_document_follow (&self->document, document, self, G_CALLBACK (update),
                          G_CALLBACK (shown_cb), G_CALLBACK (selection_cb)))
    update (self);
}

void
gw_drawer_set_units (GwDrawer      *self,
                     const GwUnits *units)
{
  g_return_if_fail (GW_IS_DRAWER (self));

  self->units = *units;
  update (self);
}

void
gw_drawer_set_dark (GwDrawer *self,
                    gboolean  is_dark)
{
  g_return_if_fail (GW_IS_DRAWER (self));

  if (self->is_dark == is_dark)
    return;

  self->is_dark = is_dark;
  update (self);
}
