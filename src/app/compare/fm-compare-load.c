/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-load.c - reads what can be compared and what is compared, off the main thread */
#include "app/compare/fm-compare-load.h"

#include <glib/gi18n-lib.h>

#include "app/compare/fm-compare-choice.h"
#include "app/compare/fm-compare-read.h"
#include "app/session/fm-store-task.h"
#include "core/base/fm-date.h"

/* What is to be read: the drafts by key, NULL where none is being edited. */
typedef struct {
  GStrv keys;
  GPtrArray *drafts;
} Order;

static FmCompareChoice *
version_choice (const char *blend_name, const FmVersionInfo *info)
{
  g_autofree char *title = fm_compare_version_title (blend_name, info->number);
  g_autofree char *subtitle = fm_compare_version_subtitle (info);

  return fm_compare_choice_new (FM_COMPARE_VERSION, info->id, title, subtitle);
}

static FmCompareChoice *
draft_choice (gint64 blend_id, const char *blend_name)
{
  g_autofree char *title = fm_compare_draft_title (blend_name);

  return fm_compare_choice_new (FM_COMPARE_DRAFT, blend_id, title,
                                _ ("As it is being edited, keystroke by keystroke"));
}

static gpointer
load_experiments (FmNotebook *notebook, gpointer none, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) choices = g_ptr_array_new_with_free_func (g_object_unref);
  FmExperimentFilter filter = { .sort = FM_EXPERIMENT_SORT_DATE, .descending = TRUE };
  g_autoptr (GPtrArray) experiments = fm_experiments_list (notebook, &filter, cancellable, error);

  if (experiments == NULL)
    return NULL;
  for (guint i = 0; i < experiments->len; i++) {
    const FmExperimentInfo *info = g_ptr_array_index (experiments, i);
    g_autofree char *title = fm_compare_experiment_title (info->blend_name, info->version_number,
                                                          info->title, info->made_at);
    g_autofree char *date = fm_date_text (info->made_at);
    g_autofree char *subtitle = g_strdup_printf (_ ("Experiment · %s"), date);

    g_ptr_array_add (choices,
                     fm_compare_choice_new (FM_COMPARE_EXPERIMENT, info->id, title, subtitle));
  }
  return g_steal_pointer (&choices);
}

static void
order_free (gpointer data)
{
  Order *order = data;

  g_strfreev (order->keys);
  g_ptr_array_unref (order->drafts);
  g_free (order);
}

static void
formula_clear (gpointer formula)
{
  g_clear_pointer (&formula, fm_formula_free);
}

/* What is being edited is newer than what is stored. */
static Order *
order_new (FmSession *session, const char *const *keys)
{
  Order *order = g_new0 (Order, 1);

  order->keys = g_strdupv ((char **)keys);
  order->drafts = g_ptr_array_new_with_free_func (formula_clear);
  for (guint i = 0; keys[i] != NULL; i++) {
    FmCompareKind kind;
    gint64 id;
    gboolean is_draft = fm_compare_key_parse (keys[i], &kind, &id) && kind == FM_COMPARE_DRAFT;

    g_ptr_array_add (order->drafts, is_draft ? fm_session_dup_draft_formula (session, id) : NULL);
  }
  return order;
}

static void
texture_clear (gpointer texture)
{
  g_clear_object (&texture);
}

/* NULL when there is none that can be shown. */
static GdkTexture *
first_thumbnail (const FmCompareRead *read, const GPtrArray *photos)
{
  const FmPhotoInfo *first = photos->len > 0 ? g_ptr_array_index (photos, 0) : NULL;

  return first != NULL ? fm_photo_listing_thumbnail (read->notebook, first->id, read->cancellable)
                       : NULL;
}

static gpointer
load (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  g_autoptr (FmCompareShown) shown = g_new0 (FmCompareShown, 1);
  g_autoptr (GPtrArray) items =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, error);

  shown->photos = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_photo_info_free);
  shown->thumbnails = g_ptr_array_new_with_free_func (texture_clear);
  for (guint i = 0; blends != NULL && order->keys[i] != NULL; i++) {
    const FmCompareRead read = {
      .notebook = notebook,
      .blends = blends,
      .draft = g_ptr_array_index (order->drafts, i),
      .cancellable = cancellable,
    };
    g_autoptr (GPtrArray) photos = NULL;
    g_autoptr (FmCompareItem) item = NULL;

    if (!fm_compare_read (&read, order->keys[i], &item, &photos, error))
      return NULL;
    if (item == NULL || items->len == FM_COMPARE_MAX_ITEMS)
      continue;
    g_ptr_array_add (items, g_steal_pointer (&item));
    g_ptr_array_add (shown->thumbnails, first_thumbnail (&read, photos));
    g_ptr_array_extend_and_steal (shown->photos, g_steal_pointer (&photos));
  }
  if (blends == NULL)
    return NULL;
  shown->comparison = fm_comparison_new (g_steal_pointer (&items));
  return g_steal_pointer (&shown);
}

void
fm_compare_shown_free (FmCompareShown *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->comparison, fm_comparison_free);
  g_clear_pointer (&self->photos, g_ptr_array_unref);
  g_clear_pointer (&self->thumbnails, g_ptr_array_unref);
  g_free (self);
}

static gpointer
load_memory (FmNotebook *notebook, gpointer none, GCancellable *cancellable, GError **error)
{
  FmCompareMemory *memory = g_new0 (FmCompareMemory, 1);

  memory->selection = fm_notebook_get_setting (notebook, FM_COMPARE_SELECTION_SETTING);
  memory->view = fm_notebook_get_setting (notebook, FM_COMPARE_VIEW_SETTING);
  return memory;
}

void
fm_compare_memory_free (FmCompareMemory *self)
{
  g_free (self->selection);
  g_free (self->view);
  g_free (self);
}

/* Of each blend its draft, then its versions, the newest first. */
GPtrArray *
fm_compare_choices_of_versions (FmVersionList *list)
{
  GPtrArray *choices = g_ptr_array_new_with_free_func (g_object_unref);
  GListModel *blends = fm_version_list_get_blends (list);

  for (guint i = 0; i < g_list_model_get_n_items (blends); i++) {
    g_autoptr (FmVersionTreeItem) blend = g_list_model_get_item (blends, i);
    const gint64 blend_id = fm_version_tree_item_get_blend_id (blend);
    const GPtrArray *versions = fm_version_list_get_versions (list, blend_id);

    g_ptr_array_add (choices, draft_choice (blend_id, fm_version_tree_item_get_title (blend)));
    for (guint j = versions != NULL ? versions->len : 0; j > 0; j--)
      g_ptr_array_add (choices, version_choice (fm_version_tree_item_get_title (blend),
                                                g_ptr_array_index (versions, j - 1)));
  }
  return choices;
}

void
fm_compare_load_experiments_async (FmNotebook *notebook,
                                   GCancellable *cancellable,
                                   GAsyncReadyCallback callback,
                                   gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = load_experiments,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

GPtrArray *
fm_compare_load_experiments_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

void
fm_compare_load_async (FmSession *session,
                       const char *const *keys,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = fm_session_get_notebook (session),
      .run = load,
      .free_result = (GDestroyNotify)fm_compare_shown_free,
      .data = order_new (session, keys),
      .free_data = order_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

FmCompareShown *
fm_compare_load_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

void
fm_compare_load_memory_async (FmNotebook *notebook,
                              GCancellable *cancellable,
                              GAsyncReadyCallback callback,
                              gpointer user_data)
{
  fm_store_task (&(FmStoreTask){
      .notebook = notebook,
      .run = load_memory,
      .free_result = (GDestroyNotify)fm_compare_memory_free,
      .cancellable = cancellable,
      .done = callback,
      .user_data = user_data,
  });
}

FmCompareMemory *
fm_compare_load_memory_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}
