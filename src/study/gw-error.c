/* gw-error.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-error.h"

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (gw_study_error_quark, gw_study_error)

static const char *
status_text (GwStatus status)
{
  switch (status)
    {
    case GW_OK:
      return _ ("it went well");
    case GW_EINVAL:
      return _ ("a value is outside the range the method holds for");
    case GW_EDOM:
      return _ ("there is no answer for these values");
    case GW_ENOCONV:
      return _ ("the calculation did not settle");
    case GW_ENOMEM:
      return _ ("memory ran out");
    default:
      g_return_val_if_reached ("");
    }
}

void
gw_study_status_error (GError    **error,
                       GwStatus    status,
                       const char *what)
{
  g_return_if_fail (status != GW_OK);

  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CALCULATION, "%s: %s", what,
               status_text (status));
}

static void
problem_free (GwProblem *problem)
{
  g_free (problem->path);
  g_free (problem->message);
  g_free (problem);
}

GPtrArray *
gw_problems_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) problem_free);
}

static void
add (GPtrArray  *problems,
     gboolean    is_error,
     const char *path,
     const char *format,
     va_list     args)
{
  GwProblem *problem = g_new (GwProblem, 1);

  problem->path = g_strdup (path);
  problem->message = g_strdup_vprintf (format, args);
  problem->is_error = is_error;
  g_ptr_array_add (problems, problem);
}

void
gw_problems_error (GPtrArray  *problems,
                   const char *path,
                   const char *format,
                   ...)
{
  va_list args;

  va_start (args, format);
  add (problems, TRUE, path, format, args);
  va_end (args);
}

void
gw_problems_hint (GPtrArray  *problems,
                  const char *path,
                  const char *format,
                  ...)
{
  va_list args;

  va_start (args, format);
  add (problems, FALSE, path, format, args);
  va_end (args);
}

guint
gw_problems_count (const GPtrArray *problems)
{
  guint n = 0;

  for (guint i = 0; i < problems->len; i++)
    n += ((GwProblem *) g_ptr_array_index (problems, i))->is_error;

  return n;
}

gboolean
gw_problems_to_error (const GPtrArray *problems,
                      GError         **error)
{
  const guint n = gw_problems_count (problems);

  for (guint i = 0; i < problems->len; i++)
    {
      const GwProblem  *problem = g_ptr_array_index (problems, i);
      g_autofree char *more = NULL;

      if (!problem->is_error)
        continue;

      if (n > 1)
        more = g_strdup_printf (
          g_dngettext (GETTEXT_PACKAGE, " (and %u more)", " (and %u more)", n - 1), n - 1);
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT, "%s%s%s%s", problem->path,
                   *problem->path != '\0' ? ": " : "", problem->message, n > 1 ? more : "");
      return FALSE;
    }

  return TRUE;
}
