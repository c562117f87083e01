/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v4.c - short names, the log of a cook
 *
 * NULL stands for "not known" or "none", as before. The process of a version lies in the text of
 * its formula, so it needs no column.
 */
#include "store/notebook/fm-schema-v4.h"

/* What the cook calls an ingredient, in all blends of the notebook. */
#define NAMES_SQL ""

/* What happened at the pan, as it happened. */
#define COOK_SQL ""

const char fm_schema_v4_sql[] = NAMES_SQL COOK_SQL;
