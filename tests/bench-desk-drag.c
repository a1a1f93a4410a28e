/* bench-desk-drag.c - how long frames take while the battery is dragged
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-desk-drag STUDY: opens it in the real window, leads a real pointer over and over from
 * end to end of the battery's bay, and prints what the frames took that show it elsewhere. A
 * frame is from its first motion (then values, layout, ink) until it has been painted; input to
 * frame is from the moment the display server stamped the newest motion in it.
 */

#include <math.h>
#include <stdlib.h>

#include "desk/gw-sheet-view.h"
#include "desk/gw-window.h"
#include "desk-find.h"
#include "desk-wait.h"

#define MOTIONS 600
#define SWEEPS  4
#define PAUSE   "0.008" /* between motions [s] */

typedef struct
{
  GwDocument *document;
  double      balance;         /* as last seen [m] */
  GArray     *frames, *inputs; /* [ms] */
  gint64      began;
  guint32     motion; /* time of the newest one [ms] */
  gboolean    has_motion, is_over;
} Bench;

static double
balance_of (GwDocument *document)
{
  const GwEvaluation *evaluation = gw_document_get_evaluation (document);

  return gw_evaluation_outcome (evaluation, 0)->results.value[GW_RESULT_BALANCE_X];
}

static void
motion_cb (GtkEventControllerMotion *controller,
           double                    x,
           double                    y,
           Bench                    *bench)
{
  bench->motion = gtk_event_controller_get_current_event_time (GTK_EVENT_CONTROLLER (controller));
  if (!bench->has_motion)
    bench->began = g_get_monotonic_time ();
  bench->has_motion = TRUE;
}

static void
painted_cb (GdkFrameClock *clock,
            Bench         *bench)
{
  const gint64 now = g_get_monotonic_time ();
  const double frame = (double) (now - bench->began) / 1000.0;
  const double input = (double) (guint32) ((guint32) (now / 1000) - bench->motion);
  const double balance = balance_of (bench->document);

  if (!bench->has_motion)
    return;

  bench->has_motion = FALSE;
  if (balance == bench->balance)
    return;

  bench->balance = balance;
  g_array_append_val (bench->frames, frame);
  g_array_append_val (bench->inputs, input);
}

static int
by_size (gconstpointer a,
         gconstpointer b)
{
  const double one = *(const double *) a, other = *(const double *) b;

  return (one > other) - (one < other);
}

static double
percentile (GArray *values,
            double  percent)
{
  g_array_sort (values, by_size);
  return g_array_index (values, double, (guint) (percent / 100.0 * (values->len - 1)));
}

static void
dragged_cb (GPid     pid,
            int      status,
            gpointer bench)
{
  ((Bench *) bench)->is_over = TRUE;
}

/* From the middle of the battery to one end of its bay, to the other, and so on. A hand that
 * stays on a pixel sends nothing. */
static void
drag (GtkWidget *window,
      GtkWidget *sheet,
      Bench     *bench)
{
  const GwEvaluation *evaluation = gw_document_get_evaluation (bench->document);
  const GwAircraft   *aircraft = &gw_evaluation_outcome (evaluation, 0)->assembly->aircraft;
  const GwItem       *item = &aircraft->items[aircraft->movable];
  const GwViewFrame  *frame =
    gw_drawing_view (gw_sheet_view_get_drawing (GW_SHEET_VIEW (sheet)), GW_VIEW_TOP);
  GString         *script = g_string_new ("exec xdotool");
  GPid             pid;
  double           shift_x, shift_y;
  char            *argv[] = { "sh", "-c", NULL, NULL };
  graphene_point_t at;
  int              last_x = -1, last_y = -1;

  gtk_native_get_surface_transform (GTK_NATIVE (window), &shift_x, &shift_y);
  for (int i = 0; i <= MOTIONS; i++)
    {
      const double share = 0.5 - 0.5 * cos (2.0 * G_PI * SWEEPS * i / MOTIONS);
      const double place = item->bay_from + share * (item->bay_to - item->bay_from);
      double       x, y;
      int          root_x, root_y;

      gw_sheet_view_to_widget (GW_SHEET_VIEW (sheet), frame->origin[0] + item->at[1] * frame->scale,
                               frame->origin[1] + (i == 0 ? item->at[0] : place) * frame->scale, &x,
                               &y);
      if (!gtk_widget_compute_point (sheet, window,
                                     &GRAPHENE_POINT_INIT ((float) x, (float) y), &at))
        g_error ("the sheet is not in the window");
      root_x = (int) (shift_x + (double) at.x);
      root_y = (int) (shift_y + (double) at.y);
      if (root_x != last_x || root_y != last_y)
        g_string_append_printf (script, " mousemove %d %d", root_x, root_y);
      last_x = root_x;
      last_y = root_y;
      g_string_append (script, i == 0 ? " sleep 0.3 mousedown 1" : " sleep " PAUSE);
    }
  g_string_append (script, " mouseup 1");
  argv[2] = script->str;
  if (!g_spawn_async (NULL, argv, NULL, G_SPAWN_DO_NOT_REAP_CHILD | G_SPAWN_SEARCH_PATH, NULL, NULL,
                      &pid, NULL))
    g_error ("sh does not start");
  g_child_watch_add (pid, dragged_cb, bench);
  g_string_free (script, TRUE);
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (GwApplication) application = NULL;
  g_autoptr (GFile) file = NULL;
  Bench               bench = { .frames = g_array_new (FALSE, FALSE, sizeof (double)),
                                .inputs = g_array_new (FALSE, FALSE, sizeof (double)) };
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GwWindow           *window;
  GdkFrameClock      *clock;
  GtkWidget          *sheet;

  if (argc != 2 || !gtk_init_check ())
    return 2;
  application = gw_application_new (G_APPLICATION_NON_UNIQUE);
  if (!g_application_register (G_APPLICATION (application), NULL, NULL))
    return 1;

  file = g_file_new_for_commandline_arg (argv[1]);
  window = gw_window_new (application);
  gtk_window_set_decorated (GTK_WINDOW (window), FALSE);
  gtk_window_fullscreen (GTK_WINDOW (window));
  gtk_window_present (GTK_WINDOW (window));
  gw_window_open (window, file);
  wait_until (gw_window_get_document (window) != NULL);
  bench.document = gw_window_get_document (window);
  sheet = find (GTK_WIDGET (window), "sheet");
  wait_until (!gw_document_is_busy (bench.document) &&
              gw_sheet_view_get_drawing (GW_SHEET_VIEW (sheet)) != NULL);
  wait_for_ms (1000);

  clock = gtk_widget_get_frame_clock (GTK_WIDGET (window));
  g_signal_connect (clock, "after-paint", G_CALLBACK (painted_cb), &bench);
  gtk_event_controller_set_propagation_phase (motion, GTK_PHASE_CAPTURE);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), &bench);
  gtk_widget_add_controller (GTK_WIDGET (window), motion);

  bench.balance = balance_of (bench.document);
  drag (GTK_WIDGET (window), sheet, &bench);
  while (!bench.is_over)
    g_main_context_iteration (NULL, TRUE);
  wait_for_ms (300);

  if (bench.frames->len < 50)
    g_error ("nothing was dragged: %u frames", bench.frames->len);
  g_print ("%dx%d, %u frames of the battery elsewhere\n", gtk_widget_get_width (sheet),
           gtk_widget_get_height (sheet), bench.frames->len);
  g_print ("frame [ms]: median %.1f, 95th percentile %.1f, longest %.1f\n",
           percentile (bench.frames, 50), percentile (bench.frames, 95),
           percentile (bench.frames, 100));
  g_print ("input to frame [ms]: median %.0f, 95th percentile %.0f, longest %.0f\n",
           percentile (bench.inputs, 50), percentile (bench.inputs, 95),
           percentile (bench.inputs, 100));
  gtk_window_destroy (GTK_WINDOW (window));
  g_array_unref (bench.frames);
  g_array_unref (bench.inputs);
  return 0;
}
