/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-page.h - what shows a session: a page of the window, or its panel
 *
 * Property "document" (FmStoredDocument): what is edited on the page, whose steps undo takes back;
 * NULL while there is none.
 * Property "session" (FmSession): what is shown; may be another one later. A page says once, in its
 * init, which signals of a session it hears; they follow the session.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_PAGE (fm_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmPage, fm_page, FM, PAGE, GtkWidget)

struct _FmPageClass {
  GtkWidgetClass parent_class;

  /** Another session is here, never NULL: show it. */
  void (*show_session) (FmPage *self);
  /** (nullable): why there is nothing to undo without a document. Returns: translated. */
  const char *(*tell_no_document) (FmPage *self);
};

/** NULL before it is set and once the page is disposed of. (transfer none) */
FmSession *fm_page_get_session (FmPage *self);
void fm_page_set_session (FmPage *self, FmSession *session);
/** (transfer none) (nullable) */
FmStoredDocument *fm_page_get_document (FmPage *self);
/** @document: (nullable) */
void fm_page_set_document (FmPage *self, FmStoredDocument *document);
/** Why there is nothing to undo while the page has no document: translated. */
const char *fm_page_tell_no_document (FmPage *self);
/** The notebook of the session; NULL while there is none. (transfer none) */
FmNotebook *fm_page_get_notebook (FmPage *self);
/** TRUE while there is a notebook that can be written. */
gboolean fm_page_is_writable (FmPage *self);
/** Says in the session of an FmPage what was done or what failed; as of FmBatchSheetSay. */
void fm_page_say (GtkWidget *self, const char *text, gboolean failed);
/** @callback is called with @self first, for @signal of whatever session the page shows. */
void fm_page_listen (FmPage *self, const char *signal, GCallback callback);

G_END_DECLS
