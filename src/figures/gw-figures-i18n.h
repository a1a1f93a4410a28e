/* gw-figures-i18n.h - the few words the figures make themselves
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <libintl.h>

#define _(text) gettext (text)
