/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-remark-pane.c - where a remark is typed at the pan */
#include "app/kitchen/fm-kitchen-remark-pane.h"

#include "app/widgets/fm-widget.h"

struct _FmKitchenRemarkPane {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkEditable *entry;
};

G_DEFINE_FINAL_TYPE (FmKitchenRemarkPane, fm_kitchen_remark_pane, GTK_TYPE_WIDGET)

enum {
  ENTERED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
enter_cb (FmKitchenRemarkPane *self)
{
  g_autofree char *words = g_strstrip (g_strdup (gtk_editable_get_text (self->entry)));

  gtk_editable_set_text (self->entry, "");
  g_signal_emit (self, signals[ENTERED], 0, words);
}

static gboolean
fm_kitchen_remark_pane_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FM_KITCHEN_REMARK_PANE (widget)->entry));
}

static void
fm_kitchen_remark_pane_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_REMARK_PANE);
  G_OBJECT_CLASS (fm_kitchen_remark_pane_parent_class)->dispose (object);
}

static void
fm_kitchen_remark_pane_class_init (FmKitchenRemarkPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_remark_pane_dispose;
  widget_class->grab_focus = fm_kitchen_remark_pane_grab_focus;
  widget_class->focus = fm_widget_pass_focus;
  signals[ENTERED] = g_signal_new ("entered", FM_TYPE_KITCHEN_REMARK_PANE, G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-remark-pane.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenRemarkPane, box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenRemarkPane, entry);
  gtk_widget_class_bind_template_callback (widget_class, enter_cb);
}

static void
fm_kitchen_remark_pane_init (FmKitchenRemarkPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
