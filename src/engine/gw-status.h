/* gw-status.h - status codes shared by the whole engine
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

typedef enum
{
  GW_OK = 0,     /* the result is valid */
  GW_EINVAL,     /* an argument is outside its documented domain */
  GW_EDOM,       /* the input is valid but has no answer, e.g. zero total mass */
  GW_ENOCONV,    /* no convergence; *out holds the last iterate */
  GW_ENOMEM,     /* memory ran out */
} GwStatus;
