/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-trial-row.c - one trial of a map in words, with the way to make it into a version */
#include "app/map/fm-map-trial-row.h"

#include <glib/gi18n-lib.h>

#include "app/map/fm-map-text.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

/* The bounds are typed in per cent with two places. */
#define OUTSIDE_BY 1e-6

struct _FmMapTrialRow {
  GtkListBoxRow parent_instance;

  GtkLabel *title_label;
  GtkLabel *shares_label;
  GtkLabel *predicted_label;
  GtkLabel *state_label;
  GtkWidget *outside_label;
  GtkButton *make_button;
};

G_DEFINE_FINAL_TYPE (FmMapTrialRow, fm_map_trial_row, GTK_TYPE_LIST_BOX_ROW)

enum {
  MAKE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
make_clicked_cb (FmMapTrialRow *self)
{
  g_signal_emit (self, signals[MAKE], 0);
}

static void
fm_map_trial_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_MAP_TRIAL_ROW);
  G_OBJECT_CLASS (fm_map_trial_row_parent_class)->dispose (object);
}

static void
fm_map_trial_row_class_init (FmMapTrialRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_trial_row_dispose;
  signals[MAKE] = g_signal_new ("make", FM_TYPE_MAP_TRIAL_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-trial-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapTrialRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrialRow, shares_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrialRow, predicted_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrialRow, state_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrialRow, outside_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTrialRow, make_button);
  gtk_widget_class_bind_template_callback (widget_class, make_clicked_cb);
}

static void
fm_map_trial_row_init (FmMapTrialRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_map_trial_row_new (void)
{
  return g_object_new (FM_TYPE_MAP_TRIAL_ROW, NULL);
}

static void
show_predicted (FmMapTrialRow *self, FmMapDocument *document, const double *x)
{
  double fat_pct, cost_per_kg;
  const char *currency = fm_notebook_units ()->currency;
  g_autofree char *fat = NULL;
  g_autofree char *cost = NULL;
  g_autofree char *text = NULL;

  fm_map_document_predict (document, x, &fat_pct, &cost_per_kg);
  fat = fm_number_format_unit (fat_pct, 1, "%");
  cost = fm_number_format_unit (cost_per_kg, 2, currency);
  text = g_strdup_printf (_ ("By its ingredients: fat %s, cost per kg %s"), fat, cost);
  fm_widget_set_label (self->predicted_label, text);
}

static void
show_title (FmMapTrialRow *self, guint index, FmMixPointKind kind)
{
  const char *words = fm_map_text_kind (kind);
  g_autofree char *text = words != NULL ? g_strdup_printf (_ ("Trial %u, %s"), index + 1, words)
                                        : g_strdup_printf (_ ("Trial %u"), index + 1);
  g_autofree char *make = g_strdup_printf (_ ("Make a version of trial %u"), index + 1);

  fm_widget_set_label (self->title_label, text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->make_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  make, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

void
fm_map_trial_row_update (FmMapTrialRow *self, FmMapDocument *document, guint index)
{
  const FmMap *map = fm_map_document_get_map (document);
  const FmMapPoint *point = &g_array_index (map->points, FmMapPoint, index);
  const FmMixBlend *blend = fm_map_document_get_blend (document);
  g_autofree char *shares = fm_map_document_shares_text (document, point->x);
  g_autofree char *state = fm_map_text_state (point, fm_map_document_get_data (document));
  const gboolean inside =
      blend == NULL || fm_mix_region_contains (&blend->region, point->x, OUTSIDE_BY);

  show_title (self, index, point->kind);
  fm_widget_set_label (self->shares_label, shares);
  show_predicted (self, document, point->x);
  fm_widget_set_label (self->state_label, state);
  gtk_widget_set_visible (self->outside_label, !inside);
  gtk_widget_set_visible (GTK_WIDGET (self->make_button), point->version_id == 0);
  gtk_widget_set_sensitive (GTK_WIDGET (self->make_button),
                            blend != NULL && fm_map_document_is_editable (document) &&
                                !fm_map_document_is_making (document));
}
