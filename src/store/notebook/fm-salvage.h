/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-salvage.h - the rows of a damaged database, one by one, into a new one with the same tables
 *
 * Internal to the store layer. Rows are found by the keys of each table, from both ends, and where
 * both stop, key by key between them; so that a page that cannot be read takes no other page along.
 */
#pragma once

#include <gio/gio.h>
#include <sqlite3.h>

G_BEGIN_DECLS

typedef struct {
  char *table;
  guint n_taken;
  guint n_lost;
  gboolean perhaps_more; /* some keys could not be read either */
} FmSalvageCount;

/**
 * @to: has empty tables, fires no triggers and checks no foreign keys
 *
 * Returns: (transfer full) (element-type FmSalvageCount): a count for each table. NULL when @to
 * could not be written, or G_IO_ERROR_CANCELLED.
 */
GPtrArray *fm_salvage_rows (sqlite3 *from, sqlite3 *to, GCancellable *cancellable, GError **error);
/** Drops rows that belong to rows which are lost, and counts them as lost. */
gboolean fm_salvage_drop_orphans (sqlite3 *to, GPtrArray *counts, GError **error);

G_END_DECLS
