/* gw-form-site.h - what the fields of the form share: document, units, whom a change is meant for
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-document.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM_SITE (gw_form_site_get_type ())

/* All paths are those of the whole study. Signal "help" (text, nullable): of the field with
 * the focus. Nothing is edited while there is no document that can be computed. */
G_DECLARE_FINAL_TYPE (GwFormSite, gw_form_site, GW, FORM_SITE, GObject)

GwFormSite *gw_form_site_new (void) G_GNUC_WARN_UNUSED_RESULT;

GwDocument *gw_form_site_get_document (GwFormSite *self);
void        gw_form_site_set_document (GwFormSite *self,
                                       GwDocument *document);

const GwUnits *gw_form_site_get_units (GwFormSite *self);
void           gw_form_site_set_units (GwFormSite    *self,
                                       const GwUnits *units);

/** gw_form_site_refresh: takes what the document shows now; FALSE: there is nothing to edit. */
gboolean gw_form_site_refresh (GwFormSite *self);

/** gw_form_site_get_study: with all options and what is tried, as of the last refresh. */
GwStudy *gw_form_site_get_study (GwFormSite *self);

/** gw_form_site_get_shown: the option that was shown then. */
guint gw_form_site_get_shown (GwFormSite *self);

/** gw_form_site_get_view: where what is at @path is as the shown option has it, then. */
GwStudy *gw_form_site_get_view (GwFormSite *self,
                                const char *path);

/** gw_form_site_record: (nullable): the record as the shown option has it. */
GwRecord *gw_form_site_record (GwFormSite *self,
                               const char *path);

/** gw_form_site_can_differ: whether an option may have a value of its own there. */
gboolean gw_form_site_can_differ (const char *path);

/**
 * gw_form_site_changed_at:
 *
 * The change of the shown option that sets the field: its own path, or that of a list or part
 * around it. (transfer full) (nullable)
 */
char *gw_form_site_changed_at (GwFormSite *self,
                               const char *path);

/** gw_form_site_is_in_own_list: whether it lies in a list that is the shown option's own. */
gboolean gw_form_site_is_in_own_list (GwFormSite *self,
                                      const char *path);

/** gw_form_site_can_clear: whether the study would be in order without the field. */
gboolean gw_form_site_can_clear (GwFormSite *self,
                                 const char *path);

/**
 * gw_form_site_try:
 * @value: (nullable): NULL: take it back to its standard
 */
gboolean gw_form_site_try (GwFormSite *self,
                           const char *path,
                           JsonNode   *value,
                           GError    **error);

/** gw_form_site_edit: makes the same a step at once. */
gboolean gw_form_site_edit (GwFormSite *self,
                            const char *path,
                            JsonNode   *value,
                            GError    **error);

/** gw_form_site_take: what is tried becomes a step, named after the field. */
void gw_form_site_take (GwFormSite *self,
                        const char *path);
void gw_form_site_leave (GwFormSite *self);

/** gw_form_site_is_here: whether a change of that field would be one of the option shown alone. */
gboolean gw_form_site_is_here (GwFormSite *self,
                               const char *path);

/** gw_form_site_take_back: option @option has the common value again. */
gboolean gw_form_site_take_back (GwFormSite *self,
                                 guint       option,
                                 const char *path,
                                 GError    **error);

/**
 * gw_form_site_put:
 * @edited: (transfer full) (nullable): NULL: could not be made, @error says why
 */
gboolean gw_form_site_put (GwFormSite *self,
                           const char *name,
                           GwStudy    *edited,
                           GError    **error);

void gw_form_site_show_help (GwFormSite *self,
                             const char *help);

G_END_DECLS
