/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-bounds-row.c - how much of one component there may be */
#include "app/map/fm-map-bounds-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

struct _FmMapBoundsRow {
  GtkListBoxRow parent_instance;

  GtkLabel *name_label;
  GtkLabel *now_label;
  FmNumberEntry *least_entry;
  FmNumberEntry *most_entry;
};

G_DEFINE_FINAL_TYPE (FmMapBoundsRow, fm_map_bounds_row, GTK_TYPE_LIST_BOX_ROW)

enum {
  BOUNDS_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
changed_cb (FmMapBoundsRow *self)
{
  g_signal_emit (self, signals[BOUNDS_CHANGED], 0,
                 fm_number_entry_get_value (self->least_entry) / 100.0,
                 fm_number_entry_get_value (self->most_entry) / 100.0);
}

static void
fm_map_bounds_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_MAP_BOUNDS_ROW);
  G_OBJECT_CLASS (fm_map_bounds_row_parent_class)->dispose (object);
}

static void
fm_map_bounds_row_class_init (FmMapBoundsRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_bounds_row_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  signals[BOUNDS_CHANGED] =
      g_signal_new ("bounds-changed", FM_TYPE_MAP_BOUNDS_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-bounds-row.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapBoundsRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapBoundsRow, now_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapBoundsRow, least_entry);
  gtk_widget_class_bind_template_child (widget_class, FmMapBoundsRow, most_entry);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
}

static void
fm_map_bounds_row_init (FmMapBoundsRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_map_bounds_row_new (const char *name)
{
  FmMapBoundsRow *self = g_object_new (FM_TYPE_MAP_BOUNDS_ROW, NULL);
  g_autofree char *least = g_strdup_printf (_ ("Least %s"), name);
  g_autofree char *most = g_strdup_printf (_ ("Most %s"), name);

  gtk_label_set_text (self->name_label, name);
  fm_number_entry_set_what (self->least_entry, least);
  fm_number_entry_set_what (self->most_entry, most);
  return GTK_WIDGET (self);
}

void
fm_map_bounds_row_update (
    FmMapBoundsRow *self, double lower, double upper, double now, gboolean editable)
{
  g_autofree char *share = fm_number_format_unit (100.0 * now, 1, "%");
  g_autofree char *text = g_strdup_printf (_ ("%s of the mixture in the base version"), share);

  fm_widget_set_label (self->now_label, text);
  fm_number_entry_set_value (self->least_entry, 100.0 * lower);
  fm_number_entry_set_value (self->most_entry, 100.0 * upper);
  fm_number_entry_set_editable (self->least_entry, editable);
  fm_number_entry_set_editable (self->most_entry, editable);
}
