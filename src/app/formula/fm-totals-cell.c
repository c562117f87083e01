/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-totals-cell.c - one figure of the whole blend: its name, its value and a note, as a button */
#include "app/formula/fm-totals-cell.h"

#include "app/widgets/fm-widget.h"

struct _FmTotalsCell {
  GtkButton parent_instance;

  GtkInscription *caption_text;
  GtkLabel *value_label;
  GtkInscription *note_text;

  char *said; /* the accessible label */
};

G_DEFINE_FINAL_TYPE (FmTotalsCell, fm_totals_cell, GTK_TYPE_BUTTON)

static void
fm_totals_cell_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_TOTALS_CELL);
  G_OBJECT_CLASS (fm_totals_cell_parent_class)->dispose (object);
}

static void
fm_totals_cell_finalize (GObject *object)
{
  g_free (FM_TOTALS_CELL (object)->said);
  G_OBJECT_CLASS (fm_totals_cell_parent_class)->finalize (object);
}

static void
fm_totals_cell_class_init (FmTotalsCellClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_totals_cell_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_totals_cell_finalize;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-totals-cell.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTotalsCell, caption_text);
  gtk_widget_class_bind_template_child (widget_class, FmTotalsCell, value_label);
  gtk_widget_class_bind_template_child (widget_class, FmTotalsCell, note_text);
}

static void
fm_totals_cell_init (FmTotalsCell *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_totals_cell_new (guint n_note_lines)
{
  FmTotalsCell *self = g_object_new (FM_TYPE_TOTALS_CELL, NULL);

  gtk_inscription_set_min_lines (self->note_text, n_note_lines);
  gtk_inscription_set_nat_lines (self->note_text, n_note_lines);
  return GTK_WIDGET (self);
}

void
fm_totals_cell_show (FmTotalsCell *self, const char *caption, const char *value, const char *note)
{
  g_autofree char *said = NULL;

  g_return_if_fail (FM_IS_TOTALS_CELL (self) && caption != NULL && value != NULL);
  said = g_strdup_printf ("%s: %s %s", caption, value, note != NULL ? note : "");
  if (g_strcmp0 (said, self->said) == 0)
    return;
  g_free (self->said);
  self->said = g_steal_pointer (&said);
  gtk_inscription_set_text (self->caption_text, caption);
  fm_widget_set_label (self->value_label, value);
  gtk_inscription_set_text (self->note_text, note);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, self->said,
                                  -1);
}

void
fm_totals_cell_set_note_class (FmTotalsCell *self, const char *css_class)
{
  const char *classes[] = { "caption", css_class, NULL };

  g_return_if_fail (FM_IS_TOTALS_CELL (self));
  gtk_widget_set_css_classes (GTK_WIDGET (self->note_text), classes);
}

const char *
fm_totals_cell_get_caption (FmTotalsCell *self)
{
  g_return_val_if_fail (FM_IS_TOTALS_CELL (self), NULL);
  return gtk_inscription_get_text (self->caption_text);
}
