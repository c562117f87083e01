/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-records-page.h - a page of records of one kind, of which one is open
 *
 * Lists them, opens one as a document, adds and removes. A page of a kind says in its class how
 * that is done, and shows what it is told to.
 */
#pragma once

#include "app/log/fm-log-model.h"
#include "app/session/fm-removal.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-page.h"

G_BEGIN_DECLS

#define FM_TYPE_RECORDS_PAGE (fm_records_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmRecordsPage, fm_records_page, FM, RECORDS_PAGE, FmPage)

struct _FmRecordsPageClass {
  FmPageClass parent_class;

  const FmLogKind *rows;
  FmChangeKind kind; /* what the session tells of when a record changes */
  GType document_type;

  /** In a thread, with the id (gint64*) as data: reads a record. */
  FmStoreFunc load;
  GDestroyNotify free_record;
  /** @record: (transfer full). Returns: (transfer full): its document. */
  FmStoredDocument *(*take) (FmRecordsPage *self, gpointer record);
  /** In a thread, with a plan as data: stores a record. Returns its id (gint64*, transfer full). */
  FmStoreFunc create;
  GDestroyNotify free_plan;
  FmRemovalFunc remove;
  /** "“Trial 3” removed". Returns: (transfer full). */
  char *(*tell_removed) (FmStoredDocument *document);

  /** What is listed. Returns: (transfer full) (nullable) */
  gpointer (*query) (FmRecordsPage *self);
  /** Shows a document; NULL: none is open. */
  void (*show) (FmRecordsPage *self, FmStoredDocument *document);
  /** Marks the record in the list; 0 = none. */
  void (*select) (FmRecordsPage *self, gint64 id);
  /** In a narrow window: goes to the record, or back to the list. (nullable) */
  void (*go) (FmRecordsPage *self, gboolean to_record);
  /** What can be done may be another now. */
  void (*update_actions) (FmRecordsPage *self);
};

/** (transfer none) */
FmLogModel *fm_records_page_get_model (FmRecordsPage *self);
/** The open document; NULL when none is. (transfer none) */
gpointer fm_records_page_get_document (FmRecordsPage *self);
/** Shown, or being loaded; 0 = none. */
gint64 fm_records_page_get_open_id (FmRecordsPage *self);
/** Asks for the rows again when the query is another one. */
void fm_records_page_query_changed (FmRecordsPage *self);
void fm_records_page_open (FmRecordsPage *self, gint64 id);
void fm_records_page_close (FmRecordsPage *self);
/** Opens a record as if it had been chosen in the list. */
void fm_records_page_go_to (FmRecordsPage *self, gint64 id);
/** Stores a new record and opens it. @plan: (transfer full) (nullable) */
void fm_records_page_create (FmRecordsPage *self, gpointer plan);
/** Removes the open record, with a way back. @inside: in the toast overlay of the page. */
void fm_records_page_remove (FmRecordsPage *self, GtkWidget *inside);

G_END_DECLS
