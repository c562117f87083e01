/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-paste.h - two columns of a spreadsheet or a text become lines of the draft */
#pragma once

#include "app/session/fm-session.h"

G_BEGIN_DECLS

/**
 * Finds an own entry of each name, else the best food, off the main thread, and adds all lines in
 * one step of undo. Says what was not found; text that cannot be read adds nothing and says why.
 */
void fm_formula_paste (FmSession *session, const char *text);

G_END_DECLS
