/* fm-experiments-page.c - the log of experiments, and one experiment as a page */
#include "app/fm-experiments-page.h"

struct _FmExperimentsPage {
  GtkWidget parent_instance;

  FmSession *session;
};

G_DEFINE_FINAL_TYPE (FmExperimentsPage, fm_experiments_page, GTK_TYPE_WIDGET)

static void
fm_experiments_page_dispose (GObject *object)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENTS_PAGE);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_experiments_page_parent_class)->dispose (object);
}

static void
fm_experiments_page_class_init (FmExperimentsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_experiments_page_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/forcemeat/Forcemeat/ui/fm-experiments-page.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_experiments_page_init (FmExperimentsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_experiments_page_set_session (FmExperimentsPage *self, FmSession *session)
{
  g_set_object (&self->session, session);
}
