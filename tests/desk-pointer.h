/* desk-pointer.h - a real pointer and real keys on the display of the test
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk-wait.h"

static inline void
pointer_done_cb (GPid     pid,
                 int      status,
                 gpointer is_over)
{
  g_spawn_close_pid (pid);
  if (status != 0)
    g_error ("xdotool ended with %d", status);
  *(gboolean *) is_over = TRUE;
}

/* Runs xdotool with these words while the main loop goes on, then lets the window settle. */
static inline void
pointer_run (const char *words,
             guint       settle_ms)
{
  g_autofree char *command = g_strdup_printf ("xdotool %s", words);
  g_auto (GStrv) argv = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_over = FALSE;
  GPid     pid;

  g_shell_parse_argv (command, NULL, &argv, NULL);
  g_spawn_async (NULL, argv, NULL, G_SPAWN_DO_NOT_REAP_CHILD | G_SPAWN_SEARCH_PATH, NULL, NULL,
                 &pid, &error);
  g_assert_no_error (error);
  g_child_watch_add (pid, pointer_done_cb, &is_over);
  wait_until (is_over);
  wait_for_ms (settle_ms);
}

static inline void
point (const char *format,
       ...) G_GNUC_PRINTF (1, 2);

static inline void
point (const char *format,
       ...)
{
  g_autofree char *words = NULL;
  va_list          args;

  va_start (args, format);
  words = g_strdup_vprintf (format, args);
  va_end (args);
  pointer_run (words, 120);
}

/* A place of a widget, in a window at the corner or in what pops up from one, on the screen. */
static inline void
place_on_screen (GtkWidget *widget,
                 double     x,
                 double     y,
                 int       *screen_x,
                 int       *screen_y)
{
  GtkNative       *native = gtk_widget_get_native (widget);
  const double     scale = gtk_widget_get_scale_factor (widget);
  double           shift_x, shift_y;
  graphene_point_t at;

  gtk_native_get_surface_transform (native, &shift_x, &shift_y);
  if (!gtk_widget_compute_point (widget, GTK_WIDGET (native),
                                 &GRAPHENE_POINT_INIT ((float) x, (float) y), &at))
    g_error ("the widget is not in its window");
  if (GTK_IS_POPOVER (native))
    {
      GdkPopup *popup = GDK_POPUP (gtk_native_get_surface (native));

      shift_x += gdk_popup_get_position_x (popup);
      shift_y += gdk_popup_get_position_y (popup);
    }
  *screen_x = (int) (scale * (shift_x + (double) at.x) + 0.5);
  *screen_y = (int) (scale * (shift_y + (double) at.y) + 0.5);
}
