/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v5.c - what the desk, the checks, servings, lots and maps keep
 *
 * NULL stands for "not known" or "none", as before.
 */
#include "store/notebook/fm-schema-v5.h"

/* Pages, photos and settings of the notebook. */
#define DESK_SQL ""

/* Sums by which damage is seen. */
#define SUM_SQL ""

/* A cooked patty and what comes with it. */
#define SERVING_SQL ""

/* What suppliers deliver. */
#define LOT_SQL ""

/* What a map was told. */
#define MAP_SQL ""

const char fm_schema_v5_sql[] = DESK_SQL SUM_SQL SERVING_SQL LOT_SQL MAP_SQL;
