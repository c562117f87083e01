/* fm-cook-loss-load.h - measured cook loss of the notebook's experiments by fat level, in a thread
 */
#pragma once

#include <gio/gio.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

/* So many of the latest experiments are looked at. */
#define FM_COOK_LOSS_MOST 300

/** Experiments whose fat rounds to the same whole percent. */
typedef struct {
  double fat_pct; /* mean */
  guint n;
  double measured_pct; /* mean cook loss, percent of the raw mass */
  double min_pct;
  double max_pct;
  double predicted_pct; /* 100 - fm_cook_yield_pct() at @fat_pct; NaN = not known */
} FmCookLoss;

/** Losses of experiments by the method of @experiment and of the same animals as its version.
 * @cancellable: (nullable) */
void fm_cook_loss_load_async (FmNotebook *notebook,
                              const FmExperiment *experiment,
                              GCancellable *cancellable,
                              GAsyncReadyCallback callback,
                              gpointer data);
/** FmCookLoss by rising fat. Returns: (transfer full). */
GArray *fm_cook_loss_load_finish (GAsyncResult *result, GError **error);

G_END_DECLS
