/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-story-list.c - what opened tastings found of a version or an experiment, a line each
 */
#include "app/tastings/fm-tasting-story-list.h"

#include "app/session/fm-store-task.h"
#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"
#include "core/tasting/fm-tasting-story.h"

struct _FmTastingStoryList {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkListBox *list_box;

  GtkStringList *lines;
  GCancellable *reading;
};

G_DEFINE_FINAL_TYPE (FmTastingStoryList, fm_tasting_story_list, GTK_TYPE_WIDGET)

static GtkWidget *
line_row (gpointer item, gpointer user_data)
{
  const char *line = gtk_string_object_get_string (item);
  GtkWidget *label = gtk_label_new (line);
  GtkWidget *row = gtk_list_box_row_new ();

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_margin_start (label, 12);
  gtk_widget_set_margin_end (label, 12);
  gtk_widget_set_margin_top (label, 9);
  gtk_widget_set_margin_bottom (label, 9);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, line, -1);
  return row;
}

static gpointer
read_outcomes (FmNotebook *notebook,
               gpointer experiment_id,
               GCancellable *cancellable,
               GError **error)
{
  return fm_tastings_outcomes (notebook, 0, 0, *(gint64 *)experiment_id, error);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmTastingStoryList *self = FM_TASTING_STORY_LIST (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) outcomes = fm_store_task_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->lines == NULL)
    return;
  if (outcomes == NULL)
    g_warning ("The tastings of an experiment could not be read: %s", error->message);
  fm_tasting_story_list_set_outcomes (self, outcomes);
}

static void
stop_reading (FmTastingStoryList *self)
{
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
}

static void
fm_tasting_story_list_dispose (GObject *object)
{
  FmTastingStoryList *self = FM_TASTING_STORY_LIST (object);

  stop_reading (self);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_STORY_LIST);
  g_clear_object (&self->lines);
  G_OBJECT_CLASS (fm_tasting_story_list_parent_class)->dispose (object);
}

static void
fm_tasting_story_list_class_init (FmTastingStoryListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_story_list_dispose;
  g_type_ensure (FM_TYPE_ONE_STOP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-story-list.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingStoryList, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingStoryList, list_box);
}

static void
fm_tasting_story_list_init (FmTastingStoryList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->lines = gtk_string_list_new (NULL);
  gtk_list_box_bind_model (self->list_box, G_LIST_MODEL (self->lines), line_row, NULL, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

void
fm_tasting_story_list_set_outcomes (FmTastingStoryList *self, const GPtrArray *outcomes)
{
  guint n = outcomes != NULL ? outcomes->len : 0;
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (lines, fm_tasting_story_line (g_ptr_array_index (outcomes, i)));
  g_ptr_array_add (lines, NULL);
  gtk_string_list_splice (self->lines, 0, g_list_model_get_n_items (G_LIST_MODEL (self->lines)),
                          (const char *const *)lines->pdata);
  gtk_widget_set_visible (GTK_WIDGET (self), n > 0);
}

void
fm_tasting_story_list_read (FmTastingStoryList *self, FmNotebook *notebook, gint64 experiment_id)
{
  stop_reading (self);
  if (notebook == NULL || experiment_id == 0) {
    fm_tasting_story_list_set_outcomes (self, NULL);
    return;
  }
  self->reading = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = notebook,
      .run = read_outcomes,
      .free_result = (GDestroyNotify)g_ptr_array_unref,
      .data = g_memdup2 (&experiment_id, sizeof experiment_id),
      .free_data = g_free,
      .cancellable = self->reading,
      .done = read_cb,
  });
}
