/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v1.c - the first released schema
 *
 * NULL stands for "not known" or "not recorded" in every number. Masses in g, temperatures in
 * degrees C, times in the unit of the name, moments in unix seconds (UTC).
 */
#include "store/notebook/fm-schema-v1.h"

/* Blends, drafts and versions. A composite foreign key keeps a parent within its own blend. */
#define BLENDS_SQL                                                                                 \
  "CREATE TABLE settings (\n"                                                                      \
  "  key TEXT PRIMARY KEY NOT NULL,\n"                                                             \
  "  value TEXT NOT NULL\n"                                                                        \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE ingredients (\n"                                                                   \
  "  id TEXT PRIMARY KEY NOT NULL,\n"                                                              \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  saved_at INTEGER NOT NULL,\n"                                                                 \
  "  ingredient_json TEXT NOT NULL\n"                                                              \
  ");\n"                                                                                           \
  "CREATE TABLE prices (\n"                                                                        \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  ingredient TEXT NOT NULL,\n"                                                                  \
  "  recorded_at INTEGER NOT NULL,\n"                                                              \
  "  price_per_kg REAL NOT NULL CHECK (price_per_kg >= 0)\n"                                       \
  ");\n"                                                                                           \
  "CREATE INDEX prices_by_ingredient ON prices(ingredient, recorded_at);\n"                        \
  "CREATE TABLE blends (\n"                                                                        \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  name TEXT NOT NULL CHECK (length(trim(name)) > 0),\n"                                         \
  "  created_at INTEGER NOT NULL\n"                                                                \
  ");\n"                                                                                           \
  "CREATE TABLE versions (\n"                                                                      \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  blend_id INTEGER NOT NULL REFERENCES blends(id) ON DELETE CASCADE,\n"                         \
  "  parent_id INTEGER,\n"                                                                         \
  "  number INTEGER NOT NULL CHECK (number >= 1),\n"                                               \
  "  reason TEXT NOT NULL CHECK (length(trim(reason)) > 0),\n"                                     \
  "  saved_at INTEGER NOT NULL,\n"                                                                 \
  "  fat_pct REAL,\n"                                                                              \
  "  n_lines INTEGER NOT NULL,\n"                                                                  \
  "  formula_json TEXT NOT NULL,\n"                                                                \
  "  UNIQUE (blend_id, number),\n"                                                                 \
  "  UNIQUE (blend_id, id),\n"                                                                     \
  "  FOREIGN KEY (blend_id, parent_id) REFERENCES versions(blend_id, id)\n"                        \
  ");\n"                                                                                           \
  "CREATE INDEX versions_by_parent ON versions(blend_id, parent_id);\n"                            \
  "CREATE TRIGGER versions_frozen BEFORE UPDATE ON versions BEGIN\n"                               \
  "  SELECT RAISE(ABORT, 'a saved version cannot change');\n"                                      \
  "END;\n"                                                                                         \
  "CREATE TABLE drafts (\n"                                                                        \
  "  blend_id INTEGER PRIMARY KEY REFERENCES blends(id) ON DELETE CASCADE,\n"                      \
  "  parent_id INTEGER,\n"                                                                         \
  "  changed INTEGER NOT NULL DEFAULT 0,\n"                                                        \
  "  saved_at INTEGER NOT NULL,\n"                                                                 \
  "  formula_json TEXT NOT NULL,\n"                                                                \
  "  FOREIGN KEY (blend_id, parent_id) REFERENCES versions(blend_id, id)\n"                        \
  ");\n"                                                                                           \
  "CREATE INDEX drafts_by_parent ON drafts(blend_id, parent_id);\n"

/* blend_id and fat_pct repeat what the version says, which never changes; mean_raw_g,
 * cook_loss_pct, peak_core_c and n_photos sum up the rows below, so that a long log needs no
 * other table. The code that writes an experiment writes its row of experiments_fts as well (same
 * rowid): with trusted_schema off, SQLite does not let a trigger use a full-text table. */
#define EXPERIMENTS_SQL                                                                            \
  "CREATE TABLE experiments (\n"                                                                   \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  version_id INTEGER NOT NULL REFERENCES versions(id) ON DELETE RESTRICT,\n"                    \
  "  blend_id INTEGER NOT NULL,\n"                                                                 \
  "  made_at INTEGER NOT NULL,\n"                                                                  \
  "  title TEXT,\n"                                                                                \
  "  rating INTEGER NOT NULL DEFAULT 0 CHECK (rating BETWEEN 0 AND 10),\n"                         \
  "  fat_pct REAL,\n"                                                                              \
  "  mean_raw_g REAL,\n"                                                                           \
  "  cook_loss_pct REAL,\n"                                                                        \
  "  peak_core_c REAL,\n"                                                                          \
  "  n_photos INTEGER NOT NULL DEFAULT 0,\n"                                                       \
  "  meat_temp_c REAL,\n"                                                                          \
  "  plate_mm REAL,\n"                                                                             \
  "  grind_passes INTEGER NOT NULL DEFAULT 0,\n"                                                   \
  "  patty_tolerance_pct REAL,\n"                                                                  \
  "  patty_target_g REAL,\n"                                                                       \
  "  salt_pct REAL,\n"                                                                             \
  "  salt_minutes_before REAL,\n"                                                                  \
  "  method INTEGER NOT NULL DEFAULT 0,\n"                                                         \
  "  surface TEXT,\n"                                                                              \
  "  surface_temp_c REAL,\n"                                                                       \
  "  minutes_side_1 REAL,\n"                                                                       \
  "  minutes_side_2 REAL,\n"                                                                       \
  "  rest_minutes REAL,\n"                                                                         \
  "  notes TEXT,\n"                                                                                \
  "  FOREIGN KEY (blend_id, version_id) REFERENCES versions(blend_id, id)\n"                       \
  ");\n"                                                                                           \
  "CREATE INDEX experiments_by_version ON experiments(version_id, made_at, rating);\n"             \
  "CREATE INDEX experiments_by_blend ON experiments(blend_id, version_id);\n"                      \
  "CREATE INDEX experiments_by_date ON experiments(made_at);\n"                                    \
  "CREATE INDEX experiments_by_rating ON experiments(rating);\n"                                   \
  "CREATE INDEX experiments_by_cook_loss ON experiments(cook_loss_pct);\n"                         \
  "CREATE INDEX experiments_by_fat ON experiments(fat_pct);\n"                                     \
  "CREATE TABLE weighings (\n"                                                                     \
  "  experiment_id INTEGER NOT NULL REFERENCES experiments(id) ON DELETE CASCADE,\n"               \
  "  position INTEGER NOT NULL,\n"                                                                 \
  "  line_id TEXT,\n"                                                                              \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  planned_g REAL,\n"                                                                            \
  "  weighed_g REAL,\n"                                                                            \
  "  PRIMARY KEY (experiment_id, position)\n"                                                      \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE patties (\n"                                                                       \
  "  experiment_id INTEGER NOT NULL REFERENCES experiments(id) ON DELETE CASCADE,\n"               \
  "  position INTEGER NOT NULL,\n"                                                                 \
  "  raw_g REAL,\n"                                                                                \
  "  cooked_g REAL,\n"                                                                             \
  "  PRIMARY KEY (experiment_id, position)\n"                                                      \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE core_readings (\n"                                                                 \
  "  experiment_id INTEGER NOT NULL REFERENCES experiments(id) ON DELETE CASCADE,\n"               \
  "  position INTEGER NOT NULL,\n"                                                                 \
  "  time_s REAL NOT NULL,\n"                                                                      \
  "  temp_c REAL NOT NULL,\n"                                                                      \
  "  PRIMARY KEY (experiment_id, position)\n"                                                      \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE VIRTUAL TABLE experiments_fts USING fts5(title, notes,"                                  \
  " tokenize='unicode61 remove_diacritics 2', prefix='2 3');\n"

/* The bytes of a picture are kept once, under their SHA-256 in hex, as long as a photo uses
 * them. */
#define PHOTOS_SQL                                                                                 \
  "CREATE TABLE photo_blobs (\n"                                                                   \
  "  sha256 TEXT PRIMARY KEY NOT NULL,\n"                                                          \
  "  mime TEXT NOT NULL,\n"                                                                        \
  "  width_px INTEGER NOT NULL,\n"                                                                 \
  "  height_px INTEGER NOT NULL,\n"                                                                \
  "  orientation INTEGER NOT NULL DEFAULT 1,\n"                                                    \
  "  size_bytes INTEGER NOT NULL,\n"                                                               \
  "  thumb BLOB NOT NULL,\n"                                                                       \
  "  data BLOB NOT NULL\n"                                                                         \
  ");\n"                                                                                           \
  "CREATE TABLE photos (\n"                                                                        \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  experiment_id INTEGER NOT NULL REFERENCES experiments(id) ON DELETE CASCADE,\n"               \
  "  sha256 TEXT NOT NULL REFERENCES photo_blobs(sha256),\n"                                       \
  "  added_at INTEGER NOT NULL,\n"                                                                 \
  "  caption TEXT\n"                                                                               \
  ");\n"                                                                                           \
  "CREATE INDEX photos_by_experiment ON photos(experiment_id);\n"                                  \
  "CREATE INDEX photos_by_sha256 ON photos(sha256);\n"                                             \
  "CREATE TRIGGER photos_count_insert AFTER INSERT ON photos BEGIN\n"                              \
  "  UPDATE experiments SET n_photos = n_photos + 1 WHERE id = new.experiment_id;\n"               \
  "END;\n"                                                                                         \
  "CREATE TRIGGER photos_count_delete AFTER DELETE ON photos BEGIN\n"                              \
  "  UPDATE experiments SET n_photos = n_photos - 1 WHERE id = old.experiment_id;\n"               \
  "  DELETE FROM photo_blobs WHERE sha256 = old.sha256\n"                                          \
  "    AND NOT EXISTS (SELECT 1 FROM photos WHERE sha256 = old.sha256);\n"                         \
  "END;\n"

const char fm_schema_v1_sql[] = BLENDS_SQL EXPERIMENTS_SQL PHOTOS_SQL;
