/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* main.c - starts the program */
#include <glib/gi18n-lib.h>
#include <locale.h>

#include "app/command/fm-command.h"
#include "app/window/fm-application.h"
#include "store/notebook/fm-store-thread.h"

/* An uninstalled run finds its translations beside what was built. */
static const char *
locale_dir (void)
{
  const char *folder = g_getenv ("FORCEMEAT_LOCALE_DIR");

  return folder != NULL ? folder : LOCALEDIR;
}

int
main (int argc, char *argv[])
{
  g_autoptr (FmApplication) application = NULL;

  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, locale_dir ());
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_application_name ("Forcemeat");

  if (fm_command_is_asked (argc, argv))
    return fm_command_run (argc, argv);
  fm_store_forbid_thread (TRUE);
  application = fm_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
