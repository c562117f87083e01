/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v2.c - patty measures, tastings and maps
 *
 * NULL stands for "not known", "not recorded" or "none", as in version 1.
 */
#include "store/notebook/fm-schema-v2.h"

/* Sizes of the raw patty, and the core temperature that the cook chose. */
#define EXPERIMENTS_SQL                                                                            \
  "ALTER TABLE experiments ADD COLUMN patty_diameter_mm REAL CHECK (patty_diameter_mm > 0);\n"     \
  "ALTER TABLE experiments ADD COLUMN patty_thickness_mm REAL CHECK (patty_thickness_mm > 0);\n"   \
  "ALTER TABLE experiments ADD COLUMN target_core_c REAL;\n"

/* position is the index of a part in its tasting. A sample without an experiment is from outside;
 * its version is that of its experiment, which never changes. */
#define TASTINGS_SQL                                                                               \
  "CREATE TABLE tastings (\n"                                                                      \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  held_at INTEGER NOT NULL,\n"                                                                  \
  "  title TEXT,\n"                                                                                \
  "  tasks INTEGER NOT NULL CHECK (tasks BETWEEN 0 AND 63),\n"                                     \
  "  seed INTEGER NOT NULL CHECK (seed BETWEEN 0 AND 9007199254740991),\n"                         \
  "  max_per_taster INTEGER NOT NULL CHECK (max_per_taster >= 2),\n"                               \
  "  is_order_expected INTEGER NOT NULL CHECK (is_order_expected IN (0, 1)),\n"                    \
  "  pair_1 INTEGER,\n"                                                                            \
  "  pair_2 INTEGER,\n"                                                                            \
  "  triangle_1 INTEGER,\n"                                                                        \
  "  triangle_2 INTEGER,\n"                                                                        \
  "  state INTEGER NOT NULL CHECK (state BETWEEN 0 AND 2),\n"                                      \
  "  headline TEXT CHECK (headline IS NULL OR state = 2),\n"                                       \
  "  notes TEXT\n"                                                                                 \
  ");\n"                                                                                           \
  "CREATE INDEX tastings_by_date ON tastings(held_at);\n"                                          \
  "CREATE TABLE tasting_samples (\n"                                                               \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 11),\n"                               \
  "  experiment_id INTEGER REFERENCES experiments(id) ON DELETE RESTRICT,\n"                       \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  expected_place INTEGER NOT NULL CHECK (expected_place >= 0),\n"                               \
  "  PRIMARY KEY (tasting_id, position)\n"                                                         \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE INDEX tasting_samples_by_experiment ON tasting_samples(experiment_id);\n"                \
  "CREATE TABLE tasting_tasters (\n"                                                               \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 199),\n"                              \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  sheet INTEGER NOT NULL CHECK (sheet BETWEEN 0 AND 3),\n"                                      \
  "  PRIMARY KEY (tasting_id, position)\n"                                                         \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE tasting_attributes (\n"                                                            \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 7),\n"                                \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  PRIMARY KEY (tasting_id, position)\n"                                                         \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE tasting_cups (\n"                                                                  \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  taster INTEGER NOT NULL,\n"                                                                   \
  "  round INTEGER NOT NULL CHECK (round BETWEEN 0 AND 2),\n"                                      \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n"                                           \
  "  sample INTEGER NOT NULL,\n"                                                                   \
  "  code INTEGER NOT NULL CHECK (code BETWEEN 100 AND 999),\n"                                    \
  "  PRIMARY KEY (tasting_id, taster, round, position),\n"                                         \
  "  UNIQUE (tasting_id, taster, round, code),\n"                                                  \
  "  FOREIGN KEY (tasting_id, taster) REFERENCES tasting_tasters(tasting_id, position)\n"          \
  "    ON DELETE CASCADE,\n"                                                                       \
  "  FOREIGN KEY (tasting_id, sample) REFERENCES tasting_samples(tasting_id, position)\n"          \
  "    ON DELETE CASCADE\n"                                                                        \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE INDEX tasting_cups_by_code ON tasting_cups(tasting_id, code, sample);\n"                 \
  "CREATE INDEX tasting_cups_by_sample ON tasting_cups(tasting_id, sample);\n"

/* A mark lies on a cup by taster, round and code, so that only served cups can be marked and
 * whoever reads a mark learns no sample. */
#define SHEETS_SQL                                                                                 \
  "CREATE TABLE tasting_marks (\n"                                                                 \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL,\n"                                                                 \
  "  taster INTEGER NOT NULL,\n"                                                                   \
  "  round INTEGER NOT NULL,\n"                                                                    \
  "  code INTEGER NOT NULL,\n"                                                                     \
  "  task INTEGER NOT NULL CHECK (task IN (1, 2, 4, 8, 16)),\n"                                    \
  "  attribute INTEGER NOT NULL CHECK (attribute = 0 OR (task = 4 AND attribute BETWEEN 0 AND "    \
  "7)),\n"                                                                                         \
  "  value REAL NOT NULL CHECK (CASE task WHEN 1 THEN value BETWEEN 1 AND 12\n"                    \
  "    WHEN 2 THEN value BETWEEN 1 AND 9 WHEN 4 THEN value BETWEEN 1 AND 5 ELSE value = 1 END),\n" \
  "  PRIMARY KEY (tasting_id, position),\n"                                                        \
  "  UNIQUE (tasting_id, taster, round, code, task, attribute),\n"                                 \
  "  FOREIGN KEY (tasting_id, taster, round, code)\n"                                              \
  "    REFERENCES tasting_cups(tasting_id, taster, round, code) ON DELETE CASCADE,\n"              \
  "  CHECK (round = CASE task WHEN 8 THEN 1 WHEN 16 THEN 2 ELSE 0 END)\n"                          \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE tasting_remarks (\n"                                                               \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL,\n"                                                                 \
  "  taster INTEGER NOT NULL,\n"                                                                   \
  "  round INTEGER NOT NULL CHECK (round = 0),\n"                                                  \
  "  code INTEGER NOT NULL,\n"                                                                     \
  "  remark TEXT NOT NULL,\n"                                                                      \
  "  PRIMARY KEY (tasting_id, position),\n"                                                        \
  "  UNIQUE (tasting_id, taster, round, code),\n"                                                  \
  "  FOREIGN KEY (tasting_id, taster, round, code)\n"                                              \
  "    REFERENCES tasting_cups(tasting_id, taster, round, code) ON DELETE CASCADE\n"               \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE tasting_events (\n"                                                                \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL,\n"                                                                 \
  "  at INTEGER NOT NULL,\n"                                                                       \
  "  kind INTEGER NOT NULL CHECK (kind BETWEEN 0 AND 4),\n"                                        \
  "  remark TEXT,\n"                                                                               \
  "  PRIMARY KEY (tasting_id, position)\n"                                                         \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE tasting_outcomes (\n"                                                              \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  sample INTEGER NOT NULL,\n"                                                                   \
  "  code INTEGER NOT NULL,\n"                                                                     \
  "  n_samples INTEGER NOT NULL CHECK (n_samples >= 0),\n"                                         \
  "  n_tasters INTEGER NOT NULL CHECK (n_tasters >= 0),\n"                                         \
  "  rank_sum REAL,\n"                                                                             \
  "  place INTEGER NOT NULL CHECK (place >= 0),\n"                                                 \
  "  is_separated INTEGER NOT NULL CHECK (is_separated IN (0, 1)),\n"                              \
  "  liking_mean REAL,\n"                                                                          \
  "  liking_low REAL,\n"                                                                           \
  "  liking_high REAL,\n"                                                                          \
  "  sentence TEXT NOT NULL,\n"                                                                    \
  "  PRIMARY KEY (tasting_id, sample),\n"                                                          \
  "  FOREIGN KEY (tasting_id, sample) REFERENCES tasting_samples(tasting_id, position)\n"          \
  "    ON DELETE CASCADE\n"                                                                        \
  ") WITHOUT ROWID;\n"

/* Removing a whole tasting is allowed: its row is gone when its parts follow, so that no state
 * is found. */
#define SEAL_SQL                                                                                   \
  "CREATE TRIGGER tasting_samples_sealed_insert BEFORE INSERT ON tasting_samples\n"                \
  "WHEN (SELECT state FROM tastings WHERE id = new.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_samples_sealed_update BEFORE UPDATE ON tasting_samples\n"                \
  "WHEN (SELECT state FROM tastings WHERE id = old.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_samples_sealed_delete BEFORE DELETE ON tasting_samples\n"                \
  "WHEN (SELECT state FROM tastings WHERE id = old.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_attributes_sealed_insert BEFORE INSERT ON tasting_attributes\n"          \
  "WHEN (SELECT state FROM tastings WHERE id = new.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_attributes_sealed_update BEFORE UPDATE ON tasting_attributes\n"          \
  "WHEN (SELECT state FROM tastings WHERE id = old.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_attributes_sealed_delete BEFORE DELETE ON tasting_attributes\n"          \
  "WHEN (SELECT state FROM tastings WHERE id = old.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_cups_sealed_insert BEFORE INSERT ON tasting_cups\n"                      \
  "WHEN (SELECT state FROM tastings WHERE id = new.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_cups_sealed_update BEFORE UPDATE ON tasting_cups\n"                      \
  "WHEN (SELECT state FROM tastings WHERE id = old.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_cups_sealed_delete BEFORE DELETE ON tasting_cups\n"                      \
  "WHEN (SELECT state FROM tastings WHERE id = old.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_tasters_sealed_insert BEFORE INSERT ON tasting_tasters\n"                \
  "WHEN (SELECT state FROM tastings WHERE id = new.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_tasters_sealed_delete BEFORE DELETE ON tasting_tasters\n"                \
  "WHEN (SELECT state FROM tastings WHERE id = old.tasting_id) <> 0 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_cups_code BEFORE INSERT ON tasting_cups\n"                               \
  "WHEN EXISTS (SELECT 1 FROM tasting_cups WHERE tasting_id = new.tasting_id AND code = "          \
  "new.code\n"                                                                                     \
  "  AND sample <> new.sample) BEGIN\n"                                                            \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_CODE "');\n"                                              \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tastings_back BEFORE UPDATE ON tastings WHEN new.state < old.state BEGIN\n"      \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_BACK "');\n"                                              \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tastings_sealed BEFORE UPDATE ON tastings\n"                                     \
  "WHEN old.state <> 0 AND (new.seed <> old.seed OR new.tasks <> old.tasks\n"                      \
  "  OR new.max_per_taster <> old.max_per_taster\n"                                                \
  "  OR new.is_order_expected <> old.is_order_expected\n"                                          \
  "  OR new.pair_1 IS NOT old.pair_1 OR new.pair_2 IS NOT old.pair_2\n"                            \
  "  OR new.triangle_1 IS NOT old.triangle_1 OR new.triangle_2 IS NOT old.triangle_2) BEGIN\n"     \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_events_update BEFORE UPDATE ON tasting_events BEGIN\n"                   \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_RECORD "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_events_delete BEFORE DELETE ON tasting_events\n"                         \
  "WHEN EXISTS (SELECT 1 FROM tastings WHERE id = old.tasting_id) BEGIN\n"                         \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_RECORD "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_outcomes_insert BEFORE INSERT ON tasting_outcomes\n"                     \
  "WHEN (SELECT state FROM tastings WHERE id = new.tasting_id) <> 2 BEGIN\n"                       \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_OUTCOME "');\n"                                           \
  "END;\n"

#define MAPS_SQL                                                                                   \
  "CREATE TABLE maps (\n"                                                                          \
  "  id INTEGER PRIMARY KEY AUTOINCREMENT,\n"                                                      \
  "  blend_id INTEGER NOT NULL REFERENCES blends(id) ON DELETE RESTRICT,\n"                        \
  "  base_version_id INTEGER NOT NULL,\n"                                                          \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  created_at INTEGER NOT NULL,\n"                                                               \
  "  design INTEGER NOT NULL CHECK (design BETWEEN 0 AND 3),\n"                                    \
  "  degree INTEGER NOT NULL CHECK (degree >= 0),\n"                                               \
  "  model_order INTEGER NOT NULL CHECK (model_order BETWEEN 0 AND 2),\n"                          \
  "  n_trials INTEGER NOT NULL CHECK (n_trials >= 0),\n"                                           \
  "  seed INTEGER NOT NULL CHECK (seed BETWEEN 0 AND 9007199254740991),\n"                         \
  "  FOREIGN KEY (blend_id, base_version_id) REFERENCES versions(blend_id, id)\n"                  \
  ");\n"                                                                                           \
  "CREATE INDEX maps_by_blend ON maps(blend_id, base_version_id);\n"                               \
  "CREATE TABLE map_components (\n"                                                                \
  "  map_id INTEGER NOT NULL REFERENCES maps(id) ON DELETE CASCADE,\n"                             \
  "  position INTEGER NOT NULL CHECK (position BETWEEN 0 AND 5),\n"                                \
  "  name TEXT NOT NULL,\n"                                                                        \
  "  lower REAL NOT NULL CHECK (lower BETWEEN 0 AND 1),\n"                                         \
  "  upper REAL NOT NULL CHECK (upper BETWEEN 0 AND 1),\n"                                         \
  "  PRIMARY KEY (map_id, position)\n"                                                             \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE map_members (\n"                                                                   \
  "  map_id INTEGER NOT NULL,\n"                                                                   \
  "  component INTEGER NOT NULL,\n"                                                                \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n"                                           \
  "  ingredient TEXT NOT NULL,\n"                                                                  \
  "  ratio REAL CHECK (ratio BETWEEN 0 AND 1),\n"                                                  \
  "  PRIMARY KEY (map_id, component, position),\n"                                                 \
  "  UNIQUE (map_id, ingredient),\n"                                                               \
  "  FOREIGN KEY (map_id, component) REFERENCES map_components(map_id, position) ON DELETE "       \
  "CASCADE\n"                                                                                      \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE TABLE map_points (\n"                                                                    \
  "  map_id INTEGER NOT NULL REFERENCES maps(id) ON DELETE CASCADE,\n"                             \
  "  position INTEGER NOT NULL CHECK (position >= 0),\n"                                           \
  "  kind INTEGER NOT NULL CHECK (kind BETWEEN 0 AND 5),\n"                                        \
  "  version_id INTEGER REFERENCES versions(id) ON DELETE RESTRICT,\n"                             \
  "  x_1 REAL CHECK (x_1 BETWEEN -1e-6 AND 1.000001),\n"                                           \
  "  x_2 REAL CHECK (x_2 BETWEEN -1e-6 AND 1.000001),\n"                                           \
  "  x_3 REAL CHECK (x_3 BETWEEN -1e-6 AND 1.000001),\n"                                           \
  "  x_4 REAL CHECK (x_4 BETWEEN -1e-6 AND 1.000001),\n"                                           \
  "  x_5 REAL CHECK (x_5 BETWEEN -1e-6 AND 1.000001),\n"                                           \
  "  x_6 REAL CHECK (x_6 BETWEEN -1e-6 AND 1.000001),\n"                                           \
  "  PRIMARY KEY (map_id, position)\n"                                                             \
  ") WITHOUT ROWID;\n"                                                                             \
  "CREATE INDEX map_points_by_version ON map_points(version_id);\n"

const char fm_schema_v2_sql[] = EXPERIMENTS_SQL TASTINGS_SQL SHEETS_SQL SEAL_SQL MAPS_SQL;
