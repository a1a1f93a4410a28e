/* gw-entry.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-entry.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-error.h"
#include "study/gw-number.h"

#define MINUS "\342\210\222" /* U+2212 */

#define INCH  25.4           /* [mm]; exact, as are the next */
#define POUND 453.59237      /* [g] */
#define OUNCE (POUND / 16.0) /* [g] */
#define FOOT  0.3048         /* [m] */

/* Exact definitions (international yard and pound, 1959; knot 1852 m/h; inch of mercury
 * at 0 C 3386.389 Pa: Thompson & Taylor, NIST SP 811, 2008, appendix B; from memory). */
static const GwEntryUnit units[] = {
  { "mm", GW_MM, 1.0, 0.0 },
  { "cm", GW_MM, 10.0, 0.0 },
  { "m", GW_MM, 1000.0, 0.0 },
  { "in", GW_MM, INCH, 0.0 },
  { "\"", GW_MM, INCH, 0.0 },
  { "ft", GW_MM, 12.0 * INCH, 0.0 },
  { "m", GW_M, 1.0, 0.0 },
  { "ft", GW_M, FOOT, 0.0 },
  { "mm2", GW_MM2, 1.0, 0.0 },
  { "mm²", GW_MM2, 1.0, 0.0 },
  { "cm2", GW_MM2, 100.0, 0.0 },
  { "cm²", GW_MM2, 100.0, 0.0 },
  { "in2", GW_MM2, INCH * INCH, 0.0 },
  { "in²", GW_MM2, INCH * INCH, 0.0 },
  { "g", GW_G, 1.0, 0.0 },
  { "kg", GW_G, 1000.0, 0.0 },
  { "oz", GW_G, OUNCE, 0.0 },
  { "lb", GW_G, POUND, 0.0 },
  { "g/m", GW_G_M, 1.0, 0.0 },
  { "oz/ft", GW_G_M, OUNCE / FOOT, 0.0 },
  { "g/m2", GW_G_M2, 1.0, 0.0 },
  { "g/m²", GW_G_M2, 1.0, 0.0 },
  { "g/dm2", GW_G_M2, 100.0, 0.0 },
  { "oz/ft2", GW_G_M2, OUNCE / (FOOT * FOOT), 0.0 },
  { "oz/ft²", GW_G_M2, OUNCE / (FOOT * FOOT), 0.0 },
  { "oz/yd2", GW_G_M2, OUNCE / (9.0 * FOOT * FOOT), 0.0 },
  { "oz/yd²", GW_G_M2, OUNCE / (9.0 * FOOT * FOOT), 0.0 },
  { "kg/m3", GW_KG_M3, 1.0, 0.0 },
  { "kg/m³", GW_KG_M3, 1.0, 0.0 },
  { "g/cm3", GW_KG_M3, 1000.0, 0.0 },
  { "lb/ft3", GW_KG_M3, POUND / 1000.0 / (FOOT * FOOT * FOOT), 0.0 },
  { "lb/ft³", GW_KG_M3, POUND / 1000.0 / (FOOT * FOOT * FOOT), 0.0 },
  { "deg", GW_DEG, 1.0, 0.0 },
  { "°", GW_DEG, 1.0, 0.0 },
  { "rad", GW_DEG, 180.0 / G_PI, 0.0 },
  { "%", GW_PERCENT, 1.0, 0.0 },
  { "°C", GW_C, 1.0, 0.0 },
  { "C", GW_C, 1.0, 0.0 },
  { "°F", GW_C, 5.0 / 9.0, -160.0 / 9.0 },
  { "F", GW_C, 5.0 / 9.0, -160.0 / 9.0 },
  { "K", GW_C, 1.0, -273.15 },
  { "hPa", GW_HPA, 1.0, 0.0 },
  { "mbar", GW_HPA, 1.0, 0.0 },
  { "kPa", GW_HPA, 10.0, 0.0 },
  { "inHg", GW_HPA, 33.86389, 0.0 },
  { "m/s", GW_M_S, 1.0, 0.0 },
  { "km/h", GW_M_S, 1.0 / 3.6, 0.0 },
  { "mph", GW_M_S, 0.44704, 0.0 },
  { "kt", GW_M_S, 1852.0 / 3600.0, 0.0 },
  { "ft/s", GW_M_S, FOOT, 0.0 },
  /* Of results: nothing to type, but shown. */
  { "m²", GW_M2, 1.0, 0.0 },
  { "dm²", GW_M2, 0.01, 0.0 },
  { "ft²", GW_M2, FOOT * FOOT, 0.0 },
  { "g/dm²", GW_G_DM2, 1.0, 0.0 },
  { "oz/ft²", GW_G_DM2, OUNCE / (100.0 * FOOT * FOOT), 0.0 },
  { "kg m²", GW_KG_M2, 1.0, 0.0 },
  { "oz in²", GW_KG_M2, OUNCE * INCH * INCH * 1e-9, 0.0 },
};

const GwEntryUnit *
gw_entry_unit (GwQuantity  quantity,
               const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].of == quantity && strcmp (units[i].name, name) == 0)
      return &units[i];

  return NULL;
}

const char **
gw_entry_units (GwQuantity quantity)
{
  GPtrArray *names = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].of == quantity)
      g_ptr_array_add (names, (gpointer) units[i].name);

  g_ptr_array_add (names, NULL);
  return (const char **) g_ptr_array_free (names, FALSE);
}

typedef struct
{
  const char        *text, *at;
  GwQuantity         quantity;
  const GwEntryUnit *shown;
  GError           **error;
} Reader;

/* A value while it is read: with a unit it is in the document's, else a bare number. */
typedef struct
{
  double   value;
  gboolean has_unit;
} Term;

static gboolean
refuse (Reader     *reader,
        const char *reason)
{
  const glong place = g_utf8_pointer_to_offset (reader->text, reader->at) + 1;

  g_set_error (reader->error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT, _ ("character %ld: %s"),
               place, reason);
  return FALSE;
}

static void
skip_blanks (Reader *reader)
{
  while (g_unichar_isspace (g_utf8_get_char (reader->at)))
    reader->at = g_utf8_next_char (reader->at);
}

/* Takes one of the NULL-ended words if it stands next; gives its index or -1. */
static int
take (Reader            *reader,
      const char *const *words)
{
  skip_blanks (reader);
  for (int i = 0; words[i] != NULL; i++)
    if (g_str_has_prefix (reader->at, words[i]))
      {
        reader->at += strlen (words[i]);
        return i;
      }

  return -1;
}

static gboolean
read_number (Reader *reader,
             double *value)
{
  g_autoptr (GRegex) number =
    g_regex_new ("^([0-9]+([.,][0-9]*)?|[.,][0-9]+)([eE](\\+|-|" MINUS ")?[0-9]+)?", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  g_autofree char *text = NULL, *plain = NULL;
  g_auto (GStrv) parts = NULL;

  skip_blanks (reader);
  if (!g_regex_match (number, reader->at, 0, &match))
    return refuse (reader, *reader->at == '\0' ? _ ("a number is missing at the end")
                                               : _ ("a number is wanted here"));

  text = g_match_info_fetch (match, 0);
  reader->at += strlen (text);
  if (*reader->at == '.' || *reader->at == ',')
    return refuse (reader, _ ("two decimal signs in one number; digits are not grouped"));

  parts = g_strsplit (g_strdelimit (text, ",", '.'), MINUS, -1);
  plain = g_strjoinv ("-", parts);
  *value = g_ascii_strtod (plain, NULL);
  return isfinite (*value) || refuse (reader, _ ("this number cannot be read"));
}

/* The longest unit of the field that stands next; letters that are none are refused. */
/* Says which units there are. */
static gboolean
refuse_unit (Reader *reader)
{
  g_autofree const char **names = gw_entry_units (reader->quantity);
  g_autofree char        *list = g_strjoinv (", ", (char **) names);
  g_autofree char        *reason =
    *names != NULL ? g_strdup_printf (_ ("no such unit here; there are %s"), list)
                          : g_strdup (_ ("this number has no unit"));

  return refuse (reader, reason);
}

static gboolean
read_unit (Reader *reader,
           Term   *term)
{
  const GwEntryUnit *found = NULL;

  skip_blanks (reader);
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].of == reader->quantity && g_str_has_prefix (reader->at, units[i].name) &&
        (found == NULL || strlen (units[i].name) > strlen (found->name)))
      found = &units[i];

  if (found != NULL && !g_unichar_isalnum (g_utf8_get_char (reader->at + strlen (found->name))))
    {
      if (term->has_unit)
        return refuse (reader, _ ("one unit is enough here"));
      term->value = term->value * found->factor + found->offset;
      term->has_unit = TRUE;
      reader->at += strlen (found->name);
      return TRUE;
    }

  if (g_unichar_isalpha (g_utf8_get_char (reader->at)))
    return refuse_unit (reader);

  return TRUE;
}

static gboolean read_sum (Reader *reader,
                          Term   *term);

static gboolean
read_factor (Reader *reader,
             Term   *term)
{
  static const char *const signs[] = { "-", MINUS, "+", NULL };
  static const char *const open[] = { "(", NULL }, *const close[] = { ")", NULL };
  const int sign = take (reader, signs);

  *term = (Term){ 0.0, FALSE };
  if (take (reader, open) == 0)
    {
      if (!read_sum (reader, term))
        return FALSE;
      if (take (reader, close) != 0)
        return refuse (reader, _ ("a closing bracket is missing"));
    }
  else if (!read_number (reader, &term->value))
    return FALSE;

  if (sign == 0 || sign == 1)
    term->value = -term->value;
  return read_unit (reader, term);
}

static gboolean
read_product (Reader *reader,
              Term   *term)
{
  static const char *const signs[] = { "*", "\303\227", "/", "\303\267", NULL };
  int                      sign;

  if (!read_factor (reader, term))
    return FALSE;

  while ((sign = take (reader, signs)) >= 0)
    {
      Term factor;

      if (!read_factor (reader, &factor))
        return FALSE;
      if (factor.has_unit && (term->has_unit || sign >= 2))
        return refuse (reader, _ ("a product can hold one unit, and none below a division sign"));
      if (sign >= 2 && factor.value == 0.0)
        return refuse (reader, _ ("nothing can be divided by zero"));
      term->value = sign >= 2 ? term->value / factor.value : term->value * factor.value;
      term->has_unit = term->has_unit || factor.has_unit;
    }

  return TRUE;
}

/* A bare number is in the shown unit once it stands in a sum with others. */
static double
in_document (const Reader *reader,
             const Term   *term)
{
  if (term->has_unit || reader->shown == NULL)
    return term->value;

  return term->value * reader->shown->factor + reader->shown->offset;
}

static gboolean
read_sum (Reader *reader,
          Term   *term)
{
  static const char *const signs[] = { "+", "-", MINUS, NULL };
  int                      sign;

  if (!read_product (reader, term))
    return FALSE;

  while ((sign = take (reader, signs)) >= 0)
    {
      Term next;

      if (!read_product (reader, &next))
        return FALSE;
      if (term->has_unit != next.has_unit)
        {
          *term = (Term){ in_document (reader, term), TRUE };
          next = (Term){ in_document (reader, &next), TRUE };
        }
      term->value = sign == 0 ? term->value + next.value : term->value - next.value;
    }

  return TRUE;
}

gboolean
gw_entry_parse (const char        *text,
                GwQuantity         quantity,
                const GwEntryUnit *shown,
                double            *value,
                GError           **error)
{
  Reader reader = { text, text, quantity, shown, error };
  Term   term;

  if (strlen (text) > 200)
    return refuse (&reader, _ ("too long for a number"));
  if (!read_sum (&reader, &term))
    return FALSE;

  skip_blanks (&reader);
  if (*reader.at != '\0')
    return refuse (&reader, _ ("this does not belong to a number"));

  *value = in_document (&reader, &term);
  return isfinite (*value) || refuse (&reader, _ ("this number cannot be read"));
}

char *
gw_entry_text (double             value,
               const GwEntryUnit *shown,
               int                decimals)
{
  const double     scale = pow (10.0, decimals);
  const double     typed = shown != NULL ? (value - shown->offset) / shown->factor : value;
  g_autofree char *text = gw_number_text (round (typed * scale) / scale);

  return *text == '-' ? g_strconcat (MINUS, text + 1, NULL) : g_steal_pointer (&text);
}
