/* fm-compare-load.c - reads what can be compared and what is compared, off the main thread */
#include "app/compare/fm-compare-load.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/compare/fm-compare-choice.h"
#include "core/tasting/fm-tasting-story.h"
#include "store/fm-tastings.h"

typedef struct {
  FmNotebook *notebook;
  GStrv keys;
} Job;

static Job *
job_new (FmNotebook *notebook, const char *const *keys)
{
  Job *job = g_new0 (Job, 1);

  job->notebook = fm_notebook_ref (notebook);
  job->keys = g_strdupv ((char **)keys);
  return job;
}

static void
job_free (gpointer data)
{
  Job *job = data;

  fm_notebook_unref (job->notebook);
  g_strfreev (job->keys);
  g_free (job);
}

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

static char *
experiment_title (const char *blend_name, int number, const char *title, gint64 made_at)
{
  g_autofree char *date = format_date (made_at);

  if (title != NULL && title[0] != '\0')
    return g_strdup_printf (_ ("%s (%s, version %d)"), title, blend_name, number);
  return g_strdup_printf (_ ("Experiment of %s (%s, version %d)"), date, blend_name, number);
}

static gboolean
add_versions (GPtrArray *choices, FmNotebook *notebook, const FmBlendInfo *blend, GError **error)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend->id, error);

  if (versions == NULL)
    return FALSE;
  for (guint i = versions->len; i > 0; i--) {
    const FmVersionInfo *info = g_ptr_array_index (versions, i - 1);
    g_autofree char *title = version_title (blend->name, info->number);
    g_autofree char *subtitle = version_subtitle (info);

    g_ptr_array_add (choices,
                     fm_compare_choice_new (FM_COMPARE_VERSION, info->id, title, subtitle));
  }
  return TRUE;
}

static gboolean
add_experiments (GPtrArray *choices,
                 FmNotebook *notebook,
                 GCancellable *cancellable,
                 GError **error)
{
  FmExperimentFilter filter = { .sort = FM_EXPERIMENT_SORT_DATE, .descending = TRUE };
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, &filter, cancellable, error);

  if (experiments == NULL)
    return FALSE;
  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (experiments, i);
    g_autofree char *title =
        experiment_title (info->blend_name, info->version_number, info->title, info->made_at);
    g_autofree char *date = format_date (info->made_at);
    g_autofree char *subtitle = g_strdup_printf (_ ("Experiment · %s"), date);

    g_ptr_array_add (choices,
                     fm_compare_choice_new (FM_COMPARE_EXPERIMENT, info->id, title, subtitle));
  }
  return TRUE;
}

static void
load_choices_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) choices = g_ptr_array_new_with_free_func (g_object_unref);
  g_autoptr (GPtrArray) blends = fm_blends_list (job->notebook, &error);
  gboolean loaded = blends != NULL;

  for (guint i = 0; loaded && i < blends->len; i++)
    loaded = add_versions (choices, job->notebook, g_ptr_array_index (blends, i), &error);
  loaded = loaded && add_experiments (choices, job->notebook, cancellable, &error);
  if (loaded)
    g_task_return_pointer (task, g_steal_pointer (&choices), (GDestroyNotify)g_ptr_array_unref);
  else
    g_task_return_error (task, g_steal_pointer (&error));
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

static FmCompareItem *
load_item (Job *job, GPtrArray *blends, const char *key, GCancellable *cancellable, GError **error)
{
  FmCompareItem *item;
  FmCompareKind kind;
  gint64 id;

  if (!fm_compare_key_parse (key, &kind, &id)) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND, "no such item: %s", key);
    return NULL;
  }
  item = kind == FM_COMPARE_VERSION ? load_version (job->notebook, blends, id, cancellable, error)
                                    : load_experiment (job->notebook, blends, id, error);
  return with_liking (job->notebook, item, error);
}

static void
load_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  g_autoptr (GPtrArray) items =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) blends = fm_blends_list (job->notebook, &error);

  for (guint i = 0; blends != NULL && job->keys[i] != NULL; i++) {
    FmCompareItem *item = load_item (job, blends, job->keys[i], cancellable, &error);

    if (item != NULL && items->len < FM_COMPARE_MAX_ITEMS)
      g_ptr_array_add (items, item);
    else
      fm_compare_item_free (item);
    /* What was removed meanwhile is left out; anything else is a failure. */
    if (g_error_matches (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND))
      g_clear_error (&error);
    if (error != NULL)
      break;
  }
  if (error != NULL)
    g_task_return_error (task, g_steal_pointer (&error));
  else
    g_task_return_pointer (task, fm_comparison_new (g_steal_pointer (&items)),
                           (GDestroyNotify)fm_comparison_free);
}

static void
run (Job *job,
     GTaskThreadFunc func,
     gpointer tag,
     GCancellable *cancellable,
     GAsyncReadyCallback callback,
     gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_source_tag (task, tag);
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, func);
}

void
fm_compare_load_choices_async (FmNotebook *notebook,
                               GCancellable *cancellable,
                               GAsyncReadyCallback callback,
                               gpointer user_data)
{
  run (job_new (notebook, NULL), load_choices_thread, fm_compare_load_choices_async, cancellable,
       callback, user_data);
}

GPtrArray *
fm_compare_load_choices_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

void
fm_compare_load_async (FmNotebook *notebook,
                       const char *const *keys,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       gpointer user_data)
{
  run (job_new (notebook, keys), load_thread, fm_compare_load_async, cancellable, callback,
       user_data);
}

FmComparison *
fm_compare_load_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

static void
save_setting_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  Job *job = task_data;
  g_autoptr (GError) error = NULL;

  if (!fm_notebook_set_setting (job->notebook, job->keys[0], job->keys[1], &error))
    g_debug ("The selection of the compare page is not remembered: %s", error->message);
  g_task_return_boolean (task, TRUE);
}

void
fm_compare_save_setting (FmNotebook *notebook, const char *key, const char *value)
{
  const char *pair[] = { key, value, NULL };

  if (!fm_notebook_is_read_only (notebook))
    run (job_new (notebook, pair), save_setting_thread, fm_compare_save_setting, NULL, NULL, NULL);
}
