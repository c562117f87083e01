/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-process-pane.c - what the shown formula plans of its process, and the way to change it */
#include "app/formula/fm-process-pane.h"

#include <glib/gi18n-lib.h>

#include "app/formula/fm-process-window.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"

struct _FmProcessPane {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkGrid *grid;
  GtkLabel *empty_label;
  GtkButton *edit_button;

  FmSession *session;
  FmProcess *shown; /* (nullable) */
  FmUnits units;    /* in which it is shown */
};

G_DEFINE_FINAL_TYPE (FmProcessPane, fm_process_pane, GTK_TYPE_WIDGET)

static void
edit_cb (FmProcessPane *self)
{
  fm_process_window_present (GTK_WIDGET (self), self->session);
}

static GtkWidget *
add_label (FmProcessPane *self, const char *text, int column, int row)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_yalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_grid_attach (self->grid, label, column, row, 1, 1);
  return label;
}

static void
show_field (FmProcessPane *self, FmProcessField field, int row)
{
  g_autofree char *text = fm_process_field_text (self->shown, field, &self->units);
  GtkWidget *name;
  GtkWidget *value;

  if (text == NULL)
    return;
  name = add_label (self, fm_process_field_name (field), 0, row);
  gtk_widget_add_css_class (name, "dim-label");
  value = add_label (self, text, 1, row);
  gtk_widget_set_hexpand (value, TRUE);
}

static void
show_process (FmProcessPane *self)
{
  const gboolean empty = fm_process_is_empty (self->shown);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))) != NULL)
    gtk_grid_remove (self->grid, child);
  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++)
    show_field (self, (FmProcessField)i, i);
  gtk_widget_set_visible (GTK_WIDGET (self->grid), !empty);
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), empty);
}

static void
fm_process_pane_dispose (GObject *object)
{
  FmProcessPane *self = FM_PROCESS_PANE (object);

  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_PROCESS_PANE);
  g_clear_object (&self->session);
  g_clear_pointer (&self->shown, fm_process_free);
  G_OBJECT_CLASS (fm_process_pane_parent_class)->dispose (object);
}

static void
fm_process_pane_class_init (FmProcessPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_process_pane_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-process-pane.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmProcessPane, box);
  gtk_widget_class_bind_template_child (widget_class, FmProcessPane, grid);
  gtk_widget_class_bind_template_child (widget_class, FmProcessPane, empty_label);
  gtk_widget_class_bind_template_child (widget_class, FmProcessPane, edit_button);
  gtk_widget_class_bind_template_callback (widget_class, edit_cb);
}

static void
fm_process_pane_init (FmProcessPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_process_pane_update (FmProcessPane *self, FmSession *session)
{
  const FmFormula *formula = fm_session_get_formula (session);
  const FmUnits *units = fm_notebook_units ();

  g_return_if_fail (FM_IS_PROCESS_PANE (self));
  g_set_object (&self->session, session);
  gtk_widget_set_visible (GTK_WIDGET (self->edit_button), fm_session_is_editable (session));
  /* Each keystroke in the table of lines comes by here. */
  if (self->shown != NULL && fm_process_equal (self->shown, formula->process) &&
      !self->units.us_masses == !units->us_masses && !self->units.fahrenheit == !units->fahrenheit)
    return;
  g_clear_pointer (&self->shown, fm_process_free);
  self->shown = fm_process_copy (formula->process);
  self->units = *units;
  show_process (self);
}
