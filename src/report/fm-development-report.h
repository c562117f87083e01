/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-development-report.h - how a blend became what it is
 *
 * The tree of versions with their reasons, the experiments that were chosen with their photos, what
 * opened tastings found, and the maps. A sealed tasting tells nothing.
 */
#pragma once

#include "report/fm-batch-sheet.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

/**
 * FmDevelopmentReportInput:
 * @notebook_name: (nullable)
 * @date_text: (nullable)
 * @experiments: gint64, those to be shown, in their order
 */
typedef struct {
  gint64 blend_id;
  const char *blend_name;
  const char *notebook_name;
  const char *date_text;
  const GArray *experiments;
} FmDevelopmentReportInput;

/** Reads the notebook: any thread but the main one. NULL + error. */
FmBatchSheet *fm_development_report_new (FmNotebook *notebook,
                                         const FmDevelopmentReportInput *input,
                                         GCancellable *cancellable,
                                         GError **error);

G_END_DECLS
