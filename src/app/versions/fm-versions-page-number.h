/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-number.h - one quantity of a version, its parent's, and the difference */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_VERSIONS_PAGE_NUMBER (fm_versions_page_number_get_type ())
G_DECLARE_FINAL_TYPE (
    FmVersionsPageNumber, fm_versions_page_number, FM, VERSIONS_PAGE_NUMBER, GtkListBoxRow)

/** @values: this version, the parent, the difference; or their headings. */
GtkWidget *
fm_versions_page_number_new (const char *name, const char *const values[3], gboolean heading);

G_END_DECLS
