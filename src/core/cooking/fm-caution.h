/* fm-caution.h - ground meat caution: figures with the authority behind each
 *
 * Nothing here ever says that food is safe. Each figure names its authority; local rules and a
 * licensed professional decide.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  const char *authority; /* "USDA FSIS", "FDA Food Code 3-401.11" ... */
  const char *food;      /* translatable */
  double temp_c;
  double temp_f;
  double hold_s; /* 0 = reached at once */
  const char *source;
} FmCautionFigure;

const FmCautionFigure *fm_caution_figures (guint *n_figures);
/** The general sentence shown wherever cooking is recorded. Translated. */
const char *fm_caution_text (void);
/** What the highest core reading means beside the consumer figure of USDA FSIS (71.1 C / 160 F);
 * never a verdict on safety. NaN = no reading. Returns: (transfer full). */
char *fm_caution_for_peak (double peak_core_c);

G_END_DECLS
