/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-trials.c - the trials of a map: how they are chosen, and each with its state */
#include "app/map/fm-map-trials.h"

#include <glib/gi18n-lib.h>

#include "app/map/fm-map-design-box.h"
#include "app/map/fm-map-text.h"
#include "app/map/fm-map-trial-row.h"
#include "app/widgets/fm-widget.h"

struct _FmMapTrials {
  GtkWidget parent_instance;

  FmMapDesignBox *design_box;
  GtkWidget *list_box;
  GtkLabel *count_label;
  GtkButton *make_all_button;
  GtkListBox *trial_list;
  GtkWidget *unplaced_box;
  GtkLabel *unplaced_label;

  FmMapDocument *document;
  guint n_rows;
};

G_DEFINE_FINAL_TYPE (FmMapTrials, fm_map_trials, GTK_TYPE_WIDGET)

static void
make_cb (FmMapTrials *self, GtkListBoxRow *row)
{
  const guint index = (guint)gtk_list_box_row_get_index (row);

  fm_map_document_make_versions (self->document, &index, 1);
}

static void
make_all_cb (FmMapTrials *self)
{
  const guint n = fm_map_document_get_map (self->document)->points->len;
  g_autofree guint *indices = g_new (guint, n);

  for (guint i = 0; i < n; i++)
    indices[i] = i;
  fm_map_document_make_versions (self->document, indices, n);
}

/* Rows are kept where they can be: focus and scroll position stay. */
static void
fit_rows (FmMapTrials *self, guint n)
{
  while (self->n_rows > n) {
    self->n_rows--;
    gtk_list_box_remove (self->trial_list, GTK_WIDGET (gtk_list_box_get_row_at_index (
                                               self->trial_list, (int)self->n_rows)));
  }
  for (; self->n_rows < n; self->n_rows++) {
    GtkWidget *row = fm_map_trial_row_new ();

    g_signal_connect_swapped (row, "make", G_CALLBACK (make_cb), self);
    gtk_list_box_append (self->trial_list, row);
  }
}

static void
show_count (FmMapTrials *self, guint n)
{
  const GArray *points = fm_map_document_get_map (self->document)->points;
  g_autofree char *text = NULL;
  guint made = 0;

  for (guint i = 0; i < n; i++)
    made += g_array_index (points, FmMapPoint, i).version_id != 0;
  text = fm_map_text_trials (n, made);
  fm_widget_set_label (self->count_label, text);
  gtk_widget_set_sensitive (GTK_WIDGET (self->make_all_button),
                            made < n && fm_map_document_get_blend (self->document) != NULL &&
                                fm_map_document_is_editable (self->document) &&
                                !fm_map_document_is_making (self->document));
}

static void
changed_cb (FmMapTrials *self)
{
  const guint n = fm_map_document_get_map (self->document)->points->len;

  gtk_widget_set_visible (self->list_box, n > 0);
  fit_rows (self, n);
  for (guint i = 0; i < n; i++)
    fm_map_trial_row_update (
        FM_MAP_TRIAL_ROW (gtk_list_box_get_row_at_index (self->trial_list, (int)i)), self->document,
        i);
  show_count (self, n);
}

/* Versions that lie on no place of the map, each with the reason. */
static void
show_unplaced (FmMapTrials *self)
{
  const FmMapData *data = fm_map_document_get_data (self->document);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; data != NULL && i < data->places->len; i++) {
    const FmMapPlace *place = g_ptr_array_index (data->places, i);

    if (place->is_placed)
      continue;
    if (text->len > 0)
      g_string_append_c (text, '\n');
    g_string_append_printf (text, _ ("Version %d: %s"), place->number, place->unplaced);
  }
  fm_widget_set_label (self->unplaced_label, text->str);
  gtk_widget_set_visible (self->unplaced_box, text->len > 0);
}

static void
data_changed_cb (FmMapTrials *self)
{
  changed_cb (self);
  show_unplaced (self);
}

static void
fm_map_trials_dispose (GObject *object)
{
  FmMapTrials *self = FM_MAP_TRIALS (object);

  fm_map_trials_set_document (self, NULL);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_MAP_TRIALS);
  G_OBJECT_CLASS (fm_map_trials_parent_class)->dispose (object);
}

static void
fm_map_trials_class_init (FmMapTrialsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_trials_dispose;
  g_type_ensure (FM_TYPE_MAP_DESIGN_BOX);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-trials.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrials, design_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrials, list_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrials, count_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrials, make_all_button);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrials, trial_list);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrials, unplaced_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrials, unplaced_label);
  gtk_widget_class_bind_template_callback (widget_class, make_all_cb);
}

static void
fm_map_trials_init (FmMapTrials *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_map_trials_set_document (FmMapTrials *self, FmMapDocument *document)
{
  if (self->document == document)
    return;
  fm_map_design_box_set_document (self->design_box, document);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (document, "data-changed", G_CALLBACK (data_changed_cb), self);
  data_changed_cb (self);
}
