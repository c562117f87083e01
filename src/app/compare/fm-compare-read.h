/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-read.h - one column of a comparison, read in a thread */
#pragma once

#include "core/compare/fm-comparison.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

char *fm_compare_version_title (const char *blend_name, int number);
char *fm_compare_version_subtitle (const FmVersionInfo *info);
char *fm_compare_draft_title (const char *blend_name);
char *
fm_compare_experiment_title (const char *blend_name, int number, const char *title, gint64 made_at);

typedef struct {
  FmNotebook *notebook;
  GPtrArray *blends;      /* FmBlendInfo */
  const FmFormula *draft; /* (nullable): as it is being edited, where the key is of a draft */
  GCancellable *cancellable;
} FmCompareRead;

/**
 * @key: as of fm_compare_key()
 * @item: (out) (transfer full) (nullable): NULL when it was removed meanwhile
 * @photos: (out) (transfer full) (nullable): FmPhotoInfo, as many as the item says
 * Returns: FALSE + error when the notebook could not be read.
 */
gboolean fm_compare_read (const FmCompareRead *self,
                          const char *key,
                          FmCompareItem **item,
                          GPtrArray **photos,
                          GError **error);

G_END_DECLS
