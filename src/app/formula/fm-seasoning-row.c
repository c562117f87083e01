/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-seasoning-row.c - one seasoning of a process: what, when, and whether on the surface */
#include "app/formula/fm-seasoning-row.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-accessible.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

struct _FmSeasoningRow {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkEditable *what_entry;
  GtkDropDown *moment_drop_down;
  GtkDropDown *place_drop_down;
  GtkButton *remove_button;

  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmSeasoningRow, fm_seasoning_row, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  REMOVE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
changed_cb (FmSeasoningRow *self)
{
  if (!self->loading)
    g_signal_emit (self, signals[CHANGED], 0);
}

static void
remove_clicked_cb (FmSeasoningRow *self)
{
  g_signal_emit (self, signals[REMOVE], 0);
}

static gboolean
fm_seasoning_row_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FM_SEASONING_ROW (widget)->what_entry));
}

static void
fm_seasoning_row_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_SEASONING_ROW);
  G_OBJECT_CLASS (fm_seasoning_row_parent_class)->dispose (object);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_SEASONING_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                       G_TYPE_NONE, 0);
}

static void
fm_seasoning_row_class_init (FmSeasoningRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_seasoning_row_dispose;
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  widget_class->focus = fm_widget_pass_focus;
  widget_class->grab_focus = fm_seasoning_row_grab_focus;
  signals[CHANGED] = add_signal ("changed");
  signals[REMOVE] = add_signal ("remove");
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-seasoning-row.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmSeasoningRow, box);
  gtk_widget_class_bind_template_child (widget_class, FmSeasoningRow, what_entry);
  gtk_widget_class_bind_template_child (widget_class, FmSeasoningRow, moment_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmSeasoningRow, place_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmSeasoningRow, remove_button);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
fm_seasoning_row_init (FmSeasoningRow *self)
{
  g_autoptr (GtkStringList) moments = gtk_string_list_new (NULL);

  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < FM_N_SEASON_MOMENTS; i++)
    gtk_string_list_append (moments, fm_season_moment_name ((FmSeasonMoment)i));
  gtk_drop_down_set_model (self->moment_drop_down, G_LIST_MODEL (moments));
  self->loading = FALSE;
}

static void
name_parts (FmSeasoningRow *self, guint number)
{
  g_autofree char *what = g_strdup_printf (_ ("Seasoning %u"), number);
  g_autofree char *moment = g_strdup_printf (_ ("Moment of seasoning %u"), number);
  g_autofree char *place = g_strdup_printf (_ ("Place of seasoning %u"), number);
  g_autofree char *remove = g_strdup_printf (_ ("Remove seasoning %u"), number);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self->what_entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  what, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove_button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, remove, -1);
  fm_accessible_name_drop_down (self->moment_drop_down, moment);
  fm_accessible_name_drop_down (self->place_drop_down, place);
}

GtkWidget *
fm_seasoning_row_new (guint number, const FmSeasoning *seasoning)
{
  FmSeasoningRow *self = g_object_new (FM_TYPE_SEASONING_ROW, NULL);

  self->loading = TRUE;
  name_parts (self, number);
  gtk_drop_down_set_selected (self->moment_drop_down,
                              seasoning != NULL ? seasoning->moment : FM_SEASON_AFTER_FORMING);
  gtk_drop_down_set_selected (self->place_drop_down, seasoning == NULL || seasoning->on_surface);
  gtk_editable_set_text (self->what_entry, seasoning != NULL ? seasoning->what : "");
  self->loading = FALSE;
  return GTK_WIDGET (self);
}

void
fm_seasoning_row_add_to (FmSeasoningRow *self, FmProcess *process)
{
  g_autofree char *what = g_strstrip (g_strdup (gtk_editable_get_text (self->what_entry)));

  fm_process_add_seasoning (process, what,
                            (FmSeasonMoment)gtk_drop_down_get_selected (self->moment_drop_down),
                            gtk_drop_down_get_selected (self->place_drop_down) == 1);
}
