/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-private.h */
#pragma once

#include <string.h>

#include "core/statistics/fm-serving.h"
#include "core/statistics/fm-stat.h"

G_BEGIN_DECLS

FmServingRows *fm_serving_rows_new (guint n_rows, guint n_per_row, guint n_samples);
/** Whether the numbers make sense, not whether a design is known. */
gboolean fm_serving_bib_is_possible (guint t, guint k);
/** @n blocks of @k out of @t samples: served as often as each other (to within one), and pairs
 * together as evenly as a search finds. */
FmServingRows *fm_serving_even_blocks (guint t, guint k, guint n, FmRandom *random);

G_END_DECLS
