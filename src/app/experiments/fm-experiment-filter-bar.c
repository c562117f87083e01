/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-filter-bar.c - search, scope, order and conditions of the log */
#include "app/experiments/fm-experiment-filter-bar.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-widget.h"

struct _FmExperimentFilterBar {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkSearchEntry *search_entry;
  GtkDropDown *scope_drop_down;
  GtkDropDown *sort_drop_down;
  GtkToggleButton *ascending_button;
  GtkMenuButton *conditions_button;
  GtkDropDown *rating_drop_down;
  GtkCheckButton *photos_check;

  gboolean resetting;
};

G_DEFINE_FINAL_TYPE (FmExperimentFilterBar, fm_experiment_filter_bar, GTK_TYPE_WIDGET)

/* Order of the choices in the template. */
enum {
  SCOPE_VERSION,
  SCOPE_BLEND,
  SCOPE_ALL,
};

enum {
  FILTER_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
has_conditions (FmExperimentFilterBar *self)
{
  return gtk_drop_down_get_selected (self->rating_drop_down) != 0 ||
         gtk_check_button_get_active (self->photos_check);
}

static void
changed_cb (FmExperimentFilterBar *self)
{
  if (self->resetting || self->photos_check == NULL)
    return;
  /* The tint says that conditions are in force although their popover is closed. */
  fm_widget_set_class (GTK_WIDGET (self->conditions_button), "suggested-action",
                       has_conditions (self));
  g_signal_emit (self, signals[FILTER_CHANGED], 0);
}

static void
fm_experiment_filter_bar_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_EXPERIMENT_FILTER_BAR);
  G_OBJECT_CLASS (fm_experiment_filter_bar_parent_class)->dispose (object);
}

static void
fm_experiment_filter_bar_class_init (FmExperimentFilterBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_filter_bar_dispose;
  signals[FILTER_CHANGED] = g_signal_new ("filter-changed", FM_TYPE_EXPERIMENT_FILTER_BAR,
                                          G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-filter-bar.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, search_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, scope_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, sort_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, ascending_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, conditions_button);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, rating_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentFilterBar, photos_check);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
}

static void
fm_experiment_filter_bar_init (FmExperimentFilterBar *self)
{
  self->resetting = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_accessible_name_drop_down (self->scope_drop_down, _ ("Which experiments are listed"));
  fm_accessible_name_drop_down (self->sort_drop_down, _ ("Order of the list"));
  fm_accessible_name_drop_down (self->rating_drop_down, _ ("Lowest rating listed"));
  self->resetting = FALSE;
}

void
fm_experiment_filter_bar_get_filter (FmExperimentFilterBar *self,
                                     FmSession *session,
                                     FmExperimentFilter *filter)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->search_entry));
  const guint scope = gtk_drop_down_get_selected (self->scope_drop_down);
  gint64 version_id = fm_session_get_version_id (session);

  *filter = (FmExperimentFilter){ 0 };
  /* The draft has no experiments of its own; those of the version it started from are near. */
  if (version_id == 0)
    version_id = fm_session_get_draft_parent (session);
  if (scope == SCOPE_VERSION)
    filter->version_id = version_id;
  if (scope != SCOPE_ALL)
    filter->blend_id = fm_session_get_blend_id (session);
  filter->text = text[0] != '\0' ? text : NULL;
  filter->min_rating = (int)gtk_drop_down_get_selected (self->rating_drop_down);
  filter->with_photos = gtk_check_button_get_active (self->photos_check);
  filter->sort = (FmExperimentSort)gtk_drop_down_get_selected (self->sort_drop_down);
  filter->descending = !gtk_toggle_button_get_active (self->ascending_button);
}

gboolean
fm_experiment_filter_bar_is_filtering (FmExperimentFilterBar *self)
{
  g_return_val_if_fail (FM_IS_EXPERIMENT_FILTER_BAR (self), FALSE);
  return has_conditions (self) ||
         gtk_editable_get_text (GTK_EDITABLE (self->search_entry))[0] != '\0';
}

void
fm_experiment_filter_bar_reset (FmExperimentFilterBar *self)
{
  g_return_if_fail (FM_IS_EXPERIMENT_FILTER_BAR (self));
  self->resetting = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
  gtk_drop_down_set_selected (self->rating_drop_down, 0);
  gtk_check_button_set_active (self->photos_check, FALSE);
  self->resetting = FALSE;
  changed_cb (self);
}
