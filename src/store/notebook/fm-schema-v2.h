/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v2.h - patty measures, tastings and maps; see the tables in the .c file */
#pragma once

extern const char fm_schema_v2_sql[];

/* What the triggers say when they refuse; fm-db-error.c turns them into sentences. */
#define FM_SCHEMA_V2_SEALED "the plan of a sealed tasting cannot change"
#define FM_SCHEMA_V2_BACK "a tasting cannot go back"
#define FM_SCHEMA_V2_RECORD "what was recorded of a tasting stays"
#define FM_SCHEMA_V2_OUTCOME "only an opened tasting has outcomes"
#define FM_SCHEMA_V2_CODE "one code stands for one sample"
