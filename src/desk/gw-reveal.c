/* gw-reveal.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-reveal.h"

typedef struct
{
  GtkWidget *child; /* (weak) */
  guint      n_ticks;
} Reveal;

static void
reveal_free (gpointer data)
{
  Reveal *self = data;

  g_clear_weak_pointer (&self->child);
  g_free (self);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  Reveal         *self = data;
  GtkAdjustment  *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (widget));
  GtkWidget      *viewport = gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (widget));
  graphene_rect_t bounds;
  double          top;

  /* The layout comes after the first tick. */
  if (self->n_ticks++ == 0)
    return G_SOURCE_CONTINUE;

  if (self->child != NULL && gtk_widget_get_mapped (self->child) &&
      gtk_widget_compute_bounds (self->child, viewport, &bounds))
    {
      top = gtk_adjustment_get_value (adjustment) + (double) bounds.origin.y;
      gtk_adjustment_clamp_page (adjustment, top, top + (double) bounds.size.height);
    }
  return G_SOURCE_REMOVE;
}

void
gw_reveal (GtkScrolledWindow *scroller,
           GtkWidget         *child)
{
  Reveal *self = g_new0 (Reveal, 1);

  g_set_weak_pointer (&self->child, child);
  gtk_widget_add_tick_callback (GTK_WIDGET (scroller), tick_cb, self, reveal_free);
}
