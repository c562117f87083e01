/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-panel.h - an invented panel with a taste of its own, and what it tasted
 *
 * The panel's liking of a blend of three cuts is a hill whose top is known here, so that tests can
 * see whether what the program suggests comes closer to it. Nobody real tasted anything.
 */
#pragma once

#include "store/demo/fm-demo-log.h"

G_BEGIN_DECLS

#define FM_DEMO_PANEL_CUTS 3 /* chuck, shank, suet */

/** The shares that the panel likes best. */
extern const double fm_demo_panel_top[FM_DEMO_PANEL_CUTS];
/** What the panel as a whole likes a blend with, on the 9-point scale, without its noise. */
double fm_demo_panel_liking (const double *x);

/** The map of the blend whose version 1 is @base: trials as versions, their experiments, and the
 * tastings of them, opened. */
gboolean fm_demo_panel_add_map (FmNotebook *notebook,
                                gint64 blend_id,
                                const FmDemoMade *base,
                                GError **error);
/** A tasting of a blend's experiments that is still sealed, one sheet in. */
gboolean fm_demo_panel_add_sealed (FmNotebook *notebook, gint64 blend_id, GError **error);

G_END_DECLS
