/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-caution.h - ground meat caution, by kind of animal
 *
 * Nothing here ever says that food is safe. Each figure names its authority (fm-authority.h);
 * local rules and a licensed professional decide.
 */
#pragma once

#include "core/cooking/fm-authority.h"

G_BEGIN_DECLS

/** The general sentence shown wherever cooking is recorded. Translated. */
const char *fm_caution_text (void);
/** The highest core reading meets the consumer figure that rules for @species; FALSE for NaN, when
 * there is no reading. Meeting it is no verdict on the food. */
gboolean fm_caution_peak_meets (FmSpeciesSet species, double peak_core_c);
/** "73.9 °C (165 °F), USDA FSIS consumer chart, ground poultry": the figure that rules.
 * Translated. Returns: (transfer full). */
char *fm_caution_figure_text (FmSpeciesSet species);
/** "68.0 °C (154 °F)". A reading below the figure that rules for @species never prints as that
 * figure. Returns: (transfer full). */
char *fm_caution_reading_format (FmSpeciesSet species, double peak_core_c);
/** What the highest core reading means beside the figure that rules for @species; never a verdict
 * on safety. NaN = no reading. Translated. Returns: (transfer full). */
char *fm_caution_for_peak (FmSpeciesSet species, double peak_core_c);

G_END_DECLS
