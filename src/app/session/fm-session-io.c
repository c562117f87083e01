/* fm-session-io.c - writes to a notebook, one after the other, off the main thread */
#include "app/session/fm-session-io.h"

struct _FmSessionWriter {
  GThreadPool *pool; /* one thread: order is kept */
  GMutex mutex;
  GCond idle;
  guint n_pending;
};

typedef struct {
  GTask *task;
  GTaskThreadFunc func;
} Job;

typedef struct {
  FmNotebook *notebook;
  gint64 blend_id;
  gint64 version_id;
  FmFormula *formula;
  char *text; /* reason or key */
  char *value;
  GPtrArray *formulas; /* of versions beside the draft */
  GStrv reasons;
} Order;

static GMutex closing_mutex;
static GCond closed;
static guint n_closing;

static Order *
order_new (FmNotebook *notebook, gint64 blend_id, const FmFormula *formula)
{
  Order *order = g_new0 (Order, 1);

  order->notebook = fm_notebook_ref (notebook);
  order->blend_id = blend_id;
  order->formula = formula != NULL ? fm_formula_copy (formula) : NULL;
  return order;
}

static void
order_free (Order *order)
{
  g_clear_pointer (&order->notebook, fm_notebook_unref);
  g_clear_pointer (&order->formula, fm_formula_free);
  g_free (order->text);
  g_free (order->value);
  g_clear_pointer (&order->formulas, g_ptr_array_unref);
  g_strfreev (order->reasons);
  g_free (order);
}

static void
run_job (gpointer data, gpointer user_data)
{
  FmSessionWriter *self = user_data;
  Job *job = data;

  job->func (job->task, g_task_get_source_object (job->task), g_task_get_task_data (job->task),
             g_task_get_cancellable (job->task));
  g_object_unref (job->task);
  g_free (job);

  g_mutex_lock (&self->mutex);
  self->n_pending--;
  if (self->n_pending == 0)
    g_cond_broadcast (&self->idle);
  g_mutex_unlock (&self->mutex);
}

/* The notebook is let go here, in the writer's thread, because the last reference checkpoints. */
static void
return_success (GTask *task, gboolean success, GError *error)
{
  Order *order = g_task_get_task_data (task);

  g_clear_pointer (&order->notebook, fm_notebook_unref);
  if (success)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
save_draft_job (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  GError *error = NULL;
  gboolean saved = fm_draft_save (order->notebook, order->blend_id, order->formula, &error);

  return_success (task, saved, error);
}

static void
branch_job (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  GError *error = NULL;
  gboolean done = fm_draft_branch (order->notebook, order->blend_id, order->version_id, &error);

  return_success (task, done, error);
}

static void
save_version_job (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  GError *error = NULL;
  FmVersionInfo *info = NULL;
  gint64 id =
      fm_versions_save (order->notebook, order->blend_id, order->formula, order->text, &error);

  if (id != 0)
    info = fm_versions_info (order->notebook, id, &error);
  g_clear_pointer (&order->notebook, fm_notebook_unref);
  if (info != NULL)
    g_task_return_pointer (task, info, (GDestroyNotify)fm_version_info_free);
  else
    g_task_return_error (task, error);
}

static GPtrArray *
read_infos (FmNotebook *notebook, const GArray *ids, GError **error)
{
  g_autoptr (GPtrArray) infos =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_version_info_free);

  for (guint i = 0; i < ids->len; i++) {
    FmVersionInfo *info = fm_versions_info (notebook, g_array_index (ids, gint64, i), error);

    if (info == NULL)
      return NULL;
    g_ptr_array_add (infos, info);
  }
  return g_steal_pointer (&infos);
}

static void
add_versions_job (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  GError *error = NULL;
  g_autoptr (GArray) ids =
      fm_versions_add (order->notebook, order->blend_id, order->version_id, order->formulas,
                       (const char *const *)order->reasons, &error);
  GPtrArray *infos = ids != NULL ? read_infos (order->notebook, ids, &error) : NULL;

  g_clear_pointer (&order->notebook, fm_notebook_unref);
  if (infos != NULL)
    g_task_return_pointer (task, infos, (GDestroyNotify)g_ptr_array_unref);
  else
    g_task_return_error (task, error);
}

static void
save_setting_job (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  GError *error = NULL;
  gboolean saved = fm_notebook_set_setting (order->notebook, order->text, order->value, &error);

  return_success (task, saved, error);
}

static void
close_job (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  fm_notebook_unref (data);
  g_mutex_lock (&closing_mutex);
  n_closing--;
  g_cond_broadcast (&closed);
  g_mutex_unlock (&closing_mutex);
  g_task_return_boolean (task, TRUE);
}

static GTask *
task_for_order (Order *order, gpointer source, GAsyncReadyCallback callback, gpointer user_data)
{
  GTask *task = g_task_new (source, NULL, callback, user_data);

  g_task_set_task_data (task, order, (GDestroyNotify)order_free);
  return task;
}

FmSessionWriter *
fm_session_writer_new (void)
{
  FmSessionWriter *self = g_new0 (FmSessionWriter, 1);

  g_mutex_init (&self->mutex);
  g_cond_init (&self->idle);
  self->pool = g_thread_pool_new (run_job, self, 1, FALSE, NULL);
  return self;
}

void
fm_session_writer_free (FmSessionWriter *self)
{
  g_thread_pool_free (self->pool, FALSE, TRUE);
  g_mutex_clear (&self->mutex);
  g_cond_clear (&self->idle);
  g_free (self);
}

void
fm_session_writer_push (FmSessionWriter *self, GTask *task, GTaskThreadFunc func)
{
  Job *job = g_new0 (Job, 1);

  job->task = task;
  job->func = func;
  g_mutex_lock (&self->mutex);
  self->n_pending++;
  g_mutex_unlock (&self->mutex);
  g_thread_pool_push (self->pool, job, NULL);
}

void
fm_session_writer_wait (FmSessionWriter *self)
{
  g_mutex_lock (&self->mutex);
  while (self->n_pending > 0)
    g_cond_wait (&self->idle, &self->mutex);
  g_mutex_unlock (&self->mutex);
}

void
fm_session_io_save_draft (FmSessionWriter *self,
                          FmNotebook *notebook,
                          gint64 blend_id,
                          const FmFormula *formula,
                          gpointer source,
                          GAsyncReadyCallback callback,
                          gpointer user_data)
{
  Order *order = order_new (notebook, blend_id, formula);

  fm_session_writer_push (self, task_for_order (order, source, callback, user_data),
                          save_draft_job);
}

void
fm_session_io_branch (FmSessionWriter *self,
                      FmNotebook *notebook,
                      gint64 blend_id,
                      gint64 version_id,
                      gpointer source,
                      GAsyncReadyCallback callback,
                      gpointer user_data)
{
  Order *order = order_new (notebook, blend_id, NULL);

  order->version_id = version_id;
  fm_session_writer_push (self, task_for_order (order, source, callback, user_data), branch_job);
}

void
fm_session_io_save_version (FmSessionWriter *self,
                            FmNotebook *notebook,
                            gint64 blend_id,
                            const FmFormula *formula,
                            const char *reason,
                            gpointer source,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Order *order = order_new (notebook, blend_id, formula);

  order->text = g_strdup (reason);
  fm_session_writer_push (self, task_for_order (order, source, callback, user_data),
                          save_version_job);
}

void
fm_session_io_add_versions (FmSessionWriter *self,
                            FmNotebook *notebook,
                            gint64 blend_id,
                            gint64 parent_id,
                            const GPtrArray *formulas,
                            const char *const *reasons,
                            gpointer source,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Order *order = order_new (notebook, blend_id, NULL);

  order->version_id = parent_id;
  order->formulas = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_free);
  for (guint i = 0; i < formulas->len; i++)
    g_ptr_array_add (order->formulas, fm_formula_copy (g_ptr_array_index (formulas, i)));
  order->reasons = g_strdupv ((char **)reasons);
  fm_session_writer_push (self, task_for_order (order, source, callback, user_data),
                          add_versions_job);
}

void
fm_session_io_save_setting (FmSessionWriter *self,
                            FmNotebook *notebook,
                            const char *key,
                            const char *value,
                            gpointer source,
                            GAsyncReadyCallback callback,
                            gpointer user_data)
{
  Order *order = order_new (notebook, 0, NULL);

  order->text = g_strdup (key);
  order->value = g_strdup (value);
  fm_session_writer_push (self, task_for_order (order, source, callback, user_data),
                          save_setting_job);
}

gboolean
fm_session_io_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}

FmVersionInfo *
fm_session_io_save_version_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

GPtrArray *
fm_session_io_add_versions_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

gint64
fm_session_io_blend_id (GAsyncResult *result)
{
  Order *order = g_task_get_task_data (G_TASK (result));

  return order->blend_id;
}

const FmFormula *
fm_session_io_formula (GAsyncResult *result)
{
  Order *order = g_task_get_task_data (G_TASK (result));

  return order->formula;
}

void
fm_session_io_close (FmNotebook *notebook)
{
  GTask *task;

  if (notebook == NULL)
    return;
  g_mutex_lock (&closing_mutex);
  n_closing++;
  g_mutex_unlock (&closing_mutex);
  task = g_task_new (NULL, NULL, NULL, NULL);
  g_task_set_task_data (task, notebook, NULL);
  g_task_run_in_thread (task, close_job);
  g_object_unref (task);
}

void
fm_session_io_wait_closed (void)
{
  g_mutex_lock (&closing_mutex);
  while (n_closing > 0)
    g_cond_wait (&closed, &closing_mutex);
  g_mutex_unlock (&closing_mutex);
}
