/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-joined-job.c - looks for the blend that meets several goals at once, in a thread */
#include "app/map/fm-map-joined-job.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-cancel-stop.h"

static gboolean
fit_all (FmMapJoined *self, const FmStop *stop)
{
  for (guint i = 0; i < self->aims.n; i++) {
    g_autoptr (GError) error = NULL;

    self->fit[i] =
        fm_map_fit_judged (self->data[i], &self->region, self->aims.response[i], stop, &error);
    if (self->fit[i] == NULL) {
      /* Translators: name of a response, why it has no model. */
      self->refusal = g_strdup_printf (_ ("%s: %s"), fm_map_response_name (self->aims.response[i]),
                                       error->message);
      return FALSE;
    }
  }
  return TRUE;
}

static gpointer
join (FmNotebook *none, gpointer data, GCancellable *cancellable, GError **error)
{
  FmMapJoined *self = data;
  const FmStop stop = fm_cancel_stop (cancellable);
  g_autoptr (GError) refusal = NULL;

  if (fit_all (self, &stop) &&
      !fm_mix_find_joined (self->aims.n, (const FmMixFit *const *)self->fit, self->aims.goal,
                           &self->region, &self->spot, &stop, &refusal))
    self->refusal = g_strdup (refusal->message);
  return self;
}

void
fm_map_joined_async (FmMapDocument *document,
                     const FmMapAims *aims,
                     GCancellable *cancellable,
                     GAsyncReadyCallback callback,
                     gpointer user_data)
{
  const FmMapData *data = fm_map_document_get_data (document);
  FmMapJoined *self = g_new0 (FmMapJoined, 1);

  self->aims = *aims;
  self->region = fm_map_document_get_blend (document)->region;
  for (guint i = 0; i < aims->n; i++)
    self->data[i] = fm_map_fit_copy_data (data->series[aims->response[i]].data,
                                          fm_map_document_get_short_names (document));
  fm_store_task (&(FmStoreTask){
      .owner = document,
      .run = join,
      .data = self,
      .free_data = (GDestroyNotify)fm_map_joined_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

/* The task gives its data away: what is left is an empty result. */
FmMapJoined *
fm_map_joined_finish (GAsyncResult *result, GError **error)
{
  FmMapJoined *from = fm_store_task_finish (result, error);
  FmMapJoined *self;

  if (from == NULL)
    return NULL;
  self = g_memdup2 (from, sizeof *from);
  *from = (FmMapJoined){ 0 };
  return self;
}

void
fm_map_joined_free (FmMapJoined *self)
{
  for (guint i = 0; i < self->aims.n; i++) {
    g_clear_pointer (&self->data[i], fm_mix_data_free);
    g_clear_pointer (&self->fit[i], fm_mix_fit_free);
  }
  g_free (self->refusal);
  g_free (self);
}
