/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-copy.h - a comparison as it is shown: for the clipboard and for paper */
#pragma once

#include "core/compare/fm-comparison.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/**
 * FmCompareView:
 * @reference: column that the differences refer to, negative for absolute values
 * @only_differing: without rows that read the same in every column
 * @notice: (nullable): a line to begin with
 */
typedef struct {
  const FmComparison *comparison;
  int reference;
  gboolean only_differing;
  const char *notice;
} FmCompareView;

/** One line a row, cells parted by tabs. Returns: (transfer full). */
char *fm_compare_copy_text (const FmCompareView *view);
/** A table of HTML with heads of rows and columns, UTF-8. Returns: (transfer full). */
char *fm_compare_copy_html (const FmCompareView *view);
/** Four columns side by side, the next four below. Returns: (transfer full). */
FmBatchSheet *fm_compare_copy_sheet (const FmCompareView *view);

G_END_DECLS
