/* fm-versions-page.c - the tree of versions, reasons and differences */
#include "app/fm-versions-page.h"

struct _FmVersionsPage {
  GtkWidget parent_instance;

  FmSession *session;
};

G_DEFINE_FINAL_TYPE (FmVersionsPage, fm_versions_page, GTK_TYPE_WIDGET)

static void
fm_versions_page_dispose (GObject *object)
{
  FmVersionsPage *self = FM_VERSIONS_PAGE (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_VERSIONS_PAGE);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_versions_page_parent_class)->dispose (object);
}

static void
fm_versions_page_class_init (FmVersionsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_versions_page_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/forcemeat/Forcemeat/ui/fm-versions-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_versions_page_init (FmVersionsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_versions_page_set_session (FmVersionsPage *self, FmSession *session)
{
  g_set_object (&self->session, session);
}
