/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief-legal.h - choice of the rule set of a brief, and its limits beside what the blend has */
#pragma once

#include <gtk/gtk.h>

#include "core/formula/fm-legal.h"

G_BEGIN_DECLS

/** Signal "chosen" (guint): the FmRuleSet that the user chose. */
#define FM_TYPE_BRIEF_LEGAL (fm_brief_legal_get_type ())
G_DECLARE_FINAL_TYPE (FmBriefLegal, fm_brief_legal, FM, BRIEF_LEGAL, GtkWidget)

void fm_brief_legal_update (FmBriefLegal *self,
                            const FmFormula *formula,
                            const FmAnalysis *analysis,
                            gboolean editable);

G_END_DECLS
