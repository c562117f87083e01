/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-paint.h - a nutrition panel drawn at its true size
 *
 * Lengths in points (1/72 inch). Types, bars and order follow 21 CFR 101.9(d), 9 CFR 317.309(d) and
 * Regulation (EU) No 1169/2011, Article 34 and Annexes XV and IV, from memory. Words are those of
 * the law and not translated. Under the panel stands what it was made of and who must check it.
 */
#pragma once

#include <cairo.h>

#include "core/label/fm-label-panel.h"

G_BEGIN_DECLS

/**
 * FmLabelPicture: what is to be drawn.
 *
 * @serving_words: "1 patty"
 * @caption: blend, version and date, and the caution; translated
 */
typedef struct {
  const FmLabelPanel *panel;
  const char *serving_words;
  const char *caption;
} FmLabelPicture;

typedef enum { FM_LABEL_FILE_PDF, FM_LABEL_FILE_SVG, FM_LABEL_FILE_PNG } FmLabelFileKind;

/** PNG pictures have this many points an inch, and say so. */
#define FM_LABEL_PNG_DPI 300.0

/** How wide and high it is. */
void fm_label_picture_size (const FmLabelPicture *self, double *width_pt, double *height_pt);
/** Black, from the origin of @cr; the ground is left as it is. */
void fm_label_picture_paint (const FmLabelPicture *self, cairo_t *cr);
/** The picture alone as a file of its own size. NULL + error (G_IO_ERROR). (transfer full) */
GBytes *fm_label_picture_to_file (const FmLabelPicture *self, FmLabelFileKind kind, GError **error);
/** All words of the panel, a row each, for a screen reader. Returns: (transfer full). */
char *fm_label_picture_text (const FmLabelPicture *self);

G_END_DECLS
