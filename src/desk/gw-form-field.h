/* gw-form-field.h - one field of the form: label, what edits it, whose value it is, what is wrong
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-form-site.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM_FIELD (gw_form_field_get_type ())

/* The kinds of fields differ in what edits them. */
G_DECLARE_DERIVABLE_TYPE (GwFormField, gw_form_field, GW, FORM_FIELD, GtkWidget)

struct _GwFormFieldClass
{
  GtkWidgetClass parent_class;

  /* Makes the editor; once. */
  void (*setup) (GwFormField *self);
  /* Shows what @record holds. May come with every frame, so it compares before it sets, and
   * it leaves alone what is being typed. */
  void (*update) (GwFormField *self,
                  GwRecord    *record);
  /* Ends what is under way before the field goes away: takes it if it will do. */
  void (*settle) (GwFormField *self);
};

/** gw_form_field_new: the widget for fields of that kind; @path: of the field. */
GtkWidget *gw_form_field_new (GwFormSite    *site,
                              const char    *path,
                              const GwField *field) G_GNUC_WARN_UNUSED_RESULT;

const char *gw_form_field_get_path (GwFormField *self);

void gw_form_field_update (GwFormField *self,
                           GwRecord    *record);
void gw_form_field_settle (GwFormField *self);

/** gw_form_field_is_own: whether the value is the shown option's own, as last updated. */
gboolean gw_form_field_is_own (GwFormField *self);

/* For the kinds of fields. */

GwFormSite    *_gw_form_field_site (GwFormField *self);
const GwField *_gw_form_field_field (GwFormField *self);

/** _gw_form_field_set_editor: puts it beside the label, or below it. */
void _gw_form_field_set_editor (GwFormField *self,
                                GtkWidget   *editor,
                                gboolean     is_below);

/** _gw_form_field_hide_label: where the editor says it itself. */
void _gw_form_field_hide_label (GwFormField *self);

/**
 * _gw_form_field_name:
 * @addition: (nullable): what a listener cannot see beside it: its unit, its bounds
 *
 * Gives @control the accessible name of the field, and its help as description and tooltip;
 * @control takes the reason of a refusal as well.
 */
void _gw_form_field_name (GwFormField *self,
                          GtkWidget   *control,
                          const char  *unit,
                          const char  *addition);

/** _gw_form_field_set_remark: a quiet word below the label, NULL: none. */
void _gw_form_field_set_remark (GwFormField *self,
                                const char  *remark);

/** _gw_form_field_refuse: says why below the field; NULL: nothing is wrong. */
void _gw_form_field_refuse (GwFormField  *self,
                            const GError *error);

/** _gw_form_field_try: as gw_form_site_try(), the reason shown. (transfer full) @value */
gboolean _gw_form_field_try (GwFormField *self,
                             JsonNode    *value);
gboolean _gw_form_field_edit (GwFormField *self,
                              JsonNode    *value);
void     _gw_form_field_take (GwFormField *self);

G_END_DECLS
