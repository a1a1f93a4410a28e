/* test-polars.c - polars that are computed once and kept
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gstdio.h>
#include <string.h>

#include "own-cache.h"
#include "study/gw-catalogue.h"
#include "study/gw-polars-private.h"
#include "study/gw-section-known.h"

#define SECTION "naca-2412"

/* A section of the catalogue under a name that nothing ships for. */
static GwPolarSubject
unshipped (void)
{
  const GwStudySection *section =
    (const GwStudySection *) gw_list_find (gw_catalogue_list ("sections"), SECTION);
  GwPolarSubject subject;

  g_assert_true (gw_section_subject (section, NULL, &subject));
  g_assert_cmpstr (subject.section, ==, SECTION);
  subject.section = NULL;
  return subject;
}

static gboolean
compute (const GwPolarSubject *subject,
         GwPolarsProgress      progress,
         gpointer              data,
         GCancellable         *cancellable,
         GError              **error)
{
  g_autoptr (GArray) subjects = g_array_new (FALSE, FALSE, sizeof *subject);

  g_array_append_val (subjects, *subject);
  return gw_polars_compute (subjects, progress, data, cancellable, error);
}

static GwPolars *
shipped (void)
{
  GwPolarSubject subject = unshipped ();

  subject.section = SECTION;
  return _gw_polars_read (&subject);
}

static char *
cache_folder (void)
{
  return g_build_filename (g_get_user_cache_dir (), "gramwright", "polars", NULL);
}

/* The only file in the cache. */
static char *
cache_file (void)
{
  g_autofree char *folder = cache_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  char       *path;

  g_assert_nonnull (dir);
  name = g_dir_read_name (dir);
  g_assert_nonnull (name);
  path = g_build_filename (folder, name, NULL);
  g_assert_null (g_dir_read_name (dir));
  return path;
}

typedef struct
{
  gint          n;
  guint         all;
  GCancellable *stop; /* (nullable): after the first */
} Progress;

static void
progress_cb (guint    done,
             guint    all,
             gpointer data)
{
  Progress *progress = data;

  g_assert_cmpuint (done, <=, all);
  g_atomic_int_inc (&progress->n);
  progress->all = all;
  if (progress->stop != NULL)
    g_cancellable_cancel (progress->stop);
}

/* Stopped after its first polar, taken up again, kept, and what is kept is what ships. */
static void
test_computed (void)
{
  const GwPolarSubject subject = unshipped ();
  Progress             progress = { .stop = g_cancellable_new () };
  g_autoptr (GCancellable) stop = progress.stop;
  g_autoptr (GError) error = NULL;
  g_autoptr (GwPolars) polars = NULL, ships = shipped (), kept = NULL;
  g_autofree char *text = NULL, *path = NULL, *file = NULL;

  g_assert_null (gw_polars_find (&subject));
  g_assert_false (compute (&subject, progress_cb, &progress, stop, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpint (progress.n, >=, 1);
  g_assert_cmpint (progress.n, <, GW_POLARS_N);
  g_assert_null (gw_polars_find (&subject)); /* not before all are there */

  progress = (Progress){ 0 };
  g_assert_true (compute (&subject, progress_cb, &progress, NULL, NULL));
  g_assert_cmpint (progress.n, ==, GW_POLARS_N);
  g_assert_cmpuint (progress.all, ==, GW_POLARS_N);
  polars = gw_polars_find (&subject);
  g_assert_nonnull (polars);

  /* Found again, nothing is computed. */
  progress = (Progress){ 0 };
  g_assert_true (compute (&subject, progress_cb, &progress, NULL, NULL));
  g_assert_cmpint (progress.n, ==, 0);

  /* Numbers are the same whether they were computed now or read. */
  text = gw_polars_text (&subject, polars);
  path = cache_file ();
  g_assert_true (g_file_get_contents (path, &file, NULL, NULL));
  g_assert_cmpstr (file, ==, text);
  kept = _gw_polars_read (&subject);
  g_assert_nonnull (kept);
  g_assert_cmpmem (kept, sizeof *kept, polars, sizeof *polars);

  /* Machines differ in last bits, which a step of the sweep may turn into 1e-3. */
  g_assert_nonnull (ships);
  for (guint k = 0; k < GW_POLARS_N; k++)
    {
      g_assert_cmpint (ships->status[k], ==, polars->status[k]);
      g_assert_cmpfloat_with_epsilon (ships->polar[k].cl_max, polars->polar[k].cl_max, 2e-3);
      g_assert_cmpfloat_with_epsilon (ships->polar[k].cd_min, polars->polar[k].cd_min, 1e-4);
    }
}

/* A step too low to do anything: the same to the last bit, and quick. A cache that cannot be
 * written is no error. */
static void
test_low_step (void)
{
  GwPolarSubject subject = unshipped ();
  g_autoptr (GwPolars) smooth = gw_polars_find (&subject), stepped = NULL;
  g_autofree char *folder = cache_folder ();
  g_autofree char *aside = g_strconcat (folder, "-aside", NULL);

  if (smooth == NULL)
    {
      g_assert_true (compute (&subject, NULL, NULL, NULL, NULL));
      smooth = gw_polars_find (&subject);
    }
  g_assert_nonnull (smooth);
  subject.trip = (GwTrip){ 0.3, 1e-5, GW_CRITICAL_STEP };
  g_assert_false (gw_polars_trip_acts (&subject.trip, gw_polars_re[GW_POLARS_N - 1]));

  /* A file in its way. */
  g_assert_cmpint (g_rename (folder, aside), ==, 0);
  g_assert_true (g_file_set_contents (folder, "", 0, NULL));
  g_assert_true (compute (&subject, NULL, NULL, NULL, NULL));
  g_assert_cmpint (g_unlink (folder), ==, 0);
  g_assert_cmpint (g_rename (aside, folder), ==, 0);
  stepped = gw_polars_find (&subject);
  g_assert_nonnull (stepped);
  g_assert_cmpmem (smooth, sizeof *smooth, stepped, sizeof *stepped);
}

static void
assert_refused (const GwPolarSubject *subject,
                const char           *text,
                const char           *from,
                const char           *to)
{
  g_autoptr (GwPolars) polars = NULL;
  const char *at = strstr (text, from);
  g_autoptr (GString) changed = g_string_new (text);

  g_assert_nonnull (at);
  g_string_erase (changed, at - text, (gssize) strlen (from));
  g_string_insert (changed, at - text, to);
  polars = gw_polars_parse (subject, changed->str, changed->len);
  if (polars != NULL)
    g_error ("taken with %s for %s", to, from);
}

/* What is damaged is as if it were not there: it is computed anew. */
static void
test_damaged (void)
{
  GwPolarSubject subject = unshipped (), other;
  g_autoptr (GwPolars) polars = shipped (), again = NULL;
  g_autofree char *text = gw_polars_text (&subject, polars), *twice = NULL;
  const gsize      length = strlen (text);

  again = gw_polars_parse (&subject, text, length);
  g_assert_nonnull (again);
  twice = gw_polars_text (&subject, again);
  g_assert_cmpstr (text, ==, twice);

  for (gsize cut = 0; cut < length - 2; cut += 97)
    g_assert_null (gw_polars_parse (&subject, text, cut));
  assert_refused (&subject, text, "\"subject\": \"", "\"subject\": \"0");
  assert_refused (&subject, text, "\"rows\": [", "\"rows\": 3, \"row\": [");
  assert_refused (&subject, text, "\"rows\": [", "\"rows\": [7, ");
  assert_refused (&subject, text, "\n        [-8,", "\n        [20,");
  assert_refused (&subject, text, "\n        [-8,", "\n        [\"-8\",");
  assert_refused (&subject, text, "\n        [-8,", "\n        [1e999,");
  assert_refused (&subject, text, "\n        [-8,", "\n        [-8, 0,");
  assert_refused (&subject, text, "\"polars\": [", "\"polars\": [ {},");

  other = subject;
  other.outline.upper[40] += 2e-6;
  g_assert_null (gw_polars_parse (&other, text, length));
  other = subject;
  other.trip = (GwTrip){ 0.3, 2e-3, GW_CRITICAL_STEP };
  g_assert_null (gw_polars_parse (&other, text, length));
  other = subject;
  other.flap = (GwPanelFlap){ 0.75, 0.0, 0.1 };
  g_assert_null (gw_polars_parse (&other, text, length));
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *cache = own_cache_make ();
  int              status;

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/polars/computed", test_computed);
  g_test_add_func ("/study/polars/low-step", test_low_step);
  g_test_add_func ("/study/polars/damaged", test_damaged);
  status = g_test_run ();
  own_cache_remove (cache);
  g_assert_false (g_file_test (cache, G_FILE_TEST_EXISTS));
  return status;
}
