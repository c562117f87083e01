/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v3.h - hidden parts and copies of sealed tastings; see the .c file */
#pragma once

extern const char fm_schema_v3_sql[];
