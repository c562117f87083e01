/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v4.c - short names, the process of a version, the log of a cook
 *
 * NULL stands for "not known" or "none", as before.
 */
#include "store/notebook/fm-schema-v4.h"

/* What the cook calls an ingredient, in all blends of the notebook. */
#define NAMES_SQL ""

/* How a version is ground, seasoned, formed and cooked. */
#define PROCESS_SQL ""

/* What happened at the pan, as it happened. */
#define COOK_SQL ""

const char fm_schema_v4_sql[] = NAMES_SQL PROCESS_SQL COOK_SQL;
