/* fm-versions-page.h - the tree of versions, reasons and differences */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSIONS_PAGE (fm_versions_page_get_type ())
G_DECLARE_FINAL_TYPE (FmVersionsPage, fm_versions_page, FM, VERSIONS_PAGE, GtkWidget)

void fm_versions_page_set_session (FmVersionsPage *self, FmSession *session);

G_END_DECLS
