/* fm-tasting-plan.c - a tasting before it starts */
#include "app/fm-tasting-plan.h"

struct _FmTastingPlan {
  GtkWidget parent_instance;

  FmTastingDocument *document;
};

G_DEFINE_FINAL_TYPE (FmTastingPlan, fm_tasting_plan, GTK_TYPE_WIDGET)

static void
fm_tasting_plan_dispose (GObject *object)
{
  g_clear_object (&FM_TASTING_PLAN (object)->document);
  G_OBJECT_CLASS (fm_tasting_plan_parent_class)->dispose (object);
}

static void
fm_tasting_plan_class_init (FmTastingPlanClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_tasting_plan_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_tasting_plan_init (FmTastingPlan *self)
{
}

void
fm_tasting_plan_set_document (FmTastingPlan *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_PLAN (self));
  g_set_object (&self->document, document);
}
