/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-detail.h - one version: its reason, and what changed since its parent */
#pragma once

#include <gtk/gtk.h>

#include "app/versions/fm-versions-course.h"
#include "app/versions/fm-versions-page-diff.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSIONS_PAGE_DETAIL (fm_versions_page_detail_get_type ())
G_DECLARE_FINAL_TYPE (
    FmVersionsPageDetail, fm_versions_page_detail, FM, VERSIONS_PAGE_DETAIL, GtkWidget)

/** NULL clears it. */
void fm_versions_page_detail_set_diff (FmVersionsPageDetail *self, const FmVersionsPageDiff *diff);
/** Pictures of how the blend went, below the version. */
FmVersionsCourse *fm_versions_page_detail_get_course (FmVersionsPageDetail *self);
/** In a narrow page a button leads back to the tree ("versions.back"). */
void fm_versions_page_detail_set_folded (FmVersionsPageDetail *self, gboolean folded);

G_END_DECLS
