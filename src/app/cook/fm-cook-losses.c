/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-losses.c - predicted and measured cook loss by fat level, beside each other */
#include "app/cook/fm-cook-losses.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-text-grid.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"
#include "store/fm-cook-loss.h"

struct _FmCookLosses {
  GtkWidget parent_instance;

  GtkExpander *expander;
  GtkLabel *basis_label;
  GtkGrid *grid;

  FmExperimentDocument *document;
  GCancellable *cancellable;
};

G_DEFINE_FINAL_TYPE (FmCookLosses, fm_cook_losses, GTK_TYPE_WIDGET)

static void
stop (FmCookLosses *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
}

static void
add_loss (FmCookLosses *self, const FmCookLoss *loss)
{
  g_autofree char *fat = fm_number_format_unit (loss->fat_pct, 1, "%");
  g_autofree char *predicted = fm_number_format_unit (loss->predicted_pct, 1, "%");
  g_autofree char *mean = fm_number_format_unit (loss->measured_pct, 1, "%");
  g_autofree char *min = fm_number_format (loss->min_pct, 1);
  g_autofree char *max = fm_number_format (loss->max_pct, 1);
  g_autofree char *measured = NULL;
  const char *texts[] = { fat, predicted, NULL };

  measured = loss->n == 1 ? g_strdup (mean)
                          /* Translators: mean with its percent sign, lowest, highest, number. */
                          : g_strdup_printf (ngettext ("%s (%s to %s, %u experiment)",
                                                       "%s (%s to %s, %u experiments)", loss->n),
                                             mean, min, max, loss->n);
  texts[2] = measured;
  fm_text_grid_add_row (self->grid, texts, G_N_ELEMENTS (texts), FALSE);
}

static void
show_losses (FmCookLosses *self, const GArray *losses)
{
  const FmExperiment *experiment = fm_experiment_document_get_experiment (self->document);
  const char *headings[] = { _ ("Raw fat"), _ ("Predicted loss"), _ ("Measured loss") };
  g_autofree char *basis = NULL;

  if (losses->len == 0)
    basis = g_strdup_printf (_ ("No experiment by this method (%s) has raw and cooked masses of a "
                                "patty and a known fat yet."),
                             fm_cook_method_name (experiment->method));
  else
    /* Translators: number of experiments, cooking method. */
    basis = g_strdup_printf (_ ("Percent of the raw mass. Predicted: from the raw and cooked pairs "
                                "of USDA SR. Measured: of the latest %d experiments, those of "
                                "the same kinds of animal by this method: %s."),
                             FM_COOK_LOSS_MOST, fm_cook_method_name (experiment->method));
  gtk_label_set_text (self->basis_label, basis);
  fm_text_grid_clear (self->grid);
  if (losses->len > 0)
    fm_text_grid_add_row (self->grid, headings, G_N_ELEMENTS (headings), TRUE);
  for (guint i = 0; i < losses->len; i++)
    add_loss (self, &g_array_index (losses, FmCookLoss, i));
}

static gpointer
find_losses (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const FmExperiment *experiment = data;

  return fm_cook_losses_of (notebook, experiment->method, experiment->version_id, cancellable,
                            error);
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmCookLosses *self = FM_COOK_LOSSES (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) losses = fm_store_task_finish (result, &error);

  if (losses != NULL && self->document != NULL)
    show_losses (self, losses);
  else if (losses == NULL && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    gtk_label_set_text (self->basis_label, error->message);
}

/* Only asked while it is in view; what was changed here shows after its save. */
static void
load (FmCookLosses *self)
{
  stop (self);
  if (self->document == NULL || !gtk_expander_get_expanded (self->expander))
    return;
  self->cancellable = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_experiment_document_get_notebook (self->document),
      .run = find_losses,
      .free_result = (GDestroyNotify)g_array_unref,
      .data = fm_experiment_copy (fm_experiment_document_get_experiment (self->document)),
      .free_data = (GDestroyNotify)fm_experiment_free,
      .cancellable = self->cancellable,
      .done = loaded_cb,
  });
}

static void
expanded_cb (FmCookLosses *self)
{
  load (self);
}

static void
fm_cook_losses_dispose (GObject *object)
{
  FmCookLosses *self = FM_COOK_LOSSES (object);

  stop (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_COOK_LOSSES);
  G_OBJECT_CLASS (fm_cook_losses_parent_class)->dispose (object);
}

static void
fm_cook_losses_class_init (FmCookLossesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_losses_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-losses.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmCookLosses, expander);
  gtk_widget_class_bind_template_child (widget_class, FmCookLosses, basis_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookLosses, grid);
  gtk_widget_class_bind_template_callback (widget_class, expanded_cb);
}

static void
fm_cook_losses_init (FmCookLosses *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_cook_losses_set_document (FmCookLosses *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_COOK_LOSSES (self));
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document != NULL)
    g_signal_connect_object (document, "saved", G_CALLBACK (load), self, G_CONNECT_SWAPPED);
  load (self);
}
