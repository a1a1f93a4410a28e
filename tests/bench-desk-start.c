/* bench-desk-start.c - how long the program takes to show the demo, and how much memory
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-desk-start STUDY: starts itself again and again, by turns as a window that holds nothing
 * and as the desk with that study, and prints the medians and their ratios. Time is from before
 * the process starts until a frame with the whole sheet has been painted; memory is what is
 * resident then.
 */

#include <stdlib.h>
#include <unistd.h>

#include "desk/gw-sheet-view.h"
#include "desk/gw-window.h"
#include "desk-find.h"
#include "desk-wait.h"

#define RUNS 11

typedef struct
{
  double time, memory; /* [ms], [MB] */
} Figures;

static double
resident (void)
{
  g_autofree char *text = NULL;
  g_auto (GStrv) words = NULL;

  g_assert_true (g_file_get_contents ("/proc/self/statm", &text, NULL, NULL));
  words = g_strsplit (text, " ", -1);
  return g_ascii_strtod (words[1], NULL) * (double) sysconf (_SC_PAGESIZE) / 1e6;
}

typedef struct
{
  GtkWindow *window;
  gboolean   is_desk, is_shown;
} Start;

static void
painted_cb (GdkFrameClock *clock,
            Start         *start)
{
  GtkWidget *sheet = start->is_desk ? find (GTK_WIDGET (start->window), "sheet") : NULL;

  start->is_shown |=
    !start->is_desk || (gtk_widget_get_mapped (sheet) &&
                        gw_sheet_view_get_drawing (GW_SHEET_VIEW (sheet)) != NULL);
}

static int
run_child (const char *study,
           gint64      began)
{
  g_autoptr (GwApplication) application = NULL;
  Start start = { .is_desk = *study != '\0' };

  if (!gtk_init_check ())
    return 1;
  if (start.is_desk)
    {
      g_autoptr (GFile) file = g_file_new_for_path (study);

      application = gw_application_new (G_APPLICATION_NON_UNIQUE);
      if (!g_application_register (G_APPLICATION (application), NULL, NULL))
        return 1;
      start.window = GTK_WINDOW (gw_window_new (application));
      gw_window_open (GW_WINDOW (start.window), file);
    }
  else
    {
      start.window = GTK_WINDOW (gtk_window_new ());
      gtk_window_set_default_size (start.window, 1280, 800);
    }
  gtk_window_present (start.window);
  g_signal_connect (gtk_widget_get_frame_clock (GTK_WIDGET (start.window)), "after-paint",
                    G_CALLBACK (painted_cb), &start);
  wait_until (start.is_shown);
  g_print ("%.1f %.1f\n", (double) (g_get_monotonic_time () - began) / 1000.0, resident ());
  /* What is still being computed is of no interest. */
  fflush (stdout);
  _exit (0);
}

static Figures
run_once (const char *program,
          const char *study)
{
  g_autofree char *began = g_strdup_printf ("%" G_GINT64_FORMAT, g_get_monotonic_time ());
  g_autofree char *output = NULL;
  g_autoptr (GError) error = NULL;
  char   *argv[] = { (char *) program, "--child", (char *) study, began, NULL };
  Figures out;
  char   *end;

  g_spawn_sync (NULL, argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &output, NULL, NULL, &error);
  g_assert_no_error (error);
  out.time = g_ascii_strtod (output, &end);
  out.memory = g_ascii_strtod (end, NULL);
  g_assert_cmpfloat (out.memory, >, 0.0);
  return out;
}

static int
by_size (const void *a,
         const void *b)
{
  const double one = *(const double *) a, other = *(const double *) b;

  return (one > other) - (one < other);
}

static double
median (double *values)
{
  qsort (values, RUNS, sizeof *values, by_size);
  return values[RUNS / 2];
}

int
main (int   argc,
      char *argv[])
{
  double time[2][RUNS], memory[2][RUNS];

  if (argc == 4)
    return run_child (argv[2], g_ascii_strtoll (argv[3], NULL, 10));
  if (argc != 2)
    return 2;

  for (int i = 0; i < RUNS; i++)
    for (int is_desk = 0; is_desk < 2; is_desk++)
      {
        const Figures figures = run_once (argv[0], is_desk ? argv[1] : "");

        time[is_desk][i] = figures.time;
        memory[is_desk][i] = figures.memory;
      }

  for (int is_desk = 0; is_desk < 2; is_desk++)
    g_print ("%s: %.0f ms, %.0f MB\n", is_desk ? "desk with the study" : "empty window",
             median (time[is_desk]), median (memory[is_desk]));
  g_print ("ratios: time %.2f, memory %.2f\n", median (time[1]) / median (time[0]),
           median (memory[1]) / median (memory[0]));
  return 0;
}
