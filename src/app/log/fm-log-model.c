/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-model.c - the records of one kind that a notebook holds, as a list model */
#include "app/log/fm-log-model.h"

#include "app/session/fm-store-task.h"

struct _FmLogModel {
  GObject parent_instance;

  const FmLogKind *kind;
  FmNotebook *notebook; /* (nullable) */
  gpointer query;       /* (nullable) */
  GPtrArray *rows;      /* infos */
  GHashTable *items;    /* id (gint64*) -> FmLogRow that was asked for */
  GHashTable *hidden;   /* ids (gint64*) */
  GHashTable *asked;    /* id (gint64*) -> serial of the last read of that row alone */
  guint serial;
  GCancellable *reading; /* of all that was asked since the last query */
  gboolean is_read;      /* the rows are those of the query */
};

static void fm_log_model_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (FmLogModel,
                               fm_log_model,
                               G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL,
                                                      fm_log_model_list_model_init))

enum {
  UPDATED,
  FAILED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

typedef struct {
  const FmLogKind *kind;
  gpointer query;
  gint64 only_id;
  guint serial;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_clear_pointer (&order->query, order->kind->free_query);
  g_free (order);
}

static gpointer
read_rows (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;

  return order->kind->read (notebook, order->query, order->only_id, cancellable, error);
}

static void
start (FmLogModel *self, gint64 only_id, GAsyncReadyCallback done)
{
  Order *order = g_new0 (Order, 1);

  order->kind = self->kind;
  order->query = self->kind->copy_query (self->query);
  order->only_id = only_id;
  order->serial = ++self->serial;
  if (only_id != 0)
    g_hash_table_insert (self->asked, g_memdup2 (&only_id, sizeof only_id),
                         GUINT_TO_POINTER (order->serial));
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = read_rows,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .data = order,
      .free_data = order_free,
      .cancellable = self->reading,
      .done = done,
  });
}

static gint64
id_at (GPtrArray *rows, guint position)
{
  return fm_log_info_id (g_ptr_array_index (rows, position));
}

static FmLogRow *
find_item (FmLogModel *self, gint64 id)
{
  return g_hash_table_lookup (self->items, &id);
}

static void
forget_item (FmLogModel *self, gint64 id)
{
  FmLogRow *item = find_item (self, id);

  if (item == NULL)
    return;
  fm_log_row_set_info (item, NULL);
  g_hash_table_remove (self->items, &id);
}

static gboolean
has_same_records (GPtrArray *a, GPtrArray *b)
{
  gboolean same = a->len == b->len;

  for (guint i = 0; i < a->len && same; i++)
    same = id_at (a, i) == id_at (b, i);
  return same;
}

/* Rows that stay are only written anew, so that focus and place in the list stay. */
static void
write_rows (FmLogModel *self)
{
  for (guint i = 0; i < self->rows->len && g_hash_table_size (self->items) > 0; i++) {
    FmLogRow *item = find_item (self, id_at (self->rows, i));

    if (item != NULL)
      fm_log_row_set_info (item, g_ptr_array_index (self->rows, i));
  }
}

static void
forget_items (FmLogModel *self)
{
  GHashTableIter iter;
  gpointer item;

  g_hash_table_iter_init (&iter, self->items);
  while (g_hash_table_iter_next (&iter, NULL, &item))
    fm_log_row_set_info (item, NULL);
  g_hash_table_remove_all (self->items);
}

static void
take_rows (FmLogModel *self, GPtrArray *rows)
{
  g_autoptr (GPtrArray) before = self->rows;

  self->rows = rows;
  if (has_same_records (before, rows)) {
    write_rows (self);
    return;
  }
  forget_items (self);
  g_list_model_items_changed (G_LIST_MODEL (self), 0, before->len, rows->len);
}

static void
drop_hidden (FmLogModel *self, GPtrArray *rows)
{
  if (g_hash_table_size (self->hidden) == 0)
    return;
  for (guint i = rows->len; i > 0; i--) {
    const gint64 id = id_at (rows, i - 1);

    if (g_hash_table_contains (self->hidden, &id))
      g_ptr_array_remove_index (rows, i - 1);
  }
}

static void
all_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmLogModel *self = FM_LOG_MODEL (source);
  g_autoptr (GError) error = NULL;
  GPtrArray *rows = fm_store_task_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  if (rows == NULL) {
    g_signal_emit (self, signals[FAILED], 0, error->message);
    return;
  }
  drop_hidden (self, rows);
  self->is_read = TRUE;
  take_rows (self, rows);
  g_signal_emit (self, signals[UPDATED], 0);
}

static void
drop_row (FmLogModel *self, guint position)
{
  forget_item (self, id_at (self->rows, position));
  g_ptr_array_remove_index (self->rows, position);
  g_list_model_items_changed (G_LIST_MODEL (self), position, 1, 0);
}

static void
add_row (FmLogModel *self, gpointer info)
{
  guint position = 0;

  while (position < self->rows->len &&
         self->kind->compare (g_ptr_array_index (self->rows, position), info, self->query) < 0)
    position++;
  g_ptr_array_insert (self->rows, (int)position, info);
  g_list_model_items_changed (G_LIST_MODEL (self), position, 0, 1);
}

/* TRUE when @info may stand at @position, between its neighbours there. */
static gboolean
fits (FmLogModel *self, guint position, gconstpointer info)
{
  if (position > 0 &&
      self->kind->compare (g_ptr_array_index (self->rows, position - 1), info, self->query) > 0)
    return FALSE;
  return position + 1 == self->rows->len ||
         self->kind->compare (info, g_ptr_array_index (self->rows, position + 1), self->query) < 0;
}

static void
write_row (FmLogModel *self, guint position, gpointer info)
{
  gpointer before = g_ptr_array_index (self->rows, position);
  FmLogRow *item = find_item (self, fm_log_info_id (info));

  self->rows->pdata[position] = info;
  if (item != NULL)
    fm_log_row_set_info (item, info);
  /* The array frees what it drops, so what was there is put in and dropped. */
  g_ptr_array_add (self->rows, before);
  g_ptr_array_set_size (self->rows, (int)self->rows->len - 1);
}

/* @info: (transfer full) (nullable) */
static void
take_row (FmLogModel *self, gint64 id, gpointer info)
{
  const guint position = fm_log_model_find (self, id);

  if (position != G_MAXUINT && info != NULL && fits (self, position, info)) {
    write_row (self, position, info);
    return;
  }
  if (position != G_MAXUINT)
    drop_row (self, position);
  if (info != NULL)
    add_row (self, info);
}

/* A record that is not listed has no row that could say it. */
static void
tell_row_failed (FmLogModel *self, gint64 id, const char *message)
{
  const guint position = fm_log_model_find (self, id);
  g_autoptr (FmLogRow) row = NULL;

  if (position == G_MAXUINT) {
    fm_log_model_read_row (self, 0);
    return;
  }
  row = g_list_model_get_item (G_LIST_MODEL (self), position);
  fm_log_row_set_failure (row, message);
}

/* Threads may end in another order than they were started in: the last one counts. */
static void
row_read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmLogModel *self = FM_LOG_MODEL (source);
  const Order *order = fm_store_task_data (result);
  const gint64 id = order->only_id;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) rows = fm_store_task_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) ||
      GPOINTER_TO_UINT (g_hash_table_lookup (self->asked, &id)) != order->serial)
    return;
  g_hash_table_remove (self->asked, &id);
  if (rows == NULL) {
    tell_row_failed (self, id, error->message);
    return;
  }
  drop_hidden (self, rows);
  take_row (self, id, rows->len > 0 ? g_ptr_array_steal_index (rows, 0) : NULL);
  g_signal_emit (self, signals[UPDATED], 0);
}

static GType
fm_log_model_get_item_type (GListModel *model)
{
  return FM_TYPE_LOG_ROW;
}

static guint
fm_log_model_get_n_items (GListModel *model)
{
  return FM_LOG_MODEL (model)->rows->len;
}

static gpointer
fm_log_model_get_item (GListModel *model, guint position)
{
  FmLogModel *self = FM_LOG_MODEL (model);
  FmLogRow *item;
  gint64 id;

  if (position >= self->rows->len)
    return NULL;
  id = id_at (self->rows, position);
  item = find_item (self, id);
  if (item == NULL) {
    item = fm_log_row_new (g_ptr_array_index (self->rows, position));
    g_hash_table_insert (self->items, g_memdup2 (&id, sizeof id), item);
  }
  return g_object_ref (item);
}

static void
fm_log_model_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = fm_log_model_get_item_type;
  iface->get_n_items = fm_log_model_get_n_items;
  iface->get_item = fm_log_model_get_item;
}

static void
fm_log_model_dispose (GObject *object)
{
  FmLogModel *self = FM_LOG_MODEL (object);

  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  forget_items (self);
  G_OBJECT_CLASS (fm_log_model_parent_class)->dispose (object);
}

static void
fm_log_model_finalize (GObject *object)
{
  FmLogModel *self = FM_LOG_MODEL (object);

  g_clear_pointer (&self->query, self->kind->free_query);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  g_hash_table_unref (self->items);
  g_hash_table_unref (self->hidden);
  g_hash_table_unref (self->asked);
  g_ptr_array_unref (self->rows);
  G_OBJECT_CLASS (fm_log_model_parent_class)->finalize (object);
}

static void
fm_log_model_class_init (FmLogModelClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_log_model_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_log_model_finalize;
  signals[UPDATED] = g_signal_new ("updated", FM_TYPE_LOG_MODEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  signals[FAILED] = g_signal_new ("failed", FM_TYPE_LOG_MODEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
fm_log_model_init (FmLogModel *self)
{
  self->rows = g_ptr_array_new ();
  self->items = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_object_unref);
  self->hidden = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->asked = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
}

FmLogModel *
fm_log_model_new (const FmLogKind *kind)
{
  FmLogModel *self = g_object_new (FM_TYPE_LOG_MODEL, NULL);

  self->kind = kind;
  return self;
}

static void
set_notebook (FmLogModel *self, FmNotebook *notebook)
{
  if (self->notebook == notebook)
    return;
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  self->notebook = notebook != NULL ? fm_notebook_ref (notebook) : NULL;
  g_hash_table_remove_all (self->hidden);
}

void
fm_log_model_read (FmLogModel *self, FmNotebook *notebook, gpointer query)
{
  g_return_if_fail (FM_IS_LOG_MODEL (self));
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  set_notebook (self, notebook);
  g_clear_pointer (&self->query, self->kind->free_query);
  self->query = query;
  self->is_read = FALSE;
  if (notebook == NULL || query == NULL) {
    take_rows (self, g_ptr_array_new ());
    g_signal_emit (self, signals[UPDATED], 0);
    return;
  }
  self->reading = g_cancellable_new ();
  start (self, 0, all_read_cb);
}

void
fm_log_model_read_other (FmLogModel *self, FmNotebook *notebook, gpointer query)
{
  g_return_if_fail (FM_IS_LOG_MODEL (self));
  if (notebook == self->notebook && query != NULL && self->query != NULL &&
      self->kind->is_same_query (query, self->query))
    self->kind->free_query (query);
  else
    fm_log_model_read (self, notebook, query);
}

void
fm_log_model_read_row (FmLogModel *self, gint64 id)
{
  g_return_if_fail (FM_IS_LOG_MODEL (self));
  if (self->notebook == NULL || self->query == NULL)
    return;
  /* What is being read may be older than the change. */
  if (id == 0 || !self->is_read)
    fm_log_model_read (self, self->notebook, self->kind->copy_query (self->query));
  else
    start (self, id, row_read_cb);
}

void
fm_log_model_hide (FmLogModel *self, gint64 id)
{
  g_return_if_fail (FM_IS_LOG_MODEL (self));
  g_hash_table_add (self->hidden, g_memdup2 (&id, sizeof id));
  take_row (self, id, NULL);
  g_signal_emit (self, signals[UPDATED], 0);
}

gboolean
fm_log_model_unhide (FmLogModel *self, gint64 id)
{
  g_return_val_if_fail (FM_IS_LOG_MODEL (self), FALSE);
  return g_hash_table_remove (self->hidden, &id);
}

guint
fm_log_model_find (FmLogModel *self, gint64 id)
{
  for (guint i = 0; i < self->rows->len; i++) {
    if (id_at (self->rows, i) == id)
      return i;
  }
  return G_MAXUINT;
}

gconstpointer
fm_log_model_get_info (FmLogModel *self, guint position)
{
  return position < self->rows->len ? g_ptr_array_index (self->rows, position) : NULL;
}

guint
fm_log_model_get_n (FmLogModel *self)
{
  return self->rows->len;
}

gboolean
fm_log_model_is_read (FmLogModel *self)
{
  return self->is_read;
}

gpointer
fm_log_id_copy (gconstpointer id)
{
  return g_memdup2 (id, sizeof (gint64));
}

int
fm_log_compare_newest (gint64 at, gint64 id, gint64 other_at, gint64 other_id)
{
  if (at != other_at)
    return at > other_at ? -1 : 1;
  return id > other_id ? -1 : id < other_id;
}
