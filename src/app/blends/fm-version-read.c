/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-read.c - reads blends with their versions, all of them or what a change was about */
#include "app/blends/fm-version-read.h"

void
fm_version_blend_free (FmVersionBlend *blend)
{
  g_clear_pointer (&blend->info, fm_blend_info_free);
  g_clear_pointer (&blend->versions, g_ptr_array_unref);
  g_free (blend);
}

static int
number_at (GPtrArray *versions, guint position)
{
  const FmVersionInfo *info = g_ptr_array_index (versions, position);

  return info->number;
}

/* @info: (transfer full) */
static void
put_version (GPtrArray *versions, FmVersionInfo *info)
{
  guint position = versions->len;

  while (position > 0 && number_at (versions, position - 1) >= info->number)
    position--;
  if (position < versions->len && number_at (versions, position) == info->number)
    g_ptr_array_remove_index (versions, position);
  g_ptr_array_insert (versions, (int)position, info);
}

void
fm_version_blend_update (FmVersionBlend *self, FmVersionBlend *read)
{
  g_clear_pointer (&self->info, fm_blend_info_free);
  self->info = g_steal_pointer (&read->info);
  while (read->versions->len > 0)
    put_version (self->versions, g_ptr_array_steal_index (read->versions, 0));
}

static FmVersionBlend *
blend_new (gint64 id)
{
  FmVersionBlend *blend = g_new0 (FmVersionBlend, 1);

  blend->id = id;
  blend->versions = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_version_info_free);
  return blend;
}

void
fm_version_read_free (gpointer data)
{
  FmVersionRead *read = data;

  g_ptr_array_unref (read->blends);
  g_free (read);
}

static FmVersionRead *
read_new (void)
{
  FmVersionRead *read = g_new0 (FmVersionRead, 1);

  read->blends = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_version_blend_free);
  return read;
}

/* The blends in @read, which has none yet; their versions are still to be read. */
static void
take_infos (FmVersionRead *read, GPtrArray *infos)
{
  while (infos->len > 0) {
    FmBlendInfo *info = g_ptr_array_steal_index (infos, 0);
    FmVersionBlend *blend = blend_new (info->id);

    blend->info = info;
    g_ptr_array_add (read->blends, blend);
  }
}

static gboolean
read_all (FmVersionRead *read, FmNotebook *notebook, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) infos = fm_blends_list (notebook, error);

  if (infos == NULL)
    return FALSE;
  read->is_all = TRUE;
  take_infos (read, infos);
  for (guint i = 0; i < read->blends->len && !g_cancellable_is_cancelled (cancellable); i++) {
    FmVersionBlend *blend = g_ptr_array_index (read->blends, i);
    GPtrArray *versions = fm_versions_list (notebook, blend->id, error);

    if (versions == NULL)
      return FALSE;
    g_ptr_array_unref (blend->versions);
    blend->versions = versions;
  }
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}

static FmVersionBlend *
ensure_blend (FmVersionRead *read, gint64 blend_id)
{
  FmVersionBlend *blend;

  for (guint i = 0; i < read->blends->len; i++) {
    blend = g_ptr_array_index (read->blends, i);
    if (blend->id == blend_id)
      return blend;
  }
  blend = blend_new (blend_id);
  g_ptr_array_add (read->blends, blend);
  return blend;
}

/* @versions: (transfer full) (nullable) */
static gboolean
take_versions (FmVersionRead *read, GPtrArray *versions)
{
  if (versions == NULL)
    return FALSE;
  while (versions->len > 0) {
    FmVersionInfo *info = g_ptr_array_steal_index (versions, 0);

    put_version (ensure_blend (read, info->blend_id)->versions, info);
  }
  g_ptr_array_unref (versions);
  return TRUE;
}

static gboolean
read_version (FmVersionRead *read, FmNotebook *notebook, gint64 version_id, GError **error)
{
  FmVersionInfo *info = fm_versions_info (notebook, version_id, error);

  if (info == NULL)
    return FALSE;
  put_version (ensure_blend (read, info->blend_id)->versions, info);
  return TRUE;
}

static gboolean
read_changed (FmVersionRead *read, FmNotebook *notebook, const FmChange *change, GError **error)
{
  switch (change->kind) {
  case FM_CHANGE_BLEND:
  case FM_CHANGE_DRAFT:
    return ensure_blend (read, change->id) != NULL;
  case FM_CHANGE_VERSION:
    return read_version (read, notebook, change->id, error);
  case FM_CHANGE_EXPERIMENT:
    return take_versions (read, fm_versions_of_experiment (notebook, change->id, error));
  case FM_CHANGE_TASTING:
    return take_versions (read, fm_versions_of_tasting (notebook, change->id, error));
  case FM_CHANGE_NOTEBOOK:
  case FM_CHANGE_SHOWN:
  case FM_CHANGE_FORMULA:
  case FM_CHANGE_HISTORY:
  case FM_CHANGE_PHOTO:
  case FM_CHANGE_MAP:
  case FM_CHANGE_PLACE:
  case FM_CHANGE_MADE:
  case FM_CHANGE_SETTING:
    break;
  }
  g_return_val_if_reached (FALSE);
}

/* A blend that is gone stays without an info. */
static gboolean
read_infos (FmVersionRead *read, FmNotebook *notebook, GError **error)
{
  for (guint i = 0; i < read->blends->len; i++) {
    FmVersionBlend *blend = g_ptr_array_index (read->blends, i);
    g_autoptr (GError) failure = NULL;

    blend->info = fm_blends_info (notebook, blend->id, &failure);
    if (blend->info == NULL &&
        !g_error_matches (failure, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND)) {
      g_propagate_error (error, g_steal_pointer (&failure));
      return FALSE;
    }
  }
  return TRUE;
}

gpointer
fm_version_read_run (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const FmChange *change = data;
  FmVersionRead *read = read_new ();
  g_autoptr (GError) failure = NULL;
  gboolean done = change->id != 0 && read_changed (read, notebook, change, &failure) &&
                  read_infos (read, notebook, &failure);

  /* What was removed names no version any more, so that it may have been any. */
  if (change->id == 0 || g_error_matches (failure, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND)) {
    g_clear_error (&failure);
    done = read_all (read, notebook, cancellable, &failure);
  }
  if (done)
    return read;
  fm_version_read_free (read);
  g_propagate_error (error, g_steal_pointer (&failure));
  return NULL;
}
