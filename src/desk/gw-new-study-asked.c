/* gw-new-study-asked.c - span, chord and mass as they are typed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-new-study-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-form-value.h"

/* In the document's units, that the entries give; the templates take metres and kilograms. */
static const struct
{
  GwQuantity  quantity;
  const char *name;
} asked[GW_N_ASKED] = {
  [GW_ASKED_SPAN] = { GW_MM, N_ ("Span") },
  [GW_ASKED_CHORD] = { GW_MM, N_ ("Mean chord") },
  [GW_ASKED_MASS] = { GW_G, N_ ("Mass goal") },
};

static GwTemplateRange
range_of (const GwNewStudy *self,
          GwAsked           what)
{
  const double    span = self->values[GW_ASKED_SPAN] / 1000.0;
  const double    chord = self->values[GW_ASKED_CHORD] / 1000.0;
  GwTemplateRange range = self->shape->span;

  if (what == GW_ASKED_CHORD)
    range = gw_template_chords (self->shape, span);
  else if (what == GW_ASKED_MASS)
    range = gw_template_masses (self->shape, span, chord);
  return (GwTemplateRange){ 1000.0 * range.least, 1000.0 * range.usual, 1000.0 * range.most };
}

/* What is typed keeps its digits, in the unit that is shown; what is usual is round. */
void
_gw_new_study_fill (GwNewStudy *self,
                    GwAsked     what,
                    double      value)
{
  const GwQuantity quantity = asked[what].quantity;
  g_autofree char *text =
    self->is_own[what] ? gw_form_number_text (value, quantity, &self->units)
                       : gw_entry_text (value, self->units.of[quantity],
                                        gw_units_decimals (&self->units, quantity, 0));

  self->is_filling = TRUE;
  gtk_editable_set_text (self->entries[what], text);
  self->is_filling = FALSE;
}

/* An end of what may be typed, rounded to @nearest: inwards, so that it can be typed. */
static char *
end_text (const GwUnits *units,
          GwQuantity     quantity,
          double         end,
          double (*nearest) (double))
{
  const int    decimals = gw_units_decimals (units, quantity, 0);
  const double scale = pow (10.0, decimals);

  return g_strdup_printf ("%.*f", decimals,
                          nearest (gw_units_shown (units, quantity, end) * scale) / scale);
}

/* "mm, 1100 to 1900" */
static void
show_hint (GwNewStudy *self,
           GwAsked     what)
{
  const GwTemplateRange range = range_of (self, what);
  const GwQuantity      quantity = asked[what].quantity;
  g_autofree char      *least = end_text (&self->units, quantity, range.least, ceil);
  g_autofree char      *most = end_text (&self->units, quantity, range.most, floor);
  /* Translators: a unit, the least and the most that may be typed: "mm, 1100 to 1900" */
  g_autofree char *text =
    g_strdup_printf (_ ("%s, %s to %s"), gw_units_name (&self->units, quantity), least, most);

  gtk_label_set_text (self->hints[what], text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entries[what]),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static char *
beyond_text (GwNewStudy *self,
             GwAsked     what)
{
  return g_strdup_printf (_ ("%s: this shape goes no further (%s)."), _ (asked[what].name),
                          gtk_label_get_text (self->hints[what]));
}

static void
show_invalid (GwNewStudy *self,
              GwAsked     what,
              gboolean    is_invalid)
{
  GtkWidget *entry = GTK_WIDGET (self->entries[what]);

  if (is_invalid)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_invalid ? GTK_ACCESSIBLE_INVALID_TRUE
                                          : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
}

/* One value after the other, because each sets the range of the next. */
char *
_gw_new_study_read (GwNewStudy *self)
{
  char *wrong = NULL;

  for (GwAsked what = GW_ASKED_SPAN; what < GW_N_ASKED; what++)
    {
      const GwQuantity quantity = asked[what].quantity;
      g_autoptr (GError) error = NULL;
      gboolean is_read;

      show_invalid (self, what, FALSE);
      if (wrong != NULL)
        continue;

      show_hint (self, what);
      if (!self->is_own[what])
        {
          self->values[what] = round (range_of (self, what).usual);
          _gw_new_study_fill (self, what, self->values[what]);
          continue;
        }

      is_read = gw_entry_parse (gtk_editable_get_text (self->entries[what]), quantity,
                                self->units.of[quantity], &self->values[what], &error);
      if (is_read && self->values[what] >= range_of (self, what).least &&
          self->values[what] <= range_of (self, what).most)
        continue;

      show_invalid (self, what, TRUE);
      wrong = is_read ? beyond_text (self, what)
                      : g_strdup_printf ("%s: %s", _ (asked[what].name), error->message);
    }

  return wrong;
}

void
_gw_new_study_restate (GwNewStudy *self,
                       GtkWidget  *entry)
{
  for (GwAsked what = GW_ASKED_SPAN; what < GW_N_ASKED; what++)
    {
      const GwQuantity quantity = asked[what].quantity;
      double           value;

      if (GTK_WIDGET (self->entries[what]) == entry && self->is_own[what] &&
          gw_entry_parse (gtk_editable_get_text (self->entries[what]), quantity,
                          self->units.of[quantity], &value, NULL))
        _gw_new_study_fill (self, what, value);
    }
}
