/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stored-view.h - one record as a page, every change saved as it is made
 *
 * Shows a document, says below it whether all changes are saved, and lets go of it flushed. Undo
 * and redo take the steps of the document, after what was typed in the text field with the
 * keyboard.
 *
 * Properties of a template that derives from it:
 *   "content"      (GtkWidget)  what shows the record
 *   "remove-text"  (string)     of the button that removes it
 *
 * Signals:
 *   "remove" ()   the user asks to remove the record
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-stored-document.h"

G_BEGIN_DECLS

#define FM_TYPE_STORED_VIEW (fm_stored_view_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmStoredView, fm_stored_view, FM, STORED_VIEW, GtkWidget)

struct _FmStoredViewClass {
  GtkWidgetClass parent_class;

  /** Shows the document of the view, or nothing when there is none. */
  void (*show) (FmStoredView *self);
  /** (nullable): some value of the document changed. */
  void (*changed) (FmStoredView *self);
  /** (nullable): undo or redo took another state of the document: show it. */
  void (*restored) (FmStoredView *self);
};

/** @document: (nullable): the one before is flushed. */
void fm_stored_view_set_document (FmStoredView *self, FmStoredDocument *document);
/** (transfer none) (nullable) */
gpointer fm_stored_view_get_document (FmStoredView *self);
/** What the document holds. (transfer none) */
gpointer fm_stored_view_get_content (FmStoredView *self);
/** Says below the record that something failed. */
void fm_stored_view_say_failure (FmStoredView *self, const char *text);

G_END_DECLS
