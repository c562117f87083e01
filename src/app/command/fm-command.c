/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-command.c - what the program does from the command line, without a window */
#include "app/command/fm-command-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

enum { EXIT_DONE = 0, EXIT_FAILED_TO = 1, EXIT_ASKED_WRONGLY = 2 };

typedef struct {
  const char *name;
  const char *arguments; /* for the help, after the name */
  const char *about;     /* untranslated */
  gboolean (*run) (const FmCommandOptions *options,
                   const char *first,
                   const char *second,
                   GError **error);
} Command;

static const Command commands[] = {
  { "export", "NOTEBOOK FILE.json",
    N_ ("Writes the notebook, or a blend, a version or an experiment of it, as open data"),
    fm_command_export },
  { "import", "FILE.json NOTEBOOK", N_ ("Makes a notebook of open data"), fm_command_import },
  { "recover", "DAMAGED NOTEBOOK",
    N_ ("Puts what can be read of a damaged notebook into a new one, and says what was lost"),
    fm_command_recover },
  { "csv", "NOTEBOOK FOLDER",
    N_ ("Writes formulas, nutrition, experiments and tastings for a spreadsheet"), fm_command_csv },
  { "batch-sheet", "NOTEBOOK FILE.pdf",
    N_ ("Writes the batch sheet or a card of a draft or a version"), fm_command_batch_sheet },
  { "label", "NOTEBOOK FILE.pdf", N_ ("Writes the label of a draft or a version"),
    fm_command_label },
};

static const Command *
find_command (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (strcmp (commands[i].name, name) == 0)
      return &commands[i];
  return NULL;
}

gboolean
fm_command_is_asked (int argc, char *const *argv)
{
  return argc > 1 && find_command (argv[1]) != NULL;
}

static GOptionContext *
new_context (const Command *command, FmCommandOptions *options)
{
  const GOptionEntry entries[] = {
    { "blend", 0, 0, G_OPTION_ARG_STRING, &options->blend, N_ ("Name of a blend"), N_ ("NAME") },
    { "version", 0, 0, G_OPTION_ARG_INT, &options->version,
      N_ ("Number of a version; without it the draft"), N_ ("N") },
    { "experiment", 0, 0, G_OPTION_ARG_INT64, &options->experiment,
      N_ ("Id of an experiment, as open data has it"), N_ ("ID") },
    { "comma", 0, 0, G_OPTION_ARG_NONE, &options->comma,
      N_ ("Decimal commas, cells between semicolons"), NULL },
    { "patties", 0, 0, G_OPTION_ARG_INT, &options->n_patties, N_ ("Number of patties"), N_ ("N") },
    { "kind", 0, 0, G_OPTION_ARG_STRING, &options->kind,
      N_ ("batch, cook, specification, reader or page (for the web)"), N_ ("KIND") },
    { "rules", 0, 0, G_OPTION_ARG_STRING, &options->rules, N_ ("us_retail, us_meat or eu"),
      N_ ("SET") },
    { "serving", 0, 0, G_OPTION_ARG_DOUBLE, &options->serving_g, N_ ("Mass of a serving in g"),
      N_ ("G") },
    { "panel", 0, 0, G_OPTION_ARG_NONE, &options->panel,
      N_ ("The panel alone, as .svg, .png or .pdf"), NULL },
    { NULL },
  };
  g_autofree char *parameters = g_strdup_printf ("%s %s", command->name, command->arguments);
  GOptionContext *context = g_option_context_new (parameters);

  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_set_summary (context, _ (command->about));
  return context;
}

static int
complain (const char *text, int code)
{
  g_printerr ("forcemeat: %s\n", text);
  return code;
}

int
fm_command_run (int argc, char **argv)
{
  const Command *command = find_command (argv[1]);
  g_auto (FmCommandOptions) options = { .version = 0 };
  g_autoptr (GOptionContext) context = new_context (command, &options);
  g_autoptr (GError) error = NULL;

  if (!g_option_context_parse (context, &argc, &argv, &error))
    return complain (error->message, EXIT_ASKED_WRONGLY);
  if (argc != 4) {
    g_autofree char *help = g_option_context_get_help (context, TRUE, NULL);
    return complain (help, EXIT_ASKED_WRONGLY);
  }
  if (command->run (&options, argv[2], argv[3], &error))
    return EXIT_DONE;
  return complain (error->message, g_error_matches (error, G_OPTION_ERROR, G_OPTION_ERROR_BAD_VALUE)
                                       ? EXIT_ASKED_WRONGLY
                                       : EXIT_FAILED_TO);
}
