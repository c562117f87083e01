/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-application.c - command line, start, and what belongs to no window */
#include "app/window/fm-application.h"

#include <glib/gi18n-lib.h>

#include "app/window/fm-preferences-window.h"
#include "app/session/fm-preferences.h"
#include "app/session/fm-writer.h"
#include "app/window/fm-window-help.h"
#include "app/window/fm-window-open.h"
#include "store/fm-food-store.h"

#define APP_ID "io.github.forcemeat.Forcemeat"
#define NO_EXIT_YET (-1)

struct _FmApplication {
  AdwApplication parent_instance;

  gboolean start_with_demo;
};

G_DEFINE_FINAL_TYPE (FmApplication, fm_application, ADW_TYPE_APPLICATION)

static FmWindow *
get_window (FmApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  g_autoptr (FmSession) session = NULL;

  while (active != NULL && !FM_IS_WINDOW (active))
    active = gtk_window_get_transient_for (active);
  if (active != NULL)
    return FM_WINDOW (active);
  session = fm_session_new ();
  return fm_window_new (ADW_APPLICATION (self), session);
}

static gboolean
is_fresh (FmWindow *window)
{
  return fm_session_get_notebook (fm_window_get_session (window)) == NULL &&
         !gtk_widget_get_visible (GTK_WIDGET (window));
}

static void
fm_application_activate (GApplication *application)
{
  FmApplication *self = FM_APPLICATION (application);
  FmWindow *window = get_window (self);
  gboolean fresh = is_fresh (window);

  gtk_window_present (GTK_WINDOW (window));
  if (self->start_with_demo)
    fm_window_open_demo (window);
  else if (fresh)
    fm_window_open_last (window);
  self->start_with_demo = FALSE;
}

static void
fm_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  FmWindow *window = get_window (FM_APPLICATION (application));
  const gboolean fresh = is_fresh (window);

  gtk_window_present (GTK_WINDOW (window));
  /* The window shows what it would have shown without a file that has no path here. */
  if (!fm_window_open_files (window, files, n_files) && fresh)
    fm_window_open_last (window);
}

static int
fm_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  FmApplication *self = FM_APPLICATION (application);

  if (g_variant_dict_contains (options, "version")) {
    g_print ("Forcemeat %s\n", VERSION);
    return 0;
  }
  if (g_variant_dict_contains (options, "separate"))
    g_application_set_flags (application,
                             g_application_get_flags (application) | G_APPLICATION_NON_UNIQUE);
  if (!g_variant_dict_contains (options, "demo"))
    return NO_EXIT_YET;
  if (g_application_register (application, NULL, NULL) &&
      g_application_get_is_remote (application)) {
    g_action_group_activate_action (G_ACTION_GROUP (application), "demo", NULL);
    return 0;
  }
  self->start_with_demo = TRUE;
  return NO_EXIT_YET;
}

static void
demo_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  FmApplication *self = user_data;

  self->start_with_demo = TRUE;
  g_application_activate (G_APPLICATION (self));
}

static void
preferences_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *parent = gtk_application_get_active_window (GTK_APPLICATION (user_data));

  gtk_window_present (GTK_WINDOW (fm_preferences_window_new (parent)));
}

static void
help_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (user_data));

  if (active != NULL)
    fm_window_help_show (active);
}

static void
about_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *parent = gtk_application_get_active_window (GTK_APPLICATION (user_data));
  GtkWidget *about = adw_about_window_new ();
  AdwAboutWindow *window = ADW_ABOUT_WINDOW (about);

  adw_about_window_set_application_name (window, "Forcemeat");
  adw_about_window_set_application_icon (window, APP_ID);
  adw_about_window_set_version (window, VERSION);
  adw_about_window_set_developer_name (window, _ ("The Forcemeat developers"));
  adw_about_window_set_license_type (window, GTK_LICENSE_GPL_3_0);
  adw_about_window_set_comments (
      window,
      _ ("A workbench for developers of ground meat blends. It computes and records; it never "
         "states that food is safe. Local codes and a licensed professional decide."));
  adw_about_window_add_legal_section (window, _ ("Food composition data"), NULL, GTK_LICENSE_CUSTOM,
                                      _ ("Composition values are from the " FM_FOOD_STORE_CITATION
                                         " They are in the public "
                                         "domain."));
  gtk_window_set_transient_for (GTK_WINDOW (about), parent);
  gtk_window_present (GTK_WINDOW (about));
}

static void
quit_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GList *windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (user_data)));

  /* Closing asks where something could be lost; the last window ends the program. */
  for (GList *item = windows; item != NULL; item = item->next) {
    if (FM_IS_WINDOW (item->data))
      gtk_window_close (item->data);
  }
  g_list_free (windows);
}

static const GActionEntry app_actions[] = {
  { .name = "demo", .activate = demo_action },
  { .name = "preferences", .activate = preferences_action },
  { .name = "help", .activate = help_action },
  { .name = "about", .activate = about_action },
  { .name = "quit", .activate = quit_action },
};

static const struct {
  const char *action;
  const char *keys[3];
} accels[] = {
  { "app.quit", { "<Control>q" } },
  { "app.preferences", { "<Control>comma" } },
  { "win.new", { "<Control>n" } },
  { "win.new-blend", { "<Control><Shift>n" } },
  { "win.open", { "<Control>o" } },
  { "win.save-version", { "<Control>s" } },
  { "win.find", { "<Control>f" } },
  { "win.find-food", { "<Control>l" } },
  { "win.new-experiment", { "<Control>e" } },
  { "win.print", { "<Control>p" } },
  { "win.save-copy", { "<Control><Shift>s" } },
  { "win.nutrition", { "F9" } },
  { "win.fullscreen", { "F11" } },
  { "app.help", { "F1" } },
  { "win.show-help-overlay", { "<Control>question" } },
  { "win.page(1)", { "<Control>1" } },
  { "win.page(2)", { "<Control>2" } },
  { "win.page(3)", { "<Control>3" } },
  { "win.page(4)", { "<Control>4" } },
  { "win.page(5)", { "<Control>5" } },
  { "win.page(6)", { "<Control>6" } },
  { "window.close", { "<Control>w" } },
};

static void
colour_scheme_cb (GSettings *settings, const char *key, gpointer user_data)
{
  g_autofree char *scheme = g_settings_get_string (settings, "colour-scheme");
  AdwColorScheme wanted = ADW_COLOR_SCHEME_DEFAULT;

  if (g_str_equal (scheme, "light"))
    wanted = ADW_COLOR_SCHEME_FORCE_LIGHT;
  else if (g_str_equal (scheme, "dark"))
    wanted = ADW_COLOR_SCHEME_FORCE_DARK;
  adw_style_manager_set_color_scheme (adw_style_manager_get_default (), wanted);
}

static void
fm_application_startup (GApplication *application)
{
  GSettings *settings = fm_preferences_get ();

  G_APPLICATION_CLASS (fm_application_parent_class)->startup (application);
  gtk_window_set_default_icon_name (APP_ID);
  fm_window_help_watch ();
  for (guint i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (application), accels[i].action,
                                           accels[i].keys);
  g_signal_connect_object (settings, "changed::colour-scheme", G_CALLBACK (colour_scheme_cb),
                           application, 0);
  colour_scheme_cb (settings, NULL, NULL);
}

static void
fm_application_shutdown (GApplication *application)
{
  G_APPLICATION_CLASS (fm_application_parent_class)->shutdown (application);
  fm_writer_wait_closed ();
}

static void
fm_application_class_init (FmApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  application_class->activate = fm_application_activate;
  application_class->open = fm_application_open;
  application_class->handle_local_options = fm_application_handle_local_options;
  application_class->startup = fm_application_startup;
  application_class->shutdown = fm_application_shutdown;
}

static void
fm_application_init (FmApplication *self)
{
  const GOptionEntry options[] = {
    { "version", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Print the version and leave"), NULL },
    { "demo", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Open the demo notebook"), NULL },
    { "separate", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Do not join a running program"), NULL },
    { NULL },
  };

  g_application_add_main_option_entries (G_APPLICATION (self), options);
  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[NOTEBOOK…]"));
  g_application_set_option_context_description (
      G_APPLICATION (self),
      _ ("Without a window: forcemeat export, import, recover, csv, batch-sheet, label. "
         "“forcemeat export --help” says more."));
  g_action_map_add_action_entries (G_ACTION_MAP (self), app_actions, G_N_ELEMENTS (app_actions),
                                   self);
}

FmApplication *
fm_application_new (void)
{
  return g_object_new (FM_TYPE_APPLICATION, "application-id", APP_ID, "flags",
                       G_APPLICATION_HANDLES_OPEN, NULL);
}
