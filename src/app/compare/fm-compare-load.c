/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-load.c - reads what can be compared and what is compared, off the main thread */
#include "app/compare/fm-compare-load.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/compare/fm-compare-choice.h"
#include "app/session/fm-store-task.h"
#include "core/tasting/fm-tasting-story.h"
#include "store/fm-tastings.h"

static char *
format_date (gint64 unix_seconds)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_local (unix_seconds);

  return time != NULL ? g_date_time_format (time, "%x") : g_strdup ("");
}

static char *
version_title (const char *blend_name, int number)
{
  return g_strdup_printf (_ ("%s, version %d"), blend_name, number);
}

static char *
version_subtitle (const FmVersionInfo *info)
{
  g_autofree char *date = format_date (info->saved_at);
  g_autofree char *point = fm_lean_point_format (info->fat_pct);

  return g_strjoin (" · ", point, date, info->reason, NULL);
}

static FmCompareChoice *
version_choice (const char *blend_name, const FmVersionInfo *info)
{
  g_autofree char *title = version_title (blend_name, info->number);
  g_autofree char *subtitle = version_subtitle (info);

  return fm_compare_choice_new (FM_COMPARE_VERSION, info->id, title, subtitle);
}

static char *
experiment_title (const char *blend_name, int number, const char *title, gint64 made_at)
{
  g_autofree char *date = format_date (made_at);

  if (title != NULL && title[0] != '\0')
    return g_strdup_printf (_ ("%s (%s, version %d)"), title, blend_name, number);
  return g_strdup_printf (_ ("Experiment of %s (%s, version %d)"), date, blend_name, number);
}

static gpointer
load_experiments (FmNotebook *notebook, gpointer none, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) choices = g_ptr_array_new_with_free_func (g_object_unref);
  FmExperimentFilter filter = { .sort = FM_EXPERIMENT_SORT_DATE, .descending = TRUE };
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, &filter, cancellable, error);

  if (experiments == NULL)
    return NULL;
  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (experiments, i);
    g_autofree char *title =
        experiment_title (info->blend_name, info->version_number, info->title, info->made_at);
    g_autofree char *date = format_date (info->made_at);
    g_autofree char *subtitle = g_strdup_printf (_ ("Experiment · %s"), date);

    g_ptr_array_add (choices,
                     fm_compare_choice_new (FM_COMPARE_EXPERIMENT, info->id, title, subtitle));
  }
  return g_steal_pointer (&choices);
}

static char *
find_blend_name (GPtrArray *blends, gint64 blend_id)
{
  for (guint i = 0; i < blends->len; i++) {
    const FmBlendInfo *info = g_ptr_array_index (blends, i);

    if (info->id == blend_id)
      return g_strdup (info->name);
  }
  return g_strdup ("");
}

/* Mean over the experiments of a version that recorded a loss; NaN when none did. */
static double
mean_cook_loss_pct (FmNotebook *notebook, gint64 version_id, GCancellable *cancellable)
{
  FmExperimentFilter filter = { .version_id = version_id };
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, &filter, cancellable, NULL);
  double sum = 0.0;
  guint n = 0;

  for (guint i = 0; experiments != NULL && i < experiments->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (experiments, i);

    if (isnan (info->cook_loss_pct))
      continue;
    sum += info->cook_loss_pct;
    n++;
  }
  return n > 0 ? sum / n : NAN;
}

static FmCompareItem *
load_version (
    FmNotebook *notebook, GPtrArray *blends, gint64 id, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmVersionInfo) info = fm_versions_info (notebook, id, error);
  g_autofree char *blend_name = NULL;
  g_autofree char *title = NULL;
  g_autofree char *short_title = NULL;
  g_autofree char *subtitle = NULL;
  FmFormula *formula;

  if (info == NULL)
    return NULL;
  formula = fm_versions_load (notebook, id, error);
  if (formula == NULL)
    return NULL;
  blend_name = find_blend_name (blends, info->blend_id);
  title = version_title (blend_name, info->number);
  short_title = g_strdup_printf (_ ("version %d"), info->number);
  subtitle = version_subtitle (info);
  return fm_compare_item_new_version (
      id, title, short_title, subtitle, formula, info->n_experiments,
      mean_cook_loss_pct (notebook, id, cancellable), info->mean_rating);
}

static char *
experiment_subtitle (const FmExperiment *experiment, const FmFormula *formula)
{
  g_autofree char *date = format_date (experiment->made_at);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *point = fm_lean_point_format (analysis->fat_pct);

  return g_strdup_printf (_ ("planned %s · %s"), point, date);
}

static FmCompareItem *
load_experiment (FmNotebook *notebook, GPtrArray *blends, gint64 id, GError **error)
{
  g_autoptr (FmExperiment) experiment = fm_experiments_load (notebook, id, error);
  g_autoptr (FmVersionInfo) info = NULL;
  g_autoptr (FmFormula) formula = NULL;
  g_autofree char *blend_name = NULL;
  g_autofree char *title = NULL;
  g_autofree char *short_title = NULL;
  g_autofree char *subtitle = NULL;

  if (experiment == NULL)
    return NULL;
  info = fm_versions_info (notebook, experiment->version_id, error);
  formula = info != NULL ? fm_versions_load (notebook, info->id, error) : NULL;
  if (formula == NULL)
    return NULL;
  blend_name = find_blend_name (blends, info->blend_id);
  title = experiment_title (blend_name, info->number, experiment->title, experiment->made_at);
  short_title = format_date (experiment->made_at);
  subtitle = experiment_subtitle (experiment, formula);
  return fm_compare_item_new_experiment (title, short_title, subtitle, g_steal_pointer (&formula),
                                         g_steal_pointer (&experiment));
}

/* What the opened tastings of a version or an experiment found of it. */
static FmCompareItem *
with_liking (FmNotebook *notebook, FmCompareItem *item, GError **error)
{
  g_autoptr (FmCompareItem) owned = item;
  g_autoptr (GPtrArray) outcomes = NULL;
  guint n_tasters = 0;
  double liking;

  if (item == NULL)
    return NULL;
  outcomes = fm_tastings_outcomes (notebook, 0, item->kind == FM_COMPARE_VERSION ? item->id : 0,
                                   item->kind == FM_COMPARE_EXPERIMENT ? item->id : 0, error);
  if (outcomes == NULL)
    return NULL;
  liking = fm_tasting_story_liking (outcomes, &n_tasters);
  fm_compare_item_set_liking (item, liking, n_tasters);
  return g_steal_pointer (&owned);
}

/* NULL without an error when it was removed meanwhile. */
static FmCompareItem *
load_item (FmNotebook *notebook,
           GPtrArray *blends,
           const char *key,
           GCancellable *cancellable,
           GError **error)
{
  GError *failure = NULL;
  FmCompareItem *item;
  FmCompareKind kind;
  gint64 id;

  if (!fm_compare_key_parse (key, &kind, &id))
    return NULL;
  item = kind == FM_COMPARE_VERSION ? load_version (notebook, blends, id, cancellable, &failure)
                                    : load_experiment (notebook, blends, id, &failure);
  item = with_liking (notebook, item, &failure);
  if (g_error_matches (failure, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND))
    g_clear_error (&failure);
  if (failure != NULL)
    g_propagate_error (error, failure);
  return item;
}

static gpointer
load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const GStrv keys = data;
  g_autoptr (GPtrArray) items =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  GError *failure = NULL;
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, &failure);

  for (guint i = 0; failure == NULL && keys[i] != NULL; i++) {
    FmCompareItem *item = load_item (notebook, blends, keys[i], cancellable, &failure);

    if (item != NULL && items->len < FM_COMPARE_MAX_ITEMS)
      g_ptr_array_add (items, item);
    else
      fm_compare_item_free (item);
  }
  if (failure == NULL)
    return fm_comparison_new (g_steal_pointer (&items));
  g_propagate_error (error, failure);
  return NULL;
}

static gpointer
load_memory (FmNotebook *notebook, gpointer none, GCancellable *cancellable, GError **error)
{
  FmCompareMemory *memory = g_new0 (FmCompareMemory, 1);

  memory->selection = fm_notebook_get_setting (notebook, FM_COMPARE_SELECTION_SETTING);
  memory->view = fm_notebook_get_setting (notebook, FM_COMPARE_VIEW_SETTING);
  return memory;
}

void
fm_compare_memory_free (FmCompareMemory *self)
{
  g_free (self->selection);
  g_free (self->view);
  g_free (self);
}

/* The newest of each blend first. */
GPtrArray *
fm_compare_choices_of_versions (FmVersionList *list)
{
  GPtrArray *choices = g_ptr_array_new_with_free_func (g_object_unref);
  GListModel *blends = fm_version_list_get_blends (list);

  for (guint i = 0; i < g_list_model_get_n_items (blends); i++) {
    g_autoptr (FmVersionTreeItem) blend = g_list_model_get_item (blends, i);
    const gint64 blend_id = fm_version_tree_item_get_blend_id (blend);
    const GPtrArray *versions = fm_version_list_get_versions (list, blend_id);

    for (guint j = versions != NULL ? versions->len : 0; j > 0; j--)
      g_ptr_array_add (choices, version_choice (fm_version_tree_item_get_title (blend),
                                                g_ptr_array_index (versions, j - 1)));
  }
  return choices;
}

void
fm_compare_load_experiments_async (FmNotebook *notebook,
                                   GCancellable *cancellable,
                                   GAsyncReadyCallback callback,
                                   gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = load_experiments,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

GPtrArray *
fm_compare_load_experiments_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

void
fm_compare_load_async (FmNotebook *notebook,
                       const char *const *keys,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = load,
      .free_result = (GDestroyNotify)fm_comparison_free,
      .data = g_strdupv ((char **)keys),
      .free_data = (GDestroyNotify)g_strfreev,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

FmComparison *
fm_compare_load_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

void
fm_compare_load_memory_async (FmNotebook *notebook,
                              GCancellable *cancellable,
                              GAsyncReadyCallback callback,
                              gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = load_memory,
      .free_result = (GDestroyNotify)fm_compare_memory_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

FmCompareMemory *
fm_compare_load_memory_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}
