/* fm-window-pages.c - builds what the window's first frame does not show: pages, menu */
#include "app/compare/fm-compare-page.h"
#include "app/experiments/fm-experiments-page.h"
#include "app/formula/fm-formula-page.h"
#include "app/map/fm-map-page.h"
#include "app/nutrition/fm-nutrition-panel.h"
#include "app/window/fm-page-slot.h"
#include "app/tastings/fm-tastings-page.h"
#include "app/versions/fm-versions-page.h"
#include "app/window/fm-window-private.h"

static void
build_formula_cb (FmWindow *self, FmPageSlot *slot)
{
  GtkWidget *page = g_object_new (FM_TYPE_FORMULA_PAGE, NULL);

  fm_formula_page_set_session (FM_FORMULA_PAGE (page), self->session);
  fm_page_slot_set_page (slot, page);
}

static void
build_versions_cb (FmWindow *self, FmPageSlot *slot)
{
  GtkWidget *page = g_object_new (FM_TYPE_VERSIONS_PAGE, NULL);

  fm_versions_page_set_session (FM_VERSIONS_PAGE (page), self->session);
  fm_page_slot_set_page (slot, page);
}

static void
build_experiments_cb (FmWindow *self, FmPageSlot *slot)
{
  GtkWidget *page = g_object_new (FM_TYPE_EXPERIMENTS_PAGE, NULL);

  fm_experiments_page_set_session (FM_EXPERIMENTS_PAGE (page), self->session);
  fm_page_slot_set_page (slot, page);
}

static void
build_tastings_cb (FmWindow *self, FmPageSlot *slot)
{
  GtkWidget *page = g_object_new (FM_TYPE_TASTINGS_PAGE, NULL);

  fm_tastings_page_set_session (FM_TASTINGS_PAGE (page), self->session);
  fm_page_slot_set_page (slot, page);
}

static void
build_compare_cb (FmWindow *self, FmPageSlot *slot)
{
  GtkWidget *page = g_object_new (FM_TYPE_COMPARE_PAGE, NULL);

  fm_compare_page_set_session (FM_COMPARE_PAGE (page), self->session);
  fm_page_slot_set_page (slot, page);
}

static void
build_map_cb (FmWindow *self, FmPageSlot *slot)
{
  GtkWidget *page = g_object_new (FM_TYPE_MAP_PAGE, NULL);

  fm_map_page_set_session (FM_MAP_PAGE (page), self->session);
  fm_page_slot_set_page (slot, page);
}

static void
build_nutrition_cb (FmWindow *self, FmPageSlot *slot)
{
  GtkWidget *panel = g_object_new (FM_TYPE_NUTRITION_PANEL, NULL);

  fm_nutrition_panel_set_session (FM_NUTRITION_PANEL (panel), self->session);
  fm_page_slot_set_page (slot, panel);
}

/* One of the pages that stand for a missing notebook or blend. */
static void
take_empty_page (FmPageSlot *slot, const char *id)
{
  const char *ids[] = { id, NULL };
  g_autoptr (GtkBuilder) builder = gtk_builder_new ();
  g_autoptr (GError) error = NULL;

  if (!gtk_builder_add_objects_from_resource (
          builder, "/io/github/forcemeat/Forcemeat/ui/window/fm-window-empty.ui", ids, &error))
    g_error ("%s", error->message);
  fm_page_slot_set_page (slot, GTK_WIDGET (gtk_builder_get_object (builder, id)));
}

static void
build_no_notebook_cb (FmWindow *self, FmPageSlot *slot)
{
  take_empty_page (slot, "no_notebook_page");
}

static void
build_no_blend_cb (FmWindow *self, FmPageSlot *slot)
{
  take_empty_page (slot, "no_blend_page");
}

static void
make_menu_cb (GtkMenuButton *button, gpointer user_data)
{
  FmWindow *self = user_data;

  if (gtk_menu_button_get_menu_model (button) == NULL)
    gtk_menu_button_set_menu_model (button, self->primary_menu);
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
  gtk_widget_class_bind_template_callback (klass, build_no_notebook_cb);
  gtk_widget_class_bind_template_callback (klass, build_no_blend_cb);
  gtk_widget_class_bind_template_callback (klass, build_formula_cb);
  gtk_widget_class_bind_template_callback (klass, build_versions_cb);
  gtk_widget_class_bind_template_callback (klass, build_experiments_cb);
  gtk_widget_class_bind_template_callback (klass, build_tastings_cb);
  gtk_widget_class_bind_template_callback (klass, build_compare_cb);
  gtk_widget_class_bind_template_callback (klass, build_map_cb);
  gtk_widget_class_bind_template_callback (klass, build_nutrition_cb);
}
