/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-query.c - what the log asks of the notebook, in threads */
#include "app/experiments/fm-experiment-query.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-clock.h"
#include "core/base/fm-number.h"
#include "core/experiment/fm-experiment-repeat.h"

gpointer
fm_experiment_query_copy_filter (gconstpointer data)
{
  FmExperimentFilter *filter = g_memdup2 (data, sizeof *filter);

  filter->text = g_strdup (filter->text);
  return filter;
}

static void
free_filter (gpointer data)
{
  FmExperimentFilter *filter = data;

  g_free ((char *)filter->text);
  g_free (filter);
}

static gboolean
is_same_filter (gconstpointer a, gconstpointer b)
{
  const FmExperimentFilter *first = a;
  const FmExperimentFilter *second = b;

  return first->blend_id == second->blend_id && first->version_id == second->version_id &&
         g_strcmp0 (first->text, second->text) == 0 && first->from == second->from &&
         first->to == second->to && first->min_rating == second->min_rating &&
         first->with_photos == second->with_photos && first->sort == second->sort &&
         first->descending == second->descending;
}

static GPtrArray *
read_rows (FmNotebook *notebook,
           gconstpointer query,
           gint64 only_id,
           GCancellable *cancellable,
           GError **error)
{
  FmExperimentFilter filter = *(const FmExperimentFilter *)query;

  filter.only_id = only_id;
  return fm_experiments_list (notebook, &filter, cancellable, error);
}

static int
compare_rows (gconstpointer a, gconstpointer b, gconstpointer query)
{
  return fm_experiments_compare (a, b, query);
}

const FmLogKind fm_experiment_log_kind = {
  .read = read_rows,
  .compare = compare_rows,
  .is_same_query = is_same_filter,
  .copy_query = fm_experiment_query_copy_filter,
  .free_query = free_filter,
};

void
fm_experiment_record_free (gpointer data)
{
  FmExperimentRecord *record = data;

  g_clear_pointer (&record->experiment, fm_experiment_free);
  g_free (record->origin);
  g_free (record->made_of);
  g_clear_pointer (&record->formula, fm_formula_free);
  g_clear_pointer (&record->process, fm_process_free);
  g_free (record);
}

static char *
find_blend_name (FmNotebook *notebook, gint64 blend_id)
{
  g_autoptr (FmBlendInfo) blend = fm_blends_info (notebook, blend_id, NULL);

  return g_strdup (blend != NULL ? blend->name : "");
}

static void
tell_origin (FmNotebook *notebook, FmExperimentRecord *record)
{
  g_autoptr (FmVersionInfo) version = fm_versions_info (notebook, record->version_id, NULL);
  g_autofree char *blend = NULL;
  g_autofree char *fat = NULL;

  if (version == NULL) {
    record->origin = g_strdup (_ ("The version cannot be read."));
    return;
  }
  blend = find_blend_name (notebook, version->blend_id);
  record->blend_id = version->blend_id;
  /* Translators: name of a blend, number of its version. */
  record->made_of = g_strdup_printf (_ ("%s, version %d"), blend, version->number);
  if (isnan (version->fat_pct)) {
    record->origin =
        g_strdup_printf (_ ("Made from %s, version %d, fat not known"), blend, version->number);
    return;
  }
  fat = fm_number_format_unit (version->fat_pct, 1, "%");
  record->origin =
      /* Translators: blend name, version number, fat with its percent sign */
      g_strdup_printf (_ ("Made from %s, version %d, %s fat"), blend, version->number, fat);
}

/* The log was weighed under the dataset's own names; it shows those of the formula. */
static void
name_weighings (FmExperiment *experiment, const FmFormula *formula)
{
  for (guint i = 0; i < experiment->weighings->len; i++) {
    FmWeighing *weighing = &g_array_index (experiment->weighings, FmWeighing, i);

    for (guint j = 0; j < fm_formula_n_lines (formula); j++) {
      const FmFormulaLine *line = fm_formula_line (formula, j);

      if (g_strcmp0 (line->id, weighing->line_id) != 0)
        continue;
      g_free (weighing->name);
      weighing->name = g_strdup (line->ingredient->name);
    }
  }
}

/* Without its version an experiment can still be read. */
static void
read_formula (FmNotebook *notebook, FmExperimentRecord *record)
{
  record->formula = fm_versions_load (notebook, record->version_id, NULL);
  if (record->formula == NULL)
    return;
  record->process = fm_process_copy (record->formula->process);
  name_weighings (record->experiment, record->formula);
}

gpointer
fm_experiment_query_load (FmNotebook *notebook,
                          gpointer data,
                          GCancellable *cancellable,
                          GError **error)
{
  const gint64 *id = data;
  FmExperiment *experiment = fm_experiments_load (notebook, *id, error);
  FmExperimentRecord *record;

  if (experiment == NULL)
    return NULL;
  record = g_new0 (FmExperimentRecord, 1);
  record->experiment = experiment;
  record->version_id = experiment->version_id;
  tell_origin (notebook, record);
  read_formula (notebook, record);
  return record;
}

static char *
next_title (const FmVersionInfo *version)
{
  return g_strdup_printf (_ ("Trial %u"), version->n_experiments + 1);
}

static FmExperiment *
plan_experiment (FmNotebook *notebook, gint64 version_id, GError **error)
{
  g_autoptr (FmFormula) formula = fm_versions_load (notebook, version_id, error);
  g_autoptr (FmVersionInfo) version = NULL;
  FmExperiment *experiment;

  if (formula == NULL)
    return NULL;
  version = fm_versions_info (notebook, version_id, error);
  if (version == NULL)
    return NULL;
  experiment = fm_experiment_new ();
  experiment->version_id = version_id;
  experiment->title = next_title (version);
  experiment->made_at = fm_clock_now_s ();
  fm_experiment_plan (experiment, formula);
  return experiment;
}

static FmExperiment *
make_again (FmNotebook *notebook, gint64 id, GError **error)
{
  g_autoptr (FmExperiment) before = fm_experiments_load (notebook, id, error);
  g_autoptr (FmVersionInfo) version = NULL;
  g_autofree char *title = NULL;

  if (before == NULL)
    return NULL;
  version = fm_versions_info (notebook, before->version_id, error);
  if (version == NULL)
    return NULL;
  title = next_title (version);
  return fm_experiment_make_again (before, fm_clock_now_s (), title);
}

gpointer
fm_experiment_query_create (FmNotebook *notebook,
                            gpointer data,
                            GCancellable *cancellable,
                            GError **error)
{
  const FmExperimentOrder *order = data;
  g_autoptr (FmExperiment) experiment = NULL;

  experiment = order->again_id != 0 ? make_again (notebook, order->again_id, error)
                                    : plan_experiment (notebook, order->version_id, error);
  if (experiment == NULL || !fm_experiments_save (notebook, experiment, error))
    return NULL;
  return g_memdup2 (&experiment->id, sizeof experiment->id);
}

/* Of rows by date, the latest first. */
static gint64
find_other (const GPtrArray *rows, gint64 id)
{
  for (guint i = 0; i < rows->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (rows, i);

    if (info->id != id)
      return info->id;
  }
  return 0;
}

gpointer
fm_experiment_query_last (FmNotebook *notebook,
                          gpointer data,
                          GCancellable *cancellable,
                          GError **error)
{
  const FmExperiment *experiment = data;
  g_autoptr (FmVersionInfo) version = fm_versions_info (notebook, experiment->version_id, error);
  FmExperimentFilter filter = { .descending = TRUE };
  g_autoptr (GPtrArray) rows = NULL;
  gint64 id;

  if (version == NULL)
    return NULL;
  filter.blend_id = version->blend_id;
  rows = fm_experiments_list (notebook, &filter, cancellable, error);
  if (rows == NULL)
    return NULL;
  id = find_other (rows, experiment->id);
  if (id != 0)
    return fm_experiments_load (notebook, id, error);
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This is the first experiment of its blend: there is no other one to "
                          "take settings from."));
  return NULL;
}
