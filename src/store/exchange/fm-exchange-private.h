/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exchange-private.h - tables of a notebook as open data sees them */
#pragma once

#include <json-glib/json-glib.h>

#include "store/exchange/fm-exchange.h"
#include "store/notebook/fm-db.h"

G_BEGIN_DECLS

#define FM_EXCHANGE_EDITION_KEY "edition"
#define FM_EXCHANGE_FORMAT_KEY "format"
#define FM_EXCHANGE_PHOTOS "photo_blobs"
/** Columns whose text is JSON itself end in this; members leave it out. */
#define FM_EXCHANGE_JSON_SUFFIX "_json"

typedef struct {
  char *name;
  gboolean is_bytes; /* lies beside the text and not in it */
} FmExchangeColumn;

typedef struct {
  char *name;
  GPtrArray *columns; /* FmExchangeColumn */
  char *order;        /* of the rows, for SQL */
} FmExchangeTable;

/** FmExchangeTable by name. Search indexes are left out. NULL + error. */
GPtrArray *fm_exchange_tables (FmDb *db, GError **error);
/** -1 when there is none. */
int fm_exchange_find_column (const FmExchangeTable *table, const char *name);

/** Ids of what is in a part. NULL sets: everything is. */
typedef struct {
  GHashTable *blends;
  GHashTable *versions;
  GHashTable *experiments;
  GHashTable *tastings;
  GHashTable *maps;
  GHashTable *servings;
  GHashTable *photos; /* by SHA-256 */
  gboolean has_draft;
} FmExchangeScope;

FmExchangeScope *fm_exchange_scope_new (FmDb *db, const FmExchangePart *part, GError **error);
void fm_exchange_scope_free (FmExchangeScope *self);
/** TRUE when the row that @stmt stands on is in it. */
gboolean
fm_exchange_scope_has (const FmExchangeScope *self, const FmExchangeTable *table, FmStmt *stmt);

/** The value as text, as the store writes its own JSON. */
void fm_exchange_append_node (GString *out, JsonNode *node);
/** In quotes. */
void fm_exchange_append_text (GString *out, const char *text);

/** The folder of the photos beside @path, and one file in it. (transfer full) */
char *fm_exchange_photo_folder (const char *path);
char *fm_exchange_photo_file (const char *folder, const char *sha256, const char *column);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmExchangeScope, fm_exchange_scope_free)

G_END_DECLS
