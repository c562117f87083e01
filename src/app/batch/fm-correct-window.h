/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-correct-window.h - what to add to a real batch to bring it back to its target */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"
#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

#define FM_TYPE_CORRECT_WINDOW (fm_correct_window_get_type ())
G_DECLARE_FINAL_TYPE (FmCorrectWindow, fm_correct_window, FM, CORRECT_WINDOW, AdwWindow)

/**
 * @formula: what was planned
 * @weighed_g: (nullable) (array): weighed grams of each line, NaN = as planned; NULL = all so
 */
FmCorrectWindow *fm_correct_window_new (GtkWindow *parent,
                                        FmSession *session,
                                        const FmFormula *formula,
                                        const double *weighed_g);

G_END_DECLS
