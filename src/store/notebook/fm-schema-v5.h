/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-schema-v5.h - surfaces that are searched, servings, what is invented, sums; see the .c file */
#pragma once

extern const char fm_schema_v5_sql[];
