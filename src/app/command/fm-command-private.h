/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-command-private.h - the commands, each on two names: of a notebook and of what is made or read
 */
#pragma once

#include "app/command/fm-command.h"

G_BEGIN_DECLS

/** What was asked for; zero and NULL where it was not. */
typedef struct {
  char *blend;
  int version;
  gint64 experiment;
  gboolean comma;
  int n_patties;
  char *kind;
  char *rules;
  double serving_g;
  gboolean panel;
} FmCommandOptions;

static inline void
fm_command_options_clear (FmCommandOptions *self)
{
  g_free (self->blend);
  g_free (self->kind);
  g_free (self->rules);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FmCommandOptions, fm_command_options_clear)

/* G_OPTION_ERROR_BAD_VALUE: asked wrongly. Any other error: it could not be done. */
gboolean fm_command_export (const FmCommandOptions *options,
                            const char *notebook,
                            const char *file,
                            GError **error);
gboolean fm_command_import (const FmCommandOptions *options,
                            const char *file,
                            const char *notebook,
                            GError **error);
gboolean fm_command_recover (const FmCommandOptions *options,
                             const char *damaged,
                             const char *notebook,
                             GError **error);
gboolean fm_command_csv (const FmCommandOptions *options,
                         const char *notebook,
                         const char *folder,
                         GError **error);
gboolean fm_command_batch_sheet (const FmCommandOptions *options,
                                 const char *notebook,
                                 const char *file,
                                 GError **error);
gboolean fm_command_label (const FmCommandOptions *options,
                           const char *notebook,
                           const char *file,
                           GError **error);

G_END_DECLS
