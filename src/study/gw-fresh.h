/* gw-fresh.h - new things for an aircraft, sized and placed to suit it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/* What can be added. */
typedef struct
{
  const char *what;  /* "tailplane" */
  const char *list;  /* of the study: "surfaces" */
  const char *label; /* untranslated */
  const char *edit;  /* untranslated, as undo has it: "Add tailplane" */
} GwFreshKind;

/** gw_fresh_kind: the @i-th, or NULL behind the last. */
const GwFreshKind *gw_fresh_kind (guint i);

/** gw_fresh_find: the kind of that name, or NULL. */
const GwFreshKind *gw_fresh_find (const char *what);

/**
 * gw_fresh_add:
 * @option: index; the aircraft as it is there sets size and place
 * @what: of a kind
 * @path: (out): of the new record
 *
 * The study with one thing more, complete so that it can be computed: a surface comes with a
 * build. Sizes and masses follow from the aircraft by common practice, no source, and are
 * there to be changed; masses say that they are guessed. An option is a copy of @option.
 *
 * Returns: (transfer full): a new study, checked as a whole, or NULL with the reason
 */
GwStudy *gw_fresh_add (const GwStudy *study,
                       guint          option,
                       const char    *what,
                       char         **path,
                       GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_fresh_is_construction: whether @path is of the construction of a build. */
gboolean gw_fresh_is_construction (const GwStudy *study,
                                   const char    *path);

/**
 * gw_fresh_construction:
 * @path: of the construction of a build
 * @value: the word for it
 *
 * As gw_edit_set(), but what the construction cannot be without comes with it unless the build
 * has it already: as in another build of the study that is made so, rather of the same surface,
 * else a material of the catalogue by common practice.
 */
GwStudy *gw_fresh_construction (const GwStudy *study,
                                guint          option,
                                gboolean       is_only_here,
                                const char    *path,
                                JsonNode      *value,
                                GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_fresh_is_size: whether @path is of a usual size, which is copied where it is chosen. */
gboolean gw_fresh_is_size (const GwStudy *study,
                           const char    *path);

/** gw_fresh_sizes: of the catalogue, that suit the field of @record; empty: it is no such field.
 * (transfer container) */
GPtrArray *gw_fresh_sizes (const GwRecord *record,
                           const GwField  *field) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_fresh_size:
 * @path: of a usual size
 * @value: its id
 *
 * As gw_edit_set(), and the numbers of that size stand in the fields beside it; where the name
 * holds that of the size before, the new one's takes its place.
 */
GwStudy *gw_fresh_size (const GwStudy *study,
                        guint          option,
                        gboolean       is_only_here,
                        const char    *path,
                        JsonNode      *value,
                        GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_fresh_is_filament: whether @path is of the material of a printed shell. */
gboolean gw_fresh_is_filament (const GwStudy *study,
                               const char    *path);

/**
 * gw_fresh_filament:
 * @path: of the material of a printed shell
 * @value: its id
 *
 * As gw_edit_set(), but flow and nozzle temperature become those of the new filament, since what
 * was weighed or set with one says nothing of another: as in another build of the study that is
 * printed from it, else the flow is guessed by common practice and the temperature left out.
 */
GwStudy *gw_fresh_filament (const GwStudy *study,
                            guint          option,
                            gboolean       is_only_here,
                            const char    *path,
                            JsonNode      *value,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
