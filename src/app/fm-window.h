/* fm-window.h - the one window: blends at the left, pages in the centre, nutrition at the right */
#pragma once

#include <adwaita.h>

#include "app/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_WINDOW (fm_window_get_type ())
G_DECLARE_FINAL_TYPE (FmWindow, fm_window, FM, WINDOW, AdwApplicationWindow)

FmWindow *fm_window_new (AdwApplication *application, FmSession *session);

G_END_DECLS
