/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v4.h - short names, the log of a cook, salt on the surface, sums; see the .c file */
#pragma once

extern const char fm_schema_v4_sql[];
