/* fm-tasting-scope.c - what a planned panel can and cannot show, kept current as the plan changes
 */
#include "app/tastings/fm-tasting-scope.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-widget.h"

struct _FmTastingScope {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *text_label;

  FmTasting *waiting; /* the newest plan, while an older one is worked on; else NULL */
  gboolean working;
};

G_DEFINE_FINAL_TYPE (FmTastingScope, fm_tasting_scope, GTK_TYPE_WIDGET)

static void start (FmTastingScope *self, FmTasting *tasting);

static void
outlook_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  g_task_return_pointer (task, fm_tasting_outlook (data), g_free);
}

static void
outlook_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmTastingScope *self = FM_TASTING_SCOPE (source);
  g_autofree char *text = g_task_propagate_pointer (G_TASK (result), NULL);

  self->working = FALSE;
  if (self->text_label == NULL)
    return;
  fm_widget_set_label (self->text_label, text);
  if (self->waiting != NULL)
    start (self, g_steal_pointer (&self->waiting));
}

/* (transfer full tasting) */
static void
start (FmTastingScope *self, FmTasting *tasting)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, outlook_done_cb, NULL);

  self->working = TRUE;
  g_task_set_source_tag (task, start);
  g_task_set_task_data (task, tasting, (GDestroyNotify)fm_tasting_free);
  g_task_run_in_thread (task, outlook_thread);
}

static void
fm_tasting_scope_dispose (GObject *object)
{
  FmTastingScope *self = FM_TASTING_SCOPE (object);

  g_clear_pointer (&self->waiting, fm_tasting_free);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_SCOPE);
  G_OBJECT_CLASS (fm_tasting_scope_parent_class)->dispose (object);
}

static void
fm_tasting_scope_class_init (FmTastingScopeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_scope_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-scope.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingScope, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingScope, text_label);
}

static void
fm_tasting_scope_init (FmTastingScope *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_scope_show (FmTastingScope *self, const FmTasting *tasting)
{
  g_return_if_fail (FM_IS_TASTING_SCOPE (self));
  g_clear_pointer (&self->waiting, fm_tasting_free);
  if (self->working)
    self->waiting = fm_tasting_copy (tasting);
  else
    start (self, fm_tasting_copy (tasting));
}
