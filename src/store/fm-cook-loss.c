/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-loss.c - measured cook loss of the notebook's experiments by fat level */
#include "store/fm-cook-loss.h"

#include <math.h>

#include "core/cooking/fm-cooking.h"
#include "store/fm-versions.h"

typedef struct {
  FmNotebook *notebook;
  FmCookMethod method;
  FmSpeciesSet species;
} Query;

static FmCookLoss *
find_level (GArray *losses, double fat_pct)
{
  const FmCookLoss fresh = { .min_pct = INFINITY, .max_pct = -INFINITY };

  for (guint i = 0; i < losses->len; i++) {
    FmCookLoss *loss = &g_array_index (losses, FmCookLoss, i);

    if (lround (loss->fat_pct / loss->n) == lround (fat_pct))
      return loss;
  }
  g_array_append_val (losses, fresh);
  return &g_array_index (losses, FmCookLoss, losses->len - 1);
}

/* Sums up; divide() makes means of the sums. */
static void
add_loss (GArray *losses, const FmExperimentInfo *info)
{
  FmCookLoss *loss = find_level (losses, info->fat_pct);

  loss->n++;
  loss->fat_pct += info->fat_pct;
  loss->measured_pct += info->cook_loss_pct;
  loss->min_pct = fmin (loss->min_pct, info->cook_loss_pct);
  loss->max_pct = fmax (loss->max_pct, info->cook_loss_pct);
}

static int
compare_fat (gconstpointer a, gconstpointer b)
{
  const double fat_a = ((const FmCookLoss *)a)->fat_pct;
  const double fat_b = ((const FmCookLoss *)b)->fat_pct;

  return (fat_a > fat_b) - (fat_a < fat_b);
}

static void
divide (GArray *losses, const Query *query)
{
  for (guint i = 0; i < losses->len; i++) {
    FmCookLoss *loss = &g_array_index (losses, FmCookLoss, i);

    loss->fat_pct /= loss->n;
    loss->measured_pct /= loss->n;
    const FmCookFood food = { query->species, loss->fat_pct };
    loss->predicted_pct = 100.0 - fm_cook_yield_pct (query->method, &food);
  }
  g_array_sort (losses, compare_fat);
}

static gboolean
read_species (FmNotebook *notebook, gint64 version_id, FmSpeciesSet *species, GError **error)
{
  g_autoptr (FmFormula) formula = fm_versions_load (notebook, version_id, error);

  if (formula == NULL)
    return FALSE;
  *species = fm_formula_species (formula) & ~FM_SPECIES_BIT (FM_SPECIES_NONE);
  return TRUE;
}

/* Cooked alike, and of the same animals. */
static gboolean
is_alike (const Query *query, const FmExperimentInfo *info)
{
  g_autoptr (FmExperiment) experiment = NULL;
  FmSpeciesSet species;

  if (isnan (info->fat_pct) || isnan (info->cook_loss_pct))
    return FALSE;
  experiment = fm_experiments_load (query->notebook, info->id, NULL);
  return experiment != NULL && experiment->method == query->method &&
         read_species (query->notebook, experiment->version_id, &species, NULL) &&
         species == query->species;
}

GArray *
fm_cook_losses_of (FmNotebook *self,
                   FmCookMethod method,
                   gint64 version_id,
                   GCancellable *cancellable,
                   GError **error)
{
  const FmExperimentFilter filter = { .sort = FM_EXPERIMENT_SORT_DATE, .descending = TRUE };
  Query query = { .notebook = self, .method = method };
  g_autoptr (GPtrArray) rows = fm_experiments_list (self, &filter, cancellable, error);
  g_autoptr (GArray) losses = g_array_new (FALSE, FALSE, sizeof (FmCookLoss));

  if (rows == NULL || !read_species (self, version_id, &query.species, error))
    return NULL;
  for (guint i = 0; i < rows->len && i < FM_COOK_LOSS_MOST; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (rows, i);

    if (g_cancellable_set_error_if_cancelled (cancellable, error))
      return NULL;
    if (is_alike (&query, info))
      add_loss (losses, info);
  }
  divide (losses, &query);
  return g_steal_pointer (&losses);
}
