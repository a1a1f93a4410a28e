/* gw-error.h - what can be wrong with a document, and where
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

#include "engine/gw-status.h"

G_BEGIN_DECLS

#define GW_STUDY_ERROR (gw_study_error_quark ())

/**
 * GwStudyError:
 * @GW_STUDY_ERROR_FILE: cannot be read or written
 * @GW_STUDY_ERROR_SYNTAX: not well-formed JSON, or beyond the limits of a study
 * @GW_STUDY_ERROR_VERSION: needs a newer program, or is no study
 * @GW_STUDY_ERROR_CONTENT: a value, key or reference is wrong; the message holds its path
 * @GW_STUDY_ERROR_CALCULATION: the engine refused
 */
typedef enum
{
  GW_STUDY_ERROR_FILE,
  GW_STUDY_ERROR_SYNTAX,
  GW_STUDY_ERROR_VERSION,
  GW_STUDY_ERROR_CONTENT,
  GW_STUDY_ERROR_CALCULATION,
} GwStudyError;

GQuark gw_study_error_quark (void) G_GNUC_CONST;

/** gw_study_status_error: the one place where an engine status becomes a GError. */
void gw_study_status_error (GError    **error,
                            GwStatus    status,
                            const char *what);

/* A list of everything found wrong, so that one look at a file shows all of it. */
typedef struct
{
  char    *path;    /* inside the document, "" for the whole */
  char    *message; /* what is wrong and what to do */
  gboolean is_error; /* FALSE: a hint; the study can be used */
} GwProblem;

GPtrArray *gw_problems_new (void) G_GNUC_WARN_UNUSED_RESULT;

void gw_problems_error (GPtrArray  *problems,
                        const char *path,
                        const char *format,
                        ...) G_GNUC_PRINTF (3, 4);
void gw_problems_hint  (GPtrArray  *problems,
                        const char *path,
                        const char *format,
                        ...) G_GNUC_PRINTF (3, 4);

guint gw_problems_count (const GPtrArray *problems);

/** gw_problems_to_error: the first error, and how many more there are; FALSE if there is one. */
gboolean gw_problems_to_error (const GPtrArray *problems,
                               GError         **error);

G_END_DECLS
