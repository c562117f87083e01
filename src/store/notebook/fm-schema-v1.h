/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v1.h - the first released schema; see the tables in the .c file */
#pragma once

extern const char fm_schema_v1_sql[];
