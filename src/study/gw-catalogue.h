/* gw-catalogue.h - materials, sections, measurements, method spreads that ship with the program
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/**
 * gw_catalogue_get:
 *
 * The catalogue, read once from the program's resources (files of data/catalogue,
 * one a topic, in the same form as a study). Never changed, safe from any thread.
 *
 * Returns: (transfer none)
 */
const GwStudyCatalogue *gw_catalogue_get (void);

/** gw_catalogue_list: the catalogue's list with that key of the study ("materials"), or NULL. */
const GPtrArray *gw_catalogue_list (const char *key);

/** gw_catalogue_measured: published measurements of the section with that id, of
 * GwStudyMeasurement. (transfer container) */
GPtrArray *gw_catalogue_measured (const char *section) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
