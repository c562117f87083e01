/* fm-sidebar.c - the notebook's blends, each with its draft and versions as a small tree */
#include "app/fm-sidebar.h"

#include <glib/gi18n-lib.h>

struct _FmSidebar {
  GtkWidget parent_instance;

  FmSession *session;
};

G_DEFINE_FINAL_TYPE (FmSidebar, fm_sidebar, GTK_TYPE_WIDGET)

enum {
  PICKED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
fm_sidebar_dispose (GObject *object)
{
  FmSidebar *self = FM_SIDEBAR (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_SIDEBAR);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_sidebar_parent_class)->dispose (object);
}

static void
fm_sidebar_class_init (FmSidebarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_sidebar_dispose;
  signals[PICKED] = g_signal_new ("picked", FM_TYPE_SIDEBAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/forcemeat/Forcemeat/ui/fm-sidebar.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_sidebar_init (FmSidebar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_sidebar_set_session (FmSidebar *self, FmSession *session)
{
  g_set_object (&self->session, session);
}
