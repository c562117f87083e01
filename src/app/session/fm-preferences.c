/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-preferences.c - settings of the person at the desk */
#include "app/session/fm-preferences.h"

#define SCHEMA_ID "io.github.forcemeat.Forcemeat"
#define MAX_RECENT 10

/* Beside the program, for runs from the build folder: they have no installed schema. */
static GSettingsSchema *
schema_beside_program (void)
{
  g_autofree char *program = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *folder = program != NULL ? g_path_get_dirname (program) : NULL;
  g_autoptr (GSettingsSchemaSource) source = NULL;

  if (folder != NULL)
    source = g_settings_schema_source_new_from_directory (
        folder, g_settings_schema_source_get_default (), TRUE, NULL);
  return source != NULL ? g_settings_schema_source_lookup (source, SCHEMA_ID, FALSE) : NULL;
}

static GSettings *
open_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = schema_beside_program ();

  if (schema == NULL && source != NULL)
    schema = g_settings_schema_source_lookup (source, SCHEMA_ID, TRUE);
  if (schema == NULL)
    g_error ("The settings schema %s is not installed; install the program again", SCHEMA_ID);
  return g_settings_new_full (schema, NULL, NULL);
}

GSettings *
fm_preferences_get (void)
{
  static GSettings *settings;

  if (settings == NULL)
    settings = open_settings ();
  return settings;
}

GStrv
fm_preferences_recent (void)
{
  return g_settings_get_strv (fm_preferences_get (), "recent-notebooks");
}

static void
set_recent (const char *first, const char *left_out)
{
  g_auto (GStrv) old = fm_preferences_recent ();
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) paths = NULL;
  guint n = 0;

  if (first != NULL) {
    g_strv_builder_add (builder, first);
    n++;
  }
  for (guint i = 0; old[i] != NULL && n < MAX_RECENT; i++) {
    if (g_str_equal (old[i], left_out))
      continue;
    g_strv_builder_add (builder, old[i]);
    n++;
  }
  paths = g_strv_builder_end (builder);
  g_settings_set_strv (fm_preferences_get (), "recent-notebooks", (const char *const *)paths);
}

void
fm_preferences_add_recent (const char *path)
{
  set_recent (path, path);
  g_settings_set_string (fm_preferences_get (), "last-notebook", path);
}

void
fm_preferences_remove_recent (const char *path)
{
  set_recent (NULL, path);
}
