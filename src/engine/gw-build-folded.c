/* gw-build-folded.c - folded sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-build-private.h"

/* Where the spar strips stand, in chords: one alone near the greatest depth, more of
 * them spread over the middle (common practice, no source). */
static double
strip_place (int i,
             int n)
{
  return n > 1 ? 0.2 + 0.4 * i / (n - 1) : 0.3;
}

static void
add_line (const GwWork *work,
          double        x,
          double        level,
          GwMoments    *sum)
{
  double    ends[2][3];
  GwMoments line;

  _gw_work_line (work, work->from, work->to, x, level, 0.0, ends);
  gw_moments_segment (ends[0], ends[1], &line);
  gw_moments_add (sum, &line, 1.0);
}

static void
build_glue (GwWork *work)
{
  const int n = work->build->folded.strips;
  GwMoments sum = { 0 };

  add_line (work, 0.0, 0.5, &sum);
  add_line (work, 1.0, 0.5, &sum);
  for (int i = 0; i < n; i++)
    {
      add_line (work, strip_place (i, n), 0.0, &sum);
      add_line (work, strip_place (i, n), 1.0, &sum);
    }

  _gw_work_add (work, GW_PIECE_JOINT, 2 + 2 * n, &sum, work->build->folded.glue_linear);
}

void
_gw_build_folded (GwWork *work)
{
  const GwFoldedSheet *sheet = &work->build->folded;
  const double         areal = sheet->areal * work->build->mass_factor;
  GwMoments            strips = { 0 };
  GwMoments            part;

  _gw_work_add (work, GW_PIECE_SKIN, 1, &work->loft.skin, areal);

  for (int i = 0; i < sheet->strips; i++)
    {
      _gw_work_web (work, work->from, work->to, strip_place (i, sheet->strips), 0.0, &part);
      gw_moments_add (&strips, &part, 1.0);
    }
  _gw_work_add (work, GW_PIECE_WEB, sheet->strips, &strips, areal);

  if (sheet->former_pitch > 0.0)
    {
      const int n = _gw_work_faces (work, sheet->former_pitch, &part);

      _gw_work_add (work, GW_PIECE_RIB, n, &part, areal);
    }

  build_glue (work);
}
