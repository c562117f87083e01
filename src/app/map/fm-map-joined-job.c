/* fm-map-joined-job.c - looks for the blend that meets several goals at once, in a thread */
#include "app/map/fm-map-joined-job.h"

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

static void
join_thread (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  FmMapJoined *self = task_data;
  const FmStop stop = fm_cancel_stop (cancellable);
  g_autoptr (GError) error = NULL;

  if (fit_all (self, &stop) &&
      !fm_mix_find_joined (self->aims.n, (const FmMixFit *const *)self->fit, self->aims.goal,
                           &self->region, &self->spot, &stop, &error))
    self->refusal = g_strdup (error->message);
  if (!g_task_return_error_if_cancelled (task))
    g_task_return_boolean (task, TRUE);
}

void
fm_map_joined_async (FmMapDocument *document,
                     const FmMapAims *aims,
                     GCancellable *cancellable,
                     GAsyncReadyCallback callback,
                     gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (document, cancellable, callback, user_data);
  const FmMapData *data = fm_map_document_get_data (document);
  FmMapJoined *self = g_new0 (FmMapJoined, 1);

  self->aims = *aims;
  self->region = fm_map_document_get_blend (document)->region;
  for (guint i = 0; i < aims->n; i++)
    self->data[i] = fm_map_fit_copy_data (data->series[aims->response[i]].data,
                                          fm_map_document_get_short_names (document));
  g_task_set_source_tag (task, fm_map_joined_async);
  g_task_set_task_data (task, self, (GDestroyNotify)fm_map_joined_free);
  g_task_run_in_thread (task, join_thread);
}

/* The task gives its data away: what is left is an empty result. */
FmMapJoined *
fm_map_joined_finish (GAsyncResult *result, GError **error)
{
  FmMapJoined *from = g_task_get_task_data (G_TASK (result));
  FmMapJoined *self;

  if (!g_task_propagate_boolean (G_TASK (result), error))
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
