/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page.h - the tree of versions, reasons and differences */
#pragma once

#include "app/widgets/fm-page.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSIONS_PAGE (fm_versions_page_get_type ())
G_DECLARE_FINAL_TYPE (FmVersionsPage, fm_versions_page, FM, VERSIONS_PAGE, FmPage)

G_END_DECLS
