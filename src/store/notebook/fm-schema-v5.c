/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v5.c - surfaces that are searched, servings, what is invented, what photos show, sums
 *
 * NULL stands for "not known" or "none", as before.
 */
#include "store/notebook/fm-schema-v5.h"

/* The search goes through surfaces. */
#define SEARCH_SQL "CREATE INDEX experiments_by_surface ON experiments(version_id, surface);\n"

/* A cooked patty and what comes with it. Number 0 is the one that is being put together. */
#define SERVING_SQL                                                                                \
  "CREATE TABLE servings (\n"                                                                      \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  version_id INTEGER NOT NULL REFERENCES versions(id) ON DELETE CASCADE,\n"                     \
  "  number INTEGER NOT NULL CHECK (number >= 0),\n"                                               \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  reason TEXT NOT NULL,\n"                                                                      \
  "  saved_at INTEGER NOT NULL,\n"                                                                 \
  "  n_patties INTEGER NOT NULL CHECK (n_patties BETWEEN 1 AND 20),\n"                             \
  "  patty_raw_g REAL NOT NULL CHECK (patty_raw_g > 0),\n"                                         \
  "  method INTEGER NOT NULL DEFAULT 1,\n"                                                         \
  "  cook_yield_pct REAL CHECK (cook_yield_pct > 0),\n"                                            \
  "  UNIQUE (version_id, number)\n"                                                                \
  ");\n"                                                                                           \
  "CREATE TRIGGER servings_frozen BEFORE UPDATE ON servings WHEN old.number > 0 BEGIN\n"           \
  "  SELECT RAISE(ABORT, 'a saved serving cannot change');\n"                                      \
  "END;\n"                                                                                         \
  "CREATE TABLE serving_parts (\n"                                                                 \
  "  serving_id INTEGER NOT NULL REFERENCES servings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n"                                           \
  "  role TEXT NOT NULL,\n"                                                                        \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  mass_g REAL NOT NULL CHECK (mass_g > 0),\n"                                                   \
  "  ingredient_json TEXT,\n"                                                                      \
  "  formula_json TEXT,\n"                                                                         \
  "  PRIMARY KEY (serving_id, position),\n"                                                        \
  "  CHECK ((ingredient_json IS NULL) <> (formula_json IS NULL))\n"                                \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TRIGGER serving_parts_frozen BEFORE UPDATE ON serving_parts BEGIN\n"                     \
  "  SELECT RAISE(ABORT, 'a saved serving cannot change');\n"                                      \
  "END;\n"

/* A demo said in its names that it was invented; now the notebook says so. */
#define INVENTED_SQL                                                                               \
  "INSERT INTO settings (key, value)\n"                                                            \
  "  SELECT 'invented', 'Everything in this notebook is invented.' FROM settings\n"                \
  "  WHERE key = 'demo' AND value = '1';\n"

/* What side of a patty a photo shows, and when its camera says that it was taken. */
#define PHOTO_SQL                                                                                  \
  "ALTER TABLE photos ADD COLUMN view TEXT\n"                                                      \
  "  CHECK (view IN ('raw', 'crust', 'cross section', 'crumb'));\n"                                \
  "ALTER TABLE photo_blobs ADD COLUMN taken TEXT;\n"

/* Of each record the first half of a SHA-256 over its rows; see fm-record-check.h. A program that
 * changes rows when it brings a notebook up to date empties this table, which is then filled anew.
 */
#define CHECK_SQL                                                                                  \
  "CREATE TABLE record_checks (\n"                                                                 \
  "  kind TEXT NOT NULL,\n"                                                                        \
  "  id NOT NULL,\n"                                                                               \
  "  sum BLOB NOT NULL,\n"                                                                         \
  "  PRIMARY KEY (kind, id)\n"                                                                     \
  ") WITHOUT ROWID;\n"

const char fm_schema_v5_sql[] = SEARCH_SQL SERVING_SQL INVENTED_SQL PHOTO_SQL CHECK_SQL;
