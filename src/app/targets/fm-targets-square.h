/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-square.h - the Pearson square of two ingredients, drawn and in words */
#pragma once

#include <gtk/gtk.h>

#include "core/targets/fm-pearson.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_SQUARE (fm_targets_square_get_type ())
G_DECLARE_FINAL_TYPE (FmTargetsSquare, fm_targets_square, FM, TARGETS_SQUARE, GtkWidget)

GtkWidget *fm_targets_square_new (const char *a_name, const char *b_name, const FmPearson *square);

G_END_DECLS
