/* gw-menu.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-menu.h"

static void
create_cb (GtkMenuButton *button,
           gpointer       model)
{
  if (gtk_menu_button_get_menu_model (button) == NULL)
    gtk_menu_button_set_menu_model (button, model);
}

void
gw_menu_attach (GtkMenuButton *button,
                GMenuModel    *model)
{
  g_return_if_fail (GTK_IS_MENU_BUTTON (button));
  g_return_if_fail (G_IS_MENU_MODEL (model));

  gtk_menu_button_set_create_popup_func (button, create_cb, g_object_ref (model), g_object_unref);
}
