/* fm-nutrition-panel.c - nutrients of what the centre shows, raw and cooked */
#include "app/fm-nutrition-panel.h"

struct _FmNutritionPanel {
  GtkWidget parent_instance;

  FmSession *session;
};

G_DEFINE_FINAL_TYPE (FmNutritionPanel, fm_nutrition_panel, GTK_TYPE_WIDGET)

static void
fm_nutrition_panel_dispose (GObject *object)
{
  FmNutritionPanel *self = FM_NUTRITION_PANEL (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_NUTRITION_PANEL);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_nutrition_panel_parent_class)->dispose (object);
}

static void
fm_nutrition_panel_class_init (FmNutritionPanelClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_nutrition_panel_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/forcemeat/Forcemeat/ui/fm-nutrition-panel.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_nutrition_panel_init (FmNutritionPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_nutrition_panel_set_session (FmNutritionPanel *self, FmSession *session)
{
  g_set_object (&self->session, session);
}
