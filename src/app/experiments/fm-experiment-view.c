/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-view.c - one experiment as a page, every change saved as it is made */
#include "app/experiments/fm-experiment-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-accessible.h"
#include "app/charts/fm-chart.h"
#include "app/cook/fm-cook-food.h"
#include "app/cook/fm-cook-panel.h"
#include "app/experiments/fm-experiment-caution.h"
#include "app/widgets/fm-date-entry.h"
#include "app/experiments/fm-experiment-jump.h"
#include "app/experiments/fm-experiment-making.h"
#include "app/experiments/fm-experiment-patties.h"
#include "app/experiments/fm-experiment-planned.h"
#include "app/experiments/fm-experiment-query.h"
#include "app/experiments/fm-experiment-weighings.h"
#include "app/kitchen/fm-kitchen-window.h"
#include "app/photos/fm-photo-paste.h"
#include "app/experiments/fm-readings-editor.h"
#include "app/tastings/fm-tasting-story-list.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/experiment/fm-experiment-repeat.h"
#include "app/widgets/fm-text-room.h"
#include "core/base/fm-text-limit.h"

struct _FmExperimentView {
  FmStoredView parent_instance;

  GtkScrolledWindow *scroller;
  GtkWidget *details_box;
  GtkEntry *title_entry;
  FmDateEntry *date;
  GtkLabel *origin_label;
  GtkDropDown *rating_drop_down;
  GtkWidget *cook_button;
  GtkWidget *last_button;
  GtkWidget *duplicate_button;
  GtkMenuButton *jump_button;
  GtkWidget *judged_box; /* notes, rating and photos */
  FmTastingStoryList *tastings;
  FmExperimentWeighings *weighings;
  FmExperimentPatties *patties;
  FmExperimentPlanned *planned;
  FmExperimentMaking *making;
  FmExperimentCaution *caution;
  FmReadingsEditor *readings;
  FmCookPanel *cook;
  GtkTextView *notes_view;
  FmPhotoGrid *photos;

  FmSession *session;
  FmProcess *plan;                /* (nullable) of the version */
  GCancellable *food_cancellable; /* (nullable) while the version is read */
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmExperimentView, fm_experiment_view, FM_TYPE_STORED_VIEW)

enum {
  PHOTOS_CHANGED,
  SHOW_VERSION,
  DUPLICATE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static FmExperimentDocument *
get_document (FmExperimentView *self)
{
  return fm_stored_view_get_document (FM_STORED_VIEW (self));
}

static FmExperiment *
get_experiment (FmExperimentView *self)
{
  return fm_stored_view_get_content (FM_STORED_VIEW (self));
}

static gboolean
is_loading (FmExperimentView *self)
{
  return self->loading || get_document (self) == NULL;
}

static void
food_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmExperimentView) self = data;
  g_autoptr (GError) error = NULL;
  FmCookFood food;

  if (fm_cook_food_finish (result, &food, &error)) {
    fm_experiment_caution_set_food (self->caution, &food);
    fm_cook_panel_set_food (self->cook, &food);
  } else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    fm_stored_view_say_failure (FM_STORED_VIEW (self), error->message);
  }
}

/* Until it is known what was cooked, the strictest figures stand. */
static void
read_food (FmExperimentView *self)
{
  const FmCookFood unknown = { FM_SPECIES_BIT (FM_SPECIES_UNKNOWN), (double)NAN };

  fm_experiment_caution_set_food (self->caution, &unknown);
  self->food_cancellable = g_cancellable_new ();
  fm_cook_food_async (fm_experiment_document_get_notebook (get_document (self)),
                      get_experiment (self)->version_id, self->food_cancellable, food_read_cb,
                      g_object_ref (self));
}

static void
forget_food (FmExperimentView *self)
{
  if (self->food_cancellable != NULL)
    g_cancellable_cancel (self->food_cancellable);
  g_clear_object (&self->food_cancellable);
}

static char *
take_text (const char *text)
{
  return text[0] != '\0' ? g_strdup (text) : NULL;
}

static void
title_changed_cb (FmExperimentView *self)
{
  if (is_loading (self))
    return;
  g_free (get_experiment (self)->title);
  get_experiment (self)->title =
      take_text (gtk_editable_get_text (GTK_EDITABLE (self->title_entry)));
  fm_experiment_document_did (get_document (self), _ ("Title"));
}

static void
date_changed_cb (FmExperimentView *self, gint64 made_at)
{
  if (is_loading (self))
    return;
  get_experiment (self)->made_at = made_at;
  fm_experiment_document_did (get_document (self), _ ("Date"));
}

static void
rating_changed_cb (FmExperimentView *self)
{
  if (is_loading (self))
    return;
  get_experiment (self)->rating = (int)gtk_drop_down_get_selected (self->rating_drop_down);
  fm_experiment_document_did (get_document (self), _ ("Rating"));
}

static void
notes_changed_cb (FmExperimentView *self, GtkTextBuffer *buffer)
{
  g_autofree char *text = NULL;
  GtkTextIter start;
  GtkTextIter end;

  if (is_loading (self))
    return;
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  text = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
  g_free (get_experiment (self)->notes);
  get_experiment (self)->notes = take_text (text);
  fm_experiment_document_did (get_document (self), _ ("Notes"));
}

/* The notes grow with their text and the page scrolls, so the page has to follow the cursor. */
static void
notes_cursor_cb (FmExperimentView *self, GParamSpec *pspec, GtkTextBuffer *buffer)
{
  GtkWidget *viewport = gtk_scrolled_window_get_child (self->scroller);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  GdkRectangle cursor;
  GtkTextIter iter;
  double y;

  if (is_loading (self) || !gtk_widget_has_focus (GTK_WIDGET (self->notes_view)))
    return;
  gtk_text_buffer_get_iter_at_mark (buffer, &iter, gtk_text_buffer_get_insert (buffer));
  gtk_text_view_get_iter_location (self->notes_view, &iter, &cursor);
  if (!fm_widget_height_in (GTK_WIDGET (self->notes_view), viewport, cursor.y, &y))
    return;
  y += gtk_adjustment_get_value (adjustment);
  gtk_adjustment_clamp_page (adjustment, y, y + 3 * cursor.height);
}

/* The entries show anew what came into the experiment by another way. */
static void
planned_taken_cb (FmExperimentView *self)
{
  fm_experiment_making_update (self->making);
}

static void
photos_changed_cb (FmExperimentView *self)
{
  g_signal_emit (self, signals[PHOTOS_CHANGED], 0);
}

static void
version_clicked_cb (FmExperimentView *self)
{
  g_signal_emit (self, signals[SHOW_VERSION], 0);
}

static void
duplicate_clicked_cb (FmExperimentView *self)
{
  fm_stored_document_flush (FM_STORED_DOCUMENT (get_document (self)));
  g_signal_emit (self, signals[DUPLICATE], 0);
}

static void
show_details (FmExperimentView *self)
{
  const FmExperiment *experiment = get_experiment (self);

  self->loading = TRUE;
  fm_widget_show_text (GTK_EDITABLE (self->title_entry), experiment->title);
  fm_date_entry_set (self->date, experiment->made_at);
  gtk_drop_down_set_selected (self->rating_drop_down, (guint)CLAMP (experiment->rating, 0, 10));
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->notes_view),
                            experiment->notes != NULL ? experiment->notes : "", -1);
  self->loading = FALSE;
}

static void
set_editable (FmExperimentView *self, gboolean editable)
{
  GtkWidget *parts[] = {
    self->details_box,         GTK_WIDGET (self->weighings), GTK_WIDGET (self->patties),
    GTK_WIDGET (self->making), GTK_WIDGET (self->readings),
  };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    gtk_widget_set_sensitive (parts[i], editable);
  gtk_widget_set_sensitive (self->cook_button, editable);
  gtk_widget_set_sensitive (self->last_button, editable);
  gtk_widget_set_sensitive (self->duplicate_button, editable);
  gtk_widget_set_sensitive (GTK_WIDGET (self->rating_drop_down), editable);
  gtk_text_view_set_editable (self->notes_view, editable);
}

static void
show_parts (FmExperimentView *self, FmExperimentDocument *document)
{
  fm_experiment_weighings_set_document (self->weighings, self->session, document);
  fm_experiment_patties_set_document (self->patties, document);
  fm_experiment_planned_set_document (self->planned, document);
  fm_experiment_making_set_document (self->making, document);
  fm_readings_editor_set_document (self->readings, document);
  fm_cook_panel_set_document (self->cook, document);
  fm_experiment_view_read_tastings (self);
  fm_photo_grid_set_experiment (self->photos, document != NULL ? self->session : NULL,
                                document != NULL ? get_experiment (self)->id : 0);
}

/* The entries show anew what came into the experiment at the pan. */
static void
kitchen_closed_cb (FmExperimentView *self)
{
  FmExperimentDocument *document = get_document (self);

  if (document == NULL)
    return;
  show_parts (self, NULL);
  show_parts (self, document);
  show_details (self);
}

static void
cook_clicked_cb (FmExperimentView *self)
{
  GtkWindow *window = NULL;

  if (get_document (self) == NULL)
    return;
  window = fm_kitchen_window_present (GTK_WIDGET (self), self->session, get_document (self),
                                      gtk_label_get_text (self->origin_label), self->plan);
  g_signal_connect_object (window, "unmap", G_CALLBACK (kitchen_closed_cb), self,
                           G_CONNECT_SWAPPED);
}

static void
fm_experiment_view_show (FmStoredView *view)
{
  FmExperimentView *self = FM_EXPERIMENT_VIEW (view);
  FmExperimentDocument *document = get_document (self);

  forget_food (self);
  show_parts (self, document);
  if (document == NULL)
    return;
  show_details (self);
  set_editable (self, fm_experiment_document_is_editable (document));
  fm_experiment_caution_set_peak (self->caution, fm_experiment_peak_core_c (get_experiment (self)));
  read_food (self);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

static void
fm_experiment_view_restored (FmStoredView *view)
{
  FmExperimentView *self = FM_EXPERIMENT_VIEW (view);

  show_details (self);
  fm_experiment_weighings_update (self->weighings);
  fm_experiment_patties_update (self->patties);
  fm_experiment_making_update (self->making);
  fm_readings_editor_update (self->readings);
  fm_cook_panel_set_document (self->cook, NULL);
  fm_cook_panel_set_document (self->cook, get_document (self));
}

static void
last_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmExperimentView *self = FM_EXPERIMENT_VIEW (source);
  const FmExperiment *asked = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmExperiment) last = fm_store_task_finish (result, &error);

  if (get_document (self) == NULL || get_experiment (self)->id != asked->id)
    return;
  if (last == NULL) {
    fm_stored_view_say_failure (FM_STORED_VIEW (self), error->message);
    return;
  }
  if (!fm_experiment_take_last (get_experiment (self), last))
    return;
  fm_experiment_document_seal (get_document (self));
  fm_experiment_document_did (get_document (self), _ ("As the last one"));
  fm_experiment_making_update (self->making);
}

static void
last_clicked_cb (FmExperimentView *self)
{
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_experiment_document_get_notebook (get_document (self)),
      .run = fm_experiment_query_last,
      .free_result = (GDestroyNotify)fm_experiment_free,
      .data = fm_experiment_copy (get_experiment (self)),
      .free_data = (GDestroyNotify)fm_experiment_free,
      .done = last_read_cb,
  });
}

static void
fm_experiment_view_changed (FmStoredView *view)
{
  FmExperimentView *self = FM_EXPERIMENT_VIEW (view);

  fm_experiment_caution_set_peak (self->caution, fm_experiment_peak_core_c (get_experiment (self)));
  fm_experiment_planned_update (self->planned);
}

static void
fm_experiment_view_dispose (GObject *object)
{
  FmExperimentView *self = FM_EXPERIMENT_VIEW (object);

  forget_food (self);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENT_VIEW);
  g_clear_object (&self->session);
  g_clear_pointer (&self->plan, fm_process_free);
  G_OBJECT_CLASS (fm_experiment_view_parent_class)->dispose (object);
}

static void
ensure_types (void)
{
  g_type_ensure (FM_TYPE_COOK_PANEL);
  g_type_ensure (FM_TYPE_EXPERIMENT_CAUTION);
  g_type_ensure (FM_TYPE_DATE_ENTRY);
  g_type_ensure (FM_TYPE_EXPERIMENT_MAKING);
  g_type_ensure (FM_TYPE_EXPERIMENT_PATTIES);
  g_type_ensure (FM_TYPE_EXPERIMENT_PLANNED);
  g_type_ensure (FM_TYPE_EXPERIMENT_WEIGHINGS);
  g_type_ensure (FM_TYPE_PHOTO_GRID);
  g_type_ensure (FM_TYPE_READINGS_EDITOR);
  g_type_ensure (FM_TYPE_TASTING_STORY_LIST);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, details_box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, title_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, date);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, origin_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, rating_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, tastings);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, weighings);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, patties);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, planned);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, making);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, caution);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, cook_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, last_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, duplicate_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, jump_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, judged_box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, readings);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, cook);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, notes_view);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentView, photos);
  gtk_widget_class_bind_template_callback (widget_class, title_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, date_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, rating_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, notes_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, notes_cursor_cb);
  gtk_widget_class_bind_template_callback (widget_class, cook_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, last_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, duplicate_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, planned_taken_cb);
  gtk_widget_class_bind_template_callback (widget_class, photos_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, version_clicked_cb);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_EXPERIMENT_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
fm_experiment_view_class_init (FmExperimentViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_view_dispose;
  FM_STORED_VIEW_CLASS (klass)->show = fm_experiment_view_show;
  FM_STORED_VIEW_CLASS (klass)->changed = fm_experiment_view_changed;
  FM_STORED_VIEW_CLASS (klass)->restored = fm_experiment_view_restored;
  signals[PHOTOS_CHANGED] = add_signal ("photos-changed");
  signals[SHOW_VERSION] = add_signal ("show-version");
  signals[DUPLICATE] = add_signal ("duplicate");
  ensure_types ();
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-view.ui");
  bind_template (widget_class);
}

static void
install_jump (FmExperimentView *self)
{
  const FmExperimentSection sections[] = {
    { self->details_box, _ ("What and When") },
    { GTK_WIDGET (self->weighings), _ ("Weights") },
    { GTK_WIDGET (self->patties), _ ("Patties") },
    { GTK_WIDGET (self->making), _ ("Making and Cook") },
    { GTK_WIDGET (self->readings), _ ("Core Readings") },
    { self->judged_box, _ ("Notes, Rating and Photos") },
    { GTK_WIDGET (self->cook), _ ("Estimates of the Cook") },
    { GTK_WIDGET (self->caution), _ ("Figures of Authorities") },
  };

  fm_experiment_jump_install (self->jump_button, GTK_WIDGET (self), self->scroller, sections,
                              G_N_ELEMENTS (sections));
}

static void
fm_experiment_view_init (FmExperimentView *self)
{
  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_text_room_limit (self->notes_view, FM_TEXT_MAX_BYTES, FM_TEXT_MAX_LINES);
  fm_accessible_name_drop_down (self->rating_drop_down, _ ("Rating from 1 to 10"));
  self->loading = FALSE;
  install_jump (self);
  fm_photo_paste_install (GTK_WIDGET (self), self->photos);
}

void
fm_experiment_view_set_origin (FmExperimentView *self,
                               FmSession *session,
                               const char *origin,
                               const FmProcess *plan)
{
  g_return_if_fail (FM_IS_EXPERIMENT_VIEW (self));
  g_set_object (&self->session, session);
  gtk_label_set_text (self->origin_label, origin != NULL ? origin : "");
  fm_chart_set_subject_in (GTK_WIDGET (self->readings), origin);
  g_clear_pointer (&self->plan, fm_process_free);
  self->plan = plan != NULL ? fm_process_copy (plan) : NULL;
  fm_experiment_planned_set_plan (self->planned, plan);
}

void
fm_experiment_view_read_tastings (FmExperimentView *self)
{
  g_return_if_fail (FM_IS_EXPERIMENT_VIEW (self));
  if (get_document (self) == NULL)
    fm_tasting_story_list_read (self->tastings, NULL, 0);
  else
    fm_tasting_story_list_read (self->tastings,
                                fm_experiment_document_get_notebook (get_document (self)),
                                get_experiment (self)->id);
}
