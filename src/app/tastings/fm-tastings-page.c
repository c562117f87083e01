/* fm-tastings-page.c - the list of tastings, and one tasting as a page */
#include "app/tastings/fm-tastings-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/session/fm-removal.h"
#include "app/tastings/fm-tasting-list.h"
#include "app/tastings/fm-tasting-query.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/tastings/fm-tasting-view.h"
#include "app/widgets/fm-widget.h"

struct _FmTastingsPage {
  FmPage parent_instance;

  GtkWidget *toast_overlay;
  AdwLeaflet *leaflet;
  FmTastingList *list;
  GtkWidget *back_bar;
  GtkStack *detail_stack;
  FmTastingView *view;

  GCancellable *opening; /* ends when another tasting is opened */
  gint64 open_id;        /* shown, or being loaded; 0 = none */
};

G_DEFINE_FINAL_TYPE (FmTastingsPage, fm_tastings_page, FM_TYPE_PAGE)

static void
close_tasting (FmTastingsPage *self)
{
  g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
  self->open_id = 0;
  fm_tasting_view_set_document (self->view, NULL);
  fm_tasting_list_select (self->list, 0);
  gtk_stack_set_visible_child_name (self->detail_stack, "none");
  adw_leaflet_navigate (self->leaflet, ADW_NAVIGATION_DIRECTION_BACK);
}

static void
outcome_stored_cb (FmTastingsPage *self)
{
  if (fm_page_get_session (FM_PAGE (self)) != NULL)
    fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), FM_CHANGE_TASTING,
                             self->open_id);
}

static void
open_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingsPage) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmTastingDocument) document = NULL;
  FmTasting *tasting = fm_tasting_query_open_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->view == NULL)
    return;
  if (tasting == NULL) {
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
    close_tasting (self);
    return;
  }
  document = fm_tasting_document_open_record (fm_page_get_session (FM_PAGE (self)), tasting);
  g_signal_connect_object (document, "outcome-stored", G_CALLBACK (outcome_stored_cb), self,
                           G_CONNECT_SWAPPED);
  fm_tasting_view_set_document (self->view, document);
  gtk_stack_set_visible_child_name (self->detail_stack, "tasting");
}

static void
open_tasting (FmTastingsPage *self, gint64 id)
{
  if (self->open_id == id || fm_page_get_notebook (FM_PAGE (self)) == NULL)
    return;
  g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
  self->open_id = id;
  self->opening = g_cancellable_new ();
  fm_tasting_query_open_async (fm_page_get_notebook (FM_PAGE (self)), id, self->opening,
                               open_done_cb, g_object_ref (self));
}

static void
selected_cb (FmTastingsPage *self, gint64 id)
{
  /* In a narrow window arrows only move in the list; Enter or a click goes to the page. */
  if (!adw_leaflet_get_folded (self->leaflet))
    open_tasting (self, id);
}

static void
activated_cb (FmTastingsPage *self, gint64 id)
{
  open_tasting (self, id);
  adw_leaflet_navigate (self->leaflet, ADW_NAVIGATION_DIRECTION_FORWARD);
}

static void
back_clicked_cb (FmTastingsPage *self)
{
  adw_leaflet_navigate (self->leaflet, ADW_NAVIGATION_DIRECTION_BACK);
}

static void
folded_cb (FmTastingsPage *self)
{
  const gboolean folded = adw_leaflet_get_folded (self->leaflet);

  gtk_widget_set_visible (self->back_bar, folded);
  /* A list that is folded away hands its focus, and with it the selection, to another row. */
  if (!folded)
    fm_tasting_list_select (self->list, self->open_id);
}

static void
stored_cb (FmTastingsPage *self)
{
  fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), FM_CHANGE_TASTING, self->open_id);
}

static void
removal_settled (GtkWidget *owner, gint64 id, gboolean removed, const GError *error)
{
  FmTastingsPage *self = FM_TASTINGS_PAGE (gtk_widget_get_ancestor (owner, FM_TYPE_TASTINGS_PAGE));

  if (self == NULL || fm_page_get_session (FM_PAGE (self)) == NULL)
    return;
  fm_tasting_list_set_hidden (self->list, id, FALSE);
  if (error != NULL)
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
  if (removed) {
    fm_documents_forget (fm_session_get_documents (fm_page_get_session (FM_PAGE (self))),
                         FM_TYPE_TASTING_DOCUMENT, fm_page_get_notebook (FM_PAGE (self)), id);
  } else {
    fm_tasting_list_select (self->list, id);
    open_tasting (self, id);
  }
  fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), FM_CHANGE_TASTING, id);
}

static void
remove_cb (FmTastingsPage *self)
{
  FmTastingDocument *document = fm_tasting_view_get_document (self->view);
  g_autofree char *message = NULL;
  const FmTasting *tasting;

  if (document == NULL)
    return;
  tasting = fm_tasting_document_get_tasting (document);
  message = g_strdup_printf (_ ("“%s” removed"), fm_tasting_text_title (tasting->title));
  fm_tasting_list_set_hidden (self->list, tasting->id, TRUE);
  fm_removal_offer (GTK_WIDGET (self->leaflet), message,
                    fm_tasting_document_get_notebook (document), tasting->id, fm_tastings_remove,
                    removal_settled);
  close_tasting (self);
  fm_tasting_list_reload (self->list);
}

static void
create_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingsPage) self = data;
  g_autoptr (GError) error = NULL;
  const gint64 id = fm_tasting_query_create_finish (result, &error);

  if (self->list == NULL)
    return;
  if (id == 0) {
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
    return;
  }
  fm_tasting_list_select (self->list, id);
  fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), FM_CHANGE_TASTING, id);
  activated_cb (self, id);
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmTastingsPage *self = FM_TASTINGS_PAGE (widget);

  fm_tasting_query_create_async (fm_page_get_notebook (FM_PAGE (self)), create_done_cb,
                                 g_object_ref (self));
}

static void
update_actions (FmTastingsPage *self)
{

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "tastings.new",
                                 fm_page_is_writable (FM_PAGE (self)));
}

static void
shown_changed_cb (FmTastingsPage *self)
{
  fm_tasting_list_shown_changed (self->list);
}

static void
notebook_changed_cb (FmTastingsPage *self)
{
  close_tasting (self);
  update_actions (self);
  fm_tasting_list_reload (self->list);
}

static void
tastings_changed_cb (FmTastingsPage *self)
{
  fm_tasting_list_reload (self->list);
}

static void
fm_tastings_page_show_session (FmPage *page)
{
  FmTastingsPage *self = FM_TASTINGS_PAGE (page);

  fm_tasting_list_set_session (self->list, fm_page_get_session (page));
  update_actions (self);
}

static void
fm_tastings_page_dispose (GObject *object)
{
  FmTastingsPage *self = FM_TASTINGS_PAGE (object);

  g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTINGS_PAGE);
  G_OBJECT_CLASS (fm_tastings_page_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmTastingsPage, toast_overlay);
  gtk_widget_class_bind_template_child (widget_class, FmTastingsPage, leaflet);
  gtk_widget_class_bind_template_child (widget_class, FmTastingsPage, list);
  gtk_widget_class_bind_template_child (widget_class, FmTastingsPage, back_bar);
  gtk_widget_class_bind_template_child (widget_class, FmTastingsPage, detail_stack);
  gtk_widget_class_bind_template_child (widget_class, FmTastingsPage, view);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, folded_cb);
  gtk_widget_class_bind_template_callback (widget_class, stored_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
fm_tastings_page_class_init (FmTastingsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tastings_page_dispose;
  FM_PAGE_CLASS (klass)->show_session = fm_tastings_page_show_session;
  g_type_ensure (FM_TYPE_TASTING_LIST);
  g_type_ensure (FM_TYPE_TASTING_VIEW);
  gtk_widget_class_install_action (widget_class, "tastings.new", NULL, new_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tastings-page.ui");
  bind_template (widget_class);
}

static void
fm_tastings_page_init (FmTastingsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  folded_cb (self);
  fm_page_listen (FM_PAGE (self), "changed::notebook", G_CALLBACK (notebook_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::tasting", G_CALLBACK (tastings_changed_cb));
}
