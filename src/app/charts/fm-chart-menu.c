/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-menu.c - the menu of a chart: its table, where its figures come from, its picture */
#include <glib/gi18n-lib.h>

#include "app/charts/fm-chart-private.h"
#include "app/charts/fm-chart-save.h"
#include "app/charts/fm-chart-table-window.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-page.h"

static void
show_table_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmChart *self = FM_CHART (widget);
  g_autofree char *subject = fm_chart_dup_subject (self);

  fm_chart_table_window_show (widget, fm_chart_get_title (self), subject,
                              fm_chart_get_table (self));
}

static void
derive_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const char *figure = NULL;
  g_autofree char *text = FM_CHART_GET_CLASS (widget)->derive (FM_CHART (widget), &figure);

  if (text != NULL)
    fm_derivation_window_show (widget, figure, text);
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmChartFormat format = FM_CHART_SVG;
  g_autofree char *ending = g_strconcat (".", g_variant_get_string (parameter, NULL), NULL);

  fm_chart_format_of_name (ending, &format);
  fm_chart_save (FM_CHART (widget), format);
}

void
fm_chart_menu_install (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "chart.show-table", NULL, show_table_action);
  gtk_widget_class_install_action (widget_class, "chart.derive", NULL, derive_action);
  gtk_widget_class_install_action (widget_class, "chart.save", "s", save_action);
}

GtkWidget *
fm_chart_menu_new (FmChart *self)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autoptr (GMenu) show = g_menu_new ();
  g_autoptr (GMenu) save = g_menu_new ();
  GtkWidget *popover;

  g_menu_append (show, _ ("Show as _Table"), "chart.show-table");
  if (FM_CHART_GET_CLASS (self)->derive != NULL)
    g_menu_append (show, _ ("_Where the Figures Come From"), "chart.derive");
  g_menu_append (save, _ ("Save Picture as _SVG…"), "chart.save::svg");
  g_menu_append (save, _ ("Save Picture as _PDF…"), "chart.save::pdf");
  g_menu_append (save, _ ("Save Picture as P_NG…"), "chart.save::png");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (show));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (save));
  popover = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_popover_set_has_arrow (GTK_POPOVER (popover), FALSE);
  gtk_widget_set_parent (popover, GTK_WIDGET (self));
  return popover;
}

void
fm_chart_set_subject_in (GtkWidget *widget, const char *subject)
{
  if (FM_IS_CHART (widget)) {
    fm_chart_set_subject (FM_CHART (widget), subject);
    return;
  }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    fm_chart_set_subject_in (child, subject);
}

char *
fm_chart_dup_subject (FmChart *self)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (self), FM_TYPE_PAGE);

  if (fm_chart_get_subject (self) != NULL)
    return g_strdup (fm_chart_get_subject (self));
  if (page == NULL || fm_page_get_session (FM_PAGE (page)) == NULL)
    return NULL;
  return fm_session_dup_shown (fm_page_get_session (FM_PAGE (page)));
}
