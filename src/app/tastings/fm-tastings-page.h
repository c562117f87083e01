/* fm-tastings-page.h - the list of tastings, and one tasting as a page */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTINGS_PAGE (fm_tastings_page_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingsPage, fm_tastings_page, FM, TASTINGS_PAGE, GtkWidget)

void fm_tastings_page_set_session (FmTastingsPage *self, FmSession *session);

G_END_DECLS
