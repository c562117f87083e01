/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-log.h - writes one invented making into the demo notebook (inside the store only) */
#pragma once

#include "store/demo/fm-demo-data.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** What a making belongs to. */
typedef struct {
  gint64 version_id;
  const FmFormula *formula;
  double fat_pct; /* NaN = unknown */
} FmDemoMade;

/** @seed makes weighings, spreads and pictures; the same seed gives the same making. */
gboolean fm_demo_log_add (FmNotebook *notebook,
                          const FmDemoExperiment *making,
                          const FmDemoMade *made,
                          guint32 seed,
                          GError **error);
/** Moment of a day in the story, unix seconds. */
gint64 fm_demo_moment (int day, int hour);

G_END_DECLS
