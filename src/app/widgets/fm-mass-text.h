/* fm-mass-text.h - masses as text: grams, and ounces or pounds where they are wanted */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** "180.0 g", or "180.0 g (6.35 oz)"; a dash for NaN. (transfer full) */
char *fm_mass_text (double mass_g, int decimals);
/** "180.0", or that and the ounces on a second line, for a column headed by "g". (transfer full) */
char *fm_mass_cell_text (double mass_g, int decimals);

G_END_DECLS
