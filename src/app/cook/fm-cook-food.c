/* fm-cook-food.c - what a cooked version is made of, in a thread */
#include "app/cook/fm-cook-food.h"

#include "core/formula/fm-analysis.h"

typedef struct {
  FmNotebook *notebook;
  gint64 version_id;
} Query;

static void
query_free (Query *query)
{
  fm_notebook_unref (query->notebook);
  g_free (query);
}

static void
load_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Query *query = data;
  GError *error = NULL;
  g_autoptr (FmFormula) formula = fm_versions_load (query->notebook, query->version_id, &error);
  g_autoptr (FmAnalysis) analysis = NULL;
  FmCookFood *food;

  if (formula == NULL) {
    g_task_return_error (task, error);
    return;
  }
  analysis = fm_analysis_new (formula);
  food = g_new0 (FmCookFood, 1);
  food->species = fm_formula_species (formula);
  food->fat_pct = analysis->fat_pct;
  g_task_return_pointer (task, food, g_free);
}

void
fm_cook_food_async (FmNotebook *notebook,
                    gint64 version_id,
                    GCancellable *cancellable,
                    GAsyncReadyCallback callback,
                    gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Query *query = g_new0 (Query, 1);

  query->notebook = fm_notebook_ref (notebook);
  query->version_id = version_id;
  g_task_set_source_tag (task, fm_cook_food_async);
  g_task_set_task_data (task, query, (GDestroyNotify)query_free);
  g_task_run_in_thread (task, load_thread);
}

gboolean
fm_cook_food_finish (GAsyncResult *result, FmCookFood *food, GError **error)
{
  g_autofree FmCookFood *read = g_task_propagate_pointer (G_TASK (result), error);

  if (read == NULL)
    return FALSE;
  *food = *read;
  return TRUE;
}
