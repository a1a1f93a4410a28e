/* sample-study.h - the smallest study that is in order
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

/* Two options, one wing of a section and a material of its own, so that it does not
 * rest on the catalogue. */
#define SAMPLE_STUDY                                                                               \
  "{\n"                                                                                            \
  "  \"format\": 1,\n"                                                                             \
  "  \"name\": \"Plank\",\n"                                                                       \
  "  \"movable\": \"battery\",\n"                                                                  \
  "  \"targets\": { \"stall_speed_m_s\": 8, \"mass_g\": 900 },\n"                                  \
  "  \"options\": [\n"                                                                             \
  "    { \"id\": \"thin\", \"name\": \"Thin sheet\" },\n"                                          \
  "    {\n"                                                                                        \
  "      \"id\": \"thick\",\n"                                                                     \
  "      \"changes\": {\n"                                                                         \
  "        \"materials/sheet/areal_g_m2\": 400,\n"                                                 \
  "        \"equipment/battery/x_mm\": 10\n"                                                       \
  "      }\n"                                                                                      \
  "    }\n"                                                                                        \
  "  ],\n"                                                                                         \
  "  \"surfaces\": [\n"                                                                            \
  "    {\n"                                                                                        \
  "      \"id\": \"wing\",\n"                                                                      \
  "      \"role\": \"wing\",\n"                                                                    \
  "      \"x_mm\": 100,\n"                                                                         \
  "      \"stations\": [\n"                                                                        \
  "        { \"y_mm\": 0, \"chord_mm\": 200, \"section\": \"flat\" },\n"                           \
  "        { \"y_mm\": 600, \"chord_mm\": 200 }\n"                                                 \
  "      ]\n"                                                                                      \
  "    }\n"                                                                                        \
  "  ],\n"                                                                                         \
  "  \"equipment\": [\n"                                                                           \
  "    {\n"                                                                                        \
  "      \"id\": \"battery\",\n"                                                                   \
  "      \"kind\": \"battery\",\n"                                                                 \
  "      \"mass_g\": { \"value\": 180, \"spread\": 6, \"origin\": \"catalogue\" },\n"              \
  "      \"x_mm\": 40,\n"                                                                          \
  "      \"bay_from_mm\": 0,\n"                                                                    \
  "      \"bay_to_mm\": 160\n"                                                                     \
  "    }\n"                                                                                        \
  "  ],\n"                                                                                         \
  "  \"builds\": [\n"                                                                              \
  "    {\n"                                                                                        \
  "      \"surface\": \"wing\",\n"                                                                 \
  "      \"construction\": \"folded-sheet\",\n"                                                    \
  "      \"folded_sheet\": { \"material\": \"sheet\", \"strips\": 0 }\n"                           \
  "    }\n"                                                                                        \
  "  ],\n"                                                                                         \
  "  \"materials\": [\n"                                                                           \
  "    { \"id\": \"sheet\", \"kind\": \"foam-sheet\", \"areal_g_m2\": { \"low\": 280, "     \
  "\"typical\": 300, \"high\": 340 } }\n"                                                          \
  "  ],\n"                                                                                         \
  "  \"sections\": [\n"                                                                            \
  "    {\n"                                                                                        \
  "      \"id\": \"flat\",\n"                                                                      \
  "      \"code\": \"2412\",\n"                                                                    \
  "      \"rows\": [\n"                                                                            \
  "        { \"re\": 60000, \"cl_max\": 1 },\n"                                                    \
  "        { \"re\": 300000, \"cl_max\": 1.2 }\n"                                                  \
  "      ]\n"                                                                                      \
  "    }\n"                                                                                        \
  "  ]\n"                                                                                          \
  "}\n"

/* @text with the one place that reads @from reading @to instead. */
static inline char *
sample_replace (const char *text,
                const char *from,
                const char *to)
{
  g_auto (GStrv) parts = g_strsplit (text, from, -1);

  g_assert_cmpuint (g_strv_length (parts), ==, 2);
  return g_strjoin (to, parts[0], parts[1], NULL);
}
