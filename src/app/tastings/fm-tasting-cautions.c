/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-cautions.c - core readings and allergens of a plan's samples, as far as on record */
#include "app/tastings/fm-tasting-cautions.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-store-task.h"
#include "app/widgets/fm-widget.h"

struct _FmTastingCautions {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *lines_label;
  GtkLabel *figures_label;

  FmTastingDocument *document;
  GCancellable *reading;
  char *shown; /* samples that the lines are of, or are being read for */
};

G_DEFINE_FINAL_TYPE (FmTastingCautions, fm_tasting_cautions, GTK_TYPE_WIDGET)

static gpointer
read_cautions (FmNotebook *notebook, gpointer tasting, GCancellable *cancellable, GError **error)
{
  return fm_tastings_cautions (notebook, tasting, error);
}

static void
show (FmTastingCautions *self, const char *lines, const char *figures)
{
  fm_widget_set_label (self->lines_label, lines);
  fm_widget_set_label (self->figures_label, figures);
  gtk_widget_set_visible (GTK_WIDGET (self), *lines != '\0');
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmTastingCautions *self = FM_TASTING_CAUTIONS (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) cautions = fm_tasting_cautions_read_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->document == NULL)
    return;
  if (cautions == NULL) {
    show (self, error->message, "");
  } else {
    g_autofree char *lines = fm_tasting_cautions_lines (cautions);
    g_autofree char *figures = fm_tasting_cautions_figures (cautions);

    show (self, lines, cautions->len > 0 ? figures : "");
  }
}

static void
stop_reading (FmTastingCautions *self)
{
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
  g_clear_pointer (&self->shown, g_free);
}

static char *
name_samples (const FmTasting *tasting)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < tasting->samples->len; i++) {
    const FmTastingSample *sample = g_ptr_array_index (tasting->samples, i);

    g_string_append_printf (text, "%" G_GINT64_FORMAT " %s\n", sample->experiment_id, sample->name);
  }
  return g_string_free (text, FALSE);
}

/* What is known may have changed on another page meanwhile. */
static void
map_cb (FmTastingCautions *self)
{
  stop_reading (self);
  fm_tasting_cautions_refresh (self);
}

static void
fm_tasting_cautions_dispose (GObject *object)
{
  FmTastingCautions *self = FM_TASTING_CAUTIONS (object);

  stop_reading (self);
  g_clear_object (&self->document);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_CAUTIONS);
  G_OBJECT_CLASS (fm_tasting_cautions_parent_class)->dispose (object);
}

static void
fm_tasting_cautions_class_init (FmTastingCautionsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_cautions_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-cautions.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingCautions, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingCautions, lines_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingCautions, figures_label);
}

static void
fm_tasting_cautions_init (FmTastingCautions *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_connect (self, "map", G_CALLBACK (map_cb), NULL);
}

void
fm_tasting_cautions_set_document (FmTastingCautions *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_CAUTIONS (self));
  stop_reading (self);
  g_set_object (&self->document, document);
  /* Not even a hidden label keeps names of samples once their codes are given out. */
  show (self, "", "");
}

void
fm_tasting_cautions_refresh (FmTastingCautions *self)
{
  g_autofree char *samples = NULL;

  g_return_if_fail (FM_IS_TASTING_CAUTIONS (self));
  if (self->document == NULL)
    return;
  samples = name_samples (fm_tasting_document_get_tasting (self->document));
  if (g_strcmp0 (samples, self->shown) == 0)
    return;
  stop_reading (self);
  self->shown = g_steal_pointer (&samples);
  self->reading = g_cancellable_new ();
  fm_tasting_cautions_read_async (self->document, self, self->reading, read_cb, NULL);
}

void
fm_tasting_cautions_read_async (FmTastingDocument *document,
                                gpointer owner,
                                GCancellable *cancellable,
                                GAsyncReadyCallback callback,
                                gpointer data)
{
  const FmStoreTask order = {
    .owner = owner,
    .notebook = fm_tasting_document_get_notebook (document),
    .run = read_cautions,
    .free_result = (GDestroyNotify)g_ptr_array_unref,
    .data = fm_tasting_copy (fm_tasting_document_get_tasting (document)),
    .free_data = (GDestroyNotify)fm_tasting_free,
    .cancellable = cancellable,
    .done = callback,
    .user_data = data,
  };

  fm_store_task (&order);
}

GPtrArray *
fm_tasting_cautions_read_finish (GAsyncResult *result, GError **error)
{
  return fm_store_task_finish (result, error);
}

char *
fm_tasting_cautions_lines (const GPtrArray *cautions)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < cautions->len; i++) {
    g_autofree char *line = fm_tasting_caution_text (g_ptr_array_index (cautions, i));

    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", line);
  }
  return g_string_free (text, FALSE);
}
