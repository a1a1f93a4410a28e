/* gw-sheet-keys.c - keys and commands of the sheet: nudging, typing, zoom
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sheet-private.h"

#include <glib/gi18n-lib.h>

/* The selected station or item, as it is taken from above. */
static void
selected_grip (GwSheetView *self,
               GwGrip      *out)
{
  const char *selection = gw_document_get_selection (self->document);

  for (guint i = 0; i < self->grips->len && out->kind == GW_GRIP_NONE; i++)
    {
      const GwGrip *handle = &g_array_index (self->grips, GwGrip, i);

      if (handle->kind == GW_GRIP_STATION && !handle->is_image &&
          g_strcmp0 (handle->path, selection) == 0)
        gw_grip_copy (out, handle);
    }
  if (out->kind == GW_GRIP_NONE)
    gw_grip_of_item (self->document, selection, GW_VIEW_TOP, FALSE, out);
}

/* Keys move what is selected by a millimetre, with Shift by ten; one after the other they are
 * one step of undo. */
static gboolean
nudge (GwSheetView *self,
       double       du,
       double       dv,
       gboolean     is_far)
{
  const double     step = _gw_sheet_step (self);
  g_autofree char *merge = NULL, *name = NULL;
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GError) error = NULL;
  GwGrip grip = { .kind = GW_GRIP_NONE };

  selected_grip (self, &grip);
  if (grip.kind == GW_GRIP_NONE)
    return FALSE;

  gw_document_leave (self->document);
  self->move = (GwGripMove){ grip.u + du * step * (is_far ? 10.0 : 1.0),
                             grip.v + dv * step * (is_far ? 10.0 : 1.0), step / 10.0, 0.0 };
  study = gw_grip_move (&grip, self->document, &self->move, &error);
  name = gw_grip_name (&grip, self->document);
  merge = g_strdup_printf ("nudge %s", grip.path);
  gw_grip_clear (&self->held);
  gw_grip_copy (&self->held, &grip);
  if (du != 0.0 && study == gw_document_get_study (self->document))
    _gw_sheet_say (self, _ ("It moves fore and aft alone: Up and Down"));
  else if (study != NULL && gw_document_edit (self->document, name, study, merge, &error))
    _gw_sheet_say_move (self);
  else
    _gw_sheet_say (self, error->message);
  gw_grip_clear (&self->held);
  gw_grip_clear (&grip);
  return TRUE;
}

static gboolean
leave_drag (GwSheetView *self)
{
  if (!self->has_moved || self->held.kind == GW_GRIP_NONE)
    return FALSE;

  gw_document_leave (self->document);
  _gw_sheet_let_go (self);
  _gw_sheet_say (self, "");
  return TRUE;
}

static gboolean
escape (GwSheetView *self)
{
  if (leave_drag (self))
    return TRUE;
  if (*gw_document_get_selection (self->document) == '\0')
    return FALSE;

  gw_document_set_selection (self->document, "");
  return TRUE;
}

/* Of the wing whose span is the dimension on the planform. (transfer full) (nullable) */
static char *
span_path (GwSheetView *self)
{
  const GwAircraft *aircraft =
    &gw_evaluation_outcome (self->evaluation, self->shown)->assembly->aircraft;

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    if (aircraft->surfaces[i].role == GW_ROLE_WING && aircraft->surfaces[i].n_stations >= 2)
      return aircraft->surfaces[i].is_mirrored
               ? _gw_sheet_path_of (self, (GwTarget){ GW_GROUP_SURFACE, (int) i, 0 })
               : NULL;

  return NULL;
}

static void
type_span_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  GwSheetView *self = GW_SHEET_VIEW (widget);
  GwGrip       grip = { .kind = GW_GRIP_SPAN, .view = GW_VIEW_TOP };

  if (self->evaluation == NULL || self->front == NULL)
    return;

  grip.path = span_path (self);
  if (grip.path != NULL)
    _gw_sheet_type (self, &grip);
  gw_grip_clear (&grip);
}

static void
type_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  GwSheetView     *self = GW_SHEET_VIEW (widget);
  GwGrip           grip = { .kind = GW_GRIP_NONE };
  g_autofree char *span = NULL;

  if (self->evaluation == NULL)
    return;

  span = span_path (self);
  if (g_strcmp0 (span, gw_document_get_selection (self->document)) == 0)
    {
      type_span_cb (widget, action, parameter);
      return;
    }

  gw_grip_of_item (self->document, gw_document_get_selection (self->document), GW_VIEW_TOP, FALSE,
                   &grip);
  if (grip.kind != GW_GRIP_NONE)
    _gw_sheet_type (self, &grip);
  gw_grip_clear (&grip);
}

static void
type_balance_cb (GtkWidget  *widget,
                 const char *action,
                 GVariant   *parameter)
{
  GwSheetView *self = GW_SHEET_VIEW (widget);

  for (guint i = 0; i < self->grips->len; i++)
    if (g_array_index (self->grips, GwGrip, i).kind == GW_GRIP_BALANCE)
      {
        _gw_sheet_type (self, &g_array_index (self->grips, GwGrip, i));
        return;
      }
}

gboolean
_gw_sheet_key_cb (GtkEventControllerKey *controller,
                  guint                  key,
                  guint                  code,
                  GdkModifierType        state,
                  GwSheetView           *self)
{
  const gboolean is_far = (state & GDK_SHIFT_MASK) != 0;

  /* Undone is what is under way, before what was done last. */
  if ((state & GDK_CONTROL_MASK) != 0 && gdk_keyval_to_lower (key) == GDK_KEY_z)
    return leave_drag (self);
  if (self->evaluation == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;

  switch (key)
    {
    case GDK_KEY_Up:
      return nudge (self, 0.0, -1.0, is_far);
    case GDK_KEY_Down:
      return nudge (self, 0.0, 1.0, is_far);
    case GDK_KEY_Left:
      return nudge (self, -1.0, 0.0, is_far);
    case GDK_KEY_Right:
      return nudge (self, 1.0, 0.0, is_far);
    case GDK_KEY_Escape:
      return escape (self);
    default:
      return FALSE;
    }
}

static void
zoom_about_middle (GtkWidget *widget,
                   double     zoom)
{
  _gw_sheet_set_zoom (GW_SHEET_VIEW (widget), zoom, gtk_widget_get_width (widget) / 2.0,
                      gtk_widget_get_height (widget) / 2.0);
}

static void
zoom_in_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  zoom_about_middle (widget, GW_SHEET_VIEW (widget)->zoom * GW_SHEET_ZOOM_STEP);
}

static void
zoom_out_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  zoom_about_middle (widget, GW_SHEET_VIEW (widget)->zoom / GW_SHEET_ZOOM_STEP);
}

static void
zoom_fit_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  zoom_about_middle (widget, 1.0);
}

void
_gw_sheet_install_actions (GtkWidgetClass *widget_class)
{
  static const struct
  {
    guint       key;
    const char *action;
  } keys[] = {
    { GDK_KEY_plus, "sheet.zoom-in" },
    { GDK_KEY_KP_Add, "sheet.zoom-in" },
    { GDK_KEY_equal, "sheet.zoom-in" },
    { GDK_KEY_minus, "sheet.zoom-out" },
    { GDK_KEY_KP_Subtract, "sheet.zoom-out" },
    { GDK_KEY_0, "sheet.zoom-fit" },
  };

  gtk_widget_class_install_action (widget_class, "sheet.zoom-in", NULL, zoom_in_cb);
  gtk_widget_class_install_action (widget_class, "sheet.zoom-out", NULL, zoom_out_cb);
  gtk_widget_class_install_action (widget_class, "sheet.zoom-fit", NULL, zoom_fit_cb);
  gtk_widget_class_install_action (widget_class, "sheet.type", NULL, type_cb);
  gtk_widget_class_install_action (widget_class, "sheet.type-balance", NULL, type_balance_cb);
  gtk_widget_class_install_action (widget_class, "sheet.type-span", NULL, type_span_cb);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding_action (widget_class, keys[i].key, GDK_CONTROL_MASK,
                                         keys[i].action, NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, 0, "sheet.type", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_Enter, 0, "sheet.type", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_b, 0, "sheet.type-balance", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, 0, "sheet.type-span", NULL);
}
