/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-list.c - the blends of the notebook with their drafts and versions, as rows */
#include "app/blends/fm-version-list.h"

#include "app/session/fm-store-task.h"

#define OF_SESSION "fm-version-list"

struct _FmVersionList {
  GObject parent_instance;

  FmSession *session;
  GListStore *rows;      /* FmVersionTreeItem, one a blend */
  GPtrArray *blends;     /* FmVersionBlend, in the same order */
  GQueue waiting;        /* FmChange*: what is to be read, one after the other */
  GCancellable *reading; /* (nullable) */
  gboolean is_read;
};

G_DEFINE_FINAL_TYPE (FmVersionList, fm_version_list, G_TYPE_OBJECT)

enum {
  UPDATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void read_next (FmVersionList *self);

static gint64
id_at (FmVersionList *self, guint position)
{
  const FmVersionBlend *blend = g_ptr_array_index (self->blends, position);

  return blend->id;
}

static guint
find (FmVersionList *self, gint64 blend_id)
{
  for (guint i = 0; i < self->blends->len; i++) {
    if (id_at (self, i) == blend_id)
      return i;
  }
  return G_MAXUINT;
}

static FmVersionTreeItem *
row_at (FmVersionList *self, guint position)
{
  g_autoptr (FmVersionTreeItem) row = g_list_model_get_item (G_LIST_MODEL (self->rows), position);

  return row; /* the store keeps it */
}

static void
drop (FmVersionList *self, guint position)
{
  g_ptr_array_remove_index (self->blends, position);
  g_list_store_remove (self->rows, position);
}

/* Blends stand in the order they were added. @blend: (transfer full) */
static void
add (FmVersionList *self, FmVersionBlend *blend)
{
  g_autoptr (FmVersionTreeItem) row =
      fm_version_tree_item_new (FM_VERSION_TREE_BLEND, blend->id, 0);
  guint position = self->blends->len;

  while (position > 0 && id_at (self, position - 1) > blend->id)
    position--;
  fm_version_tree_item_update (row, blend);
  g_ptr_array_insert (self->blends, (int)position, blend);
  g_list_store_insert (self->rows, position, row);
}

/* All were read. Blends that are gone go first, so that the others stay the same rows. */
static void
take_all (FmVersionList *self, GPtrArray *blends)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_int64_hash, g_int64_equal);

  for (guint i = 0; i < blends->len; i++) {
    FmVersionBlend *blend = g_ptr_array_index (blends, i);

    g_hash_table_add (ids, &blend->id);
  }
  for (guint i = self->blends->len; i-- > 0;) {
    const gint64 id = id_at (self, i);

    if (!g_hash_table_contains (ids, &id))
      drop (self, i);
  }
  while (blends->len > 0) {
    FmVersionBlend *blend = g_ptr_array_steal_index (blends, 0);
    const guint position = find (self, blend->id);

    if (position == G_MAXUINT) {
      add (self, blend);
      continue;
    }
    fm_version_blend_free (g_ptr_array_index (self->blends, position));
    self->blends->pdata[position] = blend;
    fm_version_tree_item_update (row_at (self, position), blend);
  }
  self->is_read = TRUE;
}

/* @read: (transfer full): what is known anew of a blend */
static void
take_blend (FmVersionList *self, FmVersionBlend *read)
{
  const guint position = find (self, read->id);
  g_autoptr (FmVersionBlend) owned = read;

  if (read->info == NULL && position != G_MAXUINT)
    drop (self, position);
  if (read->info == NULL)
    return;
  if (position == G_MAXUINT) {
    add (self, g_steal_pointer (&owned));
    return;
  }
  fm_version_blend_update (g_ptr_array_index (self->blends, position), read);
  fm_version_tree_item_update (row_at (self, position), g_ptr_array_index (self->blends, position));
}

static void
take_read (FmVersionList *self, FmVersionRead *read)
{
  if (read->is_all) {
    take_all (self, read->blends);
    g_signal_emit (self, signals[UPDATED], 0, (gint64)0);
    return;
  }
  while (read->blends->len > 0) {
    FmVersionBlend *blend = g_ptr_array_steal_index (read->blends, 0);
    const gint64 id = blend->id;

    take_blend (self, blend);
    g_signal_emit (self, signals[UPDATED], 0, id);
  }
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmVersionList *self = FM_VERSION_LIST (source);
  g_autoptr (GError) error = NULL;
  FmVersionRead *read = fm_store_task_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->reading) {
    g_clear_pointer (&read, fm_version_read_free);
    return;
  }
  g_clear_object (&self->reading);
  if (read != NULL)
    take_read (self, read);
  else
    fm_session_failure (self->session, error);
  g_clear_pointer (&read, fm_version_read_free);
  read_next (self);
}

/* One at a time, so that what is older never comes last. */
static void
read_next (FmVersionList *self)
{
  FmChange *change;

  if (self->reading != NULL || g_queue_is_empty (&self->waiting))
    return;
  change = g_queue_pop_head (&self->waiting);
  if (!self->is_read)
    change->id = 0;
  self->reading = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->session),
      .run = fm_version_read_run,
      .free_result = fm_version_read_free,
      .data = change,
      .free_data = (GDestroyNotify)fm_change_free,
      .cancellable = self->reading,
      .done = read_cb,
  });
}

static void
stop_reading (FmVersionList *self)
{
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  g_queue_clear_full (&self->waiting, (GDestroyNotify)fm_change_free);
}

static int
compare_changes (gconstpointer a, gconstpointer b)
{
  const FmChange *first = a;
  const FmChange *second = b;

  return first->kind != second->kind || first->id != second->id;
}

static void
changed_cb (FmVersionList *self, const FmChange *change)
{
  if (fm_session_get_notebook (self->session) == NULL)
    return;
  /* All that waits is part of all. */
  if (change->id == 0)
    stop_reading (self);
  if (g_queue_find_custom (&self->waiting, change, compare_changes) == NULL)
    g_queue_push_tail (&self->waiting, fm_change_copy (change));
  read_next (self);
}

static void
notebook_changed_cb (FmVersionList *self)
{
  const FmChange all = { .kind = FM_CHANGE_NOTEBOOK };

  stop_reading (self);
  self->is_read = FALSE;
  g_ptr_array_set_size (self->blends, 0);
  g_list_store_remove_all (self->rows);
  g_signal_emit (self, signals[UPDATED], 0, (gint64)0);
  changed_cb (self, &all);
}

static void
fm_version_list_dispose (GObject *object)
{
  FmVersionList *self = FM_VERSION_LIST (object);

  if (self->session != NULL)
    g_object_set_data (G_OBJECT (self->session), OF_SESSION, NULL);
  stop_reading (self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_version_list_parent_class)->dispose (object);
}

static void
fm_version_list_finalize (GObject *object)
{
  FmVersionList *self = FM_VERSION_LIST (object);

  g_object_unref (self->rows);
  g_ptr_array_unref (self->blends);
  G_OBJECT_CLASS (fm_version_list_parent_class)->finalize (object);
}

static void
fm_version_list_class_init (FmVersionListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_version_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_version_list_finalize;
  signals[UPDATED] = g_signal_new ("updated", FM_TYPE_VERSION_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
fm_version_list_init (FmVersionList *self)
{
  self->rows = g_list_store_new (FM_TYPE_VERSION_TREE_ITEM);
  self->blends = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_version_blend_free);
  g_queue_init (&self->waiting);
}

static FmVersionList *
list_new (FmSession *session)
{
  static const char *const heard[] = { "changed::blend", "changed::draft", "changed::version",
                                       "changed::experiment", "changed::tasting" };
  FmVersionList *self = g_object_new (FM_TYPE_VERSION_LIST, NULL);

  self->session = g_object_ref (session);
  for (guint i = 0; i < G_N_ELEMENTS (heard); i++)
    g_signal_connect_object (session, heard[i], G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::notebook", G_CALLBACK (notebook_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_object_set_data (G_OBJECT (session), OF_SESSION, self);
  notebook_changed_cb (self);
  return self;
}

FmVersionList *
fm_version_list_of (FmSession *session)
{
  FmVersionList *self;

  g_return_val_if_fail (FM_IS_SESSION (session), NULL);
  self = g_object_get_data (G_OBJECT (session), OF_SESSION);
  return self != NULL ? g_object_ref (self) : list_new (session);
}

GListModel *
fm_version_list_get_blends (FmVersionList *self)
{
  return G_LIST_MODEL (self->rows);
}

FmVersionTreeItem *
fm_version_list_find_blend (FmVersionList *self, gint64 blend_id)
{
  const guint position = find (self, blend_id);

  return position != G_MAXUINT ? row_at (self, position) : NULL;
}

GPtrArray *
fm_version_list_get_versions (FmVersionList *self, gint64 blend_id)
{
  const guint position = find (self, blend_id);
  const FmVersionBlend *blend =
      position != G_MAXUINT ? g_ptr_array_index (self->blends, position) : NULL;

  return blend != NULL ? blend->versions : NULL;
}

gboolean
fm_version_list_is_read (FmVersionList *self)
{
  return self->is_read;
}
