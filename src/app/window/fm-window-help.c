/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-help.c - which page of the manual tells of a window */
#include "app/window/fm-window-help.h"

#include "app/help/fm-help-window.h"
#include "app/help/fm-help.h"
#include "app/window/fm-window.h"

/* Window -> page of the manual; the main window is on one of its own pages. */
static const struct {
  const char *type, *page;
} help_pages[] = {
  { "FmTargetsWindow", "targets" },
  { "FmCorrectWindow", "targets" },
  { "FmLabelWindow", "label" },
  { "FmServingChoice", "label" },
  { "FmSheetWindow", "documents" },
  { "FmBatchSheetDialog", "documents" },
  { "FmShoppingChoice", "documents" },
  { "FmPriceChoice", "documents" },
  { "FmReportChoice", "documents" },
  { "FmKitchenWindow", "kitchen" },
  { "FmProcessWindow", "formula" },
  { "FmIngredientDialog", "formula" },
  { "FmSaveVersionDialog", "versions" },
  { "FmPhotoViewer", "experiments" },
  { "FmCompareChoice", "compare" },
  { "FmTastingBlindWindow", "tastings" },
  { "FmTastingKeyWindow", "tastings" },
  { "FmTastingSessionsWindow", "tastings" },
  { "FmTastingTogetherWindow", "tastings" },
  { "FmSearchWindow", "notebooks" },
  { "FmPreferencesWindow", "notebooks" },
};

static const char *
help_page (GtkWindow *window)
{
  if (FM_IS_WINDOW (window))
    return fm_window_get_page (FM_WINDOW (window));
  for (guint i = 0; i < G_N_ELEMENTS (help_pages); i++)
    if (g_str_equal (G_OBJECT_TYPE_NAME (window), help_pages[i].type))
      return help_pages[i].page;
  return "index";
}

void
fm_window_help_show (GtkWindow *window)
{
  fm_help_show (window, help_page (window));
}

static gboolean
help_cb (GtkWidget *widget, GVariant *parameter, gpointer user_data)
{
  fm_window_help_show (GTK_WINDOW (widget));
  return TRUE;
}

static void
add_key (GtkWidget *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_F1, 0),
                        gtk_callback_action_new (help_cb, NULL, NULL)));
  gtk_widget_add_controller (window, keys);
}

static void
windows_changed_cb (GListModel *windows, guint position, guint removed, guint added)
{
  for (guint i = position; i < position + added; i++) {
    g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

    /* The main window has the key of the application, and the manual has none of itself. */
    if (!GTK_IS_APPLICATION_WINDOW (window) && !FM_IS_HELP_WINDOW (window))
      add_key (window);
  }
}

void
fm_window_help_watch (void)
{
  g_signal_connect (gtk_window_get_toplevels (), "items-changed", G_CALLBACK (windows_changed_cb),
                    NULL);
}
