/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Notebooks with changed pages, opened without the look at every page, read and recovered. */
#include <glib/gstdio.h>
#include <unistd.h>

#include "fuzz.h"
#include "store/fm-experiments.h"
#include "store/fm-notebook-recover.h"

static void
read_versions (FmNotebook *notebook, gint64 blend_id)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend_id, NULL);

  for (guint i = 0; versions != NULL && i < versions->len; i++) {
    const FmVersionInfo *info = versions->pdata[i];
    g_autoptr (GError) error = NULL;
    g_autoptr (FmFormula) formula = fm_versions_load (notebook, info->id, &error);

    fuzz_check_error (formula != NULL, error);
  }
}

static void
read_all (FmNotebook *notebook)
{
  const FmExperimentFilter all = { 0 };
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, &all, NULL, NULL);

  for (guint i = 0; blends != NULL && i < blends->len; i++)
    read_versions (notebook, ((const FmBlendInfo *)blends->pdata[i])->id);
  for (guint i = 0; experiments != NULL && i < experiments->len; i++) {
    const FmExperimentInfo *info = experiments->pdata[i];
    g_autoptr (GError) error = NULL;
    g_autoptr (FmExperiment) experiment = fm_experiments_load (notebook, info->id, &error);

    fuzz_check_error (experiment != NULL, error);
  }
}

static void
recover (const char *path)
{
  g_autofree char *new_path = fm_notebook_recover_path (path);
  g_autofree char *report = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) made = fm_notebook_recover (path, new_path, &report, NULL, &error);

  fuzz_check_error (made != NULL, error);
  g_clear_pointer (&made, fm_notebook_unref);
  g_unlink (new_path);
}

int
LLVMFuzzerTestOneInput (const guint8 *bytes, gsize size)
{
  g_autofree char *path =
      g_strdup_printf ("%s/fuzz-%d.forcemeat", g_get_tmp_dir (), (int)getpid ());
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = NULL;

  g_file_set_contents (path, (const char *)bytes, (gssize)size, NULL);
  notebook = fm_notebook_open_damaged (path, NULL, &error);
  fuzz_check_error (notebook != NULL, error);
  if (notebook != NULL)
    read_all (notebook);
  g_clear_pointer (&notebook, fm_notebook_unref);
  recover (path);
  g_unlink (path);
  return 0;
}
