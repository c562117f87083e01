/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-names.h - every formula of a notebook to choose from: drafts and versions */
#pragma once

#include "store/fm-versions.h"

G_BEGIN_DECLS

typedef struct {
  gint64 blend_id;
  gint64 version_id; /* 0 = the draft */
  char *name;        /* "Pan patty, version 3", translated */
} FmFormulaName;

FmFormulaName *fm_formula_name_copy (const FmFormulaName *self);
void fm_formula_name_free (FmFormulaName *self);
/** FmFormulaName by blend, the newest version first. Any thread but the main one. NULL + error. */
GPtrArray *fm_formula_names_read (FmNotebook *notebook, GError **error);
/** Reads them for the object @owner in a task; @done finishes with fm_store_task_finish(). */
void fm_formula_names_task (gpointer owner, FmNotebook *notebook, GAsyncReadyCallback done);
/** The formula itself. NULL + error. */
FmFormula *fm_formula_name_load (const FmFormulaName *self, FmNotebook *notebook, GError **error);

G_END_DECLS
