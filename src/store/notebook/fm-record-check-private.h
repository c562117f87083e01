/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-record-check-private.h - sums of records, for what opens and writes databases */
#pragma once

#include "store/notebook/fm-db.h"

G_BEGIN_DECLS

#define FM_RECORD_MAX_PARTS 10

/* The rows of one table that belong to a record. */
typedef struct {
  const char *table;
  const char *column; /* that holds the id of the record; NULL: all rows are one record, number 0 */
  const char *order;
} FmRecordPart;

typedef struct {
  FmRecordPart parts[FM_RECORD_MAX_PARTS]; /* the first one is the record itself */
  const char *name_sql;                    /* (nullable) what the record ?1 is called */
} FmRecordKind;

/* Own entries have a text as their id. */
typedef struct {
  gint64 id;
  char *text; /* NULL = the id is a number */
  GBytes *sum;
} FmRecordKey;

const FmRecordKind *fm_record_kinds (guint *n_kinds);
void fm_record_key_free (gpointer data);
FmRecordKey *fm_record_key_read (FmStmt *stmt, int column);
void fm_record_key_bind (FmStmt *stmt, int index, const FmRecordKey *key);
/** @sum: (out): NULL where there is no such record. */
gboolean fm_record_sum (
    FmDb *db, const FmRecordKind *kind, const FmRecordKey *key, GBytes **sum, GError **error);

/** Lets a connection note what it touches. Tables before version 5 have no sums: nothing is done,
 * here and below. */
gboolean fm_record_check_watch (FmDb *db, GError **error);
/** Puts the sums of what was touched in; before a commit. */
gboolean fm_record_check_store (FmDb *db, GError **error);
/** Sums all records of a notebook that has no sums yet. Not within a transaction. */
gboolean fm_record_check_begin (FmDb *db, GError **error);
/** Drops the sums of records that are not there, where that is known and told. */
gboolean fm_record_check_forget_gone (FmDb *db, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmRecordKey, fm_record_key_free)

G_END_DECLS
