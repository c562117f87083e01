/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief-target-row.c - one target band: its ends, the value now, and what that means */
#include "app/widgets/fm-brief-target-row.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-number-entry.h"
#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"

struct _FmBriefTargetRow {
  GtkListBoxRow parent_instance;

  GtkLabel *name_label;
  GtkWidget *state_box;
  GtkImage *state_icon;
  GtkLabel *state_label;
  FmNumberEntry *min_entry;
  FmNumberEntry *max_entry;

  FmTargetKind kind;
};

G_DEFINE_FINAL_TYPE (FmBriefTargetRow, fm_brief_target_row, GTK_TYPE_LIST_BOX_ROW)

enum {
  BAND_END_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* Style class and icon of a state; the words beside them carry the same meaning. */
static const struct {
  const char *icon;
  const char *css_class;
} looks[] = {
  [FM_BAND_NONE] = { NULL, "dim-label" },
  [FM_BAND_WITHIN] = { "emblem-ok-symbolic", "success" },
  [FM_BAND_BELOW] = { "go-down-symbolic", "warning" },
  [FM_BAND_ABOVE] = { "go-up-symbolic", "warning" },
  [FM_BAND_UNKNOWN] = { "dialog-question-symbolic", "dim-label" },
};

static void
min_changed_cb (FmBriefTargetRow *self, double value)
{
  g_signal_emit (self, signals[BAND_END_CHANGED], 0, FALSE, value);
}

static void
max_changed_cb (FmBriefTargetRow *self, double value)
{
  g_signal_emit (self, signals[BAND_END_CHANGED], 0, TRUE, value);
}

static void
fm_brief_target_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_BRIEF_TARGET_ROW);
  G_OBJECT_CLASS (fm_brief_target_row_parent_class)->dispose (object);
}

static void
fm_brief_target_row_class_init (FmBriefTargetRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_brief_target_row_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  signals[BAND_END_CHANGED] =
      g_signal_new ("band-end-changed", FM_TYPE_BRIEF_TARGET_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 2, G_TYPE_BOOLEAN, G_TYPE_DOUBLE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/widgets/fm-brief-target-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FmBriefTargetRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmBriefTargetRow, state_box);
  gtk_widget_class_bind_template_child (widget_class, FmBriefTargetRow, state_icon);
  gtk_widget_class_bind_template_child (widget_class, FmBriefTargetRow, state_label);
  gtk_widget_class_bind_template_child (widget_class, FmBriefTargetRow, min_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBriefTargetRow, max_entry);
  gtk_widget_class_bind_template_callback (widget_class, min_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, max_changed_cb);
}

static void
fm_brief_target_row_init (FmBriefTargetRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_entry_set_width_chars (self->min_entry, 5);
  fm_number_entry_set_width_chars (self->max_entry, 5);
}

GtkWidget *
fm_brief_target_row_new (FmTargetKind kind)
{
  FmBriefTargetRow *self = g_object_new (FM_TYPE_BRIEF_TARGET_ROW, NULL);
  const char *name = fm_target_name (kind);
  /* Translators: a target such as "Fat", then the end of its band. */
  g_autofree char *minimum = g_strdup_printf (_ ("%s, at least"), name);
  g_autofree char *maximum = g_strdup_printf (_ ("%s, at most"), name);
  const char *unit = fm_notebook_target_unit (kind);
  g_autofree char *title = g_strdup_printf ("%s (%s)", name, unit);
  const double largest = !fm_target_info (kind)->is_per_patty ? 100.0 : 1e6;

  self->kind = kind;
  gtk_label_set_text (self->name_label, title);
  fm_number_entry_set_what (self->min_entry, minimum);
  fm_number_entry_set_what (self->max_entry, maximum);
  fm_number_entry_set_range (self->min_entry, 0.0, largest);
  fm_number_entry_set_range (self->max_entry, 0.0, largest);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  return GTK_WIDGET (self);
}

FmTargetKind
fm_brief_target_row_get_kind (FmBriefTargetRow *self)
{
  g_return_val_if_fail (FM_IS_BRIEF_TARGET_ROW (self), FM_TARGET_FAT_PCT);
  return self->kind;
}

static void
show_state (FmBriefTargetRow *self, FmBandState state, const char *text)
{
  const char *classes[] = { looks[state].css_class, NULL };

  gtk_image_set_from_icon_name (self->state_icon, looks[state].icon);
  gtk_widget_set_visible (GTK_WIDGET (self->state_icon), looks[state].icon != NULL);
  if (g_strcmp0 (gtk_label_get_text (self->state_label), text) != 0)
    gtk_label_set_text (self->state_label, text);
  gtk_widget_set_css_classes (self->state_box, classes);
}

void
fm_brief_target_row_update (FmBriefTargetRow *self, FmBand band, double value, gboolean editable)
{
  const int decimals = fm_target_info (self->kind)->limit_decimals;
  const char *unit = fm_notebook_target_unit (self->kind);
  const FmBandState state = fm_band_state (&band, value);
  g_autofree char *now =
      isnan (value) ? g_strdup (_ ("not known")) : fm_number_format_unit (value, decimals, unit);
  g_autofree char *words = NULL;
  g_autofree char *text = NULL;

  g_return_if_fail (FM_IS_BRIEF_TARGET_ROW (self));
  fm_number_entry_set_value (self->min_entry, band.min);
  fm_number_entry_set_value (self->max_entry, band.max);
  fm_number_entry_set_editable (self->min_entry, editable);
  fm_number_entry_set_editable (self->max_entry, editable);
  if (state == FM_BAND_NONE) {
    text = g_strdup_printf (_ ("now: %s; no target"), now);
  } else if (state == FM_BAND_UNKNOWN) {
    text = fm_band_describe (&band, value, decimals, unit);
  } else {
    words = fm_band_describe (&band, value, decimals, unit);
    /* Translators: the value now, then what it means beside its target band. */
    text = g_strdup_printf (_ ("now %s, %s"), now, words);
  }
  show_state (self, state, text);
}

void
fm_brief_target_row_refuse (FmBriefTargetRow *self, gboolean maximum, const char *message)
{
  g_return_if_fail (FM_IS_BRIEF_TARGET_ROW (self));
  fm_number_entry_refuse (maximum ? self->max_entry : self->min_entry, message);
}

void
fm_brief_target_row_focus (FmBriefTargetRow *self)
{
  g_return_if_fail (FM_IS_BRIEF_TARGET_ROW (self));
  gtk_widget_grab_focus (GTK_WIDGET (isnan (fm_number_entry_get_value (self->min_entry)) &&
                                             !isnan (fm_number_entry_get_value (self->max_entry))
                                         ? self->max_entry
                                         : self->min_entry));
}

const char *
fm_band_state_css_class (FmBandState state)
{
  return looks[state].css_class;
}
