/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v4.c - short names, the log of a cook
 *
 * NULL stands for "not known" or "none", as before. The process of a version lies in the text of
 * its formula, so it needs no column.
 */
#include "store/notebook/fm-schema-v4.h"

/* What the cook calls an ingredient, in all blends of the notebook. */
#define NAMES_SQL ""

/* What happened at the pan, as it happened. */
#define COOK_SQL ""

/* Salt was one figure, mixed in or strewn on. That of a version without salt came on top of it. */
#define SALT_SQL                                                                                   \
  "ALTER TABLE experiments ADD COLUMN surface_salt_pct REAL;\n"                                    \
  "UPDATE experiments SET surface_salt_pct = salt_pct, salt_pct = NULL"                            \
  " WHERE salt_pct IS NOT NULL AND (SELECT formula_json FROM versions"                             \
  "  WHERE versions.id = version_id) NOT LIKE '%\"kind\":\"salt\"%';\n"

const char fm_schema_v4_sql[] = NAMES_SQL COOK_SQL SALT_SQL;
