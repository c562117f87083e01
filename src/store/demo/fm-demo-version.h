/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-version.h - a version with a date in the past, for the demo (inside the store only) */
#pragma once

#include "store/notebook/fm-db-private.h"
#include "store/demo/fm-demo-log.h"

G_BEGIN_DECLS

typedef struct {
  gint64 blend_id;
  gint64 parent_id; /* 0 = root */
  int number;
  const char *reason; /* translated */
  gint64 saved_at;
} FmDemoSaved;

/** Writes made->formula and made->fat_pct as a version and sets made->version_id. Not by
 * fm_versions_save(), which dates every version today. */
gboolean
fm_demo_version_insert (FmDb *db, const FmDemoSaved *saved, FmDemoMade *made, GError **error);

G_END_DECLS
