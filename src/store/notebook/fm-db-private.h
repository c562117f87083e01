/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-db-private.h - the inside of a connection, for fm-db.c and fm-notebook-transaction.c */
#pragma once

#include <math.h>

#include "store/notebook/fm-db.h"

G_BEGIN_DECLS

struct _FmDb {
  sqlite3 *handle;
  GHashTable *statements; /* SQL text -> FmStmt */
  GCancellable *cancellable;
  FmNotebook *notebook; /* whose reader or writer this is; not owned */
  guint depth;          /* of nested transactions */
  GThread *user;        /* of a reader: the thread that reads now */
  gboolean has_sums;    /* notes which records it touches */
};

G_END_DECLS
