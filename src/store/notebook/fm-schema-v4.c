/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v4.c - short names, the log of a cook, salt on the surface, sums of versions
 *
 * NULL stands for "not known" or "none", as before. The process of a version lies in the text of
 * its formula, so it needs no column.
 */
#include "store/notebook/fm-schema-v4.h"

/* What the cook calls an ingredient, in all blends of the notebook. */
#define NAMES_SQL                                                                                  \
  "CREATE TABLE ingredient_names (\n"                                                              \
  "  ingredient TEXT PRIMARY KEY NOT NULL,\n"                                                      \
  "  name TEXT NOT NULL CHECK (length(name) > 0)\n"                                                \
  ") WITHOUT ROWID;\n"

/* What happened at the pan, as it happened. */
#define COOK_SQL                                                                                   \
  "CREATE TABLE kitchen_events (\n"                                                                \
  "  experiment_id INTEGER NOT NULL REFERENCES experiments(id) ON DELETE CASCADE,\n"               \
  "  number INTEGER NOT NULL,\n"                                                                   \
  "  wall_us INTEGER NOT NULL,\n"                                                                  \
  "  monotonic_us INTEGER NOT NULL,\n"                                                             \
  "  boot_us INTEGER NOT NULL,\n"                                                                  \
  "  boot_id TEXT NOT NULL,\n"                                                                     \
  "  kind INTEGER NOT NULL,\n"                                                                     \
  "  portion INTEGER NOT NULL,\n"                                                                  \
  "  value REAL,\n"                                                                                \
  "  words TEXT,\n"                                                                                \
  "  PRIMARY KEY (experiment_id, number)\n"                                                        \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TRIGGER kitchen_events_update BEFORE UPDATE ON kitchen_events BEGIN\n"                   \
  "  SELECT RAISE(ABORT, 'the log of a cook is never changed');\n"                                 \
  "END;\n"

/* Salt was one figure, mixed in or strewn on. That of a version without salt came on top of it. */
#define SALT_SQL                                                                                   \
  "ALTER TABLE experiments ADD COLUMN surface_salt_pct REAL;\n"                                    \
  "UPDATE experiments SET surface_salt_pct = salt_pct, salt_pct = NULL"                            \
  " WHERE salt_pct IS NOT NULL AND (SELECT formula_json FROM versions"                             \
  "  WHERE versions.id = version_id) NOT LIKE '%\"kind\":\"salt\"%';\n"

/* SHA-256, in hex, of the reason and the formula as they were saved; NULL of a version that an
 * earlier program saved. */
#define RECORD_SQL "ALTER TABLE versions ADD COLUMN sha256 TEXT;\n"

const char fm_schema_v4_sql[] = NAMES_SQL COOK_SQL SALT_SQL RECORD_SQL;
