/* bench-polar.c - how long a polar takes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One section, one Reynolds number, 25 incidences on one core: processor time of this thread,
 * since others may run. The least of five runs and the middle one.
 */

#include <stdlib.h>
#include <time.h>

#include "polars.h"

#define RUNS 5

static double
now_ms (void)
{
  struct timespec time;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &time);
  return (double) time.tv_sec * 1e3 + (double) time.tv_nsec * 1e-6;
}

static int
compare (const void *a,
         const void *b)
{
  const double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

int
main (void)
{
  static const char *const sections[] = { "0009", "2412", "clark-y", "4412" };
  GwPolar                 *polar = g_new (GwPolar, 1);

  for (size_t k = 0; k < G_N_ELEMENTS (sections); k++)
    for (double re = 6e4; re < 1.1e6; re *= 4.0)
      {
        const GwPolarCase made = polar_case (sections[k], re, -8, 16);
        double            taken[RUNS];

        for (int i = 0; i < RUNS; i++)
          {
            const double began = now_ms ();

            if (gw_polar_run (&made, polar) != GW_OK)
              return EXIT_FAILURE;
            taken[i] = now_ms () - began;
          }
        qsort (taken, RUNS, sizeof taken[0], compare);
        g_print ("%-8s re %8.0f: %zu incidences, %zu converged, least %.0f ms, middle %.0f ms\n",
                 sections[k], re, polar->tried, polar->converged, taken[0], taken[RUNS / 2]);
      }

  g_free (polar);
  return EXIT_SUCCESS;
}
