/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-numbers.h - a fitted model in words: a sentence, its numbers, the method and its source */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-fit-job.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_NUMBERS (fm_map_numbers_get_type ())
G_DECLARE_FINAL_TYPE (FmMapNumbers, fm_map_numbers, FM, MAP_NUMBERS, GtkWidget)

/** @fit: (nullable): nothing is shown without one; @names: of the components. Both are only read.
 */
void fm_map_numbers_show (FmMapNumbers *self, const FmMapFit *fit, const char *const *names);
/** Says @sentence, and nothing else. */
void fm_map_numbers_say (FmMapNumbers *self, const char *sentence);

G_END_DECLS
