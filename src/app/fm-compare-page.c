/* fm-compare-page.c - versions or experiments side by side */
#include "app/fm-compare-page.h"

struct _FmComparePage {
  GtkWidget parent_instance;

  FmSession *session;
};

G_DEFINE_FINAL_TYPE (FmComparePage, fm_compare_page, GTK_TYPE_WIDGET)

static void
fm_compare_page_dispose (GObject *object)
{
  FmComparePage *self = FM_COMPARE_PAGE (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_COMPARE_PAGE);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_compare_page_parent_class)->dispose (object);
}

static void
fm_compare_page_class_init (FmComparePageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_compare_page_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/forcemeat/Forcemeat/ui/fm-compare-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_compare_page_init (FmComparePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_compare_page_set_session (FmComparePage *self, FmSession *session)
{
  g_set_object (&self->session, session);
}
