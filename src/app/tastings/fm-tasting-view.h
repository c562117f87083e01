/* fm-tasting-view.h - one tasting as a page: its plan, its sheets or its reading, by its state
 *
 * Signals:
 *   "stored" ()   the last changes are in the notebook
 *   "remove" ()   the user asks to remove the tasting
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_VIEW (fm_tasting_view_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingView, fm_tasting_view, FM, TASTING_VIEW, GtkWidget)

/** @document: (nullable): the one before is flushed */
void fm_tasting_view_set_document (FmTastingView *self, FmTastingDocument *document);
/** (transfer none) (nullable) */
FmTastingDocument *fm_tasting_view_get_document (FmTastingView *self);

G_END_DECLS
