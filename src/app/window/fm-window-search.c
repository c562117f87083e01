/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-search.c - Ctrl+F: finds a place in the notebook and goes there */
#include "app/formula/fm-formula-page.h"
#include "app/log/fm-records-page.h"
#include "app/window/fm-page-slot.h"
#include "app/window/fm-search-window.h"
#include "app/window/fm-window-private.h"

/* Shown first, it is built. NULL while no blend is shown. */
static GtkWidget *
go_to_page (FmWindow *self, const char *name)
{
  adw_leaflet_set_visible_child_name (self->leaflet, "work");
  adw_view_stack_set_visible_child_name (self->stack, name);
  return fm_page_slot_get_page (
      FM_PAGE_SLOT (adw_view_stack_get_child_by_name (self->stack, name)));
}

static void
go_to_record (FmWindow *self, const char *page_name, gint64 id)
{
  GtkWidget *page = go_to_page (self, page_name);

  if (page != NULL)
    fm_records_page_go_to (FM_RECORDS_PAGE (page), id);
}

static void
show_blend (FmWindow *self, gint64 blend_id)
{
  if (fm_session_get_blend_id (self->session) != blend_id)
    fm_session_show_blend (self->session, blend_id);
}

static void
found_chosen_cb (FmWindow *self, const FmFound *found)
{
  GtkWidget *page;

  switch (found->kind) {
  case FM_FOUND_BLEND:
  case FM_FOUND_DRAFT:
    go_to_page (self, "formula");
    fm_session_show_blend (self->session, found->blend_id);
    break;
  case FM_FOUND_VERSION:
    go_to_page (self, "versions");
    fm_session_show_version (self->session, found->version_id);
    break;
  case FM_FOUND_EXPERIMENT:
  case FM_FOUND_PHOTO:
    show_blend (self, found->blend_id);
    go_to_record (self, "experiments", found->experiment_id);
    break;
  case FM_FOUND_TASTING:
    go_to_record (self, "tastings", found->id);
    break;
  case FM_FOUND_OWN_ENTRY:
    page = go_to_page (self, "formula");
    if (page != NULL)
      fm_formula_page_find_food (FM_FORMULA_PAGE (page), found->title);
    break;
  case FM_N_FOUND:
    break;
  }
}

static void
find_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);
  FmSearchWindow *window = fm_search_window_new (GTK_WINDOW (self), self->session);

  g_signal_connect_object (window, "chosen", G_CALLBACK (found_chosen_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (window));
}

void
fm_window_install_search_action (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.find", NULL, find_action);
}
