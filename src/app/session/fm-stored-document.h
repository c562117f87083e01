/* fm-stored-document.h - something of the notebook being edited, saved as it changes
 *
 * Widgets change the content in place and call fm_stored_document_touch(). A copy is saved shortly
 * after the last change in a GTask thread; saves carry a serial number, so that a late older copy
 * can never overwrite a newer one. A save that fails is tried again, and the document stays alive
 * until its changes are stored.
 *
 * Signals:
 *   "changed" ()             some value changed; derived numbers follow
 *   "saved" ()               all changes are in the notebook
 *   "save-failed" (message)  the last save failed; another attempt follows
 */
#pragma once

#include <gio/gio.h>

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

#define FM_TYPE_STORED_DOCUMENT (fm_stored_document_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmStoredDocument, fm_stored_document, FM, STORED_DOCUMENT, GObject)

/** What kinds of document differ in. @save is called in threads. */
struct _FmStoredDocumentClass {
  GObjectClass parent_class;

  gpointer (*copy) (gconstpointer content);
  void (*free) (gpointer content);
  gboolean (*save) (FmNotebook *notebook, gpointer content, GError **error);
};

/** @type: of a kind of document; @content: (transfer full) stored already. */
gpointer fm_stored_document_new (GType type, FmNotebook *notebook, gpointer content);
FmNotebook *fm_stored_document_get_notebook (FmStoredDocument *self);
/** To read and to change; call touch after a change. (transfer none) */
gpointer fm_stored_document_get_content (FmStoredDocument *self);
/** FALSE when the notebook is open for reading only. */
gboolean fm_stored_document_is_editable (FmStoredDocument *self);
void fm_stored_document_touch (FmStoredDocument *self);
gboolean fm_stored_document_is_saved (FmStoredDocument *self);
/** Starts saving pending changes now, in a thread. */
void fm_stored_document_flush (FmStoredDocument *self);
/** Saves pending changes before it returns: only when the program is about to end. */
gboolean fm_stored_document_flush_now (FmStoredDocument *self, GError **error);

G_END_DECLS
