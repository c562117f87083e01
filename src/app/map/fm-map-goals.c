/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-goals.c - several responses at once: goals, and the blend that meets them best */
#include "app/map/fm-map-goals.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-text-grid.h"
#include "app/map/fm-map-goal-row.h"
#include "app/map/fm-map-joined-job.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

#define WAIT_MS 300

struct _FmMapGoals {
  GtkWidget parent_instance;

  GtkExpander *expander;
  GtkBox *rows;
  GtkSpinner *spinner;
  GtkLabel *result_label;
  GtkGrid *grid;
  GtkButton *make_button;
  GtkExpander *method_expander;
  GtkLabel *method_label;

  FmMapDocument *document;
  char *responses; /* the list that the rows were made for */
  guint wait_id;
  GCancellable *cancellable;
  FmMapJoined *joined; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmMapGoals, fm_map_goals, GTK_TYPE_WIDGET)

static void
stop (FmMapGoals *self)
{
  g_clear_handle_id (&self->wait_id, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
}

/* Says @text in place of a result. */
static void
say (FmMapGoals *self, const char *text)
{
  g_clear_pointer (&self->joined, fm_map_joined_free);
  fm_text_grid_clear (self->grid);
  fm_widget_set_label (self->result_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->make_button), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->method_expander), FALSE);
}

static void
add_row (FmMapGoals *self, const FmMapJoined *joined, guint i)
{
  const FmMapResponse response = joined->aims.response[i];
  const int decimals = fm_map_response_decimals (response);
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (response, &unit);
  FmMixPrediction prediction;

  fm_mix_predict_within (joined->fit[i], joined->spot.x, &wording, &prediction);
  g_autofree char *mean = fm_number_format (prediction.mean, decimals);
  g_autofree char *low = fm_number_format (prediction.low, decimals);
  g_autofree char *high = fm_number_format (prediction.high, decimals);
  g_autofree char *interval = g_strdup_printf (_ ("%s to %s"), low, high);
  g_autofree char *met =
      fm_number_format (fm_mix_desirability (&joined->aims.goal[i], prediction.mean), 2);
  const char *texts[] = { fm_map_response_name (response), mean, interval, met };

  fm_text_grid_add_row (self->grid, texts, G_N_ELEMENTS (texts), FALSE);
}

static void
show_joined (FmMapGoals *self, FmMapJoined *joined)
{
  const char *headings[] = { _ ("Response"), _ ("Predicted"), _ ("95 % of the mean"),
                             _ ("Desirability") };
  FmMixResponse wording[FM_MAP_N_RESPONSES];
  g_autoptr (GPtrArray) units = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *sentence = NULL;
  g_autofree char *method = fm_mix_joined_method ();

  say (self, "");
  self->joined = joined;
  for (guint i = 0; i < joined->aims.n; i++) {
    char *unit = NULL;

    wording[i] = fm_map_fit_wording (joined->aims.response[i], &unit);
    g_ptr_array_add (units, unit);
  }
  sentence =
      fm_mix_joined_sentence (joined->aims.n, (const FmMixFit *const *)joined->fit, wording,
                              &joined->spot, fm_map_document_get_short_names (self->document));
  fm_widget_set_label (self->result_label, sentence);
  fm_widget_set_label (self->method_label, method);
  fm_text_grid_add_row (self->grid, headings, G_N_ELEMENTS (headings), TRUE);
  for (guint i = 0; i < joined->aims.n; i++)
    add_row (self, joined, i);
  gtk_widget_set_visible (GTK_WIDGET (self->make_button), TRUE);
  gtk_widget_set_sensitive (GTK_WIDGET (self->make_button),
                            fm_map_document_is_editable (self->document));
  gtk_widget_set_visible (GTK_WIDGET (self->method_expander), TRUE);
}

static void
joined_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmMapGoals) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmMapJoined) joined = fm_map_joined_finish (result, &error);

  if (joined == NULL)
    return;
  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
  if (joined->refusal != NULL)
    say (self, joined->refusal);
  else
    show_joined (self, g_steal_pointer (&joined));
}

/* What is chosen in the rows; a sentence when that is no task yet. */
static char *
read_aims (FmMapGoals *self, FmMapAims *aims)
{
  GtkWidget *row;

  *aims = (FmMapAims){ 0 };
  for (row = gtk_widget_get_first_child (GTK_WIDGET (self->rows)); row != NULL;
       row = gtk_widget_get_next_sibling (row)) {
    char *problem = NULL;

    if (!fm_map_goal_row_get_goal (FM_MAP_GOAL_ROW (row), &aims->goal[aims->n], &problem))
      continue;
    if (problem != NULL)
      return problem;
    aims->response[aims->n++] = fm_map_goal_row_get_response (FM_MAP_GOAL_ROW (row));
  }
  return aims->n < 2 ? g_strdup (_ ("Choose two or more responses.")) : NULL;
}

static gboolean
wait_over_cb (gpointer data)
{
  FmMapGoals *self = data;
  FmMapAims aims;
  g_autofree char *problem = NULL;

  self->wait_id = 0;
  if (!fm_map_fit_is_ready (self->document))
    return G_SOURCE_REMOVE;
  problem = read_aims (self, &aims);
  if (problem != NULL) {
    say (self, problem);
    return G_SOURCE_REMOVE;
  }
  self->cancellable = g_cancellable_new ();
  gtk_spinner_start (self->spinner);
  fm_map_joined_async (self->document, &aims, self->cancellable, joined_cb, g_object_ref (self));
  return G_SOURCE_REMOVE;
}

static void
recompute (FmMapGoals *self)
{
  stop (self);
  if (self->document != NULL)
    self->wait_id = g_timeout_add (WAIT_MS, wait_over_cb, self);
}

static void
make_cb (FmMapGoals *self)
{
  g_autofree char *shares = NULL;
  g_autofree char *reason = NULL;

  if (self->joined == NULL || self->document == NULL)
    return;
  shares = fm_map_document_shares_text (self->document, self->joined->spot.x);
  /* Translators: name of a map, shares of a blend. */
  reason = g_strdup_printf (_ ("Map “%s”: predicted best for all goals: %s"),
                            fm_map_document_get_map (self->document)->name, shares);
  fm_map_document_make_blend (self->document, self->joined->spot.x, reason);
}

static void
add_goal_row (FmMapGoals *self, FmMapResponse response, const FmMixData *data)
{
  double low = INFINITY;
  double high = -INFINITY;
  GtkWidget *row;

  for (guint i = 0; i < data->x->n; i++) {
    low = MIN (low, data->y[i]);
    high = MAX (high, data->y[i]);
  }
  row = fm_map_goal_row_new (response, low, high);
  g_signal_connect_object (row, "changed", G_CALLBACK (recompute), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->rows, row);
}

/* The rows stay as they were set while the same responses were measured. */
static void
fill_rows (FmMapGoals *self, const FmMapData *data)
{
  g_autoptr (GString) responses = g_string_new (NULL);
  GtkWidget *row;

  for (int i = 0; i < FM_MAP_N_RESPONSES; i++)
    if (data->series[i].data->x->n > 0)
      g_string_append_printf (responses, "%d ", i);
  if (g_strcmp0 (responses->str, self->responses) == 0)
    return;
  g_free (self->responses);
  self->responses = g_strdup (responses->str);
  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->rows))) != NULL)
    gtk_box_remove (self->rows, row);
  for (int i = 0; i < FM_MAP_N_RESPONSES; i++)
    if (data->series[i].data->x->n > 0)
      add_goal_row (self, (FmMapResponse)i, data->series[i].data);
}

static void
fm_map_goals_dispose (GObject *object)
{
  FmMapGoals *self = FM_MAP_GOALS (object);

  if (self->spinner != NULL)
    stop (self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->joined, fm_map_joined_free);
  g_clear_pointer (&self->responses, g_free);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_MAP_GOALS);
  G_OBJECT_CLASS (fm_map_goals_parent_class)->dispose (object);
}

static void
fm_map_goals_class_init (FmMapGoalsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_goals_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-goals.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, expander);
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, rows);
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, spinner);
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, result_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, grid);
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, make_button);
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, method_expander);
  gtk_widget_class_bind_template_child (widget_class, FmMapGoals, method_label);
  gtk_widget_class_bind_template_callback (widget_class, make_cb);
}

static void
fm_map_goals_init (FmMapGoals *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

void
fm_map_goals_show (FmMapGoals *self, FmMapDocument *document)
{
  const gboolean ready = fm_map_fit_is_ready (document);

  g_return_if_fail (FM_IS_MAP_GOALS (self));
  stop (self);
  if (g_set_object (&self->document, document))
    g_clear_pointer (&self->responses, g_free);
  gtk_widget_set_visible (GTK_WIDGET (self), ready);
  say (self, "");
  if (!ready)
    return;
  fill_rows (self, fm_map_document_get_data (document));
  recompute (self);
}
