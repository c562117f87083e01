/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-pages.c - builds what the window's first frame does not show: pages, menu */
#include "app/batch/fm-batch-sheet-dialog.h"
#include "app/compare/fm-compare-page.h"
#include "app/documents/fm-price-choice.h"
#include "app/documents/fm-report-choice.h"
#include "app/documents/fm-shopping-choice.h"
#include "app/experiments/fm-experiments-page.h"
#include "app/formula/fm-formula-page.h"
#include "app/map/fm-map-page.h"
#include "app/nutrition/fm-nutrition-panel.h"
#include "app/window/fm-page-slot.h"
#include "app/tastings/fm-tastings-page.h"
#include "app/versions/fm-versions-page.h"
#include "app/window/fm-window-private.h"

static void
build_page_cb (FmWindow *self, FmPageSlot *slot)
{
  fm_page_slot_set_page (
      slot, g_object_new (fm_page_slot_get_page_type (slot), "session", self->session, NULL));
  fm_window_watch_page (self);
}

/* One of the pages that stand for a missing notebook or blend. (transfer full) */
static GtkBuilder *
read_empty_page (const char *id)
{
  const char *ids[] = { id, NULL };
  GtkBuilder *builder = gtk_builder_new ();
  g_autoptr (GError) error = NULL;

  if (!gtk_builder_add_objects_from_resource (
          builder, "/io/github/forcemeat/Forcemeat/ui/window/fm-window-empty.ui", ids, &error))
    g_error ("%s", error->message);
  return builder;
}

static void
build_no_notebook_cb (FmWindow *self, FmPageSlot *slot)
{
  g_autoptr (GtkBuilder) builder = read_empty_page ("no_notebook_page");

  fm_page_slot_set_page (slot, GTK_WIDGET (gtk_builder_get_object (builder, "no_notebook_page")));
  fm_window_fill_start (self, builder);
}

static void
build_no_blend_cb (FmWindow *self, FmPageSlot *slot)
{
  g_autoptr (GtkBuilder) builder = read_empty_page ("no_blend_page");

  fm_page_slot_set_page (slot, GTK_WIDGET (gtk_builder_get_object (builder, "no_blend_page")));
}

static void
make_menu_cb (GtkMenuButton *button, gpointer user_data)
{
  FmWindow *self = user_data;

  if (gtk_menu_button_get_menu_model (button) == NULL)
    gtk_menu_button_set_menu_model (button, self->primary_menu);
}

/* What a page does by a key that holds on every page; shown first, it is built. */
static void
act_on_page (FmWindow *self, const char *name, const char *action)
{
  FmPageSlot *slot;

  adw_leaflet_set_visible_child_name (self->leaflet, "work");
  adw_view_stack_set_visible_child_name (self->stack, name);
  slot = FM_PAGE_SLOT (adw_view_stack_get_child_by_name (self->stack, name));
  if (fm_page_slot_get_page (slot) != NULL)
    gtk_widget_activate_action (fm_page_slot_get_page (slot), action, NULL);
}

static void
find_food_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  act_on_page (FM_WINDOW (widget), "formula", "formula.find-food");
}

static void
new_experiment_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  act_on_page (FM_WINDOW (widget), "experiments", "experiments.new");
}

/* A button that is seen now and called @name. */
static GtkWidget *
find_shown (GtkWidget *widget, const char *name)
{
  GtkWidget *found = NULL;

  if (!gtk_widget_get_mapped (widget))
    return NULL;
  if (GTK_IS_BUTTON (widget) && g_str_equal (gtk_widget_get_name (widget), name))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_shown (child, name);
  return found;
}

/* A tasting has papers of its own; everywhere else the batch of what is shown is weighed out. */
static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);
  GtkWidget *button = find_shown (adw_view_stack_get_visible_child (self->stack), "print");

  if (button != NULL)
    gtk_widget_activate (button);
  else
    fm_batch_sheet_dialog_present (widget, self->session);
}

static void
report_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_report_choice_present (widget, FM_WINDOW (widget)->session);
}

static void
prices_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_price_choice_present (widget, FM_WINDOW (widget)->session);
}

static void
shopping_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_shopping_choice_present (widget, FM_WINDOW (widget)->session);
}

void
fm_window_install_page_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.find-food", NULL, find_food_action);
  gtk_widget_class_install_action (klass, "win.new-experiment", NULL, new_experiment_action);
  gtk_widget_class_install_action (klass, "win.print", NULL, print_action);
  gtk_widget_class_install_action (klass, "win.development-report", NULL, report_action);
  gtk_widget_class_install_action (klass, "win.prices", NULL, prices_action);
  gtk_widget_class_install_action (klass, "win.shopping-list", NULL, shopping_action);
}

void
fm_window_defer_menu (FmWindow *self)
{
  gtk_menu_button_set_create_popup_func (self->menu_button, make_menu_cb, self, NULL);
}

void
fm_window_bind_pages (GtkWidgetClass *klass)
{
  g_type_ensure (FM_TYPE_PAGE_SLOT);
  g_type_ensure (FM_TYPE_FORMULA_PAGE);
  g_type_ensure (FM_TYPE_VERSIONS_PAGE);
  g_type_ensure (FM_TYPE_EXPERIMENTS_PAGE);
  g_type_ensure (FM_TYPE_TASTINGS_PAGE);
  g_type_ensure (FM_TYPE_COMPARE_PAGE);
  g_type_ensure (FM_TYPE_MAP_PAGE);
  g_type_ensure (FM_TYPE_NUTRITION_PANEL);
  gtk_widget_class_bind_template_callback (klass, build_no_notebook_cb);
  gtk_widget_class_bind_template_callback (klass, build_no_blend_cb);
  gtk_widget_class_bind_template_callback (klass, build_page_cb);
}

static gboolean
begin_blend_cb (gpointer data)
{
  FmWindow *self = data;
  GtkWidget *slot = adw_view_stack_get_child_by_name (self->stack, "formula");
  GtkWidget *page = slot != NULL ? fm_page_slot_get_page (FM_PAGE_SLOT (slot)) : NULL;

  if (page != NULL)
    fm_formula_page_begin (FM_FORMULA_PAGE (page));
  return G_SOURCE_REMOVE;
}

/* The page may be built only now, and shows the draft when it hears of it. */
void
fm_window_begin_blend (FmWindow *self)
{
  if (!self->begins || !fm_session_is_editable (self->session))
    return;
  self->begins = FALSE;
  g_idle_add_full (G_PRIORITY_LOW, begin_blend_cb, g_object_ref (self), g_object_unref);
}
