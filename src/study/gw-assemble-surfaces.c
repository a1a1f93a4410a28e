/* gw-assemble-surfaces.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-assemble-private.h"
#include "study/gw-finish.h"

static const GwSection *
find_section (GwAssembler *assembler,
              const char  *id)
{
  for (guint i = 0; i < assembler->study->sections->len; i++)
    if (g_strcmp0 (((GwStudySection *) g_ptr_array_index (assembler->study->sections, i))->id,
                   id) == 0)
      return &assembler->assembly->sections[i];

  return NULL;
}

/* A station without a section of its own goes on with the one before. */
static void
fill_stations (GwAssembler          *assembler,
               const GwStudySurface *from,
               GwSurface            *surface,
               const char           *path)
{
  GwStation       *stations = _gw_assemble_new (assembler, GwStation, from->stations->len);
  const GwSection *section = NULL;

  if (from->stations->len < 2)
    gw_problems_error (assembler->problems, path,
                       _ ("a surface needs at least two stations, root and tip"));

  for (guint i = 0; i < from->stations->len; i++)
    {
      const GwStudyStation *station = g_ptr_array_index (from->stations, i);

      if (station->section != NULL)
        section = find_section (assembler, station->section);
      if (section == NULL)
        gw_problems_error (assembler->problems, path, _ ("station %u has no section; name one"),
                           i + 1);

      stations[i] = (GwStation){
        .at = { _gw_mm (&from->x_mm) + _gw_mm (&station->x_mm),
                _gw_mm (&from->y_mm) + _gw_mm (&station->y_mm),
                _gw_mm (&from->z_mm) + _gw_mm (&station->z_mm) },
        .chord = _gw_mm (&station->chord_mm),
        .twist = _gw_deg (&from->incidence_deg) + _gw_deg (&station->twist_deg),
        .section = section,
      };
    }

  surface->stations = stations;
  surface->n_stations = from->stations->len;
}

static void
fill_controls (GwAssembler          *assembler,
               const GwStudySurface *from,
               GwSurface            *surface)
{
  GwControl *controls = _gw_assemble_new (assembler, GwControl, from->controls->len);

  for (guint i = 0; i < from->controls->len; i++)
    {
      const GwStudyControl *control = g_ptr_array_index (from->controls, i);

      controls[i] = (GwControl){
        .kind = (GwControlKind) control->kind,
        .from = _gw_mm (&control->from_mm),
        .to = _gw_mm (&control->to_mm),
        .chord_fraction = _gw_percent (&control->chord_percent),
        .up = _gw_deg (&control->up_deg),
        .down = _gw_deg (&control->down_deg),
        .hinge_linear = _gw_g (&control->hinge_g_m),
        .linkage_mass = _gw_g (&control->linkage_g),
      };
    }

  surface->controls = controls;
  surface->n_controls = from->controls->len;
}

static void
fill_printed (GwAssembler               *assembler,
              const GwStudyPrintedShell *from,
              GwBuild                   *build,
              const char                *path)
{
  const GwStudyMaterial *material = _gw_assemble_material (assembler, from->material, path);

  build->mass_factor = material != NULL ? material->made_factor.value : 1.0;
  build->printed = (GwPrintedShell){
    .density = _gw_assemble_density (assembler, from->material, path),
    .line_width = _gw_mm (&from->line_width_mm),
    .flow = _gw_percent (&from->flow_percent),
    .walls = (int) from->walls.value,
    .inner = (GwInner) from->inner,
    .inner_walls = (int) from->inner_walls.value,
    .inner_pitch = _gw_mm (&from->inner_pitch_mm),
    .piece_length = _gw_mm (&from->piece_mm),
    .closing = _gw_mm (&from->closing_mm),
  };
}

static void
fill_folded (GwAssembler              *assembler,
             const GwStudyFoldedSheet *from,
             GwBuild                  *build,
             const char               *path)
{
  const GwStudyMaterial *material = _gw_assemble_material (assembler, from->material, path);

  build->mass_factor = material != NULL ? material->made_factor.value : 1.0;
  build->folded = (GwFoldedSheet){
    .areal = _gw_assemble_areal (assembler, from->material, path),
    .strips = (int) from->strips.value,
    .former_pitch =
      from->former_pitch_mm.value > 0.0 ? fmax (_gw_mm (&from->former_pitch_mm), 1e-3) : 0.0,
    .glue_linear = _gw_g (&from->glue_g_m),
  };
}

static void
fill_core (GwAssembler               *assembler,
           const GwStudyHotWiredCore *from,
           GwBuild                   *build,
           const char                *path)
{
  const GwStudyMaterial *material = _gw_assemble_material (assembler, from->material, path);

  build->mass_factor = material != NULL ? material->made_factor.value : 1.0;
  build->core = (GwHotWiredCore){
    .density = _gw_assemble_density (assembler, from->material, path),
    .channel = from->channel_mm2.value * 1e-6,
    .skin_areal = from->skin != NULL ? _gw_assemble_areal (assembler, from->skin, path) : 0.0,
    .edge_linear = _gw_g (&from->edge_g_m),
  };
}

static void
fill_build (GwAssembler        *assembler,
            const GwStudyBuild *from,
            GwBuild            *build,
            const char         *path)
{
  build->construction = (GwConstruction) from->construction;
  switch (build->construction)
    {
    case GW_CONSTRUCTION_PRINTED_SHELL:
      fill_printed (assembler, from->printed_shell, build, path);
      break;
    case GW_CONSTRUCTION_FOLDED_SHEET:
      fill_folded (assembler, from->folded_sheet, build, path);
      break;
    case GW_CONSTRUCTION_HOT_WIRED_CORE:
      fill_core (assembler, from->hot_wired_core, build, path);
      break;
    case GW_N_CONSTRUCTIONS:
    default:
      g_assert_not_reached ();
    }

  build->joint_linear = _gw_g (&from->joint_g_m);
  build->finish_areal =
    from->finish != NULL ? _gw_assemble_areal (assembler, from->finish, path) : 0.0;
  build->finish = gw_finish_of_build (assembler->study, from);
}

static const GwStudyBuild *
find_build (const GPtrArray *builds,
            const char      *surface,
            guint            panel,
            guint           *index)
{
  for (guint i = 0; i < builds->len; i++)
    {
      const GwStudyBuild *build = g_ptr_array_index (builds, i);

      if (g_strcmp0 (build->surface, surface) == 0 && build->first_panel.value <= panel + 1 &&
          build->last_panel.value >= panel + 1)
        {
          *index = i;
          return build;
        }
    }

  return NULL;
}

/* A surface of known mass needs no build: its mass is spread over its skin. */
static const GwBuild spread_over_skin = {
  .construction = GW_CONSTRUCTION_FOLDED_SHEET,
  .folded = { .areal = 1.0 },
  .mass_factor = 1.0,
};

static void
fill_panel (GwAssembler          *assembler,
            const GwStudySurface *from,
            guint                 panel,
            GwBuild              *build,
            const char           *path)
{
  const GwStudyOption *option = g_ptr_array_index (assembler->study->options, 0);
  guint                index = 0;
  const GwStudyBuild  *found = find_build (option->builds, from->id, panel, &index);
  g_autofree char     *here = NULL;

  if (found != NULL)
    here = g_strdup_printf ("options/%s/builds/%u", option->id, index + 1);
  else
    {
      found = find_build (assembler->study->builds, from->id, panel, &index);
      here = g_strdup_printf ("builds/%u", index + 1);
    }

  if (found != NULL)
    fill_build (assembler, found, build, here);
  else if (!isnan (from->mass_g.value))
    *build = spread_over_skin;
  else
    gw_problems_error (
      assembler->problems, path,
      _ ("option “%s” does not say how panel %u is built; add a build, or give the mass"),
      option->id, panel + 1);
}

static void
fill_builds (GwAssembler          *assembler,
             const GwStudySurface *from,
             GwSurface            *surface,
             const char           *path)
{
  const guint n = from->stations->len > 1 ? from->stations->len - 1 : 0;
  GwBuild    *builds = _gw_assemble_new (assembler, GwBuild, n);

  for (guint i = 0; i < n; i++)
    fill_panel (assembler, from, i, &builds[i], path);

  surface->builds = builds;
}

static void
fill_spar (GwAssembler       *assembler,
           const GwStudySpar *from,
           GwSpar            *spar,
           double             arc)
{
  g_autofree char *path = g_strdup_printf ("spars/%s", from->id);

  *spar = (GwSpar){
    .kind = (GwSparKind) from->shape,
    .density = _gw_assemble_density (assembler, from->material, path),
    .width = _gw_mm (&from->width_mm),
    .height = _gw_mm (&from->height_mm),
    .wall = _gw_mm (&from->wall_mm),
    .web_thickness = _gw_mm (&from->web_mm),
    .web_density =
      from->web_mm.value > 0.0 ? _gw_assemble_density (assembler, from->web_material, path) : 0.0,
    .chord_place = _gw_percent (&from->place_percent),
    .from = _gw_mm (&from->from_mm),
    .to = MIN (_gw_mm (&from->to_mm), arc),
  };

  if (!(spar->from < spar->to))
    gw_problems_error (assembler->problems, path,
                       _ ("the spar must begin before it ends, within the surface"));
}

static guint
add_spars (GwAssembler     *assembler,
           const GPtrArray *list,
           const char      *surface,
           double           arc,
           GwSpar          *spars)
{
  guint n = 0;

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudySpar *spar = g_ptr_array_index (list, i);

      if (g_strcmp0 (spar->surface, surface) == 0)
        fill_spar (assembler, spar, &spars[n++], arc);
    }

  return n;
}

static void
fill_spars (GwAssembler *assembler,
            const char  *id,
            GwSurface   *surface)
{
  const GwStudyOption *option = g_ptr_array_index (assembler->study->options, 0);
  const double         arc = gw_surface_arc (surface, surface->n_stations - 1);
  GwSpar              *spars =
    _gw_assemble_new (assembler, GwSpar, option->spars->len + assembler->study->spars->len);

  surface->n_spars = add_spars (assembler, option->spars, id, arc, spars);
  surface->n_spars +=
    add_spars (assembler, assembler->study->spars, id, arc, spars + surface->n_spars);
  surface->spars = spars;
}

static void
check_controls (GwAssembler     *assembler,
                const GwSurface *surface,
                const char      *path)
{
  const double arc = gw_surface_arc (surface, surface->n_stations - 1);

  for (size_t i = 0; i < surface->n_controls; i++)
    if (!(surface->controls[i].from < surface->controls[i].to &&
          surface->controls[i].to <= arc + 1e-6))
      gw_problems_error (
        assembler->problems, path,
        _ ("control surface %u must begin before it ends, within %.0f mm along the span"),
        (guint) i + 1, arc * 1e3);
}

static void
fill_surface (GwAssembler          *assembler,
              const GwStudySurface *from,
              GwSurface            *surface)
{
  g_autofree char *path = g_strdup_printf ("surfaces/%s", from->id);
  const guint      n_before = gw_problems_count (assembler->problems);
  GwSurfaceShape   shape;

  surface->name = from->name != NULL ? from->name : from->id;
  surface->role = (GwRole) from->role;
  surface->is_mirrored = from->mirrored;
  surface->known_mass = _gw_g (&from->mass_g);
  surface->is_weighed = _gw_weighed (&from->mass_g);
  fill_stations (assembler, from, surface, path);
  fill_controls (assembler, from, surface);
  fill_builds (assembler, from, surface, path);
  if (gw_problems_count (assembler->problems) > n_before)
    return;

  if (gw_surface_shape (surface, &shape) != GW_OK)
    {
      gw_problems_error (assembler->problems, path,
                         _ ("the stations make no surface; two of them may stand in one place"));
      return;
    }
  fill_spars (assembler, from->id, surface);
  check_controls (assembler, surface, path);
}

void
_gw_assemble_surfaces (GwAssembler *assembler)
{
  const GPtrArray *list = assembler->study->surfaces;
  GwSurface       *surfaces = _gw_assemble_new (assembler, GwSurface, list->len);
  gboolean         has_wing = FALSE;

  for (guint i = 0; i < list->len; i++)
    {
      fill_surface (assembler, g_ptr_array_index (list, i), &surfaces[i]);
      has_wing = has_wing || surfaces[i].role == GW_ROLE_WING;
    }

  if (!has_wing)
    gw_problems_error (assembler->problems, "surfaces",
                       _ ("no surface has the role “wing”; one must"));

  assembler->assembly->aircraft.surfaces = surfaces;
  assembler->assembly->aircraft.n_surfaces = list->len;
}
