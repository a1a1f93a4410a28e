/* gw-study-types.c - the field tables, from gw-study.def
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-study.h"

static const GwChoice material_kinds[] = {
  { "foam-sheet", N_ ("foam sheet") },
  { "foam-block", N_ ("foam block") },
  { "plastic", N_ ("plastic") },
  { "foaming-plastic", N_ ("foaming plastic") },
  { "wood", N_ ("wood") },
  { "tube", N_ ("tube, rod or strip") },
  { "skin", N_ ("skin, film, tape or paint") },
  { "other", N_ ("other") },
  { NULL, NULL },
};

static const GwChoice section_shapes[] = {
  { "naca", N_ ("NACA digits") },
  { "folded", N_ ("folded sheet") },
  { "points", N_ ("points") },
  { "plate", N_ ("plate") },
  { "flat-bottomed", N_ ("flat-bottomed") },
  { NULL, NULL },
};

static const GwChoice section_families[] = {
  { "round", N_ ("with a round nose") },
  { "folded", N_ ("folded sheets") },
  { "plate", N_ ("plates") },
  { NULL, NULL },
};

static const GwChoice standings[] = {
  { "memory", N_ ("from memory") },
  { "derived", N_ ("printed, in part computed") },
  { "printed", N_ ("printed") },
  { NULL, NULL },
};

/* The order of these follows the engine's enums. */
static const GwChoice inner_kinds[] = {
  { "none", N_ ("nothing") },
  { "ribs", N_ ("ribs") },
  { "lattice", N_ ("lattice of webs") },
  { NULL, NULL },
};

static const GwChoice constructions[] = {
  { "printed-shell", N_ ("printed shell") },
  { "folded-sheet", N_ ("folded sheet") },
  { "hot-wired-core", N_ ("hot-wired core") },
  { NULL, NULL },
};

static const GwChoice spar_kinds[] = {
  { "tube", N_ ("tube or rod") },
  { "strip", N_ ("strip") },
  { "caps", N_ ("caps and web") },
  { NULL, NULL },
};

static const GwChoice control_kinds[] = {
  { "aileron", N_ ("aileron") },
  { "flap", N_ ("flap") },
  { "elevator", N_ ("elevator") },
  { "rudder", N_ ("rudder") },
  { "elevon", N_ ("elevon") },
  { "ruddervator", N_ ("ruddervator") },
  { NULL, NULL },
};

static const GwChoice surface_roles[] = {
  { "wing", N_ ("wing") },
  { "second-wing", N_ ("second wing") },
  { "tailplane", N_ ("tailplane") },
  { "v-tail", N_ ("V-tail") },
  { "canard", N_ ("canard") },
  { "fin", N_ ("fin") },
  { NULL, NULL },
};

static const GwChoice item_kinds[] = {
  { "battery", N_ ("battery") },
  { "servo", N_ ("servo") },
  { "receiver", N_ ("receiver") },
  { "payload", N_ ("payload") },
  { "ballast", N_ ("ballast") },
  { "other", N_ ("other") },
  { NULL, NULL },
};

static const GwChoice propeller_kinds[] = {
  { "thin", N_ ("thin, electric") },
  { "slow", N_ ("slow flying") },
  { NULL, NULL },
};

static const GwChoice grounds[] = {
  { "pavement", N_ ("pavement") },
  { "short-grass", N_ ("short grass") },
  { "long-grass", N_ ("long grass") },
  { "earth", N_ ("packed earth") },
  { "sand", N_ ("loose sand") },
  { NULL, NULL },
};

G_STATIC_ASSERT (G_N_ELEMENTS (inner_kinds) == GW_N_INNERS + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (constructions) == GW_N_CONSTRUCTIONS + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (spar_kinds) == GW_N_SPAR_KINDS + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (control_kinds) == GW_N_CONTROLS + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (surface_roles) == GW_N_ROLES + 1);
G_STATIC_ASSERT (G_N_ELEMENTS (item_kinds) == GW_N_ITEM_KINDS + 1);

/* clang-format off: one record of gw-study.def becomes one function with its table. */
#define ROW(k, member, ...) \
  { .kind = k, .key = #member, .offset = G_STRUCT_OFFSET (Record, member), __VA_ARGS__ },

#define RECORD(Name, name, text)                          \
  const GwRecordType *gw_study_##name##_type (void)       \
  {                                                       \
    typedef GwStudy##Name Record;                         \
    static const char name_[] = #name, label_[] = text;   \
    static const GwField fields[] = {
#define ID()                                              \
  ROW (GW_FIELD_ID, id, .is_needed = TRUE, .label = N_ ("Id"), \
       .help = N_ ("Its name of reference: small letters, digits and hyphens"))
#define TEXT(key, l, h) ROW (GW_FIELD_TEXT, key, .label = l, .help = h)
#define NUMBER(key, q, low, high, s, l, h)                \
  ROW (GW_FIELD_NUMBER, key, .quantity = q, .least = low, .most = high, .standard = s, \
       .label = l, .help = h)
#define NEEDED(key, q, low, high, l, h)                   \
  ROW (GW_FIELD_NUMBER, key, .quantity = q, .least = low, .most = high, .standard = (double) NAN, \
       .is_needed = TRUE, .label = l, .help = h)
#define CHOICE(key, list, s, l, h) \
  ROW (GW_FIELD_CHOICE, key, .choices = list, .standard = s, .label = l, .help = h)
#define FLAG(key, s, l, h) ROW (GW_FIELD_FLAG, key, .standard = s, .label = l, .help = h)
#define REF(key, list, l, h) ROW (GW_FIELD_REF, key, .collection = #list, .label = l, .help = h)
#define PART(key, Name, name, l, h) \
  ROW (GW_FIELD_PART, key, .item = gw_study_##name##_type, .label = l, .help = h)
#define LIST(key, Name, name, l, h) \
  ROW (GW_FIELD_LIST, key, .item = gw_study_##name##_type, .label = l, .help = h)
#define CHANGES(key, l, h) ROW (GW_FIELD_CHANGES, key, .label = l, .help = h)
#define END(Name, name)                                   \
    };                                                    \
    static const GwRecordType type = { name_, label_, sizeof (Record), fields,           \
                                       G_N_ELEMENTS (fields) };                          \
    G_STATIC_ASSERT (G_N_ELEMENTS (fields) <= 64);        \
    return &type;                                         \
  }

#include "study/gw-study.def"
/* clang-format on */
