/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema.h - the tables of a notebook and how older ones are brought up to date
 *
 * Internal to the store layer. A migration is never edited once a version with it is released;
 * a change is a new one at the end of the list.
 */
#pragma once

#include <glib.h>
#include <sqlite3.h>

G_BEGIN_DECLS

/** Brings a database from user_version @to_version - 1 to @to_version. */
typedef struct {
  int to_version;
  const char *sql;
} FmMigration;

const FmMigration *fm_schema_migrations (guint *n_migrations);
/** Newest user_version that this program knows. */
int fm_schema_version (void);
/** Replaces the list, so that tests can play a later program. NULL puts the real one back. */
void fm_schema_set_migrations_for_test (const FmMigration *migrations, guint n_migrations);

/** Runs one migration in its own transaction; sets user_version and application_id. */
gboolean fm_schema_migrate_step (sqlite3 *handle, const FmMigration *migration, GError **error);
/** Runs all migrations on an empty database. */
gboolean fm_schema_create (sqlite3 *handle, GError **error);
/**
 * Compares all objects in the file with those that this program makes for @version: HOSTILE for
 * what is not ours or differs from ours, DAMAGED for what is missing.
 */
gboolean fm_schema_check (sqlite3 *handle, int version, GError **error);

G_END_DECLS
