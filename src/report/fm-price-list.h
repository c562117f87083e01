/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-price-list.h - the prices of a notebook as a table for a spreadsheet, out and in
 *
 * Columns: id (fm_ingredient_identity()), ingredient, price_per_kg, noted_on. A price that is read
 * back is noted beside the older ones; saved versions keep theirs.
 */
#pragma once

#include "report/fm-notebook-csv.h"

G_BEGIN_DECLS

/** Every ingredient of drafts, versions and own entries once, with the price noted last. Any thread
 * but the main one. (transfer full) */
char *fm_price_list_csv (FmNotebook *notebook, FmCsvStyle style, GError **error);

typedef struct {
  guint n_changed; /* noted */
  guint n_same;
  guint n_blank; /* rows without a price: left alone */
} FmPriceListResult;

/**
 * Notes the prices of @text at @noted_at, all or none. The header names the columns, in any order;
 * id and price_per_kg must be there. The decimal sign is the one of the file: a comma only between
 * semicolons or tabs, and never both.
 *
 * FALSE + error with the line: a bad number, a price of an ingredient twice, an id that the
 * notebook does not have.
 */
gboolean fm_price_list_read (FmNotebook *notebook,
                             const char *text,
                             gsize length,
                             gint64 noted_at,
                             FmPriceListResult *result,
                             GError **error);

G_END_DECLS
