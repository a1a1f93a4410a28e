/* bench-polars.c - how long a person waits for sections nobody has computed yet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By the clock, on all processors, in a cache folder that is empty at first (no test uses
 * outlines of another): a study's grid of four sections and two finishes; a stop in the middle
 * of it; a demo opened for the first time, its provisional values and its whole evaluation.
 */

#include "demos.h"
#include "own-cache.h"
#include "study/gw-evaluation.h"

#define SECTIONS 4

static double
ms_since (gint64 began)
{
  return (double) (g_get_monotonic_time () - began) * 1e-3;
}

/* Outlines that nothing ships for, smooth and with a step of a five-hundredth. */
static GArray *
make_grid (const char *const *codes)
{
  GArray *grid = g_array_new (FALSE, TRUE, sizeof (GwPolarSubject));

  for (guint i = 0; i < SECTIONS; i++)
    for (guint is_stepped = 0; is_stepped < 2; is_stepped++)
      {
        GwPolarSubject subject = { 0 };

        g_assert_cmpint (gw_outline_naca (codes[i], &subject.outline), ==, GW_OK);
        if (is_stepped)
          subject.trip = (GwTrip){ 0.25, 1.0 / 512.0, GW_CRITICAL_STEP };
        g_array_append_val (grid, subject);
      }

  return grid;
}

static void
bench_grid (void)
{
  static const char *const codes[SECTIONS] = { "0011", "2411", "4411", "6411" };
  g_autoptr (GArray) grid = make_grid (codes);
  const gint64 began = g_get_monotonic_time ();

  g_assert_true (gw_polars_compute (grid, NULL, NULL, NULL, NULL));
  g_print ("grid of %d sections, %d Reynolds numbers, 2 finishes, %u processors: %.1f s\n",
           SECTIONS, GW_POLARS_N, g_get_num_processors (), ms_since (began) * 1e-3);
}

static gpointer
stop_after (gpointer data)
{
  g_usleep (700 * G_TIME_SPAN_MILLISECOND);
  g_cancellable_cancel (data);
  return GSIZE_TO_POINTER ((gsize) g_get_monotonic_time ());
}

static void
bench_stop (void)
{
  static const char *const codes[SECTIONS] = { "0010", "2410", "4410", "6410" };
  g_autoptr (GArray) grid = make_grid (codes);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  GThread *stopper = g_thread_new ("stop", stop_after, cancellable);
  gint64   over, stopped;

  g_assert_false (gw_polars_compute (grid, NULL, NULL, cancellable, NULL));
  over = g_get_monotonic_time ();
  stopped = (gint64) GPOINTER_TO_SIZE (g_thread_join (stopper));
  g_print ("stopped in the middle of it: over after %.0f ms\n", (double) (over - stopped) * 1e-3);
}

static void
bench_demo (void)
{
  g_autofree char *path = demo_path ("reed-bed");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) study = gw_study_load (file, problems, NULL);
  g_autoptr (GwEvaluation) quick = NULL, whole = NULL, again = NULL;
  gint64 began = g_get_monotonic_time ();

  quick = gw_evaluation_quick (study, NULL, NULL);
  g_print ("demo: provisional values (%s) after %.0f ms",
           quick->is_provisional ? "sections guessed" : "sections known", ms_since (began));
  began = g_get_monotonic_time ();
  whole = gw_evaluation_new (study, NULL, NULL);
  g_print (", all with bands after %.0f ms", ms_since (began));
  began = g_get_monotonic_time ();
  again = gw_evaluation_new (study, NULL, NULL);
  g_print (", once more %.0f ms\n", ms_since (began));
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *cache = own_cache_make ();
  int              status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/demo", bench_demo); /* before anything is in memory */
  g_test_add_func ("/grid", bench_grid);
  g_test_add_func ("/stop", bench_stop);
  status = g_test_run ();
  own_cache_remove (cache);
  return status;
}
