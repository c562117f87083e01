/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-load.h - reads what can be compared and what is compared, off the main thread */
#pragma once

#include "app/blends/fm-version-list.h"
#include "core/compare/fm-comparison.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Every version that @list has, the newest first within a blend. (transfer full) (element-type
 * FmCompareChoice) */
GPtrArray *fm_compare_choices_of_versions (FmVersionList *list);
/** Every experiment of the notebook, the newest first. */
void fm_compare_load_experiments_async (FmNotebook *notebook,
                                        GCancellable *cancellable,
                                        GAsyncReadyCallback callback,
                                        gpointer user_data);
/** (transfer full) (element-type FmCompareChoice) */
GPtrArray *fm_compare_load_experiments_finish (GAsyncResult *result, GError **error);

/** @keys: as of fm_compare_choice_get_key(); those that are gone are left out. */
void fm_compare_load_async (FmNotebook *notebook,
                            const char *const *keys,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data);
/** (transfer full): holds as many items as are left, perhaps none. */
FmComparison *fm_compare_load_finish (GAsyncResult *result, GError **error);

/** What the page showed last in this notebook. */
typedef struct {
  char *selection; /* (nullable) keys, a space between them */
  char *view;      /* (nullable) "values" or "differences", and the column of the reference */
} FmCompareMemory;

#define FM_COMPARE_SELECTION_SETTING "compare-selection"
#define FM_COMPARE_VIEW_SETTING "compare-view"

void fm_compare_load_memory_async (FmNotebook *notebook,
                                   GCancellable *cancellable,
                                   GAsyncReadyCallback callback,
                                   gpointer user_data);
/** (transfer full) */
FmCompareMemory *fm_compare_load_memory_finish (GAsyncResult *result, GError **error);
void fm_compare_memory_free (FmCompareMemory *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCompareMemory, fm_compare_memory_free)

G_END_DECLS
