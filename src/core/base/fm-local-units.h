/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-local-units.h - the units and the currency that people of a place are used to
 *
 * Sources: ISO/IEC TR 14652, LC_MEASUREMENT: 1 is metric, 2 customary units of the United States;
 * ISO C, localeconv(): int_curr_symbol begins with the code of ISO 4217.
 */
#pragma once

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

/** What a system says of its place. Without a place (C, POSIX) nothing is said. */
typedef struct {
  const char *place;    /* (nullable): of LC_MEASUREMENT: "en_US.UTF-8" */
  int measurement;      /* 1 or 2 */
  const char *currency; /* (nullable): "USD " */
} FmLocale;

/** Puts into @units what @locale says; the rest stays. */
void fm_local_units_apply (const FmLocale *locale, FmUnits *units);
/** As above, of the locale of this process: main thread. */
void fm_local_units_read (FmUnits *units);

G_END_DECLS
