/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-preferences.c - settings of the person at the desk */
#include "app/session/fm-preferences.h"

#define SCHEMA_ID "io.github.forcemeat.Forcemeat"

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
