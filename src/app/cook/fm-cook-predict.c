/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-predict.c - an estimate of the core temperature, beside the readings of an experiment */
#include "app/cook/fm-cook-predict.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/cook/fm-cook-estimate.h"
#include "app/cook/fm-cook-inputs.h"
#include "app/cook/fm-cook-job.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-double.h"
#include "core/heat/fm-hold-table.h"
#include "core/base/fm-number.h"

/* The fewest that fm_heat_fit_contact() takes. */
#define FEWEST_TO_FIT 3

/* What the experiment keeps of the entries. */
typedef struct {
  double diameter_mm;
  double thickness_mm;
  double target_c;
} Kept;

struct _FmCookPredict {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *notice_label;
  GtkLabel *mix_label;
  FmCookInputs *inputs;
  GtkLabel *caution_label;
  GtkLabel *error_label;
  FmCookEstimate *estimate;
  GtkButton *fit_button;
  GtkSpinner *fit_spinner;
  GtkButton *fit_stop_button;
  GtkLabel *fit_label;
  GtkLabel *assumptions_label;

  FmExperimentDocument *document;
  FmSpeciesSet species; /* of the version; the empty set before it was read */
  GCancellable *start_cancellable;
  GCancellable *predict_cancellable;
  GCancellable *fit_cancellable;
  Kept kept;      /* as last shown or written */
  gboolean taken; /* the entries show this experiment's values */
};

G_DEFINE_FINAL_TYPE (FmCookPredict, fm_cook_predict, GTK_TYPE_WIDGET)

static void predict (FmCookPredict *self);

static const FmExperiment *
get_experiment (FmCookPredict *self)
{
  return fm_experiment_document_get_experiment (self->document);
}

static void
show_text (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL);
}

static void
stop (GCancellable **cancellable)
{
  if (*cancellable != NULL)
    g_cancellable_cancel (*cancellable);
  g_clear_object (cancellable);
}

static GCancellable *
restart (GCancellable **cancellable)
{
  stop (cancellable);
  *cancellable = g_cancellable_new ();
  return *cancellable;
}

static gboolean
was_cancelled (const GError *error)
{
  return g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static Kept
shown_values (FmCookPredict *self)
{
  const FmHeatSetup *setup = fm_cook_inputs_get_setup (self->inputs);

  return (Kept){ setup->diameter_mm, setup->thickness_mm,
                 fm_cook_inputs_get_target_c (self->inputs) };
}

static void
show_assumptions (FmCookPredict *self)
{
  g_auto (GStrv) sentences = fm_heat_assumptions (fm_cook_inputs_get_setup (self->inputs));
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; sentences[i] != NULL; i++)
    g_string_append_printf (text, "%s• %s", i > 0 ? "\n" : "", sentences[i]);
  gtk_label_set_text (self->assumptions_label, text->str);
}

static void
predicted_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmCookPredict) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmHeatResult) heat = fm_cook_job_predict_finish (result, &error);

  if (heat == NULL && was_cancelled (error))
    return;
  show_text (self->error_label, heat == NULL ? error->message : NULL);
  fm_cook_estimate_set_result (self->estimate, heat, fm_cook_inputs_get_target_c (self->inputs));
}

static void
predict (FmCookPredict *self)
{
  g_autofree char *caution =
      fm_hold_doneness_caution (self->species, fm_cook_inputs_get_target_c (self->inputs));

  show_text (self->caution_label, caution);
  show_assumptions (self);
  fm_cook_job_predict_async (fm_cook_inputs_get_setup (self->inputs),
                             restart (&self->predict_cancellable), predicted_cb,
                             g_object_ref (self));
}

/* The model knows a pan only; a cook by another method is not what it estimates. */
static void
show_basis (FmCookPredict *self, const char *mix_text)
{
  const FmCookMethod method = get_experiment (self)->method;
  g_autofree char *text = NULL;

  if (method == FM_COOK_PATTY_PAN_BROILED) {
    show_text (self->mix_label, mix_text);
    return;
  }
  text = g_strdup_printf (_ ("%s The estimate is for a dry pan; this experiment was cooked another "
                             "way: %s."),
                          mix_text, fm_cook_method_name (method));
  show_text (self->mix_label, text);
}

static void
started_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmCookPredict) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmCookStart) start = fm_cook_job_start_finish (result, &error);
  g_autofree char *contact = NULL;
  g_autofree char *text = NULL;

  if (start == NULL) {
    if (!was_cancelled (error))
      show_text (self->error_label, error->message);
    return;
  }
  fm_cook_inputs_set_setup (self->inputs, &start->setup);
  fm_cook_inputs_set_target_c (self->inputs, get_experiment (self)->target_core_c);
  self->kept = shown_values (self);
  self->taken = TRUE;
  contact = fm_number_format_unit (start->setup.contact_w_m2k, 0, "W/(m² K)");
  text = g_strdup_printf (
      start->contact_remembered
          ? _ ("Contact coefficient: %s, fitted to earlier readings on this surface.")
          : _ ("Contact coefficient: %s, not fitted to your own pan yet."),
      contact);
  show_basis (self, start->mix_text);
  show_text (self->fit_label, text);
  predict (self);
}

static void
take_clicked_cb (FmCookPredict *self)
{
  if (self->document == NULL)
    return;
  fm_cook_job_start_async (fm_experiment_document_get_notebook (self->document),
                           get_experiment (self), restart (&self->start_cancellable), started_cb,
                           g_object_ref (self));
}

/* Only what was typed goes into the experiment: a default that is merely shown was not chosen. */
static void
keep_in_experiment (FmCookPredict *self)
{
  const Kept shown = shown_values (self);
  FmExperiment *experiment;

  if (!self->taken || !fm_experiment_document_is_editable (self->document))
    return;
  experiment = fm_experiment_document_get_experiment (self->document);
  if (!fm_double_same (shown.diameter_mm, self->kept.diameter_mm))
    experiment->patty_diameter_mm = shown.diameter_mm;
  if (!fm_double_same (shown.thickness_mm, self->kept.thickness_mm))
    experiment->patty_thickness_mm = shown.thickness_mm;
  if (!fm_double_same (shown.target_c, self->kept.target_c))
    experiment->target_core_c = shown.target_c;
  if (!!fm_double_same (shown.diameter_mm, self->kept.diameter_mm) &&
      !!fm_double_same (shown.thickness_mm, self->kept.thickness_mm) &&
      !!fm_double_same (shown.target_c, self->kept.target_c))
    return;
  self->kept = shown;
  fm_experiment_document_did (self->document, _ ("Form and aim of the patty"));
}

static void
inputs_changed_cb (FmCookPredict *self)
{
  keep_in_experiment (self);
  predict (self);
}

static void
show_readings (FmCookPredict *self)
{
  const GArray *readings = get_experiment (self)->core_readings;
  const gboolean is_fitting = self->fit_cancellable != NULL;

  fm_cook_estimate_set_readings (self->estimate, readings);
  gtk_widget_set_sensitive (GTK_WIDGET (self->fit_button),
                            !is_fitting && readings->len >= FEWEST_TO_FIT);
  gtk_widget_set_visible (GTK_WIDGET (self->fit_stop_button), is_fitting);
  gtk_widget_set_visible (GTK_WIDGET (self->fit_spinner), is_fitting);
  gtk_spinner_set_spinning (self->fit_spinner, is_fitting);
}

static char *
fit_text (const FmHeatFit *fit, const char *not_remembered)
{
  g_autofree char *contact = fm_number_format_unit (fit->contact_w_m2k, 0, "W/(m² K)");
  g_autofree char *rms = fm_number_format_unit (fit->rms_c, 1, "K");
  g_autofree char *before = fm_number_format_unit (fit->rms_before_c, 1, "K");

  if (fit->at_bound)
    return g_strdup_printf (_ ("The search ended at its limit of %s: no coefficient fits these "
                               "readings. Check the times, the pan and the thickness. Nothing is "
                               "remembered."),
                            contact);
  if (not_remembered != NULL)
    return g_strdup_printf (_ ("Fitted: %s, typically %s from the readings (before: %s). It could "
                               "not be remembered: %s"),
                            contact, rms, before, not_remembered);
  return g_strdup_printf (
      _ ("Fitted: %s, typically %s from the readings (before: %s). The notebook "
         "remembers it for this surface."),
      contact, rms, before);
}

static void
fitted_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmCookPredict) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *not_remembered = NULL;
  g_autofree char *text = NULL;
  FmHeatFit fit;

  if (!fm_cook_job_fit_finish (result, &fit, &not_remembered, &error)) {
    if (was_cancelled (error))
      return;
    show_text (self->fit_label, error->message);
  } else {
    text = fit_text (&fit, not_remembered);
    show_text (self->fit_label, text);
    if (!fit.at_bound) {
      fm_cook_inputs_set_contact (self->inputs, fit.contact_w_m2k);
      predict (self);
    }
  }
  stop (&self->fit_cancellable);
  show_readings (self);
}

static void
fit_clicked_cb (FmCookPredict *self)
{
  if (self->document == NULL)
    return;
  show_text (self->fit_label, _ ("Fitting…"));
  fm_cook_job_fit_async (fm_experiment_document_get_notebook (self->document),
                         get_experiment (self), fm_cook_inputs_get_setup (self->inputs),
                         restart (&self->fit_cancellable), fitted_cb, g_object_ref (self));
  show_readings (self);
}

static void
fit_stop_clicked_cb (FmCookPredict *self)
{
  stop (&self->fit_cancellable);
  show_text (self->fit_label, _ ("The fit was stopped. Nothing is changed or remembered."));
  if (self->document != NULL)
    show_readings (self);
}

static void
stop_all (FmCookPredict *self)
{
  stop (&self->start_cancellable);
  stop (&self->predict_cancellable);
  stop (&self->fit_cancellable);
}

static void
fm_cook_predict_dispose (GObject *object)
{
  FmCookPredict *self = FM_COOK_PREDICT (object);

  stop_all (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_COOK_PREDICT);
  G_OBJECT_CLASS (fm_cook_predict_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, box);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, notice_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, mix_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, inputs);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, caution_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, error_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, estimate);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, fit_button);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, fit_spinner);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, fit_stop_button);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, fit_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookPredict, assumptions_label);
}

static void
fm_cook_predict_class_init (FmCookPredictClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_predict_dispose;
  g_type_ensure (FM_TYPE_COOK_ESTIMATE);
  g_type_ensure (FM_TYPE_COOK_INPUTS);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-predict.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, inputs_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, take_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, fit_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, fit_stop_clicked_cb);
}

static void
fm_cook_predict_init (FmCookPredict *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_label_set_text (self->notice_label, fm_heat_label ());
}

void
fm_cook_predict_set_document (FmCookPredict *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_COOK_PREDICT (self));
  stop_all (self);
  self->taken = FALSE;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  show_text (self->fit_label, NULL);
  show_text (self->error_label, NULL);
  fm_cook_estimate_set_result (self->estimate, NULL, NAN);
  if (document == NULL)
    return;
  g_signal_connect_object (document, "changed", G_CALLBACK (show_readings), self,
                           G_CONNECT_SWAPPED);
  show_readings (self);
  take_clicked_cb (self);
}

void
fm_cook_predict_set_species (FmCookPredict *self, FmSpeciesSet species)
{
  g_return_if_fail (FM_IS_COOK_PREDICT (self));
  self->species = species;
  if (self->taken)
    predict (self);
}
