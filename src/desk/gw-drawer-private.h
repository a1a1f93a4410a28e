/* gw-drawer-private.h - what the files of the drawer share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-drawer.h"
#include "desk/gw-outline-heading.h"
#include "desk/gw-outline-row.h"

G_BEGIN_DECLS

/* A heading and its list, from top to bottom. */
enum
{
  GW_PART_OPTIONS,
  GW_PART_AIRFRAME,
  GW_PART_EQUIPMENT,
  GW_PART_STUDY,
  GW_PART_OWN,
  GW_N_PARTS
};

struct _GwDrawer
{
  GtkWidget parent_instance;

  GtkWidget        *scroller;
  GwOutlineHeading *headings[GW_N_PARTS];
  GtkListBox       *lists[GW_N_PARTS];
  GtkWidget        *option_part, *study_part, *hint_part;
  GtkLabel         *option_note, *study_note, *hints;
  GMenuModel       *row_menu;
  GtkWidget        *menu; /* made when it is first wanted */

  GwDocument   *document;
  GwUnits       units;
  gboolean      is_dark;
  gboolean      is_following; /* what is selected now was not selected by hand */
  GwOutlineRow *current;      /* row of the document's selection, or NULL; borrowed */
};

/** _gw_drawer_install_actions: all that can be done with a row, as "outline.…", and its keys. */
void _gw_drawer_install_actions (GtkWidgetClass *widget_class);

/** _gw_drawer_update_actions: each is enabled if it is possible. */
void _gw_drawer_update_actions (GwDrawer *self);

/** _gw_drawer_watch_list: keys and the secondary button in one of the lists. */
void _gw_drawer_watch_list (GwDrawer   *self,
                            GtkListBox *list);

/** _gw_drawer_row_at: the @i-th of that part, or NULL. */
GwOutlineRow *_gw_drawer_row_at (GwDrawer *self,
                                 guint     part,
                                 int       i);

/** _gw_drawer_find_row: of that path, or NULL. */
GwOutlineRow *_gw_drawer_find_row (GwDrawer   *self,
                                   const char *path);

/** _gw_drawer_choose: as if @row had been selected by hand. */
void _gw_drawer_choose (GwDrawer     *self,
                        GwOutlineRow *row);

/** _gw_drawer_popup: the menu of the current row. */
void _gw_drawer_popup (GwDrawer *self);

void _gw_drawer_say (GwDrawer   *self,
                     const char *text);
void _gw_drawer_rename (GwDrawer *self);

/** _gw_drawer_path_of: of the @i-th record in the study's list with that key. (transfer full) */
char *_gw_drawer_path_of (const GwStudy *study,
                          const char    *key,
                          guint          i);

/** _gw_drawer_list_of: the study's list with that key. */
GPtrArray *_gw_drawer_list_of (const GwStudy *study,
                               const char    *key);

G_END_DECLS
