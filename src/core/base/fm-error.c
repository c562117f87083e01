/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-error.c - the error domain of the core layer */
#include "core/base/fm-error.h"

GQuark
fm_core_error_quark (void)
{
  return g_quark_from_static_string ("fm-core-error-quark");
}
