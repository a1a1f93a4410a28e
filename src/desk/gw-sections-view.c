/* gw-sections-view.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sections-view.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-access.h"

struct _GwSectionsView
{
  GtkWidget parent_instance;

  GtkWidget      *page;
  GtkDropDown    *kinds;
  GtkCheckButton *only; /* of the option shown */
  GtkDrawingArea *paper;

  GwDocument         *document;
  GwUnits             units;
  GwSectionFigureKind kind;
  GwSectionSheet     *sheet; /* (nullable): on the screen */
  GCancellable       *cancellable;
  gboolean            is_dark;
  gboolean            is_making; /* in a thread */
  gboolean            is_dirty;  /* it shows something older */
};

G_DEFINE_FINAL_TYPE (GwSectionsView, gw_sections_view, GTK_TYPE_WIDGET)

static const char *const kind_names[] = {
  [GW_SECTION_POLAR] = N_ ("Polars"),
  [GW_SECTION_GREATEST_LIFT] = N_ ("Greatest lift"),
  [GW_SECTION_PRESSURE] = N_ ("Pressure along the chord"),
};
G_STATIC_ASSERT (G_N_ELEMENTS (kind_names) == GW_N_SECTION_FIGURES);

static const GwSectionWords *
words_of (const GwSectionSheet *sheet)
{
  if (gw_section_sheet_polar (sheet) != NULL)
    return &gw_section_sheet_polar (sheet)->words;
  if (gw_section_sheet_greatest_lift (sheet) != NULL)
    return &gw_section_sheet_greatest_lift (sheet)->words;

  return &gw_section_sheet_pressure (sheet)->words;
}

/* For who does not see it: what it is of, and what is missing. */
static void
describe (GwSectionsView *self)
{
  const GwSectionWords *words = words_of (self->sheet);
  g_autofree char      *text =
    g_strdup_printf ("%s. %s", words->conditions != NULL ? words->conditions : "",
                     words->notes != NULL ? words->notes : "");

  gw_access_name (GTK_WIDGET (self->paper), words->title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->paper),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void update (GwSectionsView *self);

static void
made_cb (GObject      *none,
         GAsyncResult *result,
         gpointer      data)
{
  GwSectionSheet *sheet = gw_section_sheet_made (result);
  GwSectionsView *self;

  if (sheet == NULL) /* the view is gone */
    return;

  self = GW_SECTIONS_VIEW (data);
  self->is_making = FALSE;
  g_clear_pointer (&self->sheet, gw_section_sheet_free);
  self->sheet = sheet;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self->paper));
  if (self->is_dirty)
    update (self);
}

static void
name_only (GwSectionsView *self)
{
  const GwOutcome *outcome = gw_evaluation_outcome (gw_document_get_evaluation (self->document),
                                                    gw_document_get_shown (self->document));
  g_autofree char *label = g_strdup_printf (_ ("only %s"), outcome->name);

  gtk_check_button_set_label (self->only, label);
}

/* One is made at a time: what changes meanwhile is in the next. */
static void
update (GwSectionsView *self)
{
  GwEvaluation *evaluation =
    self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;
  GwSectionChoice choice = GW_SECTION_CHOICE_ALL;

  self->is_dirty = TRUE;
  if (evaluation == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  name_only (self);
  if (self->is_making)
    return;

  if (gtk_check_button_get_active (self->only))
    choice.option = (int) gw_document_get_shown (self->document);
  self->is_dirty = FALSE;
  self->is_making = TRUE;
  gw_section_sheet_make (evaluation, self->kind, &choice, &self->units, self->cancellable, made_cb,
                         self);
}

static void
selected_cb (GwSectionsView *self)
{
  const guint selected = gtk_drop_down_get_selected (self->kinds);

  gw_access_name_drop_down (self->kinds, _ ("Figure"));
  if (selected < GW_N_SECTION_FIGURES)
    gw_sections_view_set_kind (self, (GwSectionFigureKind) selected);
}

static void
draw (GtkDrawingArea *paper,
      cairo_t        *cr,
      int             width,
      int             height,
      gpointer        data)
{
  const GwSectionsView *self = data;
  int                   resolution = 96 * 1024;
  double                point;
  GwDrawing            *drawing;

  if (self->sheet == NULL)
    return;

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (paper)), "gtk-xft-dpi", &resolution, NULL);
  point = MAX (resolution / (1024.0 * 72.0), 1.0);
  drawing = gw_section_sheet_draw (self->sheet, width / point, height / point, self->is_dark);
  cairo_scale (cr, point, point);
  gw_drawing_ink (drawing, cr);
  gw_drawing_free (drawing);
}

static void
gw_sections_view_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gw_sections_view_parent_class)->map (widget);
  if (GW_SECTIONS_VIEW (widget)->is_dirty)
    update (GW_SECTIONS_VIEW (widget));
}

static gboolean
gw_sections_view_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (GW_SECTIONS_VIEW (widget)->kinds));
}

static void
gw_sections_view_dispose (GObject *object)
{
  GwSectionsView *self = GW_SECTIONS_VIEW (object);

  g_cancellable_cancel (self->cancellable);
  gw_document_unfollow (&self->document, self);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_SECTIONS_VIEW);

  G_OBJECT_CLASS (gw_sections_view_parent_class)->dispose (object);
}

static void
gw_sections_view_finalize (GObject *object)
{
  GwSectionsView *self = GW_SECTIONS_VIEW (object);

  g_clear_object (&self->cancellable);
  g_clear_pointer (&self->sheet, gw_section_sheet_free);

  G_OBJECT_CLASS (gw_sections_view_parent_class)->finalize (object);
}

static void
gw_sections_view_class_init (GwSectionsViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_sections_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = gw_sections_view_finalize;
  widget_class->map = gw_sections_view_map;
  widget_class->grab_focus = gw_sections_view_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sectionsview");
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-sections-view.ui");
  gtk_widget_class_bind_template_child (widget_class, GwSectionsView, page);
  gtk_widget_class_bind_template_child (widget_class, GwSectionsView, kinds);
  gtk_widget_class_bind_template_child (widget_class, GwSectionsView, only);
  gtk_widget_class_bind_template_child (widget_class, GwSectionsView, paper);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, update);
}

static void
gw_sections_view_init (GwSectionsView *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  self->units = *gw_units_standard ();
  self->cancellable = g_cancellable_new ();
  self->is_dirty = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (kind_names); i++)
    gtk_string_list_append (list, _ (kind_names[i]));
  gtk_drop_down_set_model (self->kinds, G_LIST_MODEL (list));
  gw_access_name_drop_down (self->kinds, _ ("Figure"));
  gtk_drawing_area_set_draw_func (self->paper, draw, self, NULL);
}

GtkWidget *
gw_sections_view_new (void)
{
  return g_object_new (GW_TYPE_SECTIONS_VIEW, NULL);
}

void
gw_sections_view_set_document (GwSectionsView *self,
                               GwDocument     *document)
{
  g_return_if_fail (GW_IS_SECTIONS_VIEW (self));

  if (gw_document_follow (&self->document, document, self, G_CALLBACK (update),
                          G_CALLBACK (update), NULL))
    update (self);
}

void
gw_sections_view_set_units (GwSectionsView *self,
                            const GwUnits  *units)
{
  g_return_if_fail (GW_IS_SECTIONS_VIEW (self));

  self->units = *units;
  update (self);
}

void
gw_sections_view_set_dark (GwSectionsView *self,
                           gboolean        is_dark)
{
  g_return_if_fail (GW_IS_SECTIONS_VIEW (self));

  self->is_dark = is_dark;
  gtk_widget_queue_draw (GTK_WIDGET (self->paper));
}

void
gw_sections_view_set_kind (GwSectionsView     *self,
                           GwSectionFigureKind kind)
{
  g_return_if_fail (GW_IS_SECTIONS_VIEW (self));
  g_return_if_fail (kind < GW_N_SECTION_FIGURES);

  if (self->kind == kind)
    return;

  self->kind = kind;
  gtk_drop_down_set_selected (self->kinds, kind);
  update (self);
}

const GwSectionSheet *
gw_sections_view_get_sheet (GwSectionsView *self)
{
  g_return_val_if_fail (GW_IS_SECTIONS_VIEW (self), NULL);

  return self->is_making || self->is_dirty ? NULL : self->sheet;
}
