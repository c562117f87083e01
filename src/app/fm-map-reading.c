/* fm-map-reading.c - what a map shows: fit, pictures, the best blend and the next one to try */
#include "app/fm-map-reading.h"

struct _FmMapReading {
  GtkWidget parent_instance;

  FmMapDocument *document;
};

G_DEFINE_FINAL_TYPE (FmMapReading, fm_map_reading, GTK_TYPE_WIDGET)

static void
fm_map_reading_dispose (GObject *object)
{
  g_clear_object (&FM_MAP_READING (object)->document);
  G_OBJECT_CLASS (fm_map_reading_parent_class)->dispose (object);
}

static void
fm_map_reading_class_init (FmMapReadingClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_map_reading_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_map_reading_init (FmMapReading *self)
{
}

void
fm_map_reading_set_document (FmMapReading *self, FmMapDocument *document)
{
  g_return_if_fail (FM_IS_MAP_READING (self));
  g_set_object (&self->document, document);
}
