/* gw-assemble.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-assemble.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "engine/gw-body.h"
#include "study/gw-assemble-private.h"

gpointer
_gw_assemble_block (GwAssembler *assembler,
                    gsize        n,
                    gsize        size)
{
  gpointer block = g_malloc0_n (MAX (n, 1), size);

  g_ptr_array_add (assembler->assembly->blocks, block);
  return block;
}

const GwStudyMaterial *
_gw_assemble_material (GwAssembler *assembler,
                       const char  *id,
                       const char  *path)
{
  if (id == NULL)
    {
      gw_problems_error (assembler->problems, path, _ ("no material is named here; name one"));
      return NULL;
    }

  /* An id that is not there has been told by the check of references. */
  return (const GwStudyMaterial *) gw_list_find (assembler->study->materials, id);
}

static double
known (GwAssembler    *assembler,
       const GwNumber *number,
       const char     *id,
       const char     *path,
       const char     *what)
{
  if (isnan (number->value))
    gw_problems_error (assembler->problems, path,
                       _ ("the material “%s” has no %s; give it one or take another"), id, what);

  return number->value;
}

double
_gw_assemble_density (GwAssembler *assembler,
                      const char  *id,
                      const char  *path)
{
  const GwStudyMaterial *material = _gw_assemble_material (assembler, id, path);

  if (material == NULL)
    return (double) NAN;

  return known (assembler, &material->density_kg_m3, id, path, "density_kg_m3");
}

double
_gw_assemble_areal (GwAssembler *assembler,
                    const char  *id,
                    const char  *path)
{
  const GwStudyMaterial *material = _gw_assemble_material (assembler, id, path);

  if (material == NULL)
    return (double) NAN;

  return known (assembler, &material->areal_g_m2, id, path, "areal_g_m2") * 1e-3;
}

static void
fill_skin (GwAssembler       *assembler,
           const GwStudyBody *from,
           GwBody            *body,
           const char        *path)
{
  const GwStudyMaterial *material;

  body->mass_factor = 1.0 + _gw_percent (&from->extra_percent);
  if (from->material == NULL && !isnan (from->mass_g.value))
    body->skin_areal = 1.0;
  else if (!isnan (from->skin_mm.value))
    body->skin_areal =
      _gw_mm (&from->skin_mm) * _gw_assemble_density (assembler, from->material, path);
  else
    body->skin_areal = _gw_assemble_areal (assembler, from->material, path);

  material =
    from->material != NULL ? _gw_assemble_material (assembler, from->material, path) : NULL;
  if (material != NULL)
    body->mass_factor *= material->made_factor.value;
}

static void
fill_body (GwAssembler       *assembler,
           const GwStudyBody *from,
           GwBody            *body)
{
  g_autofree char *path = g_strdup_printf ("bodies/%s", from->id);
  GwBodyStation   *stations = _gw_assemble_new (assembler, GwBodyStation, from->stations->len);
  GwBodyShape      shape;

  for (guint i = 0; i < from->stations->len; i++)
    {
      const GwStudyBodyStation *station = g_ptr_array_index (from->stations, i);

      stations[i] = (GwBodyStation){ _gw_mm (&station->x_mm), _gw_mm (&station->z_mm),
                                     _gw_mm (&station->width_mm), _gw_mm (&station->height_mm),
                                     station->squareness.value };
    }

  *body = (GwBody){
    .name = from->name != NULL ? from->name : from->id,
    .y = _gw_mm (&from->y_mm),
    .is_mirrored = from->mirrored,
    .n_stations = from->stations->len,
    .stations = stations,
    .known_mass = _gw_g (&from->mass_g),
    .is_weighed = _gw_weighed (&from->mass_g),
  };
  fill_skin (assembler, from, body, path);
  if (gw_body_shape (body, &shape, NULL) != GW_OK)
    gw_problems_error (
      assembler->problems, path,
      _ ("a body needs at least two cross-sections, from the nose aft, with some size"));
}

static void
assemble_bodies (GwAssembler *assembler)
{
  const GPtrArray *list = assembler->study->bodies;
  GwBody          *bodies = _gw_assemble_new (assembler, GwBody, list->len);

  for (guint i = 0; i < list->len; i++)
    fill_body (assembler, g_ptr_array_index (list, i), &bodies[i]);

  assembler->assembly->aircraft.bodies = bodies;
  assembler->assembly->aircraft.n_bodies = list->len;
}

static void
assemble_struts (GwAssembler *assembler)
{
  const GPtrArray *list = assembler->study->struts;
  GwStrut         *struts = _gw_assemble_new (assembler, GwStrut, list->len);

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudyStrut *from = g_ptr_array_index (list, i);

      struts[i] = (GwStrut){
        .name = from->name != NULL ? from->name : from->id,
        .from = { _gw_mm (&from->from_x_mm), _gw_mm (&from->from_y_mm), _gw_mm (&from->from_z_mm) },
        .to = { _gw_mm (&from->to_x_mm), _gw_mm (&from->to_y_mm), _gw_mm (&from->to_z_mm) },
        .radius = 0.5 * _gw_mm (&from->diameter_mm),
        .mass = _gw_g (&from->mass_g),
        .is_mirrored = from->mirrored,
        .is_weighed = _gw_weighed (&from->mass_g),
      };
    }

  assembler->assembly->aircraft.struts = struts;
  assembler->assembly->aircraft.n_struts = list->len;
}

static void
assemble_legs (GwAssembler *assembler)
{
  const GPtrArray *list = assembler->study->legs;
  GwLeg           *legs = _gw_assemble_new (assembler, GwLeg, list->len);

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudyLeg *from = g_ptr_array_index (list, i);

      legs[i] = (GwLeg){
        .name = from->name != NULL ? from->name : from->id,
        .top = { _gw_mm (&from->top_x_mm), _gw_mm (&from->top_y_mm), _gw_mm (&from->top_z_mm) },
        .axle = { _gw_mm (&from->axle_x_mm), _gw_mm (&from->axle_y_mm), _gw_mm (&from->axle_z_mm) },
        .leg_mass = _gw_g (&from->mass_g),
        .wheel_mass = _gw_g (&from->wheel_mass_g),
        .wheel_radius = 0.5 * _gw_mm (&from->wheel_diameter_mm),
        .wheel_width = _gw_mm (&from->wheel_width_mm),
        .is_mirrored = from->mirrored,
        .is_leg_weighed = _gw_weighed (&from->mass_g),
        .is_wheel_weighed = _gw_weighed (&from->wheel_mass_g),
      };
    }

  assembler->assembly->aircraft.legs = legs;
  assembler->assembly->aircraft.n_legs = list->len;
}

static void
assemble_powers (GwAssembler *assembler)
{
  const GPtrArray *list = assembler->study->powers;
  GwPower         *powers = _gw_assemble_new (assembler, GwPower, list->len);

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudyPower *from = g_ptr_array_index (list, i);

      powers[i] = (GwPower){
        .name = from->name != NULL ? from->name : from->id,
        .motor_at = { _gw_mm (&from->x_mm), _gw_mm (&from->y_mm), _gw_mm (&from->z_mm) },
        .motor_mass = _gw_g (&from->mass_g),
        .motor_radius = 0.5 * _gw_mm (&from->diameter_mm),
        .motor_length = _gw_mm (&from->length_mm),
        .propeller_x = _gw_mm (&from->propeller_x_mm),
        .propeller_mass = _gw_g (&from->propeller_mass_g),
        .propeller_diameter = _gw_mm (&from->propeller_diameter_mm),
        .controller_at = { _gw_mm (&from->controller_x_mm), _gw_mm (&from->y_mm),
                           _gw_mm (&from->controller_z_mm) },
        .controller_mass = _gw_g (&from->controller_mass_g),
        .is_mirrored = from->mirrored,
        .is_motor_weighed = _gw_weighed (&from->mass_g),
        .is_propeller_weighed = _gw_weighed (&from->propeller_mass_g),
        .is_controller_weighed = _gw_weighed (&from->controller_mass_g),
      };
    }

  assembler->assembly->aircraft.powers = powers;
  assembler->assembly->aircraft.n_powers = list->len;
}

static void
fill_item (GwAssembler       *assembler,
           const GwStudyItem *from,
           GwItem            *item)
{
  *item = (GwItem){
    .name = from->name != NULL ? from->name : from->id,
    .kind = (GwItemKind) from->kind,
    .mass = _gw_g (&from->mass_g),
    .at = { _gw_mm (&from->x_mm), _gw_mm (&from->y_mm), _gw_mm (&from->z_mm) },
    .size = { _gw_mm (&from->length_mm), _gw_mm (&from->width_mm), _gw_mm (&from->height_mm) },
    .is_mirrored = from->mirrored,
    .is_weighed = _gw_weighed (&from->mass_g),
    .bay_from = _gw_mm (&from->bay_from_mm),
    .bay_to = _gw_mm (&from->bay_to_mm),
    .lead_linear = _gw_g (&from->lead_g_m),
    .lead_to = { _gw_mm (&from->lead_x_mm), _gw_mm (&from->lead_y_mm), _gw_mm (&from->lead_z_mm) },
    .lead_slack = _gw_mm (&from->lead_slack_mm),
  };

  if (isnan (item->bay_from) != isnan (item->bay_to) || item->bay_from > item->bay_to)
    {
      g_autofree char *path = g_strdup_printf ("equipment/%s", from->id);

      gw_problems_error (assembler->problems, path,
                         _ ("a bay needs both ends, bay_from_mm ahead of bay_to_mm"));
    }
}

static void
assemble_items (GwAssembler *assembler)
{
  const GPtrArray *list = assembler->study->equipment;
  GwAircraft      *aircraft = &assembler->assembly->aircraft;
  GwItem          *items = _gw_assemble_new (assembler, GwItem, list->len);

  aircraft->movable = -1;
  for (guint i = 0; i < list->len; i++)
    {
      const GwStudyItem *from = g_ptr_array_index (list, i);

      fill_item (assembler, from, &items[i]);
      if (g_strcmp0 (from->id, assembler->study->movable) == 0)
        aircraft->movable = (int) i;
    }

  aircraft->items = items;
  aircraft->n_items = list->len;
}

static void
assemble_day (GwAssembler *assembler)
{
  const GwStudyDay *day = assembler->study->day;
  GwAir             air;

  assembler->assembly->aircraft.day = (GwDay){
    .elevation = day->elevation_m.value,
    .temperature = day->temperature_c.value + 273.15,
    .qnh = day->pressure_hpa.value * 100.0,
    .humidity = _gw_percent (&day->humidity_percent),
  };
  if (gw_air_of_day (&assembler->assembly->aircraft.day, &air) != GW_OK)
    gw_problems_error (assembler->problems, "day",
                       _ ("elevation and pressure leave less than 500 or more than 1100 hPa at the "
                          "field; correct one of them"));
}

/* The balance point is wanted behind the main wing's root; the engine counts from the datum. */
static void
assemble_targets (GwAssembler *assembler)
{
  const GwStudyTargets *targets = assembler->study->targets;
  const GwAircraft     *aircraft = &assembler->assembly->aircraft;
  double                root = NAN;

  for (size_t i = aircraft->n_surfaces; i-- > 0;)
    if (aircraft->surfaces[i].role == GW_ROLE_WING && aircraft->surfaces[i].n_stations > 0)
      root = aircraft->surfaces[i].stations[0].at[0];

  assembler->assembly->aircraft.targets = (GwTargets){
    .stall_speed = targets->stall_speed_m_s.value,
    .mass = _gw_g (&targets->mass_g),
    .static_margin = _gw_percent (&targets->static_margin_percent),
    .balance_x = root + _gw_mm (&targets->balance_mm),
  };
}

static void
assemble_methods (GwAssembler *assembler)
{
  const GwStudyMethod *method =
    (const GwStudyMethod *) gw_list_find (assembler->study->methods, "neutral-point");

  assembler->assembly->aircraft.neutral_point_shift = method != NULL ? method->value.value : 0.0;
}

GwAssembly *
gw_assemble (GwStudy          *resolved,
             const GwAssembly *like,
             GPtrArray        *problems)
{
  g_autoptr (GwAssembly) assembly = g_new0 (GwAssembly, 1);
  GwAssembler assembler = { assembly, like, resolved, problems };
  const guint n_before = gw_problems_count (problems);

  assembly->study = gw_study_ref (resolved);
  assembly->blocks = g_ptr_array_new_with_free_func (g_free);
  _gw_assemble_sections (&assembler);
  _gw_assemble_surfaces (&assembler);
  assemble_bodies (&assembler);
  assemble_struts (&assembler);
  assemble_legs (&assembler);
  assemble_powers (&assembler);
  assemble_items (&assembler);
  assemble_day (&assembler);
  assemble_targets (&assembler);
  assemble_methods (&assembler);

  return gw_problems_count (problems) == n_before ? g_steal_pointer (&assembly) : NULL;
}

void
gw_assembly_free (GwAssembly *assembly)
{
  g_clear_pointer (&assembly->blocks, g_ptr_array_unref);
  g_clear_pointer (&assembly->study, gw_study_unref);
  g_free (assembly);
}
