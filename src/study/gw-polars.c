/* gw-polars.c - polars in memory, and the threads that compute them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-polars-private.h"

#include <string.h>

#include "study/gw-parallel.h"

#define FIRST -8 /* incidences [deg] */
#define LAST  20
#define PAST  3

const double gw_polars_re[GW_POLARS_N] = { 3e4, 5e4, 8e4, 1.3e5, 2.2e5, 3.7e5, 6.5e5, 1.2e6 };

/* What is known of a subject: polars one by one as they are done, or that no file has it. */
typedef struct
{
  GwPolarSubject subject;
  GwPolars      *polars; /* NULL: looked for in vain */
  guint          done;   /* bit by bit */
} Entry;

#define ALL ((1u << GW_POLARS_N) - 1)

static GMutex      lock;
static GHashTable *entries; /* of Entry, which is its own key */

static guint
subject_hash (gconstpointer key)
{
  const GwPolarSubject *subject = key;
  guint                 hash = 5381;
  guint64               bits;

  for (guint i = 0; i < GW_OUTLINE_N; i += 9)
    {
      memcpy (&bits, &subject->outline.upper[i], sizeof bits);
      hash = hash * 33 + (guint) (bits >> 24);
      memcpy (&bits, &subject->outline.lower[i], sizeof bits);
      hash = hash * 33 + (guint) (bits >> 24);
    }

  return hash;
}

static gboolean
is_same_trip (const GwTrip *a,
              const GwTrip *b)
{
  return a->x == b->x && a->height == b->height && a->critical == b->critical;
}

static gboolean
subject_equal (gconstpointer a,
               gconstpointer b)
{
  const GwPolarSubject *p = a, *q = b;

  return memcmp (&p->outline, &q->outline, sizeof p->outline) == 0 &&
         is_same_trip (&p->trip, &q->trip) && p->flap.hinge == q->flap.hinge &&
         p->flap.height == q->flap.height && p->flap.deflection == q->flap.deflection &&
         p->is_flap_open == q->is_flap_open;
}

static void
entry_free (Entry *entry)
{
  g_clear_pointer (&entry->polars, gw_polars_unref);
  g_free (entry);
}

/* With the lock held. */
static Entry *
find_entry (const GwPolarSubject *subject)
{
  return entries != NULL ? g_hash_table_lookup (entries, subject) : NULL;
}

static Entry *
add_entry (const GwPolarSubject *subject,
           GwPolars             *polars,
           guint                 done)
{
  Entry *entry = find_entry (subject);

  if (entry == NULL)
    {
      entry = g_new0 (Entry, 1);
      entry->subject = *subject;
      if (entries == NULL)
        entries = g_hash_table_new_full (subject_hash, subject_equal, NULL,
                                         (GDestroyNotify) entry_free);
      g_hash_table_insert (entries, &entry->subject, entry);
    }

  if (entry->polars == NULL && polars != NULL)
    entry->polars = gw_polars_ref (polars);
  entry->done |= done;
  return entry;
}

GwPolars *
gw_polars_find (const GwPolarSubject *subject)
{
  g_autoptr (GwPolars) read = NULL;
  GwPolars *found = NULL;
  Entry    *entry;

  g_mutex_lock (&lock);
  entry = find_entry (subject);
  if (entry != NULL)
    {
      found = entry->done == ALL ? gw_polars_ref (entry->polars) : NULL;
      g_mutex_unlock (&lock);
      return found;
    }
  g_mutex_unlock (&lock);

  read = _gw_polars_read (subject);

  g_mutex_lock (&lock);
  entry = add_entry (subject, read, read != NULL ? ALL : 0);
  if (entry->done == ALL)
    found = gw_polars_ref (entry->polars);
  g_mutex_unlock (&lock);
  return found;
}

static bool
is_wanted (void *data)
{
  return !g_cancellable_is_cancelled (data);
}

/* No speed about a section comes near so many times that of the stream, ahead of and behind a
 * twentieth of the chord: its square is one less the pressure coefficient, -8 there at 20 deg. */
#define FASTEST_AT_NOSE 6.0
#define FASTEST         3.0

gboolean
gw_polars_trip_acts (const GwTrip *trip,
                     double        re)
{
  const double fastest = trip->x < 0.05 ? FASTEST_AT_NOSE : FASTEST;

  return fastest * re * trip->height >= trip->critical;
}

GwPolarCase
gw_polar_subject_case (const GwPolarSubject *subject,
                       double                re)
{
  const GwTrip none = { .x = 1.0 };
  const GwTrip trip =
    subject->trip.height > 0.0 && gw_polars_trip_acts (&subject->trip, re) ? subject->trip : none;

  return (GwPolarCase){
    .outline = subject->outline,
    .flap = subject->flap,
    .is_open = subject->is_flap_open,
    .re = re,
    .trips = { trip, trip },
    .n = LAST - FIRST + 1,
    .alpha_first = FIRST * G_PI / 180.0,
    .alpha_last = LAST * G_PI / 180.0,
    .past = PAST * G_PI / 180.0,
    .with_return = true,
  };
}

/* Polars still to be computed, one by one. */
typedef struct
{
  GArray          *subjects;
  GCancellable    *cancellable;
  GwPolarsProgress progress;
  gpointer         data;
  guint            all;
  gint             done;
} Work;

static gboolean
is_done (const GwPolarSubject *subject,
         guint                 k)
{
  const Entry *entry;
  gboolean     done;

  g_mutex_lock (&lock);
  entry = find_entry (subject);
  done = entry != NULL && (entry->done >> k & 1) != 0;
  g_mutex_unlock (&lock);
  return done;
}

/* As they would be read: a study gives the same numbers whether its polars are new or kept. */
static void
round_all (Entry *entry)
{
  g_autofree char *text = gw_polars_text (&entry->subject, entry->polars);
  GwPolars        *rounded = gw_polars_parse (&entry->subject, text, strlen (text));

  g_return_if_fail (rounded != NULL);
  gw_polars_unref (entry->polars);
  entry->polars = rounded;
}

/* Takes the polar over unless another thread was faster. Returns the polars if they are all
 * there now. */
static GwPolars *
keep (const GwPolarSubject *subject,
      guint                 k,
      GwStatus              status,
      const GwPolar        *polar)
{
  GwPolars *complete = NULL;
  Entry    *entry;

  g_mutex_lock (&lock);
  entry = add_entry (subject, NULL, 0);
  if (entry->polars == NULL)
    entry->polars = _gw_polars_alloc ();
  if ((entry->done >> k & 1) == 0)
    {
      entry->polars->polar[k] = *polar;
      entry->polars->status[k] = status;
      entry->done |= 1u << k;
      if (entry->done == ALL)
        {
          round_all (entry);
          complete = gw_polars_ref (entry->polars);
        }
    }
  g_mutex_unlock (&lock);
  return complete;
}

/* Where its step does nothing, a section does what it does smooth. */
static GwPolars *
find_smooth (const GwPolarSubject *subject,
             double                re)
{
  GwPolarSubject smooth = *subject;

  if (subject->trip.height == 0.0 || gw_polars_trip_acts (&subject->trip, re))
    return NULL;
  smooth.trip = (GwTrip){ 0 };
  return gw_polars_find (&smooth);
}

static void
compute_one (const Work           *work,
             const GwPolarSubject *subject,
             guint                 k)
{
  GwPolarCase polar_case = gw_polar_subject_case (subject, gw_polars_re[k]);
  g_autoptr (GwPolars) smooth = find_smooth (subject, polar_case.re);
  g_autoptr (GwPolars) complete = NULL;
  g_autofree GwPolar *polar = g_new0 (GwPolar, 1);
  GwStatus            status;

  polar_case.is_wanted = is_wanted;
  polar_case.data = work->cancellable;
  if (smooth != NULL)
    *polar = smooth->polar[k];
  status = smooth != NULL ? smooth->status[k] : gw_polar_run (&polar_case, polar);
  if (!polar->is_complete)
    return;

  complete = keep (subject, k, status, polar);
  if (complete != NULL)
    _gw_polars_write (subject, complete);
}

static gboolean
compute_item (guint    i,
              gpointer data)
{
  Work                 *work = data;
  const GwPolarSubject *subject =
    &g_array_index (work->subjects, GwPolarSubject, i / GW_POLARS_N);
  gint done;

  if (g_cancellable_is_cancelled (work->cancellable))
    return FALSE;

  if (!is_done (subject, i % GW_POLARS_N))
    compute_one (work, subject, i % GW_POLARS_N);
  done = g_atomic_int_add (&work->done, 1) + 1;
  if (work->progress != NULL)
    work->progress ((guint) done, work->all, work->data);
  return TRUE;
}

/* Each once, without those that are there. */
static GArray *
pick_missing (const GArray *subjects)
{
  GArray *missing = g_array_new (FALSE, FALSE, sizeof (GwPolarSubject));

  for (guint i = 0; i < subjects->len; i++)
    {
      const GwPolarSubject *subject = &g_array_index (subjects, GwPolarSubject, i);
      g_autoptr (GwPolars) there = gw_polars_find (subject);
      gboolean is_new = there == NULL;

      for (guint j = 0; is_new && j < missing->len; j++)
        is_new = !subject_equal (subject, &g_array_index (missing, GwPolarSubject, j));
      if (is_new)
        g_array_append_val (missing, *subject);
    }

  return missing;
}

gboolean
gw_polars_compute (GArray          *subjects,
                   GwPolarsProgress progress,
                   gpointer         data,
                   GCancellable    *cancellable,
                   GError         **error)
{
  g_autoptr (GArray) missing = pick_missing (subjects);
  Work work = {
    .subjects = missing,
    .cancellable = cancellable,
    .progress = progress,
    .data = data,
    .all = missing->len * GW_POLARS_N,
  };

  gw_parallel_each (work.all, compute_item, &work);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}

GwPolars *
_gw_polars_alloc (void)
{
  return g_atomic_rc_box_new0 (GwPolars);
}

GwPolars *
gw_polars_ref (GwPolars *polars)
{
  return g_atomic_rc_box_acquire (polars);
}

void
gw_polars_unref (GwPolars *polars)
{
  g_atomic_rc_box_release (polars);
}
