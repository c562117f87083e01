/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-shortcuts.c - the window of the shortcuts tells of every key, and no key has two meanings */
#include <adwaita.h>

#include "app/window/fm-application.h"

#define OVERLAY "/io/github/forcemeat/Forcemeat/gtk/help-overlay.ui"

typedef struct {
  GtkApplication *application;
  GHashTable *keys; /* accelerator -> title */
} Told;

static void
add_key (Told *told, const char *key, const char *title)
{
  guint code;
  GdkModifierType modifiers;
  g_autofree char *name = NULL;
  const char *before;

  g_assert_true (gtk_accelerator_parse (key, &code, &modifiers));
  name = gtk_accelerator_name (code, modifiers);
  before = g_hash_table_lookup (told->keys, name);
  /* The toolkit keeps each a second time, for its search. */
  if (before != NULL && !g_str_equal (before, title))
    g_error ("%s is told of by “%s” and “%s”", name, before, title);
  g_hash_table_insert (told->keys, g_strdup (name), g_strdup (title));
}

static void
add_shortcut (Told *told, GObject *shortcut)
{
  g_autofree char *title = NULL;
  g_autofree char *accelerator = NULL;
  g_autofree char *action = NULL;
  g_auto (GStrv) keys = NULL;

  g_object_get (shortcut, "title", &title, "accelerator", &accelerator, "action-name", &action,
                NULL);
  if (action != NULL)
    keys = gtk_application_get_accels_for_action (told->application, action);
  else
    keys = g_strsplit (accelerator, " ", -1);
  if (keys[0] == NULL)
    g_error ("“%s” has no key", title);
  for (guint i = 0; keys[i] != NULL; i++)
    add_key (told, keys[i], title);
}

static void
add_all (Told *told, GtkWidget *widget)
{
  if (GTK_IS_SHORTCUTS_SHORTCUT (widget)) {
    add_shortcut (told, G_OBJECT (widget));
    return;
  }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    add_all (told, child);
}

static void
test_complete (void)
{
  g_autoptr (FmApplication) application = fm_application_new ();
  g_autoptr (GtkBuilder) builder = NULL;
  g_autoptr (GHashTable) keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  Told told = { GTK_APPLICATION (application), keys };
  g_auto (GStrv) actions = NULL;
  g_autoptr (GError) error = NULL;

  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, &error));
  builder = gtk_builder_new_from_resource (OVERLAY);
  add_all (&told, GTK_WIDGET (gtk_builder_get_object (builder, "help_overlay")));
  actions = gtk_application_list_action_descriptions (told.application);
  g_assert_cmpuint (g_strv_length (actions), >, 10);
  for (guint i = 0; actions[i] != NULL; i++) {
    g_auto (GStrv) accels = gtk_application_get_accels_for_action (told.application, actions[i]);

    for (guint k = 0; accels[k] != NULL; k++) {
      if (!g_hash_table_contains (keys, accels[k]))
        g_error ("%s of %s is not told of", accels[k], actions[i]);
    }
  }
  gtk_window_destroy (GTK_WINDOW (gtk_builder_get_object (builder, "help_overlay")));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/shortcuts/complete", test_complete);
  return g_test_run ();
}
