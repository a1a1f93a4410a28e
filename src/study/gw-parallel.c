/* gw-parallel.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-parallel.h"

typedef struct
{
  GwParallelFunc func;
  gpointer       data;
  gint           n, next, is_ended;
} Work;

static gpointer
work_on (gpointer data)
{
  Work *work = data;
  gint  i;

  while (!g_atomic_int_get (&work->is_ended) &&
         (i = g_atomic_int_add (&work->next, 1)) < work->n)
    if (!work->func ((guint) i, work->data))
      g_atomic_int_set (&work->is_ended, TRUE);

  return NULL;
}

gboolean
gw_parallel_each (guint          n,
                  GwParallelFunc func,
                  gpointer       data)
{
  Work                 work = { func, data, (gint) n, 0, FALSE };
  const guint          n_threads = MIN (g_get_num_processors (), n);
  g_autofree GThread **helpers = g_new0 (GThread *, n_threads + 1);

  for (guint i = 1; i < n_threads; i++)
    helpers[i] = g_thread_new ("parallel", work_on, &work);
  work_on (&work);
  for (guint i = 1; i < n_threads; i++)
    g_thread_join (helpers[i]);

  return !work.is_ended;
}
