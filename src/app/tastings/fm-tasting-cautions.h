/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-cautions.h - core readings and allergens of a plan's samples, as far as on record */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_CAUTIONS (fm_tasting_cautions_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingCautions, fm_tasting_cautions, FM, TASTING_CAUTIONS, GtkWidget)

/** @document: (nullable) of a tasting that is still planned */
void fm_tasting_cautions_set_document (FmTastingCautions *self, FmTastingDocument *document);
/** Call when the tasting changed elsewhere. */
void fm_tasting_cautions_refresh (FmTastingCautions *self);

/** Reads the record of a document's samples in a thread. @owner: lives until @callback */
void fm_tasting_cautions_read_async (FmTastingDocument *document,
                                     gpointer owner,
                                     GCancellable *cancellable,
                                     GAsyncReadyCallback callback,
                                     gpointer data);
/** (transfer full) of FmTastingCaution */
GPtrArray *fm_tasting_cautions_read_finish (GAsyncResult *result, GError **error);
/** A line for each sample, by name; (transfer full). */
char *fm_tasting_cautions_lines (const GPtrArray *cautions);

G_END_DECLS
