/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-page.h - versions or experiments side by side */
#pragma once

#include "app/widgets/fm-page.h"

G_BEGIN_DECLS

#define FM_TYPE_COMPARE_PAGE (fm_compare_page_get_type ())
G_DECLARE_FINAL_TYPE (FmComparePage, fm_compare_page, FM, COMPARE_PAGE, FmPage)

/** Compares these and remembers them; @keys: "v12" = version 12, "e34" = experiment 34. */
void fm_compare_page_choose (FmComparePage *self, const char *const *keys);

G_END_DECLS
