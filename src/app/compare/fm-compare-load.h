/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-load.h - reads what can be compared and what is compared, off the main thread */
#pragma once

#include "app/blends/fm-version-list.h"
#include "app/photos/fm-photo-listing.h"
#include "core/compare/fm-comparison.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** The draft of each blend in @list, then its versions, the newest first. (transfer full)
 * (element-type FmCompareChoice) */
GPtrArray *fm_compare_choices_of_versions (FmVersionList *list);
/** Every experiment of the notebook, the newest first. */
void fm_compare_load_experiments_async (FmNotebook *notebook,
                                        GCancellable *cancellable,
                                        GAsyncReadyCallback callback,
                                        gpointer user_data);
/** (transfer full) (element-type FmCompareChoice) */
GPtrArray *fm_compare_load_experiments_finish (GAsyncResult *result, GError **error);

/** What the page shows: the table, and the photos, column by column. */
typedef struct {
  FmComparison *comparison; /* holds as many items as are left, perhaps none */
  GPtrArray *photos;        /* FmPhotoInfo; as many of each item as it says */
  GPtrArray *thumbnails;    /* GdkTexture or NULL: the first photo of each item */
} FmCompareShown;

void fm_compare_shown_free (FmCompareShown *self);

/** @keys: as of fm_compare_key(); those that are gone are left out. A draft that is being edited is
 * taken as it is now. */
void fm_compare_load_async (FmSession *session,
                            const char *const *keys,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data);
/** (transfer full) */
FmCompareShown *fm_compare_load_finish (GAsyncResult *result, GError **error);

/** What the page showed last in this notebook. */
typedef struct {
  char *selection; /* (nullable) keys, a space between them */
  char *view; /* (nullable) "values" or "differences", the column of the reference, and "differing"
                 where rows that are the same are left out */
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

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCompareShown, fm_compare_shown_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCompareMemory, fm_compare_memory_free)

G_END_DECLS
