/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-traces.h - how a prediction changes with each component, from the middle of the map */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-fit-job.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_TRACES (fm_map_traces_get_type ())
G_DECLARE_FINAL_TYPE (FmMapTraces, fm_map_traces, FM, MAP_TRACES, GtkWidget)

/** @fit: (nullable): nothing is shown without a model; only read. */
void fm_map_traces_show (FmMapTraces *self, FmMapDocument *document, const FmMapFit *fit);

G_END_DECLS
