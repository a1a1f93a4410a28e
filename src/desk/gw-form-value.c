/* gw-form-value.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-value.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-error.h"

#define EN_DASH    "\342\200\223" /* U+2013 */
#define PLUS_MINUS "\302\261"     /* U+00B1 */
#define NO_BREAK   "\302\240"     /* U+00A0 */

/* A tenth of the document's unit, or better; its own unit in full. */
static int
decimals (const GwEntryUnit *unit)
{
  if (unit == NULL || (unit->factor == 1.0 && unit->offset == 0.0))
    return 6;

  return MAX (1, (int) ceil (log10 (unit->factor)) + 1);
}

char *
gw_form_number_text (double         value,
                     GwQuantity     quantity,
                     const GwUnits *units)
{
  const GwEntryUnit *unit = units->of[quantity];

  return gw_entry_text (value, unit, decimals (unit));
}

static char *
with_unit (const char    *number,
           GwQuantity     quantity,
           const GwUnits *units)
{
  const char *name = gw_units_name (units, quantity);

  return g_strconcat (number, *name != '\0' ? NO_BREAK : "", name, NULL);
}

char *
gw_form_measure_text (double         value,
                      GwQuantity     quantity,
                      const GwUnits *units)
{
  g_autofree char *number = gw_form_number_text (value, quantity, units);

  return with_unit (number, quantity, units);
}

char *
gw_form_bounds_text (const GwField *field,
                     const GwUnits *units)
{
  g_autofree char *least = gw_form_number_text (field->least, field->quantity, units);
  g_autofree char *most = gw_form_measure_text (field->most, field->quantity, units);

  return g_strdup_printf (_ ("from %s to %s"), least, most);
}

gboolean
gw_form_number_parse (const char    *text,
                      const GwField *field,
                      const GwUnits *units,
                      double        *value,
                      GError       **error)
{
  g_autofree char *bounds = NULL;

  if (!gw_entry_parse (text, field->quantity, units->of[field->quantity], value, error))
    return FALSE;

  if (field->quantity == GW_COUNT && *value != floor (*value))
    {
      g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
                           _ ("a whole number is wanted here"));
      return FALSE;
    }

  if (*value >= field->least && *value <= field->most)
    return TRUE;

  bounds = gw_form_bounds_text (field, units);
  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
               _ ("out of range; give a value %s"), bounds);
  return FALSE;
}

gboolean
gw_form_spread_parse (const char    *text,
                      const GwField *field,
                      const GwUnits *units,
                      double         value,
                      double        *spread,
                      GError       **error)
{
  g_autofree char *typed = g_strstrip (g_strdup (text));
  const gboolean   is_share = field->quantity != GW_PERCENT && g_str_has_suffix (typed, "%");
  /* A difference has no zero of its own. */
  GwEntryUnit        unit = { NULL, field->quantity, 1.0, 0.0 };
  const GwEntryUnit *shown = units->of[field->quantity];
  gboolean           is_read;

  if (shown != NULL)
    unit.factor = shown->factor;
  if (is_share)
    typed[strlen (typed) - 1] = '\0';

  is_read = gw_entry_parse (typed, is_share ? GW_RATIO : field->quantity,
                            is_share || shown == NULL ? NULL : &unit, spread, error);
  if (!is_read)
    return FALSE;

  if (is_share)
    *spread *= fabs (value) / 100.0;
  if (*spread >= 0.0)
    return TRUE;

  g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
                       _ ("a spread is zero or more"));
  return FALSE;
}

char *
gw_form_spread_text (double         spread,
                     GwQuantity     quantity,
                     const GwUnits *units)
{
  return gw_entry_text (gw_units_shown_change (units, quantity, spread), NULL, 6);
}

/* The power of ten next below one, or one tenth, hundredth of the document's unit where the
 * field has no room for more. */
double
gw_form_step (const GwField *field,
              const GwUnits *units)
{
  const GwEntryUnit *unit = units->of[field->quantity];
  const double       factor = unit != NULL ? unit->factor : 1.0;
  const double       room = field->most - field->least;
  double             step = factor;

  if (field->quantity == GW_COUNT)
    return 1.0;
  if (factor > 1.0)
    step *= pow (10.0, -floor (log10 (factor)));

  return room > 30.0 ? step : room > 3.0 ? step / 10.0
                                         : step / 100.0;
}

/* Two digits are as much as a spread is worth. */
static char *
rough (double value)
{
  const double size = value > 0.0 ? pow (10.0, 1.0 - floor (log10 (value))) : 1.0;

  return gw_number_text (size > 1.0 ? round (value * size) / size : round (value));
}

char *
gw_form_sureness_text (const GwNumber *number,
                       const GwField  *field,
                       const GwUnits  *units)
{
  if (!gw_number_is_uncertain (number))
    return g_strdup (_ ("exact"));

  if (number->form == GW_FORM_RANGE)
    {
      g_autofree char *low = gw_form_number_text (number->low, field->quantity, units);
      g_autofree char *high = gw_form_number_text (number->high, field->quantity, units);

      /* A dash beside a minus sign would be misread. */
      return number->low < 0.0 ? g_strdup_printf (_ ("%s to %s"), low, high)
                               : g_strconcat (low, EN_DASH, high, NULL);
    }

  /* Of a place, a share of its distance from the datum says nothing. */
  if (field->least >= 0.0 && number->value > 0.0 && field->quantity != GW_PERCENT)
    {
      g_autofree char *share = rough (100.0 * number->spread / number->value);

      return g_strconcat (PLUS_MINUS, share, NO_BREAK "%", NULL);
    }
  else
    {
      g_autofree char *spread =
        rough (gw_units_shown_change (units, field->quantity, number->spread));
      g_autofree char *measure = with_unit (spread, field->quantity, units);

      return g_strconcat (PLUS_MINUS, measure, NULL);
    }
}

gboolean
gw_form_is_open (const GwField *field)
{
  return !field->is_needed && (isnan (field->standard) || field->standard == field->most);
}
