/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-weigh.c - the planned weights, ticked off with what the scale says */
#include "app/kitchen/fm-kitchen-weigh.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"

struct _FmKitchenWeigh {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkBox *rows;
  GtkLabel *none_label;
};

G_DEFINE_FINAL_TYPE (FmKitchenWeigh, fm_kitchen_weigh, GTK_TYPE_WIDGET)

enum {
  ASKED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
clicked_cb (FmKitchenWeigh *self, GtkWidget *row)
{
  guint index = 0;

  for (GtkWidget *before = gtk_widget_get_prev_sibling (row); before != NULL;
       before = gtk_widget_get_prev_sibling (before))
    index++;
  g_signal_emit (self, signals[ASKED], 0, index);
}

static char *
row_text (const FmWeighing *weighing)
{
  g_autofree char *planned = fm_kitchen_weigh_planned_text (weighing);
  g_autofree char *weighed = fm_notebook_text (FM_MEASURE_MASS, weighing->weighed_g, 1);
  const char *name = weighing->name != NULL ? weighing->name : "?";

  if (isnan (weighing->weighed_g))
    return g_strdup_printf ("☐ %s\n%s", name, planned != NULL ? planned : _ ("nothing planned"));
  /* TRANSLATORS: ingredient, what was weighed, what was planned */
  return g_strdup_printf (_ ("☑ %s\nweighed %s, %s"), name, weighed,
                          planned != NULL ? planned : _ ("nothing planned"));
}

static GtkWidget *
add_row (FmKitchenWeigh *self)
{
  GtkWidget *row = gtk_button_new ();
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_button_set_child (GTK_BUTTON (row), label);
  gtk_widget_add_css_class (row, "fm-kitchen-key");
  g_signal_connect_swapped (row, "clicked", G_CALLBACK (clicked_cb), self);
  gtk_box_append (self->rows, row);
  return row;
}

static void
fm_kitchen_weigh_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_WEIGH);
  G_OBJECT_CLASS (fm_kitchen_weigh_parent_class)->dispose (object);
}

static void
fm_kitchen_weigh_class_init (FmKitchenWeighClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_weigh_dispose;
  widget_class->focus = fm_widget_pass_focus;
  signals[ASKED] = g_signal_new ("asked", FM_TYPE_KITCHEN_WEIGH, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-weigh.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWeigh, box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWeigh, rows);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenWeigh, none_label);
}

static void
fm_kitchen_weigh_init (FmKitchenWeigh *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_kitchen_weigh_show (FmKitchenWeigh *self, const FmExperiment *experiment)
{
  GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->rows));

  g_return_if_fail (FM_IS_KITCHEN_WEIGH (self));
  gtk_widget_set_visible (GTK_WIDGET (self->none_label), experiment->weighings->len == 0);
  for (guint i = 0; i < experiment->weighings->len; i++) {
    g_autofree char *text = row_text (&g_array_index (experiment->weighings, FmWeighing, i));

    if (row == NULL)
      row = add_row (self);
    fm_widget_set_label (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (row))), text);
    gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
    row = gtk_widget_get_next_sibling (row);
  }
}

int
fm_kitchen_weigh_next (const FmExperiment *experiment)
{
  for (guint i = 0; i < experiment->weighings->len; i++)
    if (isnan (g_array_index (experiment->weighings, FmWeighing, i).weighed_g))
      return (int)i;
  return -1;
}

char *
fm_kitchen_weigh_planned_text (const FmWeighing *weighing)
{
  g_autofree char *planned = fm_notebook_text (FM_MEASURE_MASS, weighing->planned_g, 1);

  return isnan (weighing->planned_g) ? NULL : g_strdup_printf (_ ("planned %s"), planned);
}
