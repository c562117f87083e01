/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-measure-type.h - FmMeasure as a type of properties, so that templates can name a measure */
#pragma once

#include <glib-object.h>

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

#define FM_TYPE_MEASURE (fm_measure_get_type ())
GType fm_measure_get_type (void);

G_END_DECLS
