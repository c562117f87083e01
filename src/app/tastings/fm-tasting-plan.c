/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-plan.c - a tasting before it starts: samples, tasters, what is asked, what it can show
 */
#include "app/tastings/fm-tasting-plan.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/compare/fm-compare-picker.h"
#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-number-entry.h"
#include "app/tastings/fm-tasting-asked.h"
#include "app/tastings/fm-tasting-cautions.h"
#include "app/tastings/fm-tasting-names.h"
#include "app/tastings/fm-tasting-order.h"
#include "app/tastings/fm-tasting-pick.h"
#include "app/tastings/fm-tasting-query.h"
#include "app/tastings/fm-tasting-reason.h"
#include "app/tastings/fm-tasting-scope.h"
#include "app/widgets/fm-widget.h"

/* Fewer samples make no two sessions that share one. */
#define MIN_SPLIT 3

struct _FmTastingPlan {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkWidget *choose_button;
  FmTastingNames *samples;
  FmTastingNames *tasters;
  FmTastingAsked *asked;
  FmTastingOrder *order;
  GtkWidget *sessions_button;
  FmNumberEntry *max_entry;
  FmNumberEntry *seed_entry;
  GtkDropDown *blinding_choice;
  GtkLabel *blinding_label;
  FmTastingScope *scope;
  FmTastingCautions *cautions;
  GtkButton *arrange_button;
  GtkLabel *problem_label;

  FmTastingDocument *document;
  GCancellable *naming;   /* while the names of earlier tasters are read */
  GCancellable *checking; /* while the record of the samples is read, before they are arranged */
};

G_DEFINE_FINAL_TYPE (FmTastingPlan, fm_tasting_plan, GTK_TYPE_WIDGET)

static FmTasting *
get_tasting (FmTastingPlan *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

static GtkWindow *
get_window (FmTastingPlan *self)
{
  return GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
}

static void
show_samples (FmTastingPlan *self)
{
  const FmTasting *tasting = get_tasting (self);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) names = NULL;

  for (guint i = 0; i < tasting->samples->len; i++) {
    const FmTastingSample *sample = g_ptr_array_index (tasting->samples, i);

    g_strv_builder_add (builder, sample->name != NULL ? sample->name : "");
  }
  names = g_strv_builder_end (builder);
  fm_tasting_names_set_names (self->samples, (const char *const *)names);
}

static void
show_tasters (FmTastingPlan *self)
{
  const FmTasting *tasting = get_tasting (self);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) names = NULL;

  for (guint i = 0; i < tasting->tasters->len; i++) {
    const FmTaster *taster = g_ptr_array_index (tasting->tasters, i);

    g_strv_builder_add (builder, taster->name != NULL ? taster->name : "");
  }
  names = g_strv_builder_end (builder);
  fm_tasting_names_set_names (self->tasters, (const char *const *)names);
}

static void
show_problem (FmTastingPlan *self)
{
  g_autoptr (GError) error = NULL;
  const gboolean complete = fm_tasting_check (get_tasting (self), &error);

  gtk_widget_set_sensitive (GTK_WIDGET (self->arrange_button), complete);
  fm_widget_set_label (self->problem_label, complete ? "" : error->message);
  gtk_widget_set_visible (GTK_WIDGET (self->problem_label), !complete);
}

static void
refresh (FmTastingPlan *self)
{
  const FmTasting *tasting = get_tasting (self);

  /* The sealing itself is told as a change as well; by then there is no plan to show. */
  if (tasting->state != FM_TASTING_PLANNED)
    return;
  show_samples (self);
  show_tasters (self);
  fm_tasting_asked_refresh (self->asked);
  fm_tasting_order_refresh (self->order);
  gtk_widget_set_visible (self->sessions_button, tasting->samples->len >= MIN_SPLIT);
  fm_number_entry_set_value (self->max_entry, tasting->max_per_taster);
  fm_number_entry_set_value (self->seed_entry, (double)tasting->seed);
  gtk_drop_down_set_selected (self->blinding_choice, tasting->blinding);
  fm_widget_set_label (self->blinding_label, fm_tasting_blinding_worth (tasting->blinding));
  fm_tasting_scope_show (self->scope, tasting);
  fm_tasting_cautions_refresh (self->cautions);
  show_problem (self);
}

typedef struct {
  FmTastingPlan *plan;
  FmTastingDocument *document;
} Picking;

static void
picked_loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autofree Picking *picking = data;
  g_autoptr (FmTastingPlan) self = picking->plan;
  g_autoptr (FmTastingDocument) document = picking->document;
  g_autoptr (GPtrArray) picked = fm_tasting_pick_load_finish (result, NULL);

  if (picked == NULL || self->document != document)
    return;
  fm_tasting_pick_apply (get_tasting (self), picked);
  fm_tasting_document_did (document, _ ("Choose samples"));
}

static void
chosen_cb (FmTastingPlan *self, const char *const *keys)
{
  Picking *picking;

  if (self->document == NULL)
    return;
  picking = g_new0 (Picking, 1);
  picking->plan = g_object_ref (self);
  picking->document = g_object_ref (self->document);
  fm_tasting_pick_load_async (fm_tasting_document_get_notebook (self->document), keys,
                              picked_loaded_cb, picking);
}

static void
choose_clicked_cb (FmTastingPlan *self)
{
  g_auto (GStrv) keys = NULL;
  guint n_outside;
  FmComparePicker *picker;

  if (self->document == NULL)
    return;
  keys = fm_tasting_pick_keys (get_tasting (self));
  n_outside = get_tasting (self)->samples->len - g_strv_length (keys);
  picker = fm_compare_picker_new_for_tasting (
      get_window (self), fm_tasting_document_get_notebook (self->document),
      (const char *const *)keys, FM_TASTING_MAX_SAMPLES - n_outside);
  g_signal_connect_object (picker, "chosen", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (picker));
}

static void
sample_added_cb (FmTastingPlan *self, const char *name)
{
  if (self->document == NULL || get_tasting (self)->samples->len >= FM_TASTING_MAX_SAMPLES)
    return;
  fm_tasting_add_sample (get_tasting (self), 0, 0, name);
  fm_tasting_document_did_to (self->document, _ ("Add %s"), name);
}

static void
sample_removed_cb (FmTastingPlan *self, guint index)
{
  g_autofree char *removed = NULL;

  if (self->document == NULL || index >= get_tasting (self)->samples->len)
    return;
  removed =
      g_strdup (((FmTastingSample *)g_ptr_array_index (get_tasting (self)->samples, index))->name);
  fm_tasting_remove_sample (get_tasting (self), index);
  fm_tasting_document_did_to (self->document, _ ("Take out %s"), removed);
}

static void
taster_added_cb (FmTastingPlan *self, const char *name)
{
  if (self->document == NULL || get_tasting (self)->tasters->len >= FM_TASTING_MAX_TASTERS)
    return;
  fm_tasting_add_taster (get_tasting (self), name);
  fm_tasting_document_did_to (self->document, _ ("Add %s"), name);
}

static void
taster_removed_cb (FmTastingPlan *self, guint index)
{
  g_autofree char *removed = NULL;

  if (self->document == NULL || index >= get_tasting (self)->tasters->len)
    return;
  removed = g_strdup (((FmTaster *)g_ptr_array_index (get_tasting (self)->tasters, index))->name);
  fm_tasting_remove_taster (get_tasting (self), index);
  fm_tasting_document_did_to (self->document, _ ("Take out %s"), removed);
}

static void
max_changed_cb (FmTastingPlan *self, double value)
{
  if (self->document == NULL)
    return;
  get_tasting (self)->max_per_taster = (guint)value;
  fm_tasting_document_did (self->document, fm_number_entry_get_what (self->max_entry));
}

static void
seed_changed_cb (FmTastingPlan *self, double value)
{
  if (self->document == NULL)
    return;
  get_tasting (self)->seed = (guint64)value;
  fm_tasting_document_did (self->document, fm_number_entry_get_what (self->seed_entry));
}

static void
blinding_chosen_cb (FmTastingPlan *self)
{
  const guint chosen = gtk_drop_down_get_selected (self->blinding_choice);

  if (self->document == NULL || chosen >= FM_TASTING_N_BLINDINGS ||
      chosen == (guint)get_tasting (self)->blinding)
    return;
  get_tasting (self)->blinding = (FmTastingBlinding)chosen;
  fm_tasting_document_did (self->document, _ ("Who knows the codes"));
}

static void
say_failure (FmTastingPlan *self, const GError *error)
{
  GtkWidget *dialog = adw_message_dialog_new (
      get_window (self), _ ("The Samples Could Not Be Arranged"), error->message);

  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}

/* @unchecked: (nullable) the reason to go on */
static void
arrange (FmTastingPlan *self, const char *unchecked)
{
  g_autoptr (GError) error = NULL;

  if (!fm_tasting_document_arrange (self->document, unchecked, &error))
    say_failure (self, error);
}

static void
arrange_response_cb (AdwMessageDialog *dialog, const char *response, FmTastingPlan *self)
{
  if (self->document == NULL)
    return;
  if (g_str_equal (response, "arrange"))
    arrange (self, NULL);
  else if (g_str_equal (response, "go"))
    arrange (self, fm_tasting_reason_dialog_get (dialog));
}

static AdwMessageDialog *
new_arrange_dialog (FmTastingPlan *self, const GPtrArray *cautions)
{
  const char *heading = _ ("Arrange and Seal?");
  const char *what = _ ("Every portion gets its code and every taster an order of serving. From "
                        "then on samples, tasters and questions are fixed, and the codes stay "
                        "hidden until they are opened.");
  g_autofree char *tally = fm_tasting_cautions_tally (cautions);
  g_autofree char *body = g_strdup_printf ("%s\n\n%s", what, tally);
  g_autofree char *asking = NULL;
  AdwMessageDialog *dialog;

  if (!fm_tasting_cautions_are_on_record (cautions)) {
    asking = g_strdup_printf (_ ("%s\n\nWhy go on? The reason is kept with the tasting."), body);
    return fm_tasting_reason_dialog_new (GTK_WIDGET (self), heading, asking, _ ("_Not Yet"),
                                         _ ("_Arrange and Seal"), _ ("Reason for going on"));
  }
  dialog = ADW_MESSAGE_DIALOG (adw_message_dialog_new (get_window (self), heading, body));
  adw_message_dialog_add_responses (dialog, "cancel", _ ("_Not Yet"), "arrange",
                                    _ ("_Arrange and Seal"), NULL);
  adw_message_dialog_set_response_appearance (dialog, "arrange", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (dialog, "arrange");
  adw_message_dialog_set_close_response (dialog, "cancel");
  return dialog;
}

static void
checked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmTastingPlan *self = FM_TASTING_PLAN (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) cautions = fm_tasting_cautions_read_finish (result, &error);
  AdwMessageDialog *dialog;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->document == NULL)
    return;
  g_clear_object (&self->checking);
  if (cautions == NULL) {
    say_failure (self, error);
    return;
  }
  dialog = new_arrange_dialog (self, cautions);
  g_signal_connect_object (dialog, "response", G_CALLBACK (arrange_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
arrange_clicked_cb (FmTastingPlan *self)
{
  if (self->document == NULL || self->checking != NULL)
    return;
  self->checking = g_cancellable_new ();
  fm_tasting_cautions_read_async (self->document, self, self->checking, checked_cb, NULL);
}

static void
names_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingPlan) self = data;
  g_autoptr (GPtrArray) names = fm_tasting_query_tasters_finish (result, NULL);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) offered = NULL;

  /* Nothing depends on the names: without them they are written again. */
  if (names == NULL || self->tasters == NULL)
    return;
  for (guint i = 0; i < names->len; i++)
    g_strv_builder_add (builder, g_ptr_array_index (names, i));
  offered = g_strv_builder_end (builder);
  fm_tasting_names_set_offered (self->tasters, (const char *const *)offered);
}

static void
read_names (FmTastingPlan *self)
{
  self->naming = g_cancellable_new ();
  fm_tasting_query_tasters_async (fm_tasting_document_get_notebook (self->document), self->naming,
                                  names_read_cb, g_object_ref (self));
}

static void
leave_document (FmTastingPlan *self)
{
  g_cancellable_cancel (self->naming);
  g_clear_object (&self->naming);
  g_cancellable_cancel (self->checking);
  g_clear_object (&self->checking);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

/* Not even hidden widgets keep names of samples once their codes are given out. */
static void
forget (FmTastingPlan *self)
{
  const char *const none[] = { NULL };

  fm_tasting_names_set_names (self->samples, none);
  fm_tasting_names_set_names (self->tasters, none);
}

static void
fm_tasting_plan_dispose (GObject *object)
{
  FmTastingPlan *self = FM_TASTING_PLAN (object);

  leave_document (self);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_PLAN);
  G_OBJECT_CLASS (fm_tasting_plan_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, choose_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, samples);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, tasters);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, asked);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, order);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, max_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, sessions_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, seed_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, blinding_choice);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, blinding_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, scope);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, cautions);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, arrange_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingPlan, problem_label);
  gtk_widget_class_bind_template_callback (widget_class, choose_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, sample_added_cb);
  gtk_widget_class_bind_template_callback (widget_class, sample_removed_cb);
  gtk_widget_class_bind_template_callback (widget_class, taster_added_cb);
  gtk_widget_class_bind_template_callback (widget_class, taster_removed_cb);
  gtk_widget_class_bind_template_callback (widget_class, max_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, seed_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, blinding_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, arrange_clicked_cb);
}

static void
fm_tasting_plan_class_init (FmTastingPlanClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_plan_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_TASTING_ASKED);
  g_type_ensure (FM_TYPE_TASTING_CAUTIONS);
  g_type_ensure (FM_TYPE_TASTING_NAMES);
  g_type_ensure (FM_TYPE_TASTING_ORDER);
  g_type_ensure (FM_TYPE_TASTING_SCOPE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-plan.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_template (widget_class);
}

static void
list_blindings (FmTastingPlan *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < FM_TASTING_N_BLINDINGS; i++)
    gtk_string_list_append (names, fm_tasting_blinding_name ((FmTastingBlinding)i));
  gtk_drop_down_set_model (self->blinding_choice, G_LIST_MODEL (names));
}

static void
fm_tasting_plan_init (FmTastingPlan *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_accessible_name_drop_down (self->blinding_choice, _ ("How the names are kept from the cook"));
  list_blindings (self);
  fm_tasting_names_set_words (self->samples, _ ("Samples"), _ ("Add a sample from outside by name"),
                              _ ("Take out %s"));
  fm_tasting_names_set_tall (self->samples, TRUE);
  fm_tasting_names_set_words (self->tasters, _ ("Tasters"), _ ("Add a taster by name"),
                              _ ("Take out %s"));
}

void
fm_tasting_plan_set_document (FmTastingPlan *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_PLAN (self));
  leave_document (self);
  g_set_object (&self->document, document);
  fm_tasting_asked_set_document (self->asked, document);
  fm_tasting_order_set_document (self->order, document);
  fm_tasting_cautions_set_document (self->cautions, document);
  if (document == NULL) {
    forget (self);
    return;
  }
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  gtk_widget_set_sensitive (GTK_WIDGET (self), fm_tasting_document_is_editable (document));
  fm_number_entry_load_value (self->max_entry, get_tasting (self)->max_per_taster);
  fm_number_entry_load_value (self->seed_entry, (double)get_tasting (self)->seed);
  refresh (self);
  read_names (self);
}
