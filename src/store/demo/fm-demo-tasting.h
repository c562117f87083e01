/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-tasting.h - one invented tasting (inside the store only) */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** A sample and how much the panel likes it. */
typedef struct {
  gint64 experiment_id;
  gint64 version_id;
  const char *name;
  double liking; /* without noise, 1 .. 9 */
} FmDemoSample;

/** Plans, arranges and fills in a tasting; all sheets and opened, or with only the first sheet in
 * and sealed. The same @seed gives the same marks. */
gboolean fm_demo_tasting_add (FmNotebook *notebook,
                              const char *title,
                              gint64 held_at,
                              const FmDemoSample *samples,
                              guint n_samples,
                              gboolean sealed,
                              guint32 seed,
                              GError **error);

G_END_DECLS
