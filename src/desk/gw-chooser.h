/* gw-chooser.h - one of many from a list, each shown for what it does before it is taken
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "engine/gw-outline.h"

G_BEGIN_DECLS

typedef struct
{
  char      *id; /* "": none of them */
  char      *name;
  char      *detail;  /* (nullable): a quiet word beside it */
  char      *group;   /* (nullable): heading; those of one group stand together */
  GwOutline *outline; /* (nullable): drawn beside it */
} GwChooserItem;

GwChooserItem *gw_chooser_item_new (const char *id,
                                    const char *name,
                                    const char *detail,
                                    const char *group) G_GNUC_WARN_UNUSED_RESULT;
void           gw_chooser_item_free (GwChooserItem *item);

/** gw_chooser_item_set_outline: a copy is drawn. */
void gw_chooser_item_set_outline (GwChooserItem   *item,
                                  const GwOutline *outline);

#define GW_TYPE_CHOOSER (gw_chooser_get_type ())

/* A button with the present value; a popover with the list. Signals: "opening": the items
 * are wanted; "preview" (id, nullable): the pointer or the arrow keys are on that row, NULL:
 * on none; "taken" (id): Enter or a click; "left": closed without taking one. */
G_DECLARE_FINAL_TYPE (GwChooser, gw_chooser, GW, CHOOSER, GtkWidget)

GtkWidget *gw_chooser_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_chooser_get_button: what takes the focus. */
GtkWidget *gw_chooser_get_button (GwChooser *self);

/** gw_chooser_set_label: what is chosen, read before the value. */
void gw_chooser_set_label (GwChooser  *self,
                           const char *label);

/** gw_chooser_set_value: the present one; @text is on the button. */
void gw_chooser_set_value (GwChooser  *self,
                           const char *id,
                           const char *text);

/** gw_chooser_set_items: (transfer full) @items: of GwChooserItem. */
void gw_chooser_set_items (GwChooser *self,
                           GPtrArray *items);

/** gw_chooser_set_note: a line below the list: why what is looked at will not do. */
void gw_chooser_set_note (GwChooser  *self,
                          const char *note);

/** gw_chooser_set_briefs: second lines of the rows, by id, where there is one. */
void gw_chooser_set_briefs (GwChooser  *self,
                            GHashTable *briefs);

/** gw_chooser_set_effect: what taking that one would change, beside its row. */
void gw_chooser_set_effect (GwChooser  *self,
                            const char *id,
                            const char *effect);

G_END_DECLS
