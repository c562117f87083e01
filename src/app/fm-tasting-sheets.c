/* fm-tasting-sheets.c - the tasters' sheets: what each found of the codes on the cups */
#include "app/fm-tasting-sheets.h"

struct _FmTastingSheets {
  GtkWidget parent_instance;

  FmTastingDocument *document;
};

G_DEFINE_FINAL_TYPE (FmTastingSheets, fm_tasting_sheets, GTK_TYPE_WIDGET)

static void
fm_tasting_sheets_dispose (GObject *object)
{
  g_clear_object (&FM_TASTING_SHEETS (object)->document);
  G_OBJECT_CLASS (fm_tasting_sheets_parent_class)->dispose (object);
}

static void
fm_tasting_sheets_class_init (FmTastingSheetsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_tasting_sheets_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_tasting_sheets_init (FmTastingSheets *self)
{
}

void
fm_tasting_sheets_set_document (FmTastingSheets *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_SHEETS (self));
  g_set_object (&self->document, document);
}
