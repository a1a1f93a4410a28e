/* gw-outline-row.h - one record in the outline: its name, a quiet detail, what can be done
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_OUTLINE_ROW (gw_outline_row_get_type ())

/* Keys and the button in it activate "outline.select" and "outline.menu" with its path, and
 * actions "outline.…" that then apply to it. */
G_DECLARE_DERIVABLE_TYPE (GwOutlineRow, gw_outline_row, GW, OUTLINE_ROW, GtkListBoxRow)

struct _GwOutlineRowClass
{
  GtkListBoxRowClass parent_class;
};

GtkWidget *gw_outline_row_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_outline_row_set: does nothing for what is as it was. */
void gw_outline_row_set (GwOutlineRow *self,
                         const char   *path,
                         const char   *name,
                         const char   *detail);

/** gw_outline_row_set_mark: before the name. */
void gw_outline_row_set_mark (GwOutlineRow *self,
                              GtkWidget    *mark);

/** gw_outline_row_set_here: whether it is what is looked at. */
void gw_outline_row_set_here (GwOutlineRow *self,
                              gboolean      is_here);

const char *gw_outline_row_get_path (GwOutlineRow *self);
const char *gw_outline_row_get_name (GwOutlineRow *self);

/** gw_outline_row_get_button: where its menu belongs; NULL if there is nothing to do. */
GtkWidget *gw_outline_row_get_button (GwOutlineRow *self);

/** gw_outline_row_wrap_name: a long name takes a second line instead of being cut. */
void gw_outline_row_wrap_name (GwOutlineRow *self);

G_END_DECLS
