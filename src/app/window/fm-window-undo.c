/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-undo.c - undo and redo of the page that is shown, and of nothing else */
#include <glib/gi18n-lib.h>

#include "app/log/fm-log-page.h"
#include "app/window/fm-page-slot.h"
#include "app/window/fm-window-private.h"

/* NULL until it is built. */
static FmPage *
get_page (FmWindow *self)
{
  GtkWidget *slot = adw_view_stack_get_visible_child (self->stack);
  GtkWidget *page = slot != NULL ? fm_page_slot_get_page (FM_PAGE_SLOT (slot)) : NULL;

  return page != NULL && FM_IS_PAGE (page) ? FM_PAGE (page) : NULL;
}

/* Of what is on screen: a narrow window may show the list of the records in its place. */
static FmStoredDocument *
get_document (FmWindow *self)
{
  FmPage *page = get_page (self);

  if (page != NULL && FM_IS_LOG_PAGE (page) && !fm_log_page_shows_record (FM_LOG_PAGE (page)))
    return NULL;
  return page != NULL ? fm_page_get_document (page) : NULL;
}

/* @none: said where the document has no such step. */
static const char *
tell_why_not (FmWindow *self, const char *none)
{
  FmPage *page = get_page (self);
  FmStoredDocument *document = get_document (self);

  if (page == NULL)
    return none;
  if (document == NULL)
    return fm_page_tell_no_document (page);
  if (!fm_stored_document_is_editable (document))
    return _ ("This notebook is open for reading only");
  if (fm_stored_document_state (document) == NULL)
    return _ ("This page keeps no steps to undo");
  return none;
}

static void
show_step (GtkButton *button, const char *text, gboolean possible)
{
  gtk_widget_set_tooltip_text (GTK_WIDGET (button), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  text, -1);
  gtk_widget_action_set_enabled (GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (button))),
                                 gtk_actionable_get_action_name (GTK_ACTIONABLE (button)),
                                 possible);
}

static void
update (FmWindow *self)
{
  FmStoredDocument *document = get_document (self);
  const char *undo = document != NULL ? fm_stored_document_undo_label (document) : NULL;
  const char *redo = document != NULL ? fm_stored_document_redo_label (document) : NULL;
  g_autofree char *undo_text =
      undo != NULL ? g_strdup_printf (_ ("Undo: %s (Ctrl+Z)"), undo)
                   : g_strdup (tell_why_not (self, _ ("Nothing to undo on this page")));
  g_autofree char *redo_text =
      redo != NULL ? g_strdup_printf (_ ("Redo: %s (Ctrl+Y)"), redo)
                   : g_strdup (tell_why_not (self, _ ("Nothing to redo on this page")));

  show_step (self->undo_button, undo_text, undo != NULL);
  show_step (self->redo_button, redo_text, redo != NULL);
}

static void
document_cb (FmWindow *self)
{
  g_signal_group_set_target (self->document_signals, get_document (self));
  update (self);
}

static void
undo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmStoredDocument *document = get_document (FM_WINDOW (widget));

  if (document != NULL)
    fm_stored_document_undo (document);
}

static void
redo_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmStoredDocument *document = get_document (FM_WINDOW (widget));

  if (document != NULL)
    fm_stored_document_redo (document);
}

void
fm_window_install_undo_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.undo", NULL, undo_action);
  gtk_widget_class_install_action (klass, "win.redo", NULL, redo_action);

  /* Bindings, not application accelerators: a text field with the focus has its own undo. */
  gtk_widget_class_add_binding_action (klass, GDK_KEY_z, GDK_CONTROL_MASK, "win.undo", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "win.redo", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_y, GDK_CONTROL_MASK, "win.redo", NULL);
}

void
fm_window_init_undo (FmWindow *self)
{
  self->page_signals = g_signal_group_new (FM_TYPE_PAGE);
  g_signal_group_connect_swapped (self->page_signals, "notify::document", G_CALLBACK (document_cb),
                                  self);
  self->document_signals = g_signal_group_new (FM_TYPE_STORED_DOCUMENT);
  g_signal_group_connect_swapped (self->document_signals, "changed", G_CALLBACK (update), self);
}

void
fm_window_watch_page (FmWindow *self)
{
  if (self->page_signals == NULL)
    return;
  g_signal_group_set_target (self->page_signals, get_page (self));
  document_cb (self);
}
