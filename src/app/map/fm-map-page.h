/* fm-map-page.h - maps of the shown blend: what changes, the trials, and what they show */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_PAGE (fm_map_page_get_type ())
G_DECLARE_FINAL_TYPE (FmMapPage, fm_map_page, FM, MAP_PAGE, GtkWidget)

void fm_map_page_set_session (FmMapPage *self, FmSession *session);

G_END_DECLS
