/* fm-formula-page.h - the lines of the shown formula, the brief and the live numbers */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_FORMULA_PAGE (fm_formula_page_get_type ())
G_DECLARE_FINAL_TYPE (FmFormulaPage, fm_formula_page, FM, FORMULA_PAGE, GtkWidget)

void fm_formula_page_set_session (FmFormulaPage *self, FmSession *session);

G_END_DECLS
