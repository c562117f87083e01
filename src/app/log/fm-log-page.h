/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-page.h - records of one kind: the list at the left, the open one at the right
 *
 * In a narrow window there is one at a time, and a way back.
 *
 * Properties of a template that derives from it:
 *   "list"         (FmLogList)
 *   "view"         (FmStoredView)
 *   "back-label"   (string)  of the way back: "All experiments"
 *   "back-spoken"  (string)  the same in full, for a screen reader
 *   "none-text"    (string)  what is said while no record is open
 */
#pragma once

#include "app/log/fm-log-list.h"
#include "app/log/fm-records-page.h"
#include "app/log/fm-stored-view.h"

G_BEGIN_DECLS

#define FM_TYPE_LOG_PAGE (fm_log_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmLogPage, fm_log_page, FM, LOG_PAGE, FmRecordsPage)

struct _FmLogPageClass {
  FmRecordsPageClass parent_class;

  /** (nullable): Opens what belongs to the document, before it is shown. */
  void (*prepare) (FmLogPage *self, FmStoredDocument *document);
  const char *new_action;
  /** While none is open, the first of the list is opened; not in a narrow window. */
  gboolean opens_first;
};

/** FALSE where a narrow window shows the list in its place. */
gboolean fm_log_page_shows_record (FmLogPage *self);

G_END_DECLS
