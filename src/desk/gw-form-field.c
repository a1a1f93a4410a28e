/* gw-form-field.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-field.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-form-changes.h"
#include "desk/gw-form-list.h"
#include "desk/gw-form-number.h"
#include "desk/gw-form-pick.h"
#include "desk/gw-form-simple.h"
#include "desk/gw-form-words.h"
#include "study/gw-edit.h"

typedef struct
{
  GwFormSite    *site;
  char          *path;
  const GwField *field;

  GtkBox    *line;
  GtkWidget *words;
  GtkLabel  *label, *remark;
  GtkWidget *change;
  GtkLabel  *whose;
  GtkWidget *take_back;
  GtkLabel  *reason;

  GtkWidget *control; /* what the field's name was given to */
  char      *description;
  char      *changed_at; /* NULL: the value is the common one */
} GwFormFieldPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (GwFormField, gw_form_field, GTK_TYPE_WIDGET)

#define GET(self) \
 ((GwFormFieldPrivate *) gw_form_field_get_instance_private (GW_FORM_FIELD (self)))

static void
take_back_cb (GwFormField *self)
{
  GwFormFieldPrivate *priv = GET (self);
  g_autofree char    *path = g_strdup (priv->changed_at);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;

  /* The button goes with the change, and the focus must not go astray. */
  if (priv->control != NULL)
    gtk_widget_grab_focus (priv->control);
  gw_form_site_take_back (priv->site, gw_form_site_get_shown (priv->site), path, &error);
  _gw_form_field_refuse (self, error);
}

static void
entered_cb (GwFormField *self)
{
  GwFormFieldPrivate *priv = GET (self);

  gw_form_site_show_help (priv->site, g_dgettext (GETTEXT_PACKAGE, priv->field->help));
}

static void
left_cb (GwFormField *self)
{
  GwFormFieldPrivate *priv = GET (self);

  if (priv->site != NULL)
    gw_form_site_show_help (priv->site, NULL);
}

static void
gw_form_field_dispose (GObject *object)
{
  GwFormFieldPrivate *priv = GET (object);
  GtkWidget          *child;

  /* GTK 4.8 looks for the template in the class of the object, which has none. */
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&priv->site);

  G_OBJECT_CLASS (gw_form_field_parent_class)->dispose (object);
}

static void
gw_form_field_finalize (GObject *object)
{
  GwFormFieldPrivate *priv = GET (object);

  g_free (priv->path);
  g_free (priv->description);
  g_free (priv->changed_at);

  G_OBJECT_CLASS (gw_form_field_parent_class)->finalize (object);
}

static void
gw_form_field_class_init (GwFormFieldClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_form_field_dispose;
  G_OBJECT_CLASS (klass)->finalize = gw_form_field_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "field");
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-form-field.ui");
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, line);
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, words);
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, label);
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, remark);
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, change);
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, whose);
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, take_back);
  gtk_widget_class_bind_template_child_private (widget_class, GwFormField, reason);
  gtk_widget_class_bind_template_callback (widget_class, take_back_cb);
  gtk_widget_class_bind_template_callback (widget_class, entered_cb);
  gtk_widget_class_bind_template_callback (widget_class, left_cb);
}

static void
gw_form_field_init (GwFormField *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_orientable_set_orientation (
    GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
}

static GType
type_for (const GwField *field)
{
  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      return GW_TYPE_FORM_NUMBER;
    case GW_FIELD_TEXT:
      return g_str_equal (field->key, "note") ? GW_TYPE_FORM_NOTE : GW_TYPE_FORM_TEXT;
    case GW_FIELD_CHOICE:
    case GW_FIELD_REF:
      return GW_TYPE_FORM_PICK;
    case GW_FIELD_FLAG:
      return GW_TYPE_FORM_FLAG;
    case GW_FIELD_LIST:
      return GW_TYPE_FORM_LIST;
    case GW_FIELD_CHANGES:
      return GW_TYPE_FORM_CHANGES;
    case GW_FIELD_ID:
    case GW_FIELD_PART:
    default:
      g_return_val_if_reached (GW_TYPE_FORM_TEXT);
    }
}

GtkWidget *
gw_form_field_new (GwFormSite    *site,
                   const char    *path,
                   const GwField *field)
{
  GwFormField        *self = g_object_new (type_for (field), NULL);
  GwFormFieldPrivate *priv = GET (self);

  priv->site = g_object_ref (site);
  priv->path = g_strdup (path);
  priv->field = field;
  gtk_label_set_text (priv->label, gw_form_label (field));
  gtk_widget_set_tooltip_text (priv->words, g_dgettext (GETTEXT_PACKAGE, field->help));
  GW_FORM_FIELD_GET_CLASS (self)->setup (self);
  return GTK_WIDGET (self);
}

const char *
gw_form_field_get_path (GwFormField *self)
{
  return GET (self)->path;
}

#define MOST_LETTERS 40 /* of a value that is quoted */

/* "Own value here; common 120 mm". The value itself stands in the field, unless it differs in its
 * spread or origin alone, @own then says how. Not said twice, it does not change as it is dragged,
 * which would measure the whole form anew. */
static char *
own_text (const char *own,
          const char *shown,
          const char *common)
{
  if (own == NULL)
    /* Translators: an option has a value of its own that is the one of the others: "Same as
     * common: 120 mm" */
    return g_strdup_printf (_ ("Same as common: %s"), common);
  if (g_utf8_strlen (own, -1) > MOST_LETTERS || g_utf8_strlen (common, -1) > MOST_LETTERS)
    return g_strdup (_ ("Not the common text"));
  if (g_str_equal (own, shown))
    /* Translators: the value of the other options */
    return g_strdup_printf (_ ("Own value here; common %s"), common);

  /* Translators: the value of this option and that of the others */
  return g_strdup_printf (_ ("Own value here: %s; common %s"), own, common);
}

/* Whose value the field edits, NULL: that of all options. */
static char *
whose_text (GwFormField    *self,
            const GwRecord *record)
{
  GwFormFieldPrivate *priv = GET (self);
  GwStudy            *study = gw_form_site_get_study (priv->site);
  const GwField      *field = NULL;
  const GwRecord     *shared = gw_record_find (&study->record, priv->path, &field);
  const GwUnits      *units = gw_form_site_get_units (priv->site);
  g_autofree char    *own = NULL, *shown = NULL, *common = NULL, *text = NULL;

  if (priv->changed_at == NULL)
    return NULL;
  if (shared == NULL)
    return g_strdup (_ ("Only this option has it"));

  own = gw_form_compare (study, record, shared, priv->field, units, &common);
  shown = gw_form_field_text (study, record, priv->field, units);
  text = own_text (own, shown, common);
  if (gw_document_get_only_here (gw_form_site_get_document (priv->site)))
    return g_steal_pointer (&text);

  /* Translators: the text before it says whose value it is. Changes are meant for all options */
  return g_strdup_printf (_ ("%s. A change is for this option alone."), text);
}

static void
describe (GwFormFieldPrivate *priv)
{
  const char      *reason = gtk_label_get_text (priv->reason);
  const char      *whose = gtk_label_get_text (priv->whose);
  g_autofree char *text = g_strconcat (reason, *reason != '\0' ? ". " : "", whose,
                                       *whose != '\0' ? ". " : "", priv->description, NULL);

  if (priv->control != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (priv->control),
                                    GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

static void
update_change (GwFormField    *self,
               const GwRecord *record)
{
  GwFormFieldPrivate *priv = GET (self);
  g_autofree char    *whose = NULL;

  g_free (priv->changed_at);
  /* A list of the option's own is taken back as a whole, where it is shown itself. */
  priv->changed_at = gw_form_site_is_in_own_list (priv->site, priv->path)
                       ? NULL
                       : gw_form_site_changed_at (priv->site, priv->path);
  whose = whose_text (self, record);
  if (g_strcmp0 (gtk_label_get_text (priv->whose), whose != NULL ? whose : "") == 0)
    return;

  gtk_label_set_text (priv->whose, whose != NULL ? whose : "");
  gtk_widget_set_visible (priv->change, whose != NULL);
  describe (priv);
}

void
gw_form_field_update (GwFormField *self,
                      GwRecord    *record)
{
  update_change (self, record);
  GW_FORM_FIELD_GET_CLASS (self)->update (self, record);
}

gboolean
gw_form_field_is_own (GwFormField *self)
{
  return GET (self)->changed_at != NULL;
}

void
gw_form_field_settle (GwFormField *self)
{
  if (GW_FORM_FIELD_GET_CLASS (self)->settle != NULL)
    GW_FORM_FIELD_GET_CLASS (self)->settle (self);
}

GwFormSite *
_gw_form_field_site (GwFormField *self)
{
  return GET (self)->site;
}

const GwField *
_gw_form_field_field (GwFormField *self)
{
  return GET (self)->field;
}

void
_gw_form_field_set_editor (GwFormField *self,
                           GtkWidget   *editor,
                           gboolean     is_below)
{
  GwFormFieldPrivate *priv = GET (self);

  if (is_below)
    gtk_widget_insert_after (editor, GTK_WIDGET (self), GTK_WIDGET (priv->line));
  else
    gtk_box_append (priv->line, editor);
}

void
_gw_form_field_hide_label (GwFormField *self)
{
  gtk_widget_set_visible (GET (self)->words, FALSE);
}

void
_gw_form_field_name (GwFormField *self,
                     GtkWidget   *control,
                     const char  *unit,
                     const char  *addition)
{
  GwFormFieldPrivate *priv = GET (self);
  const char         *label = gw_form_label (priv->field);
  const char         *help = g_dgettext (GETTEXT_PACKAGE, priv->field->help);
  /* Translators: a field and its unit, read aloud: "Chord, mm" */
  g_autofree char *name = unit == NULL || *unit == '\0'
                            ? g_strdup (label)
                            : g_strdup_printf (_ ("%s, %s"), label, unit);
  g_autofree char *take_back = g_strdup_printf (_ ("Take back %s"), label);

  priv->control = control;
  g_free (priv->description);
  priv->description =
    addition != NULL ? g_strdup_printf ("%s; %s", help, addition) : g_strdup (help);
  gtk_widget_set_tooltip_text (control, priv->description);
  gw_access_name (control, name);
  gw_access_name (priv->take_back, take_back);
  describe (priv);
}

void
_gw_form_field_set_remark (GwFormField *self,
                           const char  *remark)
{
  GwFormFieldPrivate *priv = GET (self);

  if (g_strcmp0 (gtk_label_get_text (priv->remark), remark != NULL ? remark : "") == 0)
    return;

  gtk_label_set_text (priv->remark, remark != NULL ? remark : "");
  gtk_widget_set_visible (GTK_WIDGET (priv->remark), remark != NULL);
}

void
_gw_form_field_refuse (GwFormField  *self,
                       const GError *error)
{
  GwFormFieldPrivate *priv = GET (self);
  g_autofree char    *reason = error != NULL ? gw_form_reason (error, priv->path) : NULL;

  if (g_strcmp0 (gtk_label_get_text (priv->reason), reason != NULL ? reason : "") == 0)
    return;

  gtk_label_set_text (priv->reason, reason != NULL ? reason : "");
  gtk_widget_set_visible (GTK_WIDGET (priv->reason), reason != NULL);
  if (priv->control == NULL)
    return;

  describe (priv);
  gtk_accessible_update_state (GTK_ACCESSIBLE (priv->control), GTK_ACCESSIBLE_STATE_INVALID,
                               reason != NULL ? GTK_ACCESSIBLE_INVALID_TRUE
                                              : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
  if (reason != NULL)
    gtk_widget_add_css_class (priv->control, "refused");
  else
    gtk_widget_remove_css_class (priv->control, "refused");
}

gboolean
_gw_form_field_try (GwFormField *self,
                    JsonNode    *value)
{
  GwFormFieldPrivate *priv = GET (self);
  g_autoptr (JsonNode) node = value;
  g_autoptr (GError) error = NULL;
  const gboolean is_good = gw_form_site_try (priv->site, priv->path, node, &error);

  _gw_form_field_refuse (self, error);
  return is_good;
}

gboolean
_gw_form_field_edit (GwFormField *self,
                     JsonNode    *value)
{
  GwFormFieldPrivate *priv = GET (self);
  g_autoptr (JsonNode) node = value;
  g_autoptr (GError) error = NULL;
  const gboolean is_good = gw_form_site_edit (priv->site, priv->path, node, &error);

  _gw_form_field_refuse (self, error);
  return is_good;
}

void
_gw_form_field_take (GwFormField *self)
{
  GwFormFieldPrivate *priv = GET (self);

  gw_form_site_take (priv->site, priv->path);
}
