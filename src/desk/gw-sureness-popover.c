/* gw-sureness-popover.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sureness-popover.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-form-value.h"
#include "desk/gw-form-words.h"
#include "study/gw-edit-number.h"

struct _GwSurenessPopover
{
  GtkPopover parent_instance;

  GwFormSite    *site;
  char          *path;
  const GwField *field;
  GwNumber       number;

  GtkCheckButton *exact, *spread, *range;
  GtkWidget      *spread_entry, *range_entries;
  GtkWidget      *low_entry, *high_entry;
  GtkLabel       *unit;
  GtkCheckButton *given, *guessed, *catalogue, *computed, *weighed;
  GtkWidget      *source_entry;
  GtkLabel       *reason;

  gboolean is_setting;
  gboolean has_tried;
};

G_DEFINE_FINAL_TYPE (GwSurenessPopover, gw_sureness_popover, GTK_TYPE_POPOVER)

static const GwUnits *
units_of (GwSurenessPopover *self)
{
  return gw_form_site_get_units (self->site);
}

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static GwOrigin
origin_of (GwSurenessPopover *self)
{
  return gtk_check_button_get_active (self->guessed)     ? GW_ORIGIN_GUESSED
         : gtk_check_button_get_active (self->catalogue) ? GW_ORIGIN_CATALOGUE
         : gtk_check_button_get_active (self->computed)  ? GW_ORIGIN_COMPUTED
         : gtk_check_button_get_active (self->weighed)   ? GW_ORIGIN_WEIGHED
                                                         : GW_ORIGIN_GIVEN;
}

static gboolean
read_range (GwSurenessPopover *self,
            GwNumber          *number,
            GError           **error)
{
  double low, high;

  if (!gw_form_number_parse (text_of (self->low_entry), self->field, units_of (self), &low,
                             error) ||
      !gw_form_number_parse (text_of (self->high_entry), self->field, units_of (self), &high,
                             error))
    return FALSE;

  if (low <= number->value && number->value <= high)
    {
      gw_number_set_range (number, low, number->value, high);
      return TRUE;
    }

  g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
                       _ ("the value must lie between low and high"));
  return FALSE;
}

static gboolean
read_number (GwSurenessPopover *self,
             GwNumber          *number,
             GError           **error)
{
  double spread;

  number->origin = origin_of (self);
  g_free (number->source);
  number->source =
    *text_of (self->source_entry) != '\0' ? g_strdup (text_of (self->source_entry)) : NULL;

  if (gtk_check_button_get_active (self->range))
    return read_range (self, number, error);

  if (!gtk_check_button_get_active (self->spread))
    {
      gw_number_set (number, number->value);
      return TRUE;
    }

  if (!gw_form_spread_parse (text_of (self->spread_entry), self->field, units_of (self),
                             number->value, &spread, error))
    return FALSE;

  gw_number_set_spread (number, number->value, spread);
  return TRUE;
}

static void
refuse (GwSurenessPopover *self,
        const GError      *error)
{
  g_autofree char *reason = error != NULL ? gw_form_reason (error, self->path) : NULL;

  gtk_label_set_text (self->reason, reason != NULL ? reason : "");
  gtk_widget_set_visible (GTK_WIDGET (self->reason), reason != NULL);
}

static void
leave (GwSurenessPopover *self)
{
  if (self->has_tried)
    gw_form_site_leave (self->site);
  self->has_tried = FALSE;
}

static void
changed_cb (GwSurenessPopover *self)
{
  g_autoptr (GError) error = NULL;
  GwNumber number = { 0 };

  gtk_widget_set_sensitive (self->spread_entry, gtk_check_button_get_active (self->spread));
  gtk_widget_set_sensitive (self->range_entries, gtk_check_button_get_active (self->range));
  if (self->is_setting)
    return;

  gw_number_copy (&number, &self->number);
  if (read_number (self, &number, &error))
    {
      g_autoptr (JsonNode) node = gw_edit_number_node (&number);

      if (gw_form_site_try (self->site, self->path, node, &error))
        self->has_tried = TRUE;
    }
  gw_number_clear (&number);

  if (error != NULL)
    leave (self);
  refuse (self, error);
}

static void
done_cb (GwSurenessPopover *self)
{
  gtk_popover_popdown (GTK_POPOVER (self));
}

static void
closed_cb (GwSurenessPopover *self)
{
  if (self->has_tried)
    gw_form_site_take (self->site, self->path);
  self->has_tried = FALSE;
}

static gboolean
key_cb (GwSurenessPopover *self,
        guint              key)
{
  if (key != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;

  leave (self);
  gtk_popover_popdown (GTK_POPOVER (self));
  return GDK_EVENT_STOP;
}

static void
gw_sureness_popover_dispose (GObject *object)
{
  GwSurenessPopover *self = GW_SURENESS_POPOVER (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), GW_TYPE_SURENESS_POPOVER);
  g_clear_object (&self->site);

  G_OBJECT_CLASS (gw_sureness_popover_parent_class)->dispose (object);
}

static void
gw_sureness_popover_finalize (GObject *object)
{
  GwSurenessPopover *self = GW_SURENESS_POPOVER (object);

  gw_number_clear (&self->number);
  g_free (self->path);

  G_OBJECT_CLASS (gw_sureness_popover_parent_class)->finalize (object);
}

static void
gw_sureness_popover_class_init (GwSurenessPopoverClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_sureness_popover_dispose;
  G_OBJECT_CLASS (klass)->finalize = gw_sureness_popover_finalize;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-sureness-popover.ui");
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, exact);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, spread);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, range);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, spread_entry);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, range_entries);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, low_entry);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, high_entry);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, unit);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, given);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, guessed);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, catalogue);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, computed);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, weighed);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, source_entry);
  gtk_widget_class_bind_template_child (widget_class, GwSurenessPopover, reason);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, done_cb);
  gtk_widget_class_bind_template_callback (widget_class, closed_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_cb);
}

/* Figures and their sign run from left to right in every language. */
static void
run_from_left (GtkWidget *entry)
{
  gtk_widget_set_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (entry))),
                            GTK_TEXT_DIR_LTR);
}

static void
gw_sureness_popover_init (GwSurenessPopover *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  run_from_left (self->spread_entry);
  run_from_left (self->low_entry);
  run_from_left (self->high_entry);
}

GtkWidget *
gw_sureness_popover_new (GwFormSite    *site,
                         const char    *path,
                         const GwField *field)
{
  GwSurenessPopover *self = g_object_new (GW_TYPE_SURENESS_POPOVER, NULL);

  self->site = g_object_ref (site);
  self->path = g_strdup (path);
  self->field = field;
  gtk_label_set_text (self->unit, gw_units_name (units_of (self), field->quantity));
  return GTK_WIDGET (self);
}

/* Two digits are as much as one is worth that nobody has stated. */
static double
rounded (double spread)
{
  const double size = spread > 0.0 ? pow (10.0, 1.0 - floor (log10 (spread))) : 1.0;

  return round (spread * size) / size;
}

/* Where there is no spread yet the entries hold one to begin with: a tenth of the value. */
static void
fill_entries (GwSurenessPopover *self)
{
  const GwNumber  *number = &self->number;
  const gboolean   is_sure = !gw_number_is_uncertain (number);
  const double     wide = is_sure ? MAX (0.1 * ABS (number->value), 1e-3) : 0.0;
  const double     low = MAX (is_sure ? number->value - wide : number->low, self->field->least);
  const double     high = MIN (is_sure ? number->value + wide : number->high, self->field->most);
  const double     deviation = number->form == GW_FORM_SPREAD && !is_sure
                                 ? number->spread
                                 : rounded ((high - low) / (2.0 * GW_Z90));
  const GwQuantity quantity = self->field->quantity;
  g_autofree char *spread_text = gw_form_spread_text (deviation, quantity, units_of (self));
  g_autofree char *low_text = gw_form_number_text (low, quantity, units_of (self));
  g_autofree char *high_text = gw_form_number_text (high, quantity, units_of (self));

  gtk_editable_set_text (GTK_EDITABLE (self->spread_entry), spread_text);
  gtk_editable_set_text (GTK_EDITABLE (self->low_entry), low_text);
  gtk_editable_set_text (GTK_EDITABLE (self->high_entry), high_text);
  gtk_editable_set_text (GTK_EDITABLE (self->source_entry),
                         number->source != NULL ? number->source : "");
}

void
gw_sureness_popover_show (GwSurenessPopover *self,
                          const GwNumber    *number)
{
  GtkCheckButton *const origins[GW_N_ORIGINS] = {
    [GW_ORIGIN_GIVEN] = self->given,
    [GW_ORIGIN_GUESSED] = self->guessed,
    [GW_ORIGIN_CATALOGUE] = self->catalogue,
    [GW_ORIGIN_COMPUTED] = self->computed,
    [GW_ORIGIN_WEIGHED] = self->weighed,
  };
  const gboolean is_sure = !gw_number_is_uncertain (number);

  gw_number_copy (&self->number, number);
  self->has_tried = FALSE;
  self->is_setting = TRUE;
  gtk_check_button_set_active (is_sure                         ? self->exact
                               : number->form == GW_FORM_RANGE ? self->range
                                                               : self->spread,
                               TRUE);
  gtk_check_button_set_active (origins[number->origin], TRUE);
  fill_entries (self);
  changed_cb (self);
  self->is_setting = FALSE;
  refuse (self, NULL);
}
