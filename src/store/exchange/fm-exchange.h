/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exchange.h - a notebook, or a part of it, as one open JSON text with its photos beside it
 *
 * The text is described in docs/open-data.md: an object whose members are the tables of the
 * notebook, each a list of rows. Formulas and ingredients are objects in it, unknown values are
 * left out. Photos lie in the folder "NAME-photos" beside NAME.json. What is written, read and
 * written again has the same bytes. Any thread but the main one.
 */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** First member of the text. */
#define FM_EXCHANGE_FORMAT "forcemeat open data"

/**
 * FmExchangePart: all zero = the whole notebook.
 *
 * @blend_id: a blend with its versions, experiments, maps, and tastings of these experiments alone
 * @version_id: a version with those that it grew from, and its own experiments
 * @experiment_id: an experiment with its version and those that it grew from
 */
typedef struct {
  gint64 blend_id;
  gint64 version_id;
  gint64 experiment_id;
} FmExchangePart;

/** Replaces @path when all of it is written. NOT_FOUND when there is no such part. */
gboolean fm_exchange_export (FmNotebook *notebook,
                             const FmExchangePart *part,
                             const char *path,
                             GCancellable *cancellable,
                             GError **error);
/**
 * Makes the notebook @notebook_path, which must not be there, from the text @path: all of it or,
 * with a sentence that says where the fault lies, nothing. NEWER for the text of a newer program.
 */
FmNotebook *fm_exchange_import (const char *path,
                                const char *notebook_path,
                                GCancellable *cancellable,
                                GError **error);

G_END_DECLS
