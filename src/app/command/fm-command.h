/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-command.h - what the program does from the command line, without a window
 *
 *   forcemeat export NOTEBOOK FILE.json [--blend NAME [--version N]] [--experiment ID]
 *   forcemeat import FILE.json NOTEBOOK
 *   forcemeat csv NOTEBOOK FOLDER [--comma]
 *   forcemeat batch-sheet NOTEBOOK FILE.pdf --blend NAME [--version N] [--patties N]
 *     [--kind batch|cook|specification|reader|page]
 *   forcemeat label NOTEBOOK FILE --blend NAME [--version N] [--rules SET] [--serving G] [--panel]
 *
 * It ends with 0 when it was done, 1 when it failed and says why on standard error, 2 when it was
 * asked wrongly. A label that is refused counts as failed.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** TRUE when the first argument is one of these commands. */
gboolean fm_command_is_asked (int argc, char *const *argv);
/** Before the thread is forbidden to use the store. Returns what the program ends with. */
int fm_command_run (int argc, char **argv);

G_END_DECLS
