/* gw-sheet-typing.c - the number of a handle, typed on the spot
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-sheet-private.h"
#include "study/gw-edit-number.h"
#include "study/gw-edit-option.h"

/* What the number means: of the balance point, what the scale on the bench has. */
static double
balance_root (GwSheetView *self)
{
  const double *value =
    gw_evaluation_outcome (self->evaluation, self->shown)->results.value;

  return value[GW_RESULT_BALANCE_X] - value[GW_RESULT_BALANCE_ROOT];
}

static char *
label_of (GwSheetView *self)
{
  g_autofree char *path = NULL;
  const GwField   *field = NULL;
  const char      *label = _ ("Balance point");

  if (self->typed.kind == GW_GRIP_SPAN)
    label = _ ("Span");
  gw_grip_number (&self->typed, self->document, &path);
  if (self->typed.kind != GW_GRIP_BALANCE && path != NULL)
    {
      gw_record_find (&gw_document_get_study (self->document)->record, path, &field);
      label = field != NULL ? g_dgettext (GETTEXT_PACKAGE, field->label) : "";
    }

  return g_strdup_printf ("%s, %s", label, gw_units_name (&self->units, GW_MM));
}

static char *
present_text (GwSheetView *self)
{
  g_autofree char *path = NULL;
  const GwNumber  *number = gw_grip_number (&self->typed, self->document, &path);
  const GwOutcome *outcome = gw_evaluation_outcome (self->evaluation, self->shown);
  const int        decimals = _gw_sheet_is_in_inches (self) ? 2 : 1;

  if (self->typed.kind == GW_GRIP_BALANCE)
    return gw_entry_text (outcome->results.value[GW_RESULT_BALANCE_ROOT] * 1e3,
                          self->units.of[GW_MM], decimals);

  if (self->typed.kind == GW_GRIP_SPAN)
    return gw_entry_text (2e3 * gw_grip_half_span (self->document, self->typed.path),
                          self->units.of[GW_MM], decimals);

  return number != NULL ? gw_entry_text (number->value, self->units.of[GW_MM], decimals)
                        : g_strdup ("");
}

/* The study with that number, or NULL with the reason. */
static GwStudy *
typed_study (GwSheetView *self,
             double       value,
             GError     **error)
{
  g_autofree char *path = NULL;
  g_autoptr (JsonNode) node = NULL;
  const GwNumber *number;

  if (self->typed.kind == GW_GRIP_BALANCE)
    {
      const double     place = balance_root (self) + value * 1e-3;
      const GwGripMove move = { place, place, 1e-4, 0.0 };

      return gw_grip_move (&self->typed, self->document, &move, error);
    }

  if (self->typed.kind == GW_GRIP_SPAN)
    {
      const GwGripMove move = { 0.5e-3 * value, 0.0, 1e-4, 0.0 };

      return gw_grip_move (&self->typed, self->document, &move, error);
    }

  number = gw_grip_number (&self->typed, self->document, &path);
  if (number == NULL)
    return NULL;

  node = gw_edit_number (number, GW_MM, value);
  return gw_edit_set (gw_document_get_study (self->document),
                      gw_document_get_shown (self->document),
                      gw_document_get_only_here (self->document), path, node, error);
}

static gboolean
try_typed (GwSheetView *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = NULL;
  double   value;
  gboolean is_good =
    gw_entry_parse (gtk_editable_get_text (GTK_EDITABLE (self->entry)), GW_MM,
                    self->units.of[GW_MM], &value, &error);

  if (is_good)
    {
      study = typed_study (self, value, &error);
      is_good = study != NULL && gw_document_try (self->document, study, &error);
    }
  if (!is_good)
    gw_document_leave (self->document);

  gtk_label_set_text (GTK_LABEL (self->entry_problem),
                      is_good || error == NULL ? "" : error->message);
  gtk_widget_set_visible (self->entry_problem, !is_good);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               is_good ? GTK_ACCESSIBLE_INVALID_FALSE : GTK_ACCESSIBLE_INVALID_TRUE,
                               -1);
  return is_good;
}

static void
changed_cb (GwSheetView *self)
{
  if (self->typed.kind != GW_GRIP_NONE)
    try_typed (self);
}

static void
say_balance (GwSheetView *self,
             double       value)
{
  const double     place = balance_root (self) + value * 1e-3;
  const GwGripMove move = { place, place, 1e-4, 0.0 };
  g_autofree char *text = gw_grip_text (&self->typed, self->document, &move, &self->units);

  _gw_sheet_say (self, text);
}

static void
activate_cb (GwSheetView *self)
{
  g_autofree char *name = NULL;
  double           value;

  if (!try_typed (self))
    return;

  if (self->typed.kind == GW_GRIP_BALANCE &&
      gw_entry_parse (gtk_editable_get_text (GTK_EDITABLE (self->entry)), GW_MM,
                      self->units.of[GW_MM], &value, NULL))
    say_balance (self, value);
  if (self->typed.kind == GW_GRIP_SPAN)
    {
      const GwGripMove move = { 0.0, 0.0, 1e-4, 0.0 };
      g_autofree char *text = gw_grip_text (&self->typed, self->document, &move, &self->units);

      _gw_sheet_say (self, text);
    }
  name = gw_grip_name (&self->typed, self->document);
  gw_document_take (self->document, name);
  gtk_popover_popdown (GTK_POPOVER (self->popover));
}

/* Closed by Escape or a press elsewhere: what was only typed is left. */
static void
closed_cb (GwSheetView *self)
{
  gw_grip_clear (&self->typed);
  if (self->document != NULL)
    gw_document_leave (self->document);
}

static void
make_popover (GwSheetView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);

  self->entry_label = gtk_label_new (NULL);
  self->entry = gtk_entry_new ();
  self->entry_problem = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->entry_label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (self->entry_problem), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->entry_problem), 32);
  gtk_label_set_xalign (GTK_LABEL (self->entry_problem), 0.0f);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 10);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 1.0f);
  gtk_box_append (GTK_BOX (box), self->entry_label);
  gtk_box_append (GTK_BOX (box), self->entry);
  gtk_box_append (GTK_BOX (box), self->entry_problem);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY,
                                  self->entry_label, NULL, -1);

  self->popover = gtk_popover_new ();
  gtk_popover_set_child (GTK_POPOVER (self->popover), box);
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->popover, "closed", G_CALLBACK (closed_cb), self);
}

/* Of the number: a dimension is no handle, and stands where the drawing has room for it. */
static gboolean
find_place (GwSheetView  *self,
            const GwGrip *grip,
            double       *x,
            double       *y)
{
  const GwBox *box = &gw_drawing_view (self->front, GW_VIEW_TOP)->box;

  if (grip->kind != GW_GRIP_SPAN)
    return _gw_sheet_grip_place (self, grip, x, y);

  for (size_t i = 0; i < gw_drawing_n (self->front); i++)
    {
      const GwMark *mark = gw_drawing_mark (self->front, i);

      if (mark->target.group == GW_TARGET_SPAN && mark->kind == GW_MARK_TEXT)
        box = &mark->box;
    }
  gw_sheet_view_to_widget (self, box->x + box->width / 2, box->y + box->height / 2, x, y);
  return TRUE;
}

void
_gw_sheet_type (GwSheetView  *self,
                const GwGrip *grip)
{
  g_autofree char *label = NULL, *text = NULL;
  double           x, y;

  if (self->front == NULL || !find_place (self, grip, &x, &y))
    return;
  if (self->popover == NULL)
    make_popover (self);

  gw_grip_clear (&self->typed);
  gw_document_leave (self->document);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->popover),
                               &(GdkRectangle){ (int) x - 4, (int) y - 4, 8, 8 });
  gw_grip_copy (&self->typed, grip);
  label = label_of (self);
  text = present_text (self);
  self->typed.kind = GW_GRIP_NONE; /* to fill the entry is not to type */
  gtk_label_set_text (GTK_LABEL (self->entry_label), label);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  self->typed.kind = grip->kind;
  gtk_widget_set_visible (self->entry_problem, FALSE);
  gtk_popover_popup (GTK_POPOVER (self->popover));
  gtk_widget_grab_focus (self->entry);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}

void
_gw_sheet_typing_clear (GwSheetView *self)
{
  g_clear_pointer (&self->popover, gtk_widget_unparent);
}
