/* fm-session-io.c - writes to a notebook, one after the other, off the main thread */
#include "app/session/fm-session-io.h"

#include "app/session/fm-store-task.h"

struct _FmSessionWriter {
  GThreadPool *pool; /* one thread: order is kept */
  GMutex mutex;
  GCond idle;
  guint n_pending;
};

typedef struct {
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
order_new (gint64 blend_id, const FmFormula *formula)
{
  Order *order = g_new0 (Order, 1);

  order->blend_id = blend_id;
  order->formula = formula != NULL ? fm_formula_copy (formula) : NULL;
  return order;
}

static void
order_free (Order *order)
{
  g_clear_pointer (&order->formula, fm_formula_free);
  g_free (order->text);
  g_free (order->value);
  g_clear_pointer (&order->formulas, g_ptr_array_unref);
  g_strfreev (order->reasons);
  g_free (order);
}

static void
run_job (gpointer task, gpointer user_data)
{
  FmSessionWriter *self = user_data;

  fm_store_task_run (task);
  g_mutex_lock (&self->mutex);
  self->n_pending--;
  if (self->n_pending == 0)
    g_cond_broadcast (&self->idle);
  g_mutex_unlock (&self->mutex);
}

static gpointer
save_draft (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;

  return GINT_TO_POINTER (fm_draft_save (notebook, order->blend_id, order->formula, error));
}

static gpointer
branch (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;

  return GINT_TO_POINTER (fm_draft_branch (notebook, order->blend_id, order->version_id, error));
}

static gpointer
save_version (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;
  gint64 id = fm_versions_save (notebook, order->blend_id, order->formula, order->text, error);

  return id != 0 ? fm_versions_info (notebook, id, error) : NULL;
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

static gpointer
add_versions (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;
  g_autoptr (GArray) ids =
      fm_versions_add (notebook, order->blend_id, order->version_id, order->formulas,
                       (const char *const *)order->reasons, error);

  return ids != NULL ? read_infos (notebook, ids, error) : NULL;
}

static gpointer
save_setting (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Order *order = data;

  return GINT_TO_POINTER (fm_notebook_set_setting (notebook, order->text, order->value, error));
}

static gpointer
close_notebook (FmNotebook *none, gpointer notebook, GCancellable *cancellable, GError **error)
{
  fm_notebook_unref (notebook);
  g_mutex_lock (&closing_mutex);
  n_closing--;
  g_cond_broadcast (&closed);
  g_mutex_unlock (&closing_mutex);
  return NULL;
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
fm_session_writer_wait (FmSessionWriter *self)
{
  g_mutex_lock (&self->mutex);
  while (self->n_pending > 0)
    g_cond_wait (&self->idle, &self->mutex);
  g_mutex_unlock (&self->mutex);
}

/* Runs after all earlier orders. */
static void
push (FmSessionWriter *self,
      FmNotebook *notebook,
      FmStoreFunc run,
      GDestroyNotify free_result,
      Order *order,
      gpointer source,
      GAsyncReadyCallback callback,
      gpointer user_data)
{
  GTask *task = fm_store_task_new (&(FmStoreTask){
      .owner = source,
      .notebook = notebook,
      .run = run,
      .free_result = free_result,
      .data = order,
      .free_data = (GDestroyNotify)order_free,
      .done = callback,
      .user_data = user_data,
  });

  g_mutex_lock (&self->mutex);
  self->n_pending++;
  g_mutex_unlock (&self->mutex);
  g_thread_pool_push (self->pool, task, NULL);
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
  Order *order = order_new (blend_id, formula);

  push (self, notebook, save_draft, NULL, order, source, callback, user_data);
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
  Order *order = order_new (blend_id, NULL);

  order->version_id = version_id;
  push (self, notebook, branch, NULL, order, source, callback, user_data);
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
  Order *order = order_new (blend_id, formula);

  order->text = g_strdup (reason);
  push (self, notebook, save_version, (GDestroyNotify)fm_version_info_free, order, source, callback,
        user_data);
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
  Order *order = order_new (blend_id, NULL);

  order->version_id = parent_id;
  order->formulas = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_free);
  for (guint i = 0; i < formulas->len; i++)
    g_ptr_array_add (order->formulas, fm_formula_copy (g_ptr_array_index (formulas, i)));
  order->reasons = g_strdupv ((char **)reasons);
  push (self, notebook, add_versions, (GDestroyNotify)g_ptr_array_unref, order, source, callback,
        user_data);
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
  Order *order = order_new (0, NULL);

  order->text = g_strdup (key);
  order->value = g_strdup (value);
  push (self, notebook, save_setting, NULL, order, source, callback, user_data);
}

gboolean
fm_session_io_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error) != NULL;
}

FmVersionInfo *
fm_session_io_save_version_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

GPtrArray *
fm_session_io_add_versions_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

gint64
fm_session_io_blend_id (GAsyncResult *result)
{
  Order *order = fm_store_task_data (result);

  return order->blend_id;
}

const FmFormula *
fm_session_io_formula (GAsyncResult *result)
{
  Order *order = fm_store_task_data (result);

  return order->formula;
}

void
fm_session_io_close (FmNotebook *notebook)
{
  if (notebook == NULL)
    return;
  g_mutex_lock (&closing_mutex);
  n_closing++;
  g_mutex_unlock (&closing_mutex);
  fm_store_task (&(FmStoreTask){ .run = close_notebook, .data = notebook });
}

void
fm_session_io_wait_closed (void)
{
  g_mutex_lock (&closing_mutex);
  while (n_closing > 0)
    g_cond_wait (&closed, &closing_mutex);
  g_mutex_unlock (&closing_mutex);
}
