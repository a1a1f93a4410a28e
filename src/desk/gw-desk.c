/* gw-desk.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-desk.h"

#include "desk/gw-derivation-view.h"
#include "desk/gw-drawer.h"
#include "desk/gw-effects.h"
#include "desk/gw-form.h"
#include "desk/gw-sections-view.h"
#include "desk/gw-table-view.h"

#define LEAST_OUTLINE 200 /* [pixel] */
#define LEAST_FORM    280
#define ROOMY         1100 /* of the window: both drawers leave room for the sheet */
#define MOST_WIDTH    2000 /* that is remembered */

struct _GwDesk
{
  GtkWidget parent_instance;

  GtkPaned         *outline_pane, *form_pane;
  GwDrawer         *outline;
  GtkStack         *middle, *side;
  GwSheetView      *sheet;
  GwForm           *form;
  GwEffects        *effects;
  GwTableView      *table;      /* (nullable): like the next two, made when it is wanted */
  GwSectionsView   *sections;   /* (nullable) */
  GwDerivationView *derivation; /* (nullable) */

  GwDocument *document;
  GwUnits     units;
  gboolean    is_dark;
  GtkWidget  *asked_from; /* (nullable) (weak): had the focus when a result was asked about */
  int         outline_width, form_width;
  gboolean    is_placed;         /* the panes have been set to these widths */
  gboolean    is_outline_chosen; /* by a person; else it goes by the width of the window */
  GdkSurface *surface;           /* (nullable) (unowned): that is followed while it is mapped */
};

G_DEFINE_FINAL_TYPE (GwDesk, gw_desk, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_OUTLINE,
  PROP_FORM,
  PROP_TABLE,
  PROP_SECTIONS,
  PROP_OUTLINE_WIDTH,
  PROP_FORM_WIDTH,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];
static guint       says_signal;

static void
say_cb (GwDesk     *self,
        const char *text)
{
  g_signal_emit (self, says_signal, 0, text);
}

static void
set_side (GwDesk     *self,
          const char *name)
{
  gtk_stack_set_visible_child_name (self->side, name);
}

static gboolean
is_side (GwDesk     *self,
         const char *name)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->side), name) == 0;
}

static void
selection_cb (GwDesk *self)
{
  set_side (self, "form");
}

static gboolean
is_on (GwDesk     *self,
       const char *page)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (self->middle), page) == 0;
}

/* Where the focus goes when what had it is put away. */
static void
grab_middle (GwDesk *self)
{
  gtk_widget_grab_focus (gtk_stack_get_visible_child (self->middle));
}

static gboolean
holds_focus (GtkWidget *widget)
{
  GtkRoot   *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

static void
close_derivation_cb (GwDesk *self)
{
  const gboolean had_focus = holds_focus (GTK_WIDGET (self->side));

  set_side (self, "form");
  if (!had_focus)
    return;
  if (self->asked_from != NULL && gtk_widget_get_mapped (self->asked_from))
    gtk_widget_grab_focus (self->asked_from);
  else
    grab_middle (self);
}

/* What is not looked at at the start is made when it is, so that the sheet is there sooner. */
static void
add_page (GtkStack   *stack,
          GtkWidget  *page,
          const char *name)
{
  gtk_widget_set_name (page, name);
  gtk_stack_add_named (stack, page, name);
}

static void
need_table (GwDesk *self)
{
  if (self->table != NULL)
    return;

  self->table = g_object_new (GW_TYPE_TABLE_VIEW, NULL);
  gw_table_view_set_units (self->table, &self->units);
  gw_table_view_set_document (self->table, self->document);
  add_page (self->middle, GTK_WIDGET (self->table), "table");
}

static void
need_sections (GwDesk *self)
{
  if (self->sections != NULL)
    return;

  self->sections = g_object_new (GW_TYPE_SECTIONS_VIEW, NULL);
  gw_sections_view_set_units (self->sections, &self->units);
  gw_sections_view_set_dark (self->sections, self->is_dark);
  gw_sections_view_set_document (self->sections, self->document);
  add_page (self->middle, GTK_WIDGET (self->sections), "sections");
}

static void
need_derivation (GwDesk *self)
{
  if (self->derivation != NULL)
    return;

  self->derivation = g_object_new (GW_TYPE_DERIVATION_VIEW, NULL);
  g_signal_connect_swapped (self->derivation, "close", G_CALLBACK (close_derivation_cb), self);
  gw_derivation_view_set_units (self->derivation, &self->units);
  gw_derivation_view_set_document (self->derivation, self->document);
  add_page (self->side, GTK_WIDGET (self->derivation), "derivation");
}

static void
why (GwDesk    *self,
     guint      option,
     GwResultId id)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  need_derivation (self);
  if (!holds_focus (GTK_WIDGET (self->derivation)))
    g_set_weak_pointer (&self->asked_from, root != NULL ? gtk_root_get_focus (root) : NULL);
  gw_derivation_view_set_option (self->derivation, option);
  gw_derivation_view_set_result (self->derivation, id);
  set_side (self, "derivation");
  g_object_set (self, "form", TRUE, NULL);
}

static void
why_cb (GwDesk *self,
        guint   option,
        guint   result)
{
  why (self, option, (GwResultId) result);
}

static void
why_action_cb (GtkWidget  *widget,
               const char *action,
               GVariant   *parameter)
{
  const guint id = g_variant_get_uint32 (parameter);

  if (id < GW_N_RESULTS && GW_DESK (widget)->document != NULL)
    {
      why (GW_DESK (widget), gw_document_get_shown (GW_DESK (widget)->document), (GwResultId) id);
      gtk_widget_child_focus (GTK_WIDGET (GW_DESK (widget)->derivation), GTK_DIR_TAB_FORWARD);
    }
}

static void
sections_action_cb (GtkWidget  *widget,
                    const char *action,
                    GVariant   *parameter)
{
  g_object_set (widget, "sections", TRUE, NULL);
}

static void
rename_cb (GwDesk *self)
{
  g_object_set (self, "form", TRUE, NULL);
  set_side (self, "form");
  gw_form_focus_field (self->form, "name");
}

/* The right pane measures from the left; its width is what is left over. */
static void
place_panes (GwDesk *self)
{
  int width;

  g_object_get (self->form_pane, "max-position", &width, NULL);
  if (width <= LEAST_FORM || width == G_MAXINT)
    return;

  self->is_placed = TRUE;
  gtk_paned_set_position (self->outline_pane, self->outline_width);
  gtk_paned_set_position (self->form_pane,
                          gtk_widget_get_width (GTK_WIDGET (self->form_pane)) - self->form_width);
}

static void
max_position_cb (GwDesk *self)
{
  if (!self->is_placed)
    place_panes (self);
}

static void
position_cb (GwDesk *self)
{
  const int outline = gtk_paned_get_position (self->outline_pane);
  const int form = gtk_widget_get_width (GTK_WIDGET (self->form_pane)) -
                   gtk_paned_get_position (self->form_pane);

  if (!self->is_placed)
    return;
  if (gtk_widget_get_visible (GTK_WIDGET (self->outline)) && outline >= LEAST_OUTLINE &&
      outline <= MOST_WIDTH && outline != self->outline_width)
    {
      self->outline_width = outline;
      g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_OUTLINE_WIDTH]);
    }
  if (gtk_widget_get_visible (GTK_WIDGET (self->side)) && form >= LEAST_FORM &&
      form <= MOST_WIDTH && form != self->form_width)
    {
      self->form_width = form;
      g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_FORM_WIDTH]);
    }
}

static void
set_shown (GwDesk    *self,
           GtkWidget *drawer,
           gboolean   is_shown,
           guint      property)
{
  if (gtk_widget_get_visible (drawer) == is_shown)
    return;

  if (!is_shown && holds_focus (drawer))
    grab_middle (self);
  gtk_widget_set_visible (drawer, is_shown);
  g_object_notify_by_pspec (G_OBJECT (self), properties[property]);
}

static void
follow_width (GwDesk *self)
{
  int width = gdk_surface_get_width (self->surface);

  if (self->is_outline_chosen)
    return;
  /* A window that is about to be shown has its size to come. */
  if (width <= 1)
    g_object_get (gtk_widget_get_root (GTK_WIDGET (self)), "default-width", &width, NULL);
  set_shown (self, GTK_WIDGET (self->outline), width >= ROOMY, PROP_OUTLINE);
}

static void
gw_desk_map (GtkWidget *widget)
{
  GwDesk *self = GW_DESK (widget);

  self->surface = gtk_native_get_surface (gtk_widget_get_native (widget));
  g_signal_connect_swapped (self->surface, "notify::width", G_CALLBACK (follow_width), self);
  follow_width (self);
  GTK_WIDGET_CLASS (gw_desk_parent_class)->map (widget);
}

static void
gw_desk_unmap (GtkWidget *widget)
{
  GwDesk *self = GW_DESK (widget);

  g_signal_handlers_disconnect_by_func (self->surface, follow_width, self);
  self->surface = NULL;
  GTK_WIDGET_CLASS (gw_desk_parent_class)->unmap (widget);
}

/* @page in place of the sheet, or the sheet again. */
static void
set_page (GwDesk     *self,
          const char *page,
          gboolean    is_on_it)
{
  if (is_on (self, page) == is_on_it)
    return;

  gtk_stack_set_visible_child_name (self->middle, is_on_it ? page : "sheet");
  grab_middle (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_TABLE]);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SECTIONS]);
}

static void
gw_desk_get_property (GObject    *object,
                      guint       id,
                      GValue     *value,
                      GParamSpec *pspec)
{
  GwDesk *self = GW_DESK (object);

  switch (id)
    {
    case PROP_OUTLINE:
      g_value_set_boolean (value, gtk_widget_get_visible (GTK_WIDGET (self->outline)));
      break;
    case PROP_FORM:
      g_value_set_boolean (value, gtk_widget_get_visible (GTK_WIDGET (self->side)));
      break;
    case PROP_TABLE:
      g_value_set_boolean (value, is_on (self, "table"));
      break;
    case PROP_SECTIONS:
      g_value_set_boolean (value, is_on (self, "sections"));
      break;
    case PROP_OUTLINE_WIDTH:
      g_value_set_int (value, self->outline_width);
      break;
    case PROP_FORM_WIDTH:
      g_value_set_int (value, self->form_width);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_desk_set_property (GObject      *object,
                      guint         id,
                      const GValue *value,
                      GParamSpec   *pspec)
{
  GwDesk *self = GW_DESK (object);

  switch (id)
    {
    case PROP_OUTLINE:
      self->is_outline_chosen = TRUE;
      set_shown (self, GTK_WIDGET (self->outline), g_value_get_boolean (value), PROP_OUTLINE);
      break;
    case PROP_FORM:
      set_shown (self, GTK_WIDGET (self->side), g_value_get_boolean (value), PROP_FORM);
      break;
    case PROP_TABLE:
      need_table (self);
      set_page (self, "table", g_value_get_boolean (value));
      break;
    case PROP_SECTIONS:
      need_sections (self);
      set_page (self, "sections", g_value_get_boolean (value));
      break;
    case PROP_OUTLINE_WIDTH:
      self->outline_width = g_value_get_int (value);
      self->is_placed = FALSE;
      break;
    case PROP_FORM_WIDTH:
      self->form_width = g_value_get_int (value);
      self->is_placed = FALSE;
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

void
gw_desk_set_document (GwDesk     *self,
                      GwDocument *document)
{
  g_return_if_fail (GW_IS_DESK (self));

  if (!gw_document_follow (&self->document, document, self, NULL, NULL,
                           G_CALLBACK (selection_cb)))
    return;

  set_side (self, "form");
  gw_drawer_set_document (self->outline, document);
  gw_sheet_view_set_document (self->sheet, document);
  gw_form_set_document (self->form, document);
  gw_effects_set_document (self->effects, document);
  if (self->table != NULL)
    gw_table_view_set_document (self->table, document);
  if (self->sections != NULL)
    gw_sections_view_set_document (self->sections, document);
  if (self->derivation != NULL)
    gw_derivation_view_set_document (self->derivation, document);
}

void
gw_desk_set_dark (GwDesk  *self,
                  gboolean is_dark)
{
  g_return_if_fail (GW_IS_DESK (self));

  self->is_dark = is_dark;
  gw_drawer_set_dark (self->outline, is_dark);
  gw_sheet_view_set_dark (self->sheet, is_dark);
  if (self->sections != NULL)
    gw_sections_view_set_dark (self->sections, is_dark);
}

void
gw_desk_set_units (GwDesk        *self,
                   const GwUnits *units)
{
  g_return_if_fail (GW_IS_DESK (self));

  self->units = *units;
  gw_drawer_set_units (self->outline, units);
  gw_sheet_view_set_units (self->sheet, units);
  gw_form_set_units (self->form, units);
  gw_effects_set_units (self->effects, units);
  if (self->table != NULL)
    gw_table_view_set_units (self->table, units);
  if (self->sections != NULL)
    gw_sections_view_set_units (self->sections, units);
  if (self->derivation != NULL)
    gw_derivation_view_set_units (self->derivation, units);
}

GwSheetView *
gw_desk_get_sheet (GwDesk *self)
{
  g_return_val_if_fail (GW_IS_DESK (self), NULL);

  return self->sheet;
}

gboolean
gw_desk_is_outline_chosen (GwDesk *self)
{
  g_return_val_if_fail (GW_IS_DESK (self), FALSE);

  return self->is_outline_chosen;
}

static gboolean
gw_desk_grab_focus (GtkWidget *widget)
{
  grab_middle (GW_DESK (widget));
  return TRUE;
}

/* Without it Tab would come from the header bar to what grab_focus prefers, and never to the
 * outline. */
static gboolean
gw_desk_focus (GtkWidget       *widget,
               GtkDirectionType direction)
{
  return gtk_widget_child_focus (GTK_WIDGET (GW_DESK (widget)->outline_pane), direction);
}

static void
gw_desk_dispose (GObject *object)
{
  GwDesk *self = GW_DESK (object);

  gw_document_unfollow (&self->document, self);
  g_clear_weak_pointer (&self->asked_from);
  gtk_widget_dispose_template (GTK_WIDGET (self), GW_TYPE_DESK);

  G_OBJECT_CLASS (gw_desk_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  properties[PROP_OUTLINE] = g_param_spec_boolean ("outline", NULL, NULL, TRUE, flags);
  properties[PROP_FORM] = g_param_spec_boolean ("form", NULL, NULL, TRUE, flags);
  properties[PROP_TABLE] = g_param_spec_boolean ("table", NULL, NULL, FALSE, flags);
  properties[PROP_SECTIONS] = g_param_spec_boolean ("sections", NULL, NULL, FALSE, flags);
  properties[PROP_OUTLINE_WIDTH] =
    g_param_spec_int ("outline-width", NULL, NULL, LEAST_OUTLINE, MOST_WIDTH, 236, flags);
  properties[PROP_FORM_WIDTH] =
    g_param_spec_int ("form-width", NULL, NULL, LEAST_FORM, MOST_WIDTH, 300, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-desk.ui");
  gtk_widget_class_bind_template_child (widget_class, GwDesk, outline_pane);
  gtk_widget_class_bind_template_child (widget_class, GwDesk, form_pane);
  gtk_widget_class_bind_template_child (widget_class, GwDesk, outline);
  gtk_widget_class_bind_template_child (widget_class, GwDesk, middle);
  gtk_widget_class_bind_template_child (widget_class, GwDesk, side);
  gtk_widget_class_bind_template_child (widget_class, GwDesk, sheet);
  gtk_widget_class_bind_template_child (widget_class, GwDesk, form);
  gtk_widget_class_bind_template_callback (widget_class, say_cb);
  gtk_widget_class_bind_template_callback (widget_class, why_cb);
  gtk_widget_class_bind_template_callback (widget_class, rename_cb);
  gtk_widget_class_bind_template_callback (widget_class, max_position_cb);
  gtk_widget_class_bind_template_callback (widget_class, position_cb);
}

static void
gw_desk_class_init (GwDeskClass *klass)
{
  GObjectClass   *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = gw_desk_get_property;
  object_class->set_property = gw_desk_set_property;
  object_class->dispose = gw_desk_dispose;
  widget_class->focus = gw_desk_focus;
  widget_class->map = gw_desk_map;
  widget_class->unmap = gw_desk_unmap;
  widget_class->grab_focus = gw_desk_grab_focus;

  install_properties (object_class);
  says_signal = g_signal_new ("says", GW_TYPE_DESK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "desk");
  gtk_widget_class_install_action (widget_class, "desk.why", "u", why_action_cb);
  gtk_widget_class_install_action (widget_class, "desk.sections", NULL, sections_action_cb);
  g_type_ensure (GW_TYPE_DRAWER);
  g_type_ensure (GW_TYPE_FORM);
  g_type_ensure (GW_TYPE_SHEET_VIEW);
  bind_template (widget_class);
}

/* A number that is pressed on the sheet leaves the focus there: Escape closes what it opened, and
 * lets go of what is selected only after that. */
static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GwDesk                *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (key != GDK_KEY_Escape || !is_side (self, "derivation") ||
      gtk_root_get_focus (root) != GTK_WIDGET (self->sheet) ||
      gw_document_get_former (self->document) != NULL)
    return GDK_EVENT_PROPAGATE;

  close_derivation_cb (self);
  return GDK_EVENT_STOP;
}

static void
gw_desk_init (GwDesk *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->units = *gw_units_standard ();
  self->outline_width = 236;
  self->form_width = 300;
  gtk_widget_init_template (GTK_WIDGET (self));
  self->effects = GW_EFFECTS (gw_effects_new ());
  gtk_box_append (gw_form_get_effects_box (self->form), GTK_WIDGET (self->effects));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
