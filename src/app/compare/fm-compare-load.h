/* fm-compare-load.h - reads what can be compared and what is compared, off the main thread */
#pragma once

#include "core/compare/fm-comparison.h"
#include "store/fm-experiments.h"

G_BEGIN_DECLS

/** Every version and experiment of the notebook, newest first within a blend. */
void fm_compare_load_choices_async (FmNotebook *notebook,
                                    GCancellable *cancellable,
                                    GAsyncReadyCallback callback,
                                    gpointer user_data);
/** (transfer full) (element-type FmCompareChoice) */
GPtrArray *fm_compare_load_choices_finish (GAsyncResult *result, GError **error);

/** @keys: as of fm_compare_choice_get_key(); those that are gone are left out. */
void fm_compare_load_async (FmNotebook *notebook,
                            const char *const *keys,
                            GCancellable *cancellable,
                            GAsyncReadyCallback callback,
                            gpointer user_data);
/** (transfer full): holds as many items as are left, perhaps none. */
FmComparison *fm_compare_load_finish (GAsyncResult *result, GError **error);

/** Remembers the selection in the notebook; a failure is only logged, nothing depends on it. */
void fm_compare_save_setting (FmNotebook *notebook, const char *key, const char *value);

G_END_DECLS
