/* fm-nutrition-panel.h - nutrients of what the centre shows, raw and cooked */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_NUTRITION_PANEL (fm_nutrition_panel_get_type ())
G_DECLARE_FINAL_TYPE (FmNutritionPanel, fm_nutrition_panel, FM, NUTRITION_PANEL, GtkWidget)

void fm_nutrition_panel_set_session (FmNutritionPanel *self, FmSession *session);

G_END_DECLS
