/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiments-page.h - the log of experiments, and one experiment as a page */
#pragma once

#include "app/log/fm-log-page.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENTS_PAGE (fm_experiments_page_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentsPage, fm_experiments_page, FM, EXPERIMENTS_PAGE, FmLogPage)

G_END_DECLS
