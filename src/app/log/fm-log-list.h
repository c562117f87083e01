/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-list.h - a log at the left of its page: what narrows it, the rows, what an empty one says
 *
 * Properties of a template that derives from it:
 *   "header"         (GtkWidget)  what adds a record and what narrows the list
 *   "list-name"      (string)     of the list, for a screen reader
 *   "empty-text"     (string)     what is said when there is no record
 *   "no-match-text"  (string)     what is said when a filter leaves none
 *
 * Signals:
 *   "selected" (gint64 id)    the selection moved to another record
 *   "activated" (gint64 id)   a record was clicked or Enter was pressed on it
 *   "query-changed" ()        what is asked for is another now
 */
#pragma once

#include <gtk/gtk.h>

#include "app/log/fm-log-model.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_LOG_LIST (fm_log_list_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmLogList, fm_log_list, FM, LOG_LIST, GtkWidget)

struct _FmLogListClass {
  GtkWidgetClass parent_class;

  gboolean wraps; /* a row shows all of its text; else each line ends in dots, and all are alike */
  /** What a row shows, a paragraph a line, as Pango markup. Returns: (transfer full). */
  char *(*markup) (gconstpointer info);
  /** (nullable): puts a picture of the record into @image, which is hidden where there is none.
   * @info: NULL when the row is let go. */
  void (*show_picture) (FmLogList *self, gconstpointer info, GtkImage *image);
  /** "3 experiments". Returns: (transfer full). */
  char *(*count_text) (guint n);
  /** What the controls and @session ask for. Returns: (transfer full). */
  gpointer (*query) (FmLogList *self, FmSession *session);
  /** (nullable): TRUE when a filter narrows the list. */
  gboolean (*is_filtering) (FmLogList *self);
  /** (nullable): takes the filter back. */
  void (*reset_filter) (FmLogList *self);
};

void fm_log_list_set_model (FmLogList *self, FmLogModel *model);
gpointer fm_log_list_query (FmLogList *self, FmSession *session);
/** Tells that the controls ask for something else. */
void fm_log_list_query_changed (FmLogList *self);
/** Selects a row now or when it comes; 0 selects none. Emits nothing. */
void fm_log_list_select (FmLogList *self, gint64 id);
/** In a narrow window one click opens. */
void fm_log_list_set_single_click (FmLogList *self, gboolean single_click);

G_END_DECLS
