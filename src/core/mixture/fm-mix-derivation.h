/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-derivation.h - where a value of a map comes from, as text that can be copied */
#pragma once

#include "core/mixture/fm-mix-text.h"

G_BEGIN_DECLS

/**
 * What the model says at the blend @x, followed term by term: the data it was fitted to, each
 * coefficient with its standard error times its term, both intervals, method and source. @names:
 * of the components. Returns: (transfer full).
 */
char *fm_mix_derivation (const FmMixFit *fit,
                         const double *x,
                         const char *const *names,
                         const FmMixResponse *response);

G_END_DECLS
