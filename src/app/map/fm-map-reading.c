/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-reading.c - what a map shows: fit, pictures, the best blend and the next one to try */
#include "app/map/fm-map-reading.h"

#include <glib/gi18n-lib.h>

#include "app/charts/fm-chart.h"
#include "app/widgets/fm-accessible.h"
#include "app/map/fm-map-goals.h"
#include "app/map/fm-map-numbers.h"
#include "app/map/fm-map-slices.h"
#include "app/map/fm-map-spots.h"
#include "app/map/fm-map-traces.h"
#include "app/widgets/fm-page.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

#define WAIT_MS 300

struct _FmMapReading {
  GtkWidget parent_instance;

  GtkBox *choices;
  GtkDropDown *response_drop_down;
  GtkDropDown *model_drop_down;
  GtkDropDown *goal_drop_down;
  GtkSpinner *spinner;
  FmMapNumbers *numbers;
  FmMapSpots *spots;
  FmMapSlices *slices;
  FmMapTraces *traces;
  FmMapGoals *goals;

  FmMapDocument *document;
  GArray *responses; /* FmMapResponse, those in the drop-down */
  FmMapResponse response;
  gboolean filling;
  guint wait_id;
  GCancellable *cancellable;
  FmMapFit *fit; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmMapReading, fm_map_reading, GTK_TYPE_WIDGET)

static void
stop (FmMapReading *self)
{
  g_clear_handle_id (&self->wait_id, g_source_remove);
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
}

/* Pictures that are saved name blend and map. */
static void
name_pictures (FmMapReading *self)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (self), FM_TYPE_PAGE);
  FmSession *session = page != NULL ? fm_page_get_session (FM_PAGE (page)) : NULL;
  const char *blend = session != NULL ? fm_session_get_blend_name (session) : NULL;
  g_autofree char *subject =
      /* Translators: the names of a blend and of a map. */
      g_strdup_printf (_ ("%s, map “%s”"), blend != NULL ? blend : "",
                       fm_map_document_get_map (self->document)->name);

  fm_chart_set_subject_in (GTK_WIDGET (self), subject);
}

static void
show_fit (FmMapReading *self)
{
  name_pictures (self);
  fm_map_numbers_show (self->numbers, self->fit, fm_map_document_get_short_names (self->document));
  fm_map_spots_show (self->spots, self->document, self->fit);
  fm_map_slices_show (self->slices, self->document, self->fit);
  fm_map_traces_show (self->traces, self->document, self->fit);
}

static void
drop_fit (FmMapReading *self, const char *sentence)
{
  fm_map_numbers_say (self->numbers, sentence);
  fm_map_spots_show (self->spots, self->document, NULL);
  fm_map_slices_show (self->slices, self->document, NULL);
  fm_map_traces_show (self->traces, self->document, NULL);
  g_clear_pointer (&self->fit, fm_map_fit_free);
}

static void
fitted_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmMapReading) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmMapFit) before = NULL; /* read by the pictures until they show the new one */
  FmMapFit *fit = fm_map_fit_finish (result, &error);

  if (fit == NULL)
    return;
  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
  before = self->fit;
  self->fit = fit;
  show_fit (self);
}

/* Responses of which nothing was measured are not offered. */
static void
fill_responses (FmMapReading *self, const FmMapData *data)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  guint selected = 0;

  g_array_set_size (self->responses, 0);
  for (FmMapResponse i = 0; i < FM_MAP_N_RESPONSES; i++) {
    if (data->series[i].data->x->n == 0)
      continue;
    if (i == self->response)
      selected = self->responses->len;
    g_array_append_val (self->responses, i);
    gtk_string_list_append (list, fm_map_response_name (i));
  }
  self->filling = TRUE;
  gtk_drop_down_set_model (self->response_drop_down, G_LIST_MODEL (list));
  gtk_drop_down_set_selected (self->response_drop_down, selected);
  self->filling = FALSE;
  if (self->responses->len > 0)
    self->response = g_array_index (self->responses, FmMapResponse, selected);
}

static void
start_fit (FmMapReading *self)
{
  const int model = (int)gtk_drop_down_get_selected (self->model_drop_down) - 1;

  self->cancellable = g_cancellable_new ();
  gtk_spinner_start (self->spinner);
  fm_map_fit_async (self->document, self->response, (FmMapModel)model,
                    gtk_drop_down_get_selected (self->goal_drop_down) == 0, self->cancellable,
                    fitted_cb, g_object_ref (self));
}

static gboolean
wait_over_cb (gpointer data)
{
  FmMapReading *self = data;

  self->wait_id = 0;
  stop (self);
  fm_map_goals_show (self->goals, self->document);
  if (!fm_map_fit_is_ready (self->document)) {
    drop_fit (self, _ ("A map shows once its components can be mixed and blends lie within its "
                       "shares and limits."));
    return G_SOURCE_REMOVE;
  }
  fill_responses (self, fm_map_document_get_data (self->document));
  if (self->responses->len == 0)
    drop_fit (self, _ ("Nothing was measured yet of a blend on this map. Make trials into "
                       "versions, then cook them, or taste them blind."));
  else
    start_fit (self);
  return G_SOURCE_REMOVE;
}

static void
recompute (FmMapReading *self)
{
  stop (self);
  if (self->document != NULL)
    self->wait_id = g_timeout_add (WAIT_MS, wait_over_cb, self);
}

static void
choice_cb (FmMapReading *self)
{
  if (!self->filling)
    recompute (self);
}

static void
response_cb (FmMapReading *self)
{
  const guint selected = gtk_drop_down_get_selected (self->response_drop_down);

  if (self->filling || selected >= self->responses->len)
    return;
  self->response = g_array_index (self->responses, FmMapResponse, selected);
  self->filling = TRUE;
  gtk_drop_down_set_selected (self->goal_drop_down, fm_map_fit_wants_more (self->response) ? 0 : 1);
  self->filling = FALSE;
  recompute (self);
}

static void
fm_map_reading_dispose (GObject *object)
{
  FmMapReading *self = FM_MAP_READING (object);

  fm_map_reading_set_document (self, NULL);
  g_clear_pointer (&self->responses, g_array_unref);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_MAP_READING);
  G_OBJECT_CLASS (fm_map_reading_parent_class)->dispose (object);
}

static void
fm_map_reading_class_init (FmMapReadingClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_reading_dispose;
  g_type_ensure (FM_TYPE_MAP_NUMBERS);
  g_type_ensure (FM_TYPE_MAP_SPOTS);
  g_type_ensure (FM_TYPE_MAP_SLICES);
  g_type_ensure (FM_TYPE_MAP_TRACES);
  g_type_ensure (FM_TYPE_MAP_GOALS);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-reading.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, choices);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, response_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, model_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, goal_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, spinner);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, numbers);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, spots);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, slices);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, traces);
  gtk_widget_class_bind_template_child (widget_class, FmMapReading, goals);
  gtk_widget_class_bind_template_callback (widget_class, choice_cb);
  gtk_widget_class_bind_template_callback (widget_class, response_cb);
}

static void
fm_map_reading_init (FmMapReading *self)
{
  self->responses = g_array_new (FALSE, FALSE, sizeof (FmMapResponse));
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_accessible_name_drop_down (self->response_drop_down, _ ("What the map shows"));
  fm_accessible_name_drop_down (self->model_drop_down, _ ("Model"));
  fm_accessible_name_drop_down (self->goal_drop_down, _ ("Best is"));
  fm_widget_ellipsize_drop_down (self->response_drop_down);
}

void
fm_map_reading_set_document (FmMapReading *self, FmMapDocument *document)
{
  g_return_if_fail (FM_IS_MAP_READING (self));
  if (self->document == document)
    return;
  stop (self);
  drop_fit (self, "");
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_func (self->document, recompute, self);
  g_set_object (&self->document, document);
  fm_map_spots_show (self->spots, document, NULL);
  fm_map_goals_show (self->goals, NULL);
  if (document == NULL)
    return;
  g_signal_connect_object (document, "changed", G_CALLBACK (recompute), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "data-changed", G_CALLBACK (recompute), self,
                           G_CONNECT_SWAPPED);
  recompute (self);
}
