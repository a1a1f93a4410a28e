/* gw-lift.c - one lifting surface in the air: lifting line and first stall
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-lift.h"

#include <math.h>

#define N    GW_LINE_N
#define STEP (M_PI / (2 * N)) /* between stations, as an angle */

/* Length of a panel as the line sees it: from above, or a fin from the side. */
static double
panel_step (const GwSurface *surface,
            size_t           panel)
{
  const int     axis = surface->role == GW_ROLE_FIN ? 2 : 1;
  const double *a = surface->stations[panel].at, *b = surface->stations[panel + 1].at;

  return fabs (b[axis] - a[axis]);
}

/* Distance of the root station from the plane of symmetry. */
static double
root_offset (const GwSurface *surface)
{
  return surface->is_mirrored && surface->role != GW_ROLE_FIN ? fabs (surface->stations[0].at[1])
                                                              : 0.0;
}

static double
semispan_of (const GwSurface *surface)
{
  double sum = root_offset (surface);

  for (size_t k = 0; k + 1 < surface->n_stations; k++)
    sum += panel_step (surface, k);

  return sum;
}

double
gw_spanwise_arc (const GwSurface *surface,
                 double           eta)
{
  double left = eta * semispan_of (surface) - root_offset (surface);

  for (size_t k = 0; k + 1 < surface->n_stations; k++)
    {
      const double step = panel_step (surface, k);

      if (step > 0.0 && left <= step)
        {
          const double from = gw_surface_arc (surface, k);

          return from + fmax (left, 0.0) / step * (gw_surface_arc (surface, k + 1) - from);
        }
      left -= step;
    }

  return gw_surface_arc (surface, surface->n_stations - 1);
}

/* Cosines of one panel: of its half-chord sweep in its own plane, of its dihedral. A
 * panel that stands upright (a winglet) hardly shows in the projection; its cosine
 * is kept off zero so that the line stays regular. */
static void
panel_cosines (const GwSurface *surface,
               size_t           panel,
               double          *sweep,
               double          *tilt)
{
  const GwStation *a = &surface->stations[panel], *b = &surface->stations[panel + 1];
  const double     length = hypot (b->at[1] - a->at[1], b->at[2] - a->at[2]);
  const double     aft = b->at[0] + 0.5 * b->chord - a->at[0] - 0.5 * a->chord;

  *sweep = length / hypot (length, aft);
  *tilt = fmax (panel_step (surface, panel) / length, 0.1);
}

/* Mean cosines over the strip that station @i stands for, from half way to its inner
 * to half way to its outer neighbour: a station that slips over a crank as the
 * planform changes then changes nothing at a step. */
static void
strip_cosines (const GwSurface *surface,
               int              i,
               GwSpanwise      *out)
{
  const double semispan = semispan_of (surface);
  const double low = i == N - 1 ? 0.0 : semispan * cos (STEP * (i + 1.5));
  const double high = i == 0 ? semispan : semispan * cos (STEP * (i + 0.5));
  double       from = 0.0, to = root_offset (surface);

  out->sweep[i] = out->tilt[i] = 0.0;

  for (size_t k = 0; k + 1 < surface->n_stations; k++)
    {
      double sweep, tilt, share;

      to += panel_step (surface, k);
      share = (fmin (to, high) - fmax (from, low)) / (high - low);
      if (share > 0.0)
        {
          panel_cosines (surface, k, &sweep, &tilt);
          out->sweep[i] += share * sweep;
          out->tilt[i] += share * tilt;
        }
      from = to;
    }
}

GwStatus
gw_spanwise_of (const GwSurface      *surface,
                const GwSurfaceShape *shape,
                GwSpanwise           *out)
{
  if (surface->n_stations < 2 || !(semispan_of (surface) > 0.0))
    return GW_EINVAL;

  out->span = 2.0 * semispan_of (surface);
  out->area = surface->is_mirrored ? shape->projected_area : 2.0 * shape->projected_area;
  out->mac = shape->mac;

  for (int i = 0; i < N; i++)
    {
      GwSlice slice;
      double  quarter[3];

      gw_surface_slice (surface, gw_spanwise_arc (surface, gw_line_eta (i)), &slice);
      gw_slice_place (&slice, 0.25, 0.0, quarter);
      out->chord[i] = slice.chord;
      out->twist[i] = slice.twist;
      out->x[i] = quarter[0];
      out->z[i] = quarter[2];
      out->inner[i] = slice.inner;
      out->outer[i] = slice.outer;
      out->mix[i] = slice.mix;
      out->finish[i] = slice.finish;
      strip_cosines (surface, i, out);
    }

  return GW_OK;
}

/* Section data of every station at its own Reynolds number. */
typedef struct
{
  double cl_max[N];
  double cl_min[N]; /* as a positive number */
  double cm[N];
  bool   is_outside;
} Limits;

/* Upside down: the nose lets go at the same angle of the chord line as upright, so
 * with thin-aerofoil theory c_lmax = a (stall - zero) turns into
 * c_lmin = -a (stall + zero) = -(c_lmax - 2 camber share), camber share = -a zero. For
 * strong camber that tends to nothing, while even a sharp thin plate carries some
 * 0.4 of a cambered section's lift: an estimate, from memory, as the whole rule. */
static double
limit_upside_down (const GwSectionPoint *point)
{
  return fmax (point->cl_max + 2.0 * point->slope * point->alpha_zero, 0.4 * point->cl_max);
}

static GwStatus
look_up_section (const GwSpanwise *spanwise,
                 int               i,
                 double            re,
                 GwSectionPoint   *out)
{
  const GwFinish *finish = &spanwise->finish[i];
  const double    mix = spanwise->mix[i], chord = spanwise->chord[i];
  GwSectionPoint  inner, outer;
  GwStatus        status;

  if (spanwise->inner[i] == spanwise->outer[i] || mix <= 0.0)
    return gw_section_at (spanwise->inner[i], re, chord, finish, out);

  status = gw_section_at (spanwise->inner[i], re, chord, finish, &inner);
  if (status == GW_OK)
    status = gw_section_at (spanwise->outer[i], re, chord, finish, &outer);
  if (status == GW_OK)
    gw_section_mix (&inner, &outer, mix, out);
  return status;
}

/* Slope of a strip in the line. Prandtl's line asks for a great aspect ratio; with the
 * section slope divided by sqrt (1 + (a0 / pi A)^2) an elliptic load gives Helmbold's
 * formula, and Diederich's with the cosine of the sweep in it. */
static double
strip_slope (const GwSpanwise *spanwise,
             int               i,
             double            section_slope)
{
  const double slope = section_slope * spanwise->sweep[i] * spanwise->tilt[i];
  const double bound = slope * spanwise->area / (M_PI * spanwise->span * spanwise->span);

  return slope / sqrt (1.0 + bound * bound);
}

static GwStatus
look_up (const GwSpanwise *spanwise,
         double            re_per_length,
         GwLine           *line,
         Limits           *limits)
{
  line->span = spanwise->span;
  line->area = spanwise->area;
  limits->is_outside = false;

  for (int i = 0; i < N; i++)
    {
      GwSectionPoint point;
      const double   chord = spanwise->chord[i];
      const GwStatus status = look_up_section (spanwise, i, re_per_length * chord, &point);

      if (status != GW_OK)
        return status;
      if (!(point.cl_max > 0.0))
        return GW_EINVAL;

      line->chord[i] = chord;
      line->slope[i] = strip_slope (spanwise, i, point.slope);
      line->zero[i] = (point.alpha_zero - spanwise->twist[i]) / spanwise->tilt[i];
      limits->cl_max[i] = point.cl_max;
      limits->cl_min[i] = limit_upside_down (&point);
      limits->cm[i] = point.cm_zero;
      limits->is_outside = limits->is_outside || point.is_outside;
    }

  return GW_OK;
}

/* Least value of the curve through @f, by cubics whose slopes are the differences across
 * each point. It changes steadily with @f, also where the least point gives way to the
 * next one; a parabola through three points would jump there. */
static double
least_between (const double f[N],
               double      *place)
{
  double least = f[0], before = f[1] - f[0];

  *place = 0.0;
  for (int i = 1; i < N; i++)
    {
      /* Mirrored beyond the centre. */
      const double slope = i == N - 1 ? 0.0 : 0.5 * (f[i + 1] - f[i - 1]);
      const double rise = f[i] - f[i - 1];

      if (f[i] < least)
        {
          least = f[i];
          *place = i;
        }
      if (before < 0.0 && slope > 0.0)
        {
          const double b = 3.0 * rise - 2.0 * before - slope;
          const double c = before + slope - 2.0 * rise;
          const double t = -before / (b + sqrt (b * b - 3.0 * c * before));
          const double value = f[i - 1] + t * (before + t * (b + t * c));

          if (value < least)
            {
              least = value;
              *place = i - 1 + t;
            }
        }
      before = slope;
    }

  return least;
}

/* Critical section: the least lift coefficient at which a station reaches its limit; @sign is
 * -1 upside down. The additional load is positive for positive slopes; it only fades at the
 * tip. */
static double
critical_lift (const GwLine *line,
               const double  limit[N],
               double        sign,
               double       *place)
{
  double lift[N];

  for (int i = 0; i < N; i++)
    lift[i] = (limit[i] - sign * line->basic[i]) / fmax (line->additional[i], 1e-6);

  return least_between (lift, place);
}

/* Chord at a place between stations. */
static double
chord_at (const GwSpanwise *spanwise,
          double            place)
{
  const int    i = (int) place;
  const double t = place - i;

  return (1.0 - t) * spanwise->chord[i] + t * spanwise->chord[i + 1 < N ? i + 1 : N - 1];
}

/* Aerodynamic centre: centre of the additional load on the quarter-chord line. Moment
 * about it: the sections' own and that of the basic load, which is a pure couple. */
static void
find_centre (const GwSpanwise *spanwise,
             const GwLine     *line,
             const Limits     *limits,
             GwLift           *out)
{
  double load = 0.0, x = 0.0, z = 0.0, couple = 0.0, square = 0.0, own = 0.0;

  for (int i = 0; i < N; i++)
    {
      const double area = gw_line_weight (i) * line->chord[i];
      const double share = area * line->additional[i];

      load += share;
      x += share * spanwise->x[i];
      z += share * spanwise->z[i];
      couple -= area * line->basic[i] * spanwise->x[i];
      square += area * line->chord[i];
      own += area * line->chord[i] * limits->cm[i];
    }

  /* The sections' part as a mean over chord^2: exact for one section throughout. */
  out->centre_x = x / load;
  out->centre_z = z / load;
  out->cm_zero = own / square + spanwise->span * couple / (spanwise->area * spanwise->mac);
}

GwStatus
gw_lift_of_spanwise (const GwSpanwise *spanwise,
                     const GwAir      *air,
                     double            speed,
                     GwLift           *out)
{
  const double re_per_length = air->density * speed / air->viscosity;
  GwLine       line;
  Limits       limits;
  GwStatus     status;
  double       place, below;

  if (!(speed > 0.0) || !isfinite (speed))
    return GW_EINVAL;

  status = look_up (spanwise, re_per_length, &line, &limits);
  if (status == GW_OK)
    status = gw_line_solve (&line);
  if (status != GW_OK)
    return status;

  find_centre (spanwise, &line, &limits, out);
  out->lift_slope = line.lift_slope;
  out->alpha_zero = line.alpha_zero;
  out->cl_max = critical_lift (&line, limits.cl_max, 1.0, &place);
  out->cl_min = -critical_lift (&line, limits.cl_min, -1.0, &below);
  out->stall_eta = fmax (cos (STEP * (place + 1.0)), 0.0);
  out->re_stall = re_per_length * chord_at (spanwise, place);
  out->re_mac = re_per_length * spanwise->mac;
  out->is_outside = limits.is_outside;
  return GW_OK;
}

GwStatus
gw_lift_of_surface (const GwSurface      *surface,
                    const GwSurfaceShape *shape,
                    const GwAir          *air,
                    double                speed,
                    GwLift               *out)
{
  GwSpanwise     spanwise;
  const GwStatus status = gw_spanwise_of (surface, shape, &spanwise);

  return status == GW_OK ? gw_lift_of_spanwise (&spanwise, air, speed, out) : status;
}

double
gw_lift_slope_closed (double aspect_ratio,
                      double kappa,
                      double sweep_half)
{
  const double a = aspect_ratio / kappa;
  const double t = tan (sweep_half);

  return 2.0 * M_PI * aspect_ratio / (2.0 + sqrt (4.0 + a * a * (1.0 + t * t)));
}
