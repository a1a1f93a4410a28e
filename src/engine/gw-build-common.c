/* gw-build-common.c - what is in a surface whatever it is made of
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-build-private.h"

#include <math.h>

#define CENTRE_LINE 1e-3 /* a root this near to y = 0 is joined to its mirror image [m] */

static void
add_piece (GwWork          *work,
           GwPieceKind      kind,
           int              count,
           const GwMoments *moments,
           double           factor,
           bool             is_mirrored,
           bool             is_weighed)
{
  GwPiece piece = {
    .kind = kind,
    .group = GW_GROUP_SURFACE,
    .owner = work->index,
    .panel = (int) work->panel,
    .side = 1,
    .count = count,
    .is_weighed = is_weighed,
  };

  if (work->status != GW_OK)
    return;

  gw_moments_add (&piece.mass, moments, factor);
  if (piece.mass.total > 0.0)
    work->status = gw_pieces_add_both (work->pieces, &piece, is_mirrored);
}

void
_gw_work_add (GwWork          *work,
              GwPieceKind      kind,
              int              count,
              const GwMoments *moments,
              double           factor)
{
  add_piece (work, kind, count, moments, factor, work->surface->is_mirrored, false);
}

bool
_gw_work_overlap (const GwWork *work,
                  double        from,
                  double        to,
                  double       *a,
                  double       *b)
{
  *a = fmax (from, work->from);
  *b = fmin (to, work->to);
  return *b > *a;
}

void
_gw_work_slice (const GwWork *work,
                double        arc,
                GwSlice      *out)
{
  gw_panel_slice (work->surface, work->panel, (arc - work->from) / work->loft.length, out);
}

void
_gw_work_line (const GwWork *work,
               double        a,
               double        b,
               double        x,
               double        level,
               double        inset,
               double        ends[2][3])
{
  for (int i = 0; i < 2; i++)
    {
      GwSlice slice;
      double  upper, lower, margin;

      _gw_work_slice (work, i == 0 ? a : b, &slice);
      upper = gw_slice_height (&slice, x, true);
      lower = gw_slice_height (&slice, x, false);
      margin = fmin (inset / slice.chord, 0.5 * (upper - lower));
      gw_slice_place (&slice, x, level * (upper - margin) + (1.0 - level) * (lower + margin),
                      ends[i]);
    }
}

void
_gw_work_web (const GwWork *work,
              double        a,
              double        b,
              double        x,
              double        inset,
              GwMoments    *out)
{
  double    lower[2][3], upper[2][3];
  GwMoments part;

  _gw_work_line (work, a, b, x, 0.0, inset, lower);
  _gw_work_line (work, a, b, x, 1.0, inset, upper);
  gw_moments_triangle (lower[0], lower[1], upper[1], out);
  gw_moments_triangle (lower[0], upper[1], upper[0], &part);
  gw_moments_add (out, &part, 1.0);
}

int
_gw_work_faces (const GwWork *work,
                double        pitch,
                GwMoments    *out)
{
  const int bays = (int) fmax (ceil (work->loft.length / pitch - 1e-6), 1.0);

  *out = (GwMoments){ 0 };
  for (int i = 1; i < bays; i++)
    {
      GwSlice   slice;
      GwMoments face;

      gw_panel_slice (work->surface, work->panel, (double) i / bays, &slice);
      gw_slice_face (&slice, &face);
      gw_moments_add (out, &face, 1.0);
    }

  return bays - 1;
}

double
_gw_spar_solid (const GwSpar *spar,
                double        depth)
{
  switch (spar->kind)
    {
    case GW_SPAR_TUBE:
      return M_PI * spar->width * spar->width / 4.0;
    case GW_SPAR_STRIP:
      return spar->width * spar->height;
    case GW_SPAR_CAPS:
      return 2.0 * spar->width * spar->height +
             spar->web_thickness * fmax (depth - 2.0 * spar->height, 0.0);
    case GW_N_SPAR_KINDS:
    default:
      return 0.0;
    }
}

static void
spar_tube (const GwWork *work,
           const GwSpar *spar,
           double        a,
           double        b,
           GwMoments    *out)
{
  const double outer = 0.5 * spar->width;
  const double inner = spar->wall > 0.0 ? fmax (outer - spar->wall, 0.0) : 0.0;
  double       ends[2][3];
  GwMoments    line;

  _gw_work_line (work, a, b, spar->chord_place, 0.5, 0.0, ends);
  gw_moments_segment (ends[0], ends[1], &line);
  gw_moments_tube (M_PI * (outer * outer - inner * inner) * line.total * spar->density,
                   ends[0], ends[1], outer, inner, out);
}

static void
spar_bar (const GwWork *work,
          const GwSpar *spar,
          double        a,
          double        b,
          double        level,
          double        inset,
          GwMoments    *sum)
{
  double    ends[2][3];
  GwMoments line;

  _gw_work_line (work, a, b, spar->chord_place, level, inset, ends);
  gw_moments_segment (ends[0], ends[1], &line);
  gw_moments_add (sum, &line, spar->width * spar->height * spar->density);
}

static void
build_spar (GwWork       *work,
            const GwSpar *spar)
{
  GwMoments mass = { 0 };
  double    a, b;

  if (!_gw_work_overlap (work, spar->from, spar->to, &a, &b))
    return;

  switch (spar->kind)
    {
    case GW_SPAR_TUBE:
      spar_tube (work, spar, a, b, &mass);
      break;
    case GW_SPAR_STRIP:
      spar_bar (work, spar, a, b, 0.5, 0.0, &mass);
      break;
    case GW_SPAR_CAPS:
      {
        GwMoments web;

        spar_bar (work, spar, a, b, 1.0, 0.5 * spar->height, &mass);
        spar_bar (work, spar, a, b, 0.0, 0.5 * spar->height, &mass);
        _gw_work_web (work, a, b, spar->chord_place, spar->height, &web);
        gw_moments_add (&mass, &web, spar->web_thickness * spar->web_density);
        break;
      }
    case GW_N_SPAR_KINDS:
    default:
      break;
    }

  add_piece (work, GW_PIECE_SPAR, 1, &mass, 1.0, work->surface->is_mirrored, spar->is_weighed);
}

/* Adhesive around the seams inside the panel and around its inner end, which joins it
 * to the next one in, or to its own mirror image. */
static void
build_joints (GwWork *work)
{
  const double linear = work->build->joint_linear;
  const int    n = gw_build_seams (work->surface, work->panel);
  GwMoments    sum = { 0 };
  GwMoments    rim;
  GwSlice      slice;
  const int    first = work->panel > 0 ? 0 : 1;

  for (int i = first; i < n; i++)
    {
      gw_panel_slice (work->surface, work->panel, (double) i / n, &slice);
      gw_slice_rim (&slice, &rim);
      gw_moments_add (&sum, &rim, 1.0);
    }
  _gw_work_add (work, GW_PIECE_JOINT, n - first, &sum, linear);

  if (work->panel > 0 || !work->surface->is_mirrored ||
      fabs (work->surface->stations[0].at[1]) > CENTRE_LINE)
    return;

  /* One joint for both halves: half of it each, so that it stays on the centre line. */
  gw_panel_slice (work->surface, 0, 0.0, &slice);
  gw_slice_rim (&slice, &rim);
  sum = rim;
  gw_moments_mirror (&rim);
  gw_moments_add (&sum, &rim, 1.0);
  add_piece (work, GW_PIECE_JOINT, 1, &sum, 0.5 * linear, false, false);
}

static void
build_linkage (GwWork          *work,
               const GwControl *control)
{
  const double last = gw_surface_arc (work->surface, work->surface->n_stations - 1);
  const double middle = fmin (fmax (0.5 * (control->from + control->to), 0.0), last);
  const bool   is_last = work->panel + 2 == work->surface->n_stations;
  double       ends[2][3];
  GwMoments    point;

  if (middle < work->from || (middle >= work->to && !is_last))
    return;

  _gw_work_line (work, middle, middle, 1.0 - control->chord_fraction, 0.5, 0.0, ends);
  gw_moments_point (control->linkage_mass, ends[0], &point);
  _gw_work_add (work, GW_PIECE_LINKAGE, 1, &point, 1.0);
}

static void
build_hinge (GwWork          *work,
             const GwControl *control)
{
  double    ends[2][3];
  double    a, b;
  GwMoments line;

  if (!_gw_work_overlap (work, control->from, control->to, &a, &b))
    return;

  _gw_work_line (work, a, b, 1.0 - control->chord_fraction, 0.5, 0.0, ends);
  gw_moments_segment (ends[0], ends[1], &line);
  _gw_work_add (work, GW_PIECE_HINGE, 1, &line, control->hinge_linear);
}

void
_gw_build_common (GwWork *work)
{
  const GwSurface *surface = work->surface;

  for (size_t i = 0; i < surface->n_spars; i++)
    build_spar (work, &surface->spars[i]);

  if (work->build->joint_linear > 0.0)
    build_joints (work);

  for (size_t i = 0; i < surface->n_controls; i++)
    {
      build_hinge (work, &surface->controls[i]);
      build_linkage (work, &surface->controls[i]);
    }

  _gw_work_add (work, GW_PIECE_FINISH, 1, &work->loft.skin, work->build->finish_areal);
}
