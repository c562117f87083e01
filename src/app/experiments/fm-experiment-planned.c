/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-planned.c - what the version plans of its process beside what was done */
#include "app/experiments/fm-experiment-planned.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-text-grid.h"
#include "app/widgets/fm-widget.h"
#include "core/experiment/fm-experiment-process.h"

struct _FmExperimentPlanned {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkGrid *grid;
  GtkButton *take_button;

  FmExperimentDocument *document;
  FmProcess *plan; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmExperimentPlanned, fm_experiment_planned, GTK_TYPE_WIDGET)

enum {
  TAKEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static char *
done_text (FmExperimentPlanned *self, FmProcessField field)
{
  const FmExperiment *experiment = fm_experiment_document_get_experiment (self->document);
  g_autofree char *done = fm_experiment_field_text (experiment, field, fm_notebook_units ());

  if (!fm_experiment_has_field (field))
    return g_strdup (_ ("see the notes"));
  if (done == NULL)
    return g_strdup (_ ("not recorded"));
  if (fm_experiment_differs (experiment, self->plan, field))
    /* TRANSLATORS: what was done, which is not what was planned */
    return g_strdup_printf (_ ("%s: differs"), done);
  return g_steal_pointer (&done);
}

static void
show_field (FmExperimentPlanned *self, FmProcessField field)
{
  g_autofree char *planned = fm_process_field_text (self->plan, field, fm_notebook_units ());
  g_autofree char *done = planned != NULL ? done_text (self, field) : NULL;
  const char *texts[] = { fm_process_field_name (field), planned, done };

  if (planned != NULL)
    fm_text_grid_add_row (self->grid, texts, G_N_ELEMENTS (texts), FALSE);
}

static gboolean
can_take (FmExperimentPlanned *self)
{
  g_autoptr (FmExperiment) copy =
      fm_experiment_copy (fm_experiment_document_get_experiment (self->document));

  return fm_experiment_document_is_editable (self->document) &&
         fm_experiment_take_process (copy, self->plan, FM_TAKE_ALL);
}

static void
take_cb (FmExperimentPlanned *self)
{
  FmExperiment *experiment = fm_experiment_document_get_experiment (self->document);

  if (!fm_experiment_take_process (experiment, self->plan, FM_TAKE_ALL))
    return;
  fm_experiment_document_did (self->document, _ ("Take over as planned"));
  g_signal_emit (self, signals[TAKEN], 0);
}

static void
fm_experiment_planned_dispose (GObject *object)
{
  FmExperimentPlanned *self = FM_EXPERIMENT_PLANNED (object);

  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_EXPERIMENT_PLANNED);
  g_clear_object (&self->document);
  g_clear_pointer (&self->plan, fm_process_free);
  G_OBJECT_CLASS (fm_experiment_planned_parent_class)->dispose (object);
}

static void
fm_experiment_planned_class_init (FmExperimentPlannedClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_planned_dispose;
  signals[TAKEN] = g_signal_new ("taken", FM_TYPE_EXPERIMENT_PLANNED, G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-planned.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPlanned, box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPlanned, grid);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentPlanned, take_button);
  gtk_widget_class_bind_template_callback (widget_class, take_cb);
}

static void
fm_experiment_planned_init (FmExperimentPlanned *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (fm_experiment_planned_update), self, G_CONNECT_SWAPPED);
}

void
fm_experiment_planned_set_document (FmExperimentPlanned *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_EXPERIMENT_PLANNED (self));
  g_set_object (&self->document, document);
  fm_experiment_planned_update (self);
}

void
fm_experiment_planned_set_plan (FmExperimentPlanned *self, const FmProcess *plan)
{
  g_return_if_fail (FM_IS_EXPERIMENT_PLANNED (self));
  g_clear_pointer (&self->plan, fm_process_free);
  self->plan = plan != NULL ? fm_process_copy (plan) : NULL;
  fm_experiment_planned_update (self);
}

void
fm_experiment_planned_update (FmExperimentPlanned *self)
{
  const char *headings[] = { _ ("Step"), _ ("Planned"), _ ("Done") };
  gboolean shown = FALSE;

  g_return_if_fail (FM_IS_EXPERIMENT_PLANNED (self));
  shown = self->document != NULL && self->plan != NULL && !fm_process_is_empty (self->plan);
  gtk_widget_set_visible (GTK_WIDGET (self), shown);
  fm_text_grid_clear (self->grid);
  if (!shown)
    return;
  fm_text_grid_add_row (self->grid, headings, G_N_ELEMENTS (headings), TRUE);
  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++)
    show_field (self, (FmProcessField)i);
  gtk_widget_set_sensitive (GTK_WIDGET (self->take_button), can_take (self));
}
