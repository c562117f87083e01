/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-private.h - what the fm-tastings-*.c files share */
#pragma once

#include "store/notebook/fm-db.h"
#include "store/fm-tastings.h"

G_BEGIN_DECLS

gboolean fm_tastings_set_not_found (GError **error);
/** Whether all parts fit each other: indexes, scales, codes, marks on cups that were served. */
gboolean fm_tastings_check_parts (const FmTasting *tasting, GError **error);
/** The round whose cups a task marks. */
FmTastingRound fm_tastings_round (FmTastingTask task);
/** A tasting as @db has it now, NULL + error. */
FmTasting *fm_tastings_read (FmDb *db, gint64 id, GError **error);
/** Samples, tasters, attributes and cups; there are none yet. */
gboolean fm_tastings_write_plan (FmDb *db, gint64 id, const FmTasting *tasting, GError **error);
gboolean fm_tastings_clear_plan (FmDb *db, gint64 id, GError **error);
/** States of the sheets, marks and remarks, in the place of those that are there. */
gboolean fm_tastings_write_sheets (FmDb *db, gint64 id, const FmTasting *tasting, GError **error);
/** Those from @n_stored on. */
gboolean fm_tastings_write_events (
    FmDb *db, gint64 id, const GPtrArray *events, guint n_stored, GError **error);

G_END_DECLS
