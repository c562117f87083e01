/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-number.c - one quantity of a version, its parent's, and the difference */
#include "app/versions/fm-versions-page-number.h"

#include <glib/gi18n-lib.h>

struct _FmVersionsPageNumber {
  GtkListBoxRow parent_instance;

  GtkLabel *name_label;
  GtkLabel *this_label;
  GtkLabel *parent_label;
  GtkLabel *difference_label;
};

G_DEFINE_FINAL_TYPE (FmVersionsPageNumber, fm_versions_page_number, GTK_TYPE_LIST_BOX_ROW)

static void
fm_versions_page_number_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_VERSIONS_PAGE_NUMBER);
  G_OBJECT_CLASS (fm_versions_page_number_parent_class)->dispose (object);
}

static void
fm_versions_page_number_class_init (FmVersionsPageNumberClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_versions_page_number_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/versions/fm-versions-page-number.ui");
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageNumber, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageNumber, this_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageNumber, parent_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageNumber, difference_label);
}

static void
fm_versions_page_number_init (FmVersionsPageNumber *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_versions_page_number_new (const char *name, const char *const values[3], gboolean heading)
{
  FmVersionsPageNumber *self = g_object_new (FM_TYPE_VERSIONS_PAGE_NUMBER, NULL);
  GtkLabel *labels[] = { self->this_label, self->parent_label, self->difference_label };
  g_autofree char *spoken = g_strdup_printf (_ ("%s: this %s, parent %s, difference %s"), name,
                                             values[0], values[1], values[2]);

  gtk_label_set_text (self->name_label, name);
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++) {
    gtk_label_set_text (labels[i], values[i]);
    gtk_widget_add_css_class (GTK_WIDGET (labels[i]), heading ? "caption-heading" : "numeric");
  }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  heading ? _ ("Headings of the numbers") : spoken, -1);
  return GTK_WIDGET (self);
}
