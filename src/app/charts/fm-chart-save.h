/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-save.h - the picture of a chart into a file that somebody chooses */
#pragma once

#include "app/charts/fm-chart-picture.h"
#include "app/charts/fm-chart.h"

G_BEGIN_DECLS

/** Asks for a file, fills it and says what became of it. The name's ending decides where it is one
 * of a picture, else @format. @self lives until then. */
void fm_chart_save (FmChart *self, FmChartFormat format);

G_END_DECLS
