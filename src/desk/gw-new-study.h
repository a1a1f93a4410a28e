/* gw-new-study.h - a new study from a starting shape, a span, a chord and a mass
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "study/gw-template.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_NEW_STUDY (gw_new_study_get_type ())

/* A page that asks for shape and size and shows at every change what it comes to. Signals:
 * "begin", with the study (GwStudy *, not the receiver's), and "cancel". Property "dark":
 * its drawings are. */
G_DECLARE_FINAL_TYPE (GwNewStudy, gw_new_study, GW, NEW_STUDY, GtkWidget)

GtkWidget *gw_new_study_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_new_study_start: as if nobody had been here before, ready to choose a shape. */
void gw_new_study_start (GwNewStudy *self);

/** gw_new_study_choose: that shape at its usual size. */
void gw_new_study_choose (GwNewStudy       *self,
                          const GwTemplate *shape);

/** gw_new_study_set_units: @units stays with the caller; what is typed is kept as a length. */
void gw_new_study_set_units (GwNewStudy    *self,
                             const GwUnits *units);

/** gw_new_study_get_study: (nullable): what "begin" would give; NULL while something is amiss. */
GwStudy *gw_new_study_get_study (GwNewStudy *self);

G_END_DECLS
