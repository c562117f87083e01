/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v3.c - what the codes of a tasting hang on, and what was recorded of it
 *
 * NULL stands for "not known" or "none", as before.
 */
#include "store/notebook/fm-schema-v3.h"

#include "store/notebook/fm-schema-v2.h"

/* The hidden part of the seed is made at sealing; NULL = sealed before there was one. How the codes
 * are kept from a cook who tastes belongs to the plan. */
#define TASTINGS_SQL                                                                               \
  "ALTER TABLE tastings ADD COLUMN hidden_part INTEGER"                                            \
  " CHECK (hidden_part BETWEEN 1 AND 9007199254740991);\n"                                         \
  "ALTER TABLE tastings ADD COLUMN blinding INTEGER NOT NULL DEFAULT 0"                            \
  " CHECK (blinding BETWEEN 0 AND 4);\n"                                                           \
  "CREATE TRIGGER tastings_sealed_hidden BEFORE UPDATE ON tastings\n"                              \
  "WHEN old.state <> 0 AND (new.hidden_part IS NOT old.hidden_part\n"                              \
  "  OR new.blinding <> old.blinding) BEGIN\n"                                                     \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_SEALED "');\n"                                            \
  "END;\n"

/* Two kinds more: going on unchecked, and being a copy. A CHECK cannot be altered in place. */
#define EVENTS_SQL                                                                                 \
  "CREATE TABLE tasting_events_3 (\n"                                                              \
  "  tasting_id INTEGER NOT NULL REFERENCES tastings(id) ON DELETE CASCADE,\n"                     \
  "  position INTEGER NOT NULL,\n"                                                                 \
  "  at INTEGER NOT NULL,\n"                                                                       \
  "  kind INTEGER NOT NULL CHECK (kind BETWEEN 0 AND 6),\n"                                        \
  "  remark TEXT,\n"                                                                               \
  "  PRIMARY KEY (tasting_id, position)\n"                                                         \
  ") WITHOUT ROWID;\n"                                                                             \
  "INSERT INTO tasting_events_3 SELECT tasting_id, position, at, kind, remark"                     \
  " FROM tasting_events;\n"                                                                        \
  "DROP TABLE tasting_events;\n"                                                                   \
  "ALTER TABLE tasting_events_3 RENAME TO tasting_events;\n"                                       \
  "CREATE TRIGGER tasting_events_update BEFORE UPDATE ON tasting_events BEGIN\n"                   \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_RECORD "');\n"                                            \
  "END;\n"                                                                                         \
  "CREATE TRIGGER tasting_events_delete BEFORE DELETE ON tasting_events\n"                         \
  "WHEN EXISTS (SELECT 1 FROM tastings WHERE id = old.tasting_id) BEGIN\n"                         \
  "  SELECT RAISE(ABORT, '" FM_SCHEMA_V2_RECORD "');\n"                                            \
  "END;\n"

const char fm_schema_v3_sql[] = TASTINGS_SQL EVENTS_SQL;
