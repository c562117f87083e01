/* fm-tasting-result.c - what an opened tasting says */
#include "app/fm-tasting-result.h"

struct _FmTastingResult {
  GtkWidget parent_instance;

  FmTastingDocument *document;
};

G_DEFINE_FINAL_TYPE (FmTastingResult, fm_tasting_result, GTK_TYPE_WIDGET)

static void
fm_tasting_result_dispose (GObject *object)
{
  g_clear_object (&FM_TASTING_RESULT (object)->document);
  G_OBJECT_CLASS (fm_tasting_result_parent_class)->dispose (object);
}

static void
fm_tasting_result_class_init (FmTastingResultClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_tasting_result_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_tasting_result_init (FmTastingResult *self)
{
}

void
fm_tasting_result_set_document (FmTastingResult *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_RESULT (self));
  g_set_object (&self->document, document);
}
