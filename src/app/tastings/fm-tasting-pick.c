/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-pick.c - experiments chosen in the picker become samples of a plan */
#include "app/tastings/fm-tasting-pick.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#include "app/compare/fm-compare-choice.h"
#include "store/fm-experiments.h"

static void
sample_free (FmTastingSample *sample)
{
  g_free (sample->name);
  g_free (sample);
}

static const FmTastingSample *
get_sample (const GPtrArray *samples, guint index)
{
  return g_ptr_array_index (samples, index);
}

GStrv
fm_tasting_pick_keys (const FmTasting *tasting)
{
  g_autoptr (GStrvBuilder) keys = g_strv_builder_new ();

  for (guint i = 0; i < tasting->samples->len; i++) {
    const gint64 id = get_sample (tasting->samples, i)->experiment_id;

    if (id != 0) {
      g_autofree char *key = g_strdup_printf ("e%" G_GINT64_FORMAT, id);

      g_strv_builder_add (keys, key);
    }
  }
  return g_strv_builder_end (keys);
}

static char *
name_experiment (const FmExperimentInfo *info)
{
  if (info->title != NULL && info->title[0] != '\0')
    /* Translators: title of an experiment, number of its version */
    return g_strdup_printf (_ ("%s (version %d)"), info->title, info->version_number);
  return g_strdup_printf (_ ("%s, version %d"), info->blend_name, info->version_number);
}

static FmTastingSample *
sample_new (const FmExperimentInfo *info)
{
  FmTastingSample *sample = g_new0 (FmTastingSample, 1);

  sample->experiment_id = info->id;
  sample->version_id = info->version_id;
  sample->name = name_experiment (info);
  return sample;
}

static FmTastingSample *
load_sample (FmNotebook *notebook, const char *key)
{
  FmCompareKind kind;
  gint64 id;
  FmExperimentFilter filter = { .version_id = 0 };
  g_autoptr (FmExperiment) experiment = NULL;
  g_autoptr (GPtrArray) infos = NULL;

  if (!fm_compare_key_parse (key, &kind, &id) || kind != FM_COMPARE_EXPERIMENT)
    return NULL;
  experiment = fm_experiments_load (notebook, id, NULL);
  if (experiment == NULL)
    return NULL;
  filter.version_id = experiment->version_id;
  infos = fm_experiments_list (notebook, &filter, NULL, NULL);
  for (guint i = 0; infos != NULL && i < infos->len; i++)
    if (((const FmExperimentInfo *)g_ptr_array_index (infos, i))->id == id)
      return sample_new (g_ptr_array_index (infos, i));
  return NULL;
}

static gpointer
load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const GStrv keys = data;
  GPtrArray *samples = g_ptr_array_new_with_free_func ((GDestroyNotify)sample_free);

  for (guint i = 0; keys[i] != NULL; i++) {
    FmTastingSample *sample = load_sample (notebook, keys[i]);

    if (sample != NULL)
      g_ptr_array_add (samples, sample);
  }
  return samples;
}

void
fm_tasting_pick_load_async (FmNotebook *notebook,
                            const char *const *keys,
                            GAsyncReadyCallback callback,
                            gpointer data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = load,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .data = g_strdupv ((char **)keys),
      .free_data = (GDestroyNotify)g_strfreev,
      .done = callback,
      .user_data = data,
  });
}

GPtrArray *
fm_tasting_pick_load_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

static gboolean
has_experiment (const GPtrArray *samples, gint64 id)
{
  for (guint i = 0; i < samples->len; i++)
    if (get_sample (samples, i)->experiment_id == id)
      return TRUE;
  return FALSE;
}

static gboolean
has_name (const GPtrArray *samples, const char *name)
{
  for (guint i = 0; i < samples->len; i++)
    if (g_strcmp0 (get_sample (samples, i)->name, name) == 0)
      return TRUE;
  return FALSE;
}

static char *
make_different (const GPtrArray *samples, const char *name)
{
  char *different = g_strdup (name);

  for (guint n = 2; has_name (samples, different); n++) {
    g_free (different);
    /* Translators: name of a sample, and which of those with this name it is */
    different = g_strdup_printf (_ ("%s, no. %u"), name, n);
  }
  return different;
}

void
fm_tasting_pick_apply (FmTasting *tasting, const GPtrArray *picked)
{
  for (guint i = tasting->samples->len; i > 0; i--) {
    const gint64 id = get_sample (tasting->samples, i - 1)->experiment_id;

    if (id != 0 && !has_experiment (picked, id))
      fm_tasting_remove_sample (tasting, i - 1);
  }
  for (guint i = 0; i < picked->len && tasting->samples->len < FM_TASTING_MAX_SAMPLES; i++) {
    const FmTastingSample *sample = get_sample (picked, i);
    g_autofree char *name = NULL;

    if (has_experiment (tasting->samples, sample->experiment_id))
      continue;
    name = make_different (tasting->samples, sample->name);
    fm_tasting_add_sample (tasting, sample->experiment_id, sample->version_id, name);
  }
}
