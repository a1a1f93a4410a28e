/* gw-number.h - a number that knows how sure it is and where it comes from
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  GW_ORIGIN_GIVEN, /* decided by the builder: a dimension, a setting */
  GW_ORIGIN_GUESSED,
  GW_ORIGIN_CATALOGUE,
  GW_ORIGIN_COMPUTED,
  GW_ORIGIN_WEIGHED, /* or otherwise measured on the real thing */
  GW_N_ORIGINS
} GwOrigin;

/* How the file writes it; kept, so that saving gives the same text again. */
typedef enum
{
  GW_FORM_PLAIN,  /* 0.45, or with an origin alone {"value": 0.45, "origin": "weighed"} */
  GW_FORM_SPREAD, /* {"value": 0.45, "spread": 0.03}: one standard deviation */
  GW_FORM_RANGE,  /* {"low": 14, "typical": 16, "high": 19}: 10th, 50th, 90th percentile */
} GwNumberForm;

typedef struct
{
  double   value;     /* in the unit of its key; NAN: not stated */
  double   low, high; /* 10th and 90th percentile; equal to value if it is certain */
  double   spread;    /* one standard deviation, GW_FORM_SPREAD only */
  GwNumberForm form;
  GwOrigin origin;
  char    *source;    /* of a published or recalled value; NULL: none stated */
} GwNumber;

/* Standard deviations from the median to the 90th percentile of a normal. */
#define GW_Z90 1.2815515655446004

void gw_number_set        (GwNumber       *number,
                           double          value);
void gw_number_set_spread (GwNumber       *number,
                           double          value,
                           double          spread);
void gw_number_set_range  (GwNumber       *number,
                           double          low,
                           double          typical,
                           double          high);
void gw_number_copy       (GwNumber       *to,
                           const GwNumber *from);
void gw_number_clear      (GwNumber       *number);

gboolean gw_number_equal        (const GwNumber *a,
                                 const GwNumber *b);
gboolean gw_number_is_uncertain (const GwNumber *number);

/**
 * gw_number_at:
 * @z: standard normal deviate
 *
 * The value @z deviations from the median: straight on either side, so that +-%GW_Z90
 * gives high and low (a two-piece normal).
 */
double gw_number_at (const GwNumber *number,
                     double          z);

const char *gw_origin_key   (GwOrigin    origin);
gboolean    gw_origin_parse (const char *key,
                             GwOrigin   *origin);

/** gw_number_text: shortest text that reads back the same, locale-independent. (transfer full) */
char *gw_number_text (double value);

/** gw_number_shown: the same for a person to read: with a real minus sign, which no file has.
 * (transfer full) */
char *gw_number_shown (double value);

G_END_DECLS
