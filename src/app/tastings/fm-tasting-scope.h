/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-scope.h - what a planned panel can and cannot show, kept current as the plan changes
 */
#pragma once

#include <gtk/gtk.h>

#include "core/tasting/fm-tasting-reading.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_SCOPE (fm_tasting_scope_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingScope, fm_tasting_scope, FM, TASTING_SCOPE, GtkWidget)

/** Works out the sentences for a copy of @tasting in a thread; shows them when they are ready. */
void fm_tasting_scope_show (FmTastingScope *self, const FmTasting *tasting);

G_END_DECLS
