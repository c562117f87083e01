/* fm-experiment-log.c - the log as a list model over one array of rows */
#include "app/experiments/fm-experiment-log.h"

struct _FmExperimentLog {
  GObject parent_instance;

  GPtrArray *rows;   /* FmExperimentInfo */
  GHashTable *items; /* position -> FmExperimentItem that was asked for */
};

static void fm_experiment_log_list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (FmExperimentLog,
                               fm_experiment_log,
                               G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL,
                                                      fm_experiment_log_list_model_init))

static GType
fm_experiment_log_get_item_type (GListModel *model)
{
  return FM_TYPE_EXPERIMENT_ITEM;
}

static guint
fm_experiment_log_get_n_items (GListModel *model)
{
  return FM_EXPERIMENT_LOG (model)->rows->len;
}

static gpointer
fm_experiment_log_get_item (GListModel *model, guint position)
{
  FmExperimentLog *self = FM_EXPERIMENT_LOG (model);
  FmExperimentItem *item;

  if (position >= self->rows->len)
    return NULL;
  item = g_hash_table_lookup (self->items, GUINT_TO_POINTER (position));
  if (item == NULL) {
    item = fm_experiment_item_new (self->rows, g_ptr_array_index (self->rows, position));
    g_hash_table_insert (self->items, GUINT_TO_POINTER (position), item);
  }
  return g_object_ref (item);
}

static void
fm_experiment_log_list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = fm_experiment_log_get_item_type;
  iface->get_n_items = fm_experiment_log_get_n_items;
  iface->get_item = fm_experiment_log_get_item;
}

static void
fm_experiment_log_finalize (GObject *object)
{
  FmExperimentLog *self = FM_EXPERIMENT_LOG (object);

  g_clear_pointer (&self->items, g_hash_table_unref);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (fm_experiment_log_parent_class)->finalize (object);
}

static void
fm_experiment_log_class_init (FmExperimentLogClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_experiment_log_finalize;
}

static void
fm_experiment_log_init (FmExperimentLog *self)
{
  self->rows = g_ptr_array_new ();
  self->items = g_hash_table_new_full (NULL, NULL, NULL, g_object_unref);
}

FmExperimentLog *
fm_experiment_log_new (void)
{
  return g_object_new (FM_TYPE_EXPERIMENT_LOG, NULL);
}

void
fm_experiment_log_set_rows (FmExperimentLog *self, GPtrArray *rows)
{
  guint n_before;

  g_return_if_fail (FM_IS_EXPERIMENT_LOG (self));
  n_before = self->rows->len;
  g_hash_table_remove_all (self->items);
  g_ptr_array_unref (self->rows);
  self->rows = rows != NULL ? rows : g_ptr_array_new ();
  if (n_before > 0 || self->rows->len > 0)
    g_list_model_items_changed (G_LIST_MODEL (self), 0, n_before, self->rows->len);
}

guint
fm_experiment_log_find (FmExperimentLog *self, gint64 experiment_id)
{
  for (guint i = 0; i < self->rows->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (self->rows, i);

    if (info->id == experiment_id)
      return i;
  }
  return G_MAXUINT;
}
