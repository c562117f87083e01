/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-food.c - what a cooked version is made of, in a thread */
#include "app/cook/fm-cook-food.h"

#include "app/session/fm-store-task.h"
#include "core/formula/fm-analysis.h"

static gpointer
load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const gint64 *version_id = data;
  g_autoptr (FmFormula) formula = fm_versions_load (notebook, *version_id, error);
  g_autoptr (FmAnalysis) analysis = NULL;
  FmCookFood *food;

  if (formula == NULL)
    return NULL;
  analysis = fm_analysis_new (formula);
  food = g_new0 (FmCookFood, 1);
  food->species = fm_formula_species (formula);
  food->fat_pct = analysis->fat_pct;
  return food;
}

void
fm_cook_food_async (FmNotebook *notebook,
                    gint64 version_id,
                    GCancellable *cancellable,
                    GAsyncReadyCallback callback,
                    gpointer data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = load,
      .free_result = g_free,
      .data = g_memdup2 (&version_id, sizeof version_id),
      .free_data = g_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
}

gboolean
fm_cook_food_finish (GAsyncResult *result, FmCookFood *food, GError **error)
{
  g_autofree FmCookFood *read = fm_store_task_finish (result, error);

  if (read == NULL)
    return FALSE;
  *food = *read;
  return TRUE;
}
