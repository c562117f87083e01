/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Open data from a stranger: all of it or nothing. */
#include <glib/gstdio.h>
#include <unistd.h>

#include "fuzz.h"
#include "store/exchange/fm-exchange.h"

int
LLVMFuzzerTestOneInput (const guint8 *bytes, gsize size)
{
  g_autofree char *json = g_strdup_printf ("%s/fuzz-%d.json", g_get_tmp_dir (), (int)getpid ());
  g_autofree char *path =
      g_strdup_printf ("%s/fuzz-%d.forcemeat", g_get_tmp_dir (), (int)getpid ());
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) made = NULL;

  g_file_set_contents (json, (const char *)bytes, (gssize)size, NULL);
  made = fm_exchange_import (json, path, NULL, &error);
  fuzz_check_error (made != NULL, error);
  if (made == NULL && g_file_test (path, G_FILE_TEST_EXISTS))
    g_error ("A notebook was left by an import that failed.");
  g_clear_pointer (&made, fm_notebook_unref);
  g_unlink (path);
  g_unlink (json);
  return 0;
}
