/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-settings.c - small settings that travel with the notebook */
#include <glib/gi18n-lib.h>

#include "store/notebook/fm-db.h"
#include "store/fm-versions.h"

char *
fm_notebook_get_setting (FmNotebook *self, const char *key)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, NULL);
  g_autoptr (FmStmt) stmt =
      db != NULL ? fm_db_prepare (db, "SELECT value FROM settings WHERE key = ?1", NULL) : NULL;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_text (stmt, 1, key);
  return fm_stmt_step (db, stmt, NULL) == FM_ROW ? fm_stmt_text (stmt, 0) : NULL;
}

const char *
fm_invented_words (void)
{
  return _ ("Everything in this notebook is invented: kitchens, tasters, weighings and scores.");
}

const char *
fm_notebook_invented (FmNotebook *self)
{
  g_autofree char *mark = fm_notebook_get_setting (self, FM_SETTING_INVENTED);

  return mark != NULL ? fm_invented_words () : NULL;
}

static gboolean
set_in (FmDb *db, const char *key, const char *value, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     value != NULL ? "INSERT INTO settings (key, value) VALUES (?1, ?2)"
                                     " ON CONFLICT (key) DO UPDATE SET value = excluded.value"
                                   : "DELETE FROM settings WHERE key = ?1",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, key);
  if (value != NULL)
    fm_stmt_bind_text (stmt, 2, value);
  return fm_stmt_run (db, stmt, error);
}

gboolean
fm_notebook_set_settings (FmNotebook *self,
                          const char *const *keys,
                          const char *const *values,
                          GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);
  gboolean done = TRUE;

  if (db == NULL)
    return FALSE;
  for (guint i = 0; keys[i] != NULL && done; i++)
    done = set_in (db, keys[i], values[i], error);
  return fm_notebook_end (self, done, error);
}

gboolean
fm_notebook_set_setting (FmNotebook *self, const char *key, const char *value, GError **error)
{
  const char *keys[] = { key, NULL };

  return fm_notebook_set_settings (self, keys, &value, error);
}
