/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-page.h - the list of tastings, and one tasting as a page */
#pragma once

#include "app/log/fm-log-page.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTINGS_PAGE (fm_tastings_page_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingsPage, fm_tastings_page, FM, TASTINGS_PAGE, FmLogPage)

G_END_DECLS
