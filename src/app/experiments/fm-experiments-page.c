/* fm-experiments-page.c - the log of experiments, and one experiment as a page */
#include "app/experiments/fm-experiments-page.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/experiments/fm-experiment-list.h"
#include "app/experiments/fm-experiment-query.h"
#include "app/session/fm-removal.h"
#include "app/experiments/fm-experiment-view.h"
#include "app/widgets/fm-widget.h"

struct _FmExperimentsPage {
  FmPage parent_instance;

  GtkWidget *toast_overlay;
  AdwLeaflet *leaflet;
  FmExperimentList *list;
  GtkWidget *detail_box;
  GtkWidget *back_bar;
  GtkStack *detail_stack;
  FmExperimentView *view;

  GCancellable *opening; /* ends when another experiment is opened */
  gint64 open_id;        /* shown, or being loaded; 0 = none */
  gboolean own_change;   /* this page tells the others; it knows already */
};

G_DEFINE_FINAL_TYPE (FmExperimentsPage, fm_experiments_page, FM_TYPE_PAGE)

static void
tell_others (FmExperimentsPage *self, FmChangeKind kind, gint64 id)
{
  self->own_change = TRUE;
  fm_session_emit_changed (fm_page_get_session (FM_PAGE (self)), kind, id);
  self->own_change = FALSE;
}

static void
close_experiment (FmExperimentsPage *self)
{
  g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
  self->open_id = 0;
  fm_experiment_view_set_document (self->view, fm_page_get_session (FM_PAGE (self)), NULL, NULL);
  fm_experiment_list_select (self->list, 0);
  gtk_stack_set_visible_child_name (self->detail_stack, "none");
  adw_leaflet_navigate (self->leaflet, ADW_NAVIGATION_DIRECTION_BACK);
}

static void
open_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmExperimentsPage) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmExperimentDocument) document = NULL;
  g_autofree char *origin = NULL;
  gint64 blend_id = 0;
  FmExperiment *experiment = fm_experiment_query_open_finish (result, &blend_id, &origin, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->view == NULL)
    return;
  if (experiment == NULL) {
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
    close_experiment (self);
    return;
  }
  document = fm_experiment_document_open (fm_page_get_session (FM_PAGE (self)), experiment);
  fm_experiment_view_set_document (self->view, fm_page_get_session (FM_PAGE (self)), document,
                                   origin);
  gtk_stack_set_visible_child_name (self->detail_stack, "experiment");
}

static void
open_experiment (FmExperimentsPage *self, gint64 id)
{
  if (self->open_id == id || fm_page_get_notebook (FM_PAGE (self)) == NULL)
    return;
  g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
  self->open_id = id;
  self->opening = g_cancellable_new ();
  fm_experiment_query_open_async (fm_page_get_notebook (FM_PAGE (self)), id, self->opening,
                                  open_done_cb, g_object_ref (self));
}

static void
selected_cb (FmExperimentsPage *self, gint64 id)
{
  /* In a narrow window arrows only move in the list; Enter or a click goes to the page. */
  if (!adw_leaflet_get_folded (self->leaflet))
    open_experiment (self, id);
}

static void
activated_cb (FmExperimentsPage *self, gint64 id)
{
  open_experiment (self, id);
  adw_leaflet_navigate (self->leaflet, ADW_NAVIGATION_DIRECTION_FORWARD);
}

static void
back_clicked_cb (FmExperimentsPage *self)
{
  adw_leaflet_navigate (self->leaflet, ADW_NAVIGATION_DIRECTION_BACK);
}

static void
folded_cb (FmExperimentsPage *self)
{
  const gboolean folded = adw_leaflet_get_folded (self->leaflet);

  gtk_widget_set_visible (self->back_bar, folded);
  fm_experiment_list_set_single_click (self->list, folded);
}

static void
stored_cb (FmExperimentsPage *self)
{
  const FmExperiment *experiment =
      fm_experiment_document_get_experiment (fm_experiment_view_get_document (self->view));

  fm_experiment_list_update (self->list, experiment);
  tell_others (self, FM_CHANGE_EXPERIMENT, experiment->id);
}

static void
photos_changed_cb (FmExperimentsPage *self)
{
  tell_others (self, FM_CHANGE_PHOTO, self->open_id);
  fm_experiment_list_reload (self->list);
}

static void
show_version_cb (FmExperimentsPage *self)
{
  FmExperimentDocument *document = fm_experiment_view_get_document (self->view);

  if (document == NULL)
    return;
  fm_session_show_version (fm_page_get_session (FM_PAGE (self)),
                           fm_experiment_document_get_experiment (document)->version_id);
}

static void
removal_settled (GtkWidget *owner, gint64 id, gboolean removed, const GError *error)
{
  FmExperimentsPage *self =
      FM_EXPERIMENTS_PAGE (gtk_widget_get_ancestor (owner, FM_TYPE_EXPERIMENTS_PAGE));

  if (self == NULL || fm_page_get_session (FM_PAGE (self)) == NULL)
    return;
  fm_experiment_list_set_hidden (self->list, id, FALSE);
  if (error != NULL)
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
  if (removed) {
    fm_documents_forget (fm_session_get_documents (fm_page_get_session (FM_PAGE (self))),
                         FM_TYPE_EXPERIMENT_DOCUMENT, fm_page_get_notebook (FM_PAGE (self)), id);
    tell_others (self, FM_CHANGE_EXPERIMENT, id);
    return;
  }
  fm_experiment_list_select (self->list, id);
  fm_experiment_list_reload (self->list);
  open_experiment (self, id);
}

static void
remove_cb (FmExperimentsPage *self)
{
  FmExperimentDocument *document = fm_experiment_view_get_document (self->view);
  g_autofree char *message = NULL;
  const FmExperiment *experiment;

  if (document == NULL)
    return;
  experiment = fm_experiment_document_get_experiment (document);
  message =
      g_strdup_printf (_ ("“%s” removed"),
                       experiment->title != NULL ? experiment->title : _ ("Untitled experiment"));
  fm_experiment_list_set_hidden (self->list, experiment->id, TRUE);
  fm_removal_offer (GTK_WIDGET (self->leaflet), message,
                    fm_experiment_document_get_notebook (document), experiment->id,
                    fm_experiments_remove, removal_settled);
  close_experiment (self);
  fm_experiment_list_reload (self->list);
}

static void
create_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmExperimentsPage) self = data;
  g_autoptr (GError) error = NULL;
  const gint64 id = fm_experiment_query_create_finish (result, &error);

  if (self->list == NULL)
    return;
  if (id == 0) {
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
    return;
  }
  tell_others (self, FM_CHANGE_EXPERIMENT, id);
  fm_experiment_list_select (self->list, id);
  fm_experiment_list_reload (self->list);
  activated_cb (self, id);
}

static void
create_experiment (FmExperimentsPage *self, gint64 version_id)
{
  fm_experiment_query_create_async (fm_page_get_notebook (FM_PAGE (self)), version_id,
                                    create_done_cb, g_object_ref (self));
}

static void
draft_response_cb (FmExperimentsPage *self, const char *response)
{
  const gint64 parent_id = fm_session_get_draft_parent (fm_page_get_session (FM_PAGE (self)));

  if (g_str_equal (response, "save"))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.save-version", NULL);
  else if (g_str_equal (response, "parent") && parent_id != 0)
    create_experiment (self, parent_id);
}

/* An experiment keeps the version it was made from, so a draft has to become one first. */
static void
explain_draft (FmExperimentsPage *self)
{
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _ ("Save the draft first"),
      _ ("An experiment keeps the version it was made from. Save the draft as a version, then "
         "start the experiment from it."));
  AdwMessageDialog *message = ADW_MESSAGE_DIALOG (dialog);

  adw_message_dialog_add_response (message, "cancel", _ ("_Cancel"));
  if (fm_session_get_draft_parent (fm_page_get_session (FM_PAGE (self))) != 0)
    adw_message_dialog_add_response (message, "parent", _ ("Use the version _before it"));
  adw_message_dialog_add_response (message, "save", _ ("_Save version…"));
  adw_message_dialog_set_response_appearance (message, "save", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (message, "save");
  adw_message_dialog_set_close_response (message, "cancel");
  g_signal_connect_object (dialog, "response", G_CALLBACK (draft_response_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
new_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (widget);
  const gint64 version_id = fm_session_get_version_id (fm_page_get_session (FM_PAGE (self)));

  if (version_id != 0)
    create_experiment (self, version_id);
  else
    explain_draft (self);
}

static void
update_actions (FmExperimentsPage *self)
{
  const gboolean possible = fm_page_is_writable (FM_PAGE (self)) &&
                            fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self))) != 0;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "experiments.new", possible);
}

static void
shown_changed_cb (FmExperimentsPage *self)
{
  update_actions (self);
  fm_experiment_list_shown_changed (self->list);
}

static void
notebook_changed_cb (FmExperimentsPage *self)
{
  close_experiment (self);
  update_actions (self);
  fm_experiment_list_reload (self->list);
}

static void
experiments_changed_cb (FmExperimentsPage *self)
{
  if (!self->own_change)
    fm_experiment_list_reload (self->list);
}

static void
tastings_changed_cb (FmExperimentsPage *self)
{
  if (self->view != NULL)
    fm_experiment_view_read_tastings (self->view);
}

static void
fm_experiments_page_show_session (FmPage *page)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (page);

  fm_experiment_list_set_session (self->list, fm_page_get_session (page));
  update_actions (self);
}

static void
fm_experiments_page_dispose (GObject *object)
{
  FmExperimentsPage *self = FM_EXPERIMENTS_PAGE (object);

  g_cancellable_cancel (self->opening);
  g_clear_object (&self->opening);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENTS_PAGE);
  G_OBJECT_CLASS (fm_experiments_page_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, toast_overlay);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, leaflet);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, list);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, detail_box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, back_bar);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, detail_stack);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentsPage, view);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, folded_cb);
  gtk_widget_class_bind_template_callback (widget_class, stored_cb);
  gtk_widget_class_bind_template_callback (widget_class, photos_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, show_version_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_cb);
}

static void
fm_experiments_page_class_init (FmExperimentsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiments_page_dispose;
  FM_PAGE_CLASS (klass)->show_session = fm_experiments_page_show_session;
  g_type_ensure (FM_TYPE_EXPERIMENT_LIST);
  g_type_ensure (FM_TYPE_EXPERIMENT_VIEW);
  gtk_widget_class_install_action (widget_class, "experiments.new", NULL, new_action);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiments-page.ui");
  bind_template (widget_class);
}

static void
fm_experiments_page_init (FmExperimentsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  folded_cb (self);
  fm_page_listen (FM_PAGE (self), "changed::notebook", G_CALLBACK (notebook_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::experiment", G_CALLBACK (experiments_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::tasting", G_CALLBACK (tastings_changed_cb));
}
