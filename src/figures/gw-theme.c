/* gw-theme.c - paper, ink and the hues of the options
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "figures/gw-drawing.h"

#define RGB(hex)                   \
 {                                 \
  (((hex) >> 16) & 0xff) / 255.0,  \
    (((hex) >> 8) & 0xff) / 255.0, \
    ((hex) &0xff) / 255.0,         \
 }

/* Hues after Okabe & Ito, Color Universal Design (2008): blue, bluish green,
 * orange, vermillion, reddish purple, sky blue; the last two styles repeat the
 * first two hues with patterns and markers of their own. On light paper green,
 * orange, purple and sky blue are darkened to keep a contrast of 3:1; the middle grey
 * keeps 4.5:1 on the tint and on solid bodies as well. */
static const GwTheme light = {
  .rgb = {
    [GW_TONE_INK] = RGB (0x22262b),
    [GW_TONE_MID] = RGB (0x646a71),
    [GW_TONE_FAINT] = RGB (0xc9c5bc),
    [GW_TONE_GRID] = RGB (0xece8e0),
    [GW_TONE_PAPER] = RGB (0xfcfbf8),
    [GW_TONE_BODY] = RGB (0xf1ede5),
    [GW_TONE_SELECTED] = RGB (0xeaf0f4),
    [GW_TONE_OPTION + 0] = RGB (0x0072b2),
    [GW_TONE_OPTION + 1] = RGB (0x009068),
    [GW_TONE_OPTION + 2] = RGB (0xb07800),
    [GW_TONE_OPTION + 3] = RGB (0xd55e00),
    [GW_TONE_OPTION + 4] = RGB (0xb25c8c),
    [GW_TONE_OPTION + 5] = RGB (0x2f86bf),
    [GW_TONE_OPTION + 6] = RGB (0x0072b2),
    [GW_TONE_OPTION + 7] = RGB (0x009068),
  },
  .font = "Sans",
  .is_dark = false,
};

static const GwTheme dark = {
  .rgb = {
    [GW_TONE_INK] = RGB (0xe9e7e2),
    [GW_TONE_MID] = RGB (0x9ba1a8),
    [GW_TONE_FAINT] = RGB (0x474b51),
    [GW_TONE_GRID] = RGB (0x25282c),
    [GW_TONE_PAPER] = RGB (0x17191b),
    [GW_TONE_BODY] = RGB (0x24262b),
    [GW_TONE_SELECTED] = RGB (0x1d262e),
    [GW_TONE_OPTION + 0] = RGB (0x2b8ecb),
    [GW_TONE_OPTION + 1] = RGB (0x009e73),
    [GW_TONE_OPTION + 2] = RGB (0xe69f00),
    [GW_TONE_OPTION + 3] = RGB (0xd55e00),
    [GW_TONE_OPTION + 4] = RGB (0xcc79a7),
    [GW_TONE_OPTION + 5] = RGB (0x56b4e9),
    [GW_TONE_OPTION + 6] = RGB (0x2b8ecb),
    [GW_TONE_OPTION + 7] = RGB (0x009e73),
  },
  .font = "Sans",
  .is_dark = true,
};

const GwTheme *
gw_theme_get (bool is_dark)
{
  return is_dark ? &dark : &light;
}
