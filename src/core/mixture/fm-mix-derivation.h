/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-derivation.h - where a value of a map comes from, as text that can be copied */
#pragma once

#include "core/mixture/fm-mix-text.h"

G_BEGIN_DECLS

/**
 * What the model says at the blend @x, followed term by term: the data it was fitted to, what was
 * measured of that very blend, each coefficient with its standard error times its term, both
 * intervals, method and source. @data: what @fit was fitted to; @names: of the components.
 * Returns: (transfer full).
 */
char *fm_mix_derivation (const FmMixFit *fit,
                         const FmMixData *data,
                         const double *x,
                         const char *const *names,
                         const FmMixResponse *response);
/** The values measured of the blend @x one by one, and their plain mean; that there are none.
 * Returns: (transfer full). */
char *fm_mix_measured (const FmMixData *data, const double *x, const FmMixResponse *response);

G_END_DECLS
