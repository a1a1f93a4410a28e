/* gw-edit-private.h - what the files that edit studies share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-edit.h"

G_BEGIN_DECLS

/** _gw_edit_give_id: one that nothing in @list has, made from its own or from its kind. */
void _gw_edit_give_id (GwRecord        *record,
                       const GPtrArray *list);

/** _gw_edit_rename_copy: "Battery, copy". */
void _gw_edit_rename_copy (GwRecord *copy);

/** _gw_edit_refuse: there is no such place; FALSE. */
gboolean _gw_edit_refuse (const char *path,
                          GError    **error);

/** _gw_edit_checked: @study, or NULL with what is wrong with it. (transfer full) @study */
GwStudy *_gw_edit_checked (GwStudy *study,
                           GError **error);

/** _gw_edit_list: the list of @owner with that key. */
GPtrArray *_gw_edit_list (GwRecord   *owner,
                          const char *key);

/** _gw_edit_tidy: an empty list is left out. */
void _gw_edit_tidy (GwRecord   *owner,
                    const char *key);

/* One place in a list, in a copy of a study that nobody else sees yet. What moves records about
 * in the list takes along what options change of them. */
typedef struct
{
  GwStudy   *study;
  char      *path; /* of the list */
  GwRecord  *owner;
  GPtrArray *list;
  guint      index;
} GwEditPlace;

void _gw_edit_place_clear (GwEditPlace *place);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (GwEditPlace, _gw_edit_place_clear)

/** _gw_edit_begin: finds the record at @path in a copy of @study; FALSE: there is none. */
gboolean _gw_edit_begin (GwEditPlace   *place,
                         const GwStudy *study,
                         const char    *path,
                         GError       **error);

/** _gw_edit_begin_list: the same of a list and its end. */
gboolean _gw_edit_begin_list (GwEditPlace   *place,
                              const GwStudy *study,
                              const char    *list,
                              GError       **error);

/** _gw_edit_end: the study, checked; NULL: with the reason. */
GwStudy *_gw_edit_end (GwEditPlace *place,
                       GError     **error);

GwRecord *_gw_edit_place_record (const GwEditPlace *place);
char     *_gw_edit_place_path (const GwEditPlace *place);

/** _gw_edit_put_in: @record is at @index from now on, and that is the place. */
void _gw_edit_put_in (GwEditPlace *place,
                      guint        index,
                      GwRecord    *record);
void _gw_edit_take_out (GwEditPlace *place,
                        GPtrArray   *dropped);
void _gw_edit_shift (GwEditPlace *place,
                     guint        index);

/* What options change. */

/** _gw_edit_fold: in options that have @list as their own, all they change in it is part of it. */
void _gw_edit_fold (GwStudy    *study,
                    const char *list);

/**
 * _gw_edit_follow:
 * @list: path of a list that the options have in common
 * @before: its records as they were, some of them gone
 * @dropped: (nullable): as in gw-edit.h
 *
 * What options change of a record goes where the record went, or away with it.
 */
void _gw_edit_follow (GwStudy         *study,
                      const char      *list,
                      const GPtrArray *before,
                      const GPtrArray *after,
                      GPtrArray       *dropped);

/** _gw_edit_copy_changes: what options change at @from they change at @to as well. */
void _gw_edit_copy_changes (GwStudy    *study,
                            const char *from,
                            const char *to);

/**
 * _gw_edit_own:
 * @value: (nullable): NULL: what @view has there
 * @view: the study as the option has it now, @value included
 *
 * Makes @value what the option has at @path. Where something around that is its own already,
 * that stays one change, with @value in it; changes within @path are part of it.
 */
void _gw_edit_own (GwStudyOption *option,
                   const char    *path,
                   JsonNode      *value,
                   const GwStudy *view);

/** _gw_edit_has_own: whether the option changes that very path. */
gboolean _gw_edit_has_own (const GwStudyOption *option,
                           const char          *path);

/** _gw_edit_is_within_own: whether @path lies in a list that is the option's own. */
gboolean _gw_edit_is_within_own (const GwStudy       *study,
                                 const GwStudyOption *option,
                                 const char          *path);

/**
 * _gw_edit_follow_surfaces:
 * @before: the study before the common surface @from went or came
 * @from: (nullable): id of a surface that is gone, if @to is NULL, or was copied
 * @to: (nullable): id of a surface that is new
 *
 * Builds and spars name their surface. Where an option has surfaces of its own, it keeps the
 * builds and spars it had; where it has builds or spars of its own, they follow the surface as
 * the common ones have.
 */
void _gw_edit_follow_surfaces (const GwStudy *before,
                               GwStudy       *study,
                               const char    *from,
                               const char    *to);

/** _gw_edit_copy_parts: builds or spars of surface @from, for surface @to, at the end of the list,
 * so that no number changes. */
void _gw_edit_copy_parts (GwRecord   *owner,
                          const char *key,
                          const char *from,
                          const char *to);

/** _gw_edit_is_of_surface: whether that is what a build or spar is of. */
gboolean _gw_edit_is_of_surface (const GwRecord *part,
                                 const char     *surface);

extern const char *const _gw_edit_parts_of_surface[2]; /* keys of lists */

G_END_DECLS
