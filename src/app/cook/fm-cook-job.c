/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-job.c - what the estimate of a cook asks of the notebook and the heat model, in threads
 */
#include "app/cook/fm-cook-job.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-cancel-stop.h"
#include "core/base/fm-number.h"

typedef struct {
  FmExperiment *experiment;
  FmHeatSetup setup;
  FmHeatFit fit;
  char *not_remembered;
} Job;

static void
job_free (Job *job)
{
  g_clear_pointer (&job->experiment, fm_experiment_free);
  fm_heat_setup_clear (&job->setup);
  g_free (job->not_remembered);
  g_free (job);
}

void
fm_cook_start_free (FmCookStart *self)
{
  if (self == NULL)
    return;
  fm_heat_setup_clear (&self->setup);
  g_free (self->mix_text);
  g_free (self);
}

/* One key for each surface, whatever the case of its name. */
static char *
contact_key (const FmExperiment *experiment)
{
  g_autofree char *name = g_strdup (experiment->surface != NULL ? experiment->surface : "");
  g_autofree char *folded = g_utf8_casefold (g_strstrip (name), -1);

  return g_strconcat ("contact-w-m2k/", folded, NULL);
}

static void
recall_contact (FmCookStart *self, FmNotebook *notebook, const FmExperiment *experiment)
{
  g_autofree char *key = contact_key (experiment);
  g_autofree char *text = fm_notebook_get_setting (notebook, key);
  const double contact_w_m2k = text != NULL ? g_ascii_strtod (text, NULL) : NAN;

  if (!(contact_w_m2k >= FM_HEAT_CONTACT_MIN_W_M2K && contact_w_m2k <= FM_HEAT_CONTACT_MAX_W_M2K))
    return;
  self->setup.contact_w_m2k = contact_w_m2k;
  self->contact_remembered = TRUE;
}

static gboolean
remember_contact (FmNotebook *notebook, const Job *job, GError **error)
{
  g_autofree char *key = contact_key (job->experiment);
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (text, sizeof text, "%.4g", job->fit.contact_w_m2k);
  return fm_notebook_set_setting (notebook, key, text, error);
}

/* The whole analysis when it is known, else the fat alone, else nothing. */
static void
find_mix (FmCookStart *self, const FmAnalysis *analysis, double version_fat_pct)
{
  const double fat_pct = isnan (analysis->fat_pct) ? version_fat_pct : analysis->fat_pct;
  g_autoptr (GError) error = NULL;
  g_autofree char *fat = fm_number_format_unit (fat_pct, 1, "%");

  if (fm_thermal_mix_from_analysis (analysis, &self->setup.mix, NULL))
    self->mix_text = g_strdup (_ ("Composition: from the version's analysis."));
  else if (!isnan (fat_pct) && fm_thermal_mix_from_fat (fat_pct, &self->setup.mix, &error))
    self->mix_text =
        /* Translators: fat with its percent sign */
        g_strdup_printf (_ ("Composition: only the fat, %s, is known; the rest is taken as lean "
                            "beef (round figures, no source)."),
                         fat);
  else
    self->mix_text = g_strdup (_ ("The version's composition is not known. Give its ingredients "
                                  "an analysis to estimate the cook."));
}

static gpointer
find_start (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const FmExperiment *experiment = data;
  g_autoptr (FmFormula) formula = fm_versions_load (notebook, experiment->version_id, error);
  g_autoptr (FmVersionInfo) version = NULL;
  g_autoptr (FmAnalysis) analysis = NULL;
  FmCookStart *start;

  if (formula != NULL)
    version = fm_versions_info (notebook, experiment->version_id, error);
  if (version == NULL)
    return NULL;
  start = g_new0 (FmCookStart, 1);
  fm_heat_setup_init (&start->setup);
  start->setup.mass_g = experiment->patty_target_g;
  fm_heat_setup_from_experiment (&start->setup, experiment);
  analysis = fm_analysis_new (formula);
  find_mix (start, analysis, version->fat_pct);
  recall_contact (start, notebook, experiment);
  return start;
}

void
fm_cook_job_start_async (FmNotebook *notebook,
                         const FmExperiment *experiment,
                         GCancellable *cancellable,
                         GAsyncReadyCallback callback,
                         gpointer data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = find_start,
      .free_result = (GDestroyNotify)fm_cook_start_free,
      .data = fm_experiment_copy (experiment),
      .free_data = (GDestroyNotify)fm_experiment_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
}

FmCookStart *
fm_cook_job_start_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

static gpointer
predict (FmNotebook *none, gpointer data, GCancellable *cancellable, GError **error)
{
  const Job *job = data;

  return fm_heat_predict (&job->setup, error);
}

void
fm_cook_job_predict_async (const FmHeatSetup *setup,
                           GCancellable *cancellable,
                           GAsyncReadyCallback callback,
                           gpointer data)
{
  Job *job = g_new0 (Job, 1);

  fm_heat_setup_copy (setup, &job->setup);
  fm_store_task (&(FmStoreTask){
      .run = predict,
      .free_result = (GDestroyNotify)fm_heat_result_free,
      .data = job,
      .free_data = (GDestroyNotify)job_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
}

FmHeatResult *
fm_cook_job_predict_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

/* A fit that nobody waits for any more must not change the next estimate. */
static gpointer
fit (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Job *job = data;
  const FmStop stop = fm_cancel_stop (cancellable);
  g_autoptr (GError) store_error = NULL;

  if (!fm_heat_fit_contact (&job->setup, job->experiment->core_readings, &stop, &job->fit, error) ||
      g_cancellable_is_cancelled (cancellable))
    return NULL;
  if (!job->fit.at_bound && !remember_contact (notebook, job, &store_error))
    job->not_remembered = g_strdup (store_error->message);
  return job;
}

void
fm_cook_job_fit_async (FmNotebook *notebook,
                       const FmExperiment *experiment,
                       const FmHeatSetup *setup,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       gpointer data)
{
  Job *job = g_new0 (Job, 1);

  job->experiment = fm_experiment_copy (experiment);
  fm_heat_setup_copy (setup, &job->setup);
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = fit,
      .data = job,
      .free_data = (GDestroyNotify)job_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = data,
  });
}

gboolean
fm_cook_job_fit_finish (GAsyncResult *result, FmHeatFit *fit, char **not_remembered, GError **error)
{
  Job *job = fm_store_task_finish (result, error);

  if (job == NULL)
    return FALSE;
  *fit = job->fit;
  *not_remembered = g_steal_pointer (&job->not_remembered);
  return TRUE;
}
