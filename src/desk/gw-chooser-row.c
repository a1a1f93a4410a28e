/* gw-chooser-row.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-chooser-row.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-outline-view.h"

struct _GwChooserRow
{
  GtkListBoxRow parent_instance;

  GwChooserItem *item;
  guint          place;
  char          *folded_name, *haystack; /* the name and all it says, case folded */
  GtkLabel      *name, *detail, *effect, *brief;
  GwOutlineView *outline;
};

G_DEFINE_FINAL_TYPE (GwChooserRow, gw_chooser_row, GTK_TYPE_LIST_BOX_ROW)

GwChooserItem *
gw_chooser_item_new (const char *id,
                     const char *name,
                     const char *detail,
                     const char *group)
{
  GwChooserItem *item = g_new0 (GwChooserItem, 1);

  item->id = g_strdup (id);
  item->name = g_strdup (name);
  item->detail = g_strdup (detail);
  item->group = g_strdup (group);
  return item;
}

void
gw_chooser_item_free (GwChooserItem *item)
{
  g_free (item->id);
  g_free (item->name);
  g_free (item->detail);
  g_free (item->group);
  g_free (item->outline);
  g_free (item);
}

void
gw_chooser_item_set_outline (GwChooserItem   *item,
                             const GwOutline *outline)
{
  g_free (item->outline);
  item->outline = g_memdup2 (outline, sizeof *outline);
}

static void
gw_chooser_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_CHOOSER_ROW);

  G_OBJECT_CLASS (gw_chooser_row_parent_class)->dispose (object);
}

static void
gw_chooser_row_finalize (GObject *object)
{
  GwChooserRow *self = GW_CHOOSER_ROW (object);

  gw_chooser_item_free (self->item);
  g_free (self->folded_name);
  g_free (self->haystack);

  G_OBJECT_CLASS (gw_chooser_row_parent_class)->finalize (object);
}

static void
gw_chooser_row_class_init (GwChooserRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_chooser_row_dispose;
  G_OBJECT_CLASS (klass)->finalize = gw_chooser_row_finalize;
  g_type_ensure (GW_TYPE_OUTLINE_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-chooser-row.ui");
  gtk_widget_class_bind_template_child (widget_class, GwChooserRow, outline);
  gtk_widget_class_bind_template_child (widget_class, GwChooserRow, name);
  gtk_widget_class_bind_template_child (widget_class, GwChooserRow, detail);
  gtk_widget_class_bind_template_child (widget_class, GwChooserRow, effect);
  gtk_widget_class_bind_template_child (widget_class, GwChooserRow, brief);
}

static void
gw_chooser_row_init (GwChooserRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
describe (GwChooserRow *self,
          const char   *effect)
{
  const char      *detail = self->item->detail != NULL ? self->item->detail : "";
  const gboolean   has_both = effect != NULL && *effect != '\0' && *detail != '\0';
  g_autofree char *text = has_both ? g_strdup_printf (_ ("%s, %s"), detail, effect)
                                   : g_strdup (effect != NULL && *effect != '\0' ? effect : detail);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->item->name, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

GtkWidget *
gw_chooser_row_new (GwChooserItem *item,
                    guint          place)
{
  GwChooserRow    *self = g_object_new (GW_TYPE_CHOOSER_ROW, NULL);
  g_autofree char *all = g_strjoin (" ", item->name, item->detail != NULL ? item->detail : "",
                                    item->group != NULL ? item->group : "", NULL);

  self->item = item;
  self->place = place;
  self->folded_name = g_utf8_casefold (item->name, -1);
  self->haystack = g_utf8_casefold (all, -1);
  gtk_label_set_text (self->name, item->name);
  gtk_label_set_text (self->detail, item->detail != NULL ? item->detail : "");
  gtk_widget_set_visible (GTK_WIDGET (self->detail), item->detail != NULL);
  if (item->outline != NULL)
    {
      gw_outline_view_show (self->outline, item->outline, NULL);
      gtk_widget_show (GTK_WIDGET (self->outline));
      /* Its line is there before the words, so that the list stays where it was opened. */
      gtk_widget_show (GTK_WIDGET (self->brief));
    }
  describe (self, NULL);
  return GTK_WIDGET (self);
}

const char *
gw_chooser_row_get_id (GwChooserRow *self)
{
  return self->item->id;
}

const char *
gw_chooser_row_get_group (GwChooserRow *self)
{
  return self->item->group;
}

static gboolean
holds_words (const char *haystack,
             const char *typed)
{
  g_autofree char *folded = g_utf8_casefold (typed, -1);
  g_auto (GStrv) words = g_strsplit_set (folded, " \t", -1);

  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (haystack, words[i]) == NULL)
      return FALSE;

  return TRUE;
}

gboolean
gw_chooser_row_matches (GwChooserRow *self,
                        const char   *typed)
{
  return holds_words (self->haystack, typed);
}

int
gw_chooser_row_compare (GwChooserRow *self,
                        GwChooserRow *other,
                        const char   *typed)
{
  const int by_name =
    holds_words (other->folded_name, typed) - holds_words (self->folded_name, typed);

  return by_name != 0 ? by_name : (self->place > other->place) - (self->place < other->place);
}

void
gw_chooser_row_set_brief (GwChooserRow *self,
                          const char   *brief)
{
  g_autofree char *detail = self->item->detail != NULL
                              ? g_strdup_printf (_ ("%s, %s"), self->item->detail, brief)
                              : g_strdup (brief);

  gtk_label_set_text (self->brief, brief);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  detail, -1);
}

void
gw_chooser_row_set_effect (GwChooserRow *self,
                           const char   *effect)
{
  gtk_label_set_text (self->effect, effect);
  gtk_widget_set_visible (GTK_WIDGET (self->effect), *effect != '\0');
  describe (self, effect);
}
