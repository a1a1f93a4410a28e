/* gw-edit-number.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-number.h"

#include <math.h>

#define GUESS 0.1 /* spread of a guess that nobody has said more of; common practice, no source */

static void
move (GwNumber *number,
      double    value)
{
  if (number->form == GW_FORM_RANGE)
    gw_number_set_range (number, number->low + value - number->value, value,
                         number->high + value - number->value);
  else if (number->form == GW_FORM_SPREAD)
    gw_number_set_spread (number, value, number->spread);
  else
    gw_number_set (number, value);
}

static gboolean
is_decided (GwQuantity quantity)
{
  return quantity == GW_MM || quantity == GW_M || quantity == GW_DEG || quantity == GW_COUNT;
}

void
gw_edit_retype (GwNumber  *number,
                GwQuantity quantity,
                double     value)
{
  if (number->value == value)
    return;

  move (number, value);
  if (number->origin == GW_ORIGIN_GIVEN || number->origin == GW_ORIGIN_GUESSED)
    return;

  g_clear_pointer (&number->source, g_free);
  number->origin = is_decided (quantity) ? GW_ORIGIN_GIVEN : GW_ORIGIN_GUESSED;
  if (number->origin == GW_ORIGIN_GUESSED &&
      number->high - number->low < 2.0 * GW_Z90 * GUESS * fabs (value))
    gw_number_set_spread (number, value, GUESS * fabs (value));
}

JsonNode *
gw_edit_number_node (const GwNumber *number)
{
  JsonObject *object;
  JsonNode   *node;

  if (number->form == GW_FORM_PLAIN && number->origin == GW_ORIGIN_GIVEN && number->source == NULL)
    return json_node_init_double (json_node_alloc (), number->value);

  object = json_object_new ();
  json_object_set_double_member (object, number->form == GW_FORM_RANGE ? "typical" : "value",
                                 number->value);
  if (number->form == GW_FORM_RANGE)
    {
      json_object_set_double_member (object, "low", number->low);
      json_object_set_double_member (object, "high", number->high);
    }
  else if (number->form == GW_FORM_SPREAD)
    json_object_set_double_member (object, "spread", number->spread);
  if (number->origin != GW_ORIGIN_GIVEN)
    json_object_set_string_member (object, "origin", gw_origin_key (number->origin));
  if (number->source != NULL)
    json_object_set_string_member (object, "source", number->source);

  node = json_node_init_object (json_node_alloc (), object);
  json_object_unref (object);
  return node;
}

JsonNode *
gw_edit_number (const GwNumber *number,
                GwQuantity      quantity,
                double          value)
{
  GwNumber  moved = { 0 };
  JsonNode *node;

  gw_number_copy (&moved, number);
  gw_edit_retype (&moved, quantity, value);
  node = gw_edit_number_node (&moved);
  gw_number_clear (&moved);
  return node;
}
