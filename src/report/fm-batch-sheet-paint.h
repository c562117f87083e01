/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-paint.h - a batch sheet on paper
 *
 * One page for each title is the rule: type shrinks down to 75 % for it. A longer sheet goes on
 * over further pages, broken between rows only. Lengths in points (1/72 inch).
 */
#pragma once

#include <cairo.h>

#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

#define FM_A4_WIDTH_PT 595.276
#define FM_A4_HEIGHT_PT 841.89

typedef struct {
  double scale;     /* of the type */
  double height_pt; /* of a page */
  GArray *first;    /* guint, first row of each page */
} FmSheetLayout;

/** How @sheet breaks over pages of this size. @cr is only measured with. */
FmSheetLayout *
fm_sheet_layout_new (const FmBatchSheet *sheet, cairo_t *cr, double width_pt, double height_pt);
void fm_sheet_layout_free (FmSheetLayout *self);
guint fm_sheet_layout_n_pages (const FmSheetLayout *self);
/** What stands at the foot of page @page: what it is of, and "page 1 of 2" of the pages from its
 * title on. Returns: (transfer full). */
char *fm_sheet_layout_foot (const FmSheetLayout *self, const FmBatchSheet *sheet, guint page);
/** Paints page @page with its foot, black, from the origin of @cr; the paper itself is left as it
 * is. */
void fm_sheet_layout_paint (
    const FmSheetLayout *self, const FmBatchSheet *sheet, cairo_t *cr, double width_pt, guint page);
/** The whole sheet as a PDF file on A4. NULL + error (G_IO_ERROR). Returns: (transfer full). */
GBytes *fm_batch_sheet_to_pdf (const FmBatchSheet *sheet, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmSheetLayout, fm_sheet_layout_free)

G_END_DECLS
