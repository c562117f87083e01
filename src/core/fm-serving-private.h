/* fm-serving-private.h */
#pragma once

#include <string.h>

#include "core/fm-serving.h"

G_BEGIN_DECLS

FmServingRows *fm_serving_rows_new (guint n_rows, guint n_per_row, guint n_samples);

G_END_DECLS
