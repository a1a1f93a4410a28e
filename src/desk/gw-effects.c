/* gw-effects.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-effects.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-direction.h"
#include "report/gw-amount.h"
#include "report/gw-words.h"

#define READABLE 100 /* that words stand at least while something moves [ms] */

/* One line of the table; made once, filled again and again. */
typedef struct
{
  GtkWidget *button, *label, *change;
  GwResultId id;
} Line;

struct _GwEffects
{
  GtkWidget parent_instance;

  GtkLabel *heading, *words;
  GtkBox   *lines;
  Line      line[GW_N_RESULTS];
  guint     n_lines;

  GwDocument *document;
  GwUnits     units;
  guint       words_source; /* until the words may change again; 0: now */
  gboolean    is_due;       /* then they are to */
};

G_DEFINE_FINAL_TYPE (GwEffects, gw_effects, GTK_TYPE_WIDGET)

static void
set_text (GtkLabel   *label,
          const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text) != 0)
    gtk_label_set_text (label, text);
}

static void
pressed_cb (GtkButton *button,
            Line      *line)
{
  gtk_widget_activate_action (GTK_WIDGET (button), "desk.why", "u", (guint) line->id);
}

static Line *
get_line (GwEffects *self,
          guint      i)
{
  Line      *line = &self->line[i];
  GtkWidget *box;

  if (i < self->n_lines)
    return line;

  box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  line->label = gtk_label_new (NULL);
  /* An inscription asks for no other size when its text changes: nothing is laid out anew. */
  line->change = gtk_inscription_new (NULL);
  gtk_widget_set_hexpand (line->label, TRUE);
  gtk_label_set_xalign (GTK_LABEL (line->label), 0.0f);
  /* One below the other, whatever the language. */
  gtk_widget_set_direction (line->change, GTK_TEXT_DIR_LTR);
  gtk_inscription_set_xalign (GTK_INSCRIPTION (line->change), 1.0f);
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (line->change), 10);
  gtk_widget_add_css_class (line->change, "number");
  gtk_box_append (GTK_BOX (box), line->label);
  gtk_box_append (GTK_BOX (box), line->change);
  line->button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (line->button), box);
  gtk_widget_add_css_class (line->button, "line");
  gtk_widget_set_tooltip_text (line->button, _ ("Where this comes from"));
  g_signal_connect (line->button, "clicked", G_CALLBACK (pressed_cb), line);
  gtk_box_append (self->lines, line->button);
  self->n_lines = i + 1;
  return line;
}

/* "+56 g"; of what has no baseline, or is an instruction rather than a property, its value. */
static char *
change_text (const GwWordsRow *row)
{
  const gboolean is_told = row->id == GW_RESULT_SLIDE || row->id == GW_RESULT_BALLAST;
  const char    *number = row->change != NULL && !is_told ? row->change : row->after;

  return g_strdup_printf ("%s %s", number, row->unit);
}

static void
fill_line (Line             *line,
           const GwWordsRow *row)
{
  g_autofree char *change = change_text (row);
  g_autofree char *name = g_strdup_printf ("%s %s", row->label, change);
  g_autofree char *number = gw_direction_number (change);

  line->id = row->id;
  set_text (GTK_LABEL (line->label), row->label);
  if (g_strcmp0 (gtk_inscription_get_text (GTK_INSCRIPTION (line->change)), number) == 0)
    return;

  gtk_inscription_set_text (GTK_INSCRIPTION (line->change), number);
  gw_access_name (line->button, name);
}

static void
fill_lines (GwEffects       *self,
            const GPtrArray *rows,
            gboolean         only_changes)
{
  guint n = 0;

  for (guint i = 0; i < rows->len && n < GW_N_RESULTS; i++)
    {
      const GwWordsRow *row = g_ptr_array_index (rows, i);

      if (only_changes && row->change == NULL)
        continue;
      fill_line (get_line (self, n), row);
      gtk_widget_set_visible (self->line[n].button, TRUE);
      n++;
    }
  for (; n < self->n_lines; n++)
    gtk_widget_set_visible (self->line[n].button, FALSE);
}

/* Where the item that is moved to balance has to go: "To balance, Battery goes 7 mm aft, to
 * 157 mm." (nullable) */
static char *
place_text (const GwOutcome *outcome,
            const GwUnits   *units)
{
  const GwAircraft *aircraft = &outcome->assembly->aircraft;
  const double      slide = outcome->results.value[GW_RESULT_SLIDE];
  const double      left = outcome->results.value[GW_RESULT_SLIDE_LEFT];
  const GwItem     *item;
  g_autofree char  *by = NULL, *to = NULL;

  if (aircraft->movable < 0 || !isfinite (slide))
    return NULL;

  item = &aircraft->items[aircraft->movable];
  if (fabs (slide) < 0.5e-3)
    return g_strdup_printf (_ ("It balances with %s where it is."), item->name);

  by = gw_amount_size (units, GW_MM, slide - left, 0);
  to = gw_amount_text (units, GW_MM, item->at[0] + slide - left, 0);
  if (fabs (left) > 0.5e-3)
    return g_strdup_printf (_ ("To balance, %s goes to the end of its bay, to %s, and lead does "
                               "the rest."),
                            item->name, to);
  return g_strdup_printf (slide > 0.0 ? _ ("To balance, %s goes %s aft, to %s.")
                                      : _ ("To balance, %s goes %s forward, to %s."),
                          item->name, by, to);
}

static char *
with_place (char            *words,
            const GwOutcome *outcome,
            const GwUnits   *units)
{
  g_autofree char *first = words, *place = place_text (outcome, units);

  return place != NULL ? g_strdup_printf ("%s %s", place, first) : g_steal_pointer (&first);
}

static void
update_words (GwEffects *self)
{
  GwEvaluation    *now = gw_document_get_evaluation (self->document);
  GwEvaluation    *former = gw_document_get_former (self->document);
  const guint      shown = gw_document_get_shown (self->document);
  g_autofree char *words = NULL;

  self->is_due = FALSE;
  if (former != NULL && shown < former->outcomes->len)
    words = gw_words_of_change (former, now, shown, &self->units);
  else
    {
      words = shown == now->baseline
                ? g_strdup (_ ("The other options are compared with this one."))
                : gw_words_against_baseline (now, shown, &self->units);
      words = with_place (words, gw_evaluation_outcome (now, shown), &self->units);
    }
  set_text (self->words, words);
}

static gboolean
words_cb (gpointer data)
{
  GwEffects *self = data;

  if (self->is_due)
    {
      update_words (self);
      return G_SOURCE_CONTINUE;
    }

  self->words_source = 0;
  return G_SOURCE_REMOVE;
}

/* Nobody reads words that change with every frame, and each change lays the drawer out anew. */
static void
queue_words (GwEffects *self)
{
  self->is_due = TRUE;
  if (gw_document_get_former (self->document) == NULL)
    g_clear_handle_id (&self->words_source, g_source_remove);
  if (self->words_source != 0)
    return;

  update_words (self);
  if (gw_document_get_former (self->document) != NULL)
    self->words_source = g_timeout_add (READABLE, words_cb, self);
}

static void
update (GwEffects *self)
{
  GwEvaluation *now, *former;
  g_autoptr (GPtrArray) rows = NULL;
  guint shown;

  now = self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;
  if (now == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  shown = gw_document_get_shown (self->document);
  former = gw_document_get_former (self->document);
  if (former != NULL && shown < former->outcomes->len)
    {
      rows = gw_words_rows_of_change (former, now, shown, &self->units);
      set_text (self->heading, _ ("What this changes"));
    }
  else
    {
      rows = gw_words_rows_against_baseline (now, shown, &self->units);
      set_text (self->heading,
                shown == now->baseline ? _ ("The baseline") : _ ("Against the baseline"));
    }
  queue_words (self);
  fill_lines (self, rows, former != NULL || shown != now->baseline);
}

void
gw_effects_set_document (GwEffects  *self,
                         GwDocument *document)
{
  g_return_if_fail (GW_IS_EFFECTS (self));

  if (!gw_document_follow (&self->document, document, self, G_CALLBACK (update),
                           G_CALLBACK (update), NULL))
    return;

  g_clear_handle_id (&self->words_source, g_source_remove);
  update (self);
}

void
gw_effects_set_units (GwEffects     *self,
                      const GwUnits *units)
{
  g_return_if_fail (GW_IS_EFFECTS (self));

  self->units = *units;
  update (self);
}

static void
gw_effects_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gw_effects_parent_class)->map (widget);

  update (GW_EFFECTS (widget));
}

static void
gw_effects_dispose (GObject *object)
{
  GwEffects *self = GW_EFFECTS (object);
  GtkWidget *child;

  gw_document_unfollow (&self->document, self);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  self->n_lines = 0;

  G_OBJECT_CLASS (gw_effects_parent_class)->dispose (object);
}

static void
gw_effects_class_init (GwEffectsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_effects_dispose;
  widget_class->map = gw_effects_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "effects");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
gw_effects_init (GwEffects *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->units = *gw_units_standard ();
  self->heading = GTK_LABEL (gtk_label_new (NULL));
  self->words = GTK_LABEL (gtk_label_new (NULL));
  self->lines = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  gtk_label_set_xalign (self->heading, 0.0f);
  gtk_widget_add_css_class (GTK_WIDGET (self->heading), "heading");
  gtk_label_set_xalign (self->words, 0.0f);
  gtk_label_set_wrap (self->words, TRUE);
  gtk_label_set_wrap_mode (self->words, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (self->words, 20); /* else it is tried letter by letter */
  gtk_widget_add_css_class (GTK_WIDGET (self->words), "words");
  gtk_widget_set_parent (GTK_WIDGET (self->heading), GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->words), GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->lines), GTK_WIDGET (self));
}

GtkWidget *
gw_effects_new (void)
{
  return g_object_new (GW_TYPE_EFFECTS, NULL);
}
