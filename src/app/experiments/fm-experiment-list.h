/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-list.h - the log: filter, list and what is said when it is empty */
#pragma once

#include "app/log/fm-log-list.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_LIST (fm_experiment_list_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentList, fm_experiment_list, FM, EXPERIMENT_LIST, FmLogList)

G_END_DECLS
