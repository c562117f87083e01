/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-read.c - reads a blend, its draft or a version to be shown, off the main thread */
#include "app/session/fm-session-read.h"

static gint64
recall (FmNotebook *notebook, const char *key)
{
  g_autofree char *value = fm_notebook_get_setting (notebook, key);

  return value != NULL ? g_ascii_strtoll (value, NULL, 10) : 0;
}

/* The version counts only while it is there, and of the blend that was shown. */
static void
recall_shown (FmSessionWish *wish, FmNotebook *notebook)
{
  g_autoptr (FmVersionInfo) info = NULL;

  wish->blend_id = recall (notebook, "last-blend");
  wish->version_id = recall (notebook, "last-version");
  if (wish->version_id != 0)
    info = fm_versions_info (notebook, wish->version_id, NULL);
  if (info == NULL || info->blend_id != wish->blend_id)
    wish->version_id = 0;
}

static gboolean
read_version (FmSessionRead *self, FmNotebook *notebook, GError **error)
{
  self->version = fm_versions_info (notebook, self->wish.version_id, error);
  if (self->version != NULL)
    self->formula = fm_versions_load (notebook, self->wish.version_id, error);
  if (self->formula == NULL)
    return FALSE;
  self->wish.blend_id = self->version->blend_id;
  return TRUE;
}

static void
take_blend (FmSessionRead *self, const FmBlendInfo *info)
{
  self->wish.blend_id = info->id;
  self->blend_name = g_strdup (info->name);
}

/* A blend that is gone is none. */
static gboolean
find_blend (FmSessionRead *self, FmNotebook *notebook, GError **error)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, error);

  if (blends == NULL)
    return FALSE;
  for (guint i = 0; i < blends->len && self->blend_name == NULL; i++) {
    const FmBlendInfo *info = g_ptr_array_index (blends, i);

    if (info->id == self->wish.blend_id)
      take_blend (self, info);
  }
  if (self->blend_name != NULL)
    return TRUE;
  self->wish.blend_id = 0;
  if (self->wish.restores && blends->len > 0)
    take_blend (self, g_ptr_array_index (blends, 0));
  return TRUE;
}

gpointer
fm_session_read_run (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  FmSessionRead *self = data;

  if (self->wish.restores)
    recall_shown (&self->wish, notebook);
  if (self->wish.version_id != 0 && !read_version (self, notebook, error))
    return NULL;
  if (!find_blend (self, notebook, error))
    return NULL;
  if (self->wish.blend_id != 0 && self->wish.blend_id != self->known_id) {
    self->draft = fm_session_draft_read (notebook, self->wish.blend_id, error);
    if (self->draft == NULL)
      return NULL;
  }
  return self;
}

void
fm_session_read_free (FmSessionRead *self)
{
  g_free (self->blend_name);
  g_clear_pointer (&self->draft, fm_session_draft_content_free);
  g_clear_pointer (&self->version, fm_version_info_free);
  g_clear_pointer (&self->formula, fm_formula_free);
  g_free (self);
}
