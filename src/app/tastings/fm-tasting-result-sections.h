/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result-sections.h - a reading as headings, sentences, charts and tables */
#pragma once

#include <gtk/gtk.h>

#include "app/charts/fm-chart-intervals.h"
#include "core/tasting/fm-tasting-reading.h"

G_BEGIN_DECLS

/** Fills @box, which is cleared first. @reading: (nullable) of @tasting, which is opened. */
void fm_tasting_result_sections_show (GtkBox *box,
                                      const FmTasting *tasting,
                                      const FmTastingReading *reading);
/* fm-tasting-result-answers.c */
void fm_tasting_result_add_key (GtkBox *box, const FmTasting *tasting);
void fm_tasting_result_add_remarks (GtkBox *box, const FmTasting *tasting);
void fm_tasting_result_add_sheets (GtkBox *box, const FmTasting *tasting);
/* fm-tasting-result-choices.c */
void fm_tasting_result_add_choices (GtkBox *box, const FmTastingReading *reading);
void fm_tasting_result_add_jar (GtkBox *box,
                                const FmTastingReading *reading,
                                const GPtrArray *attributes);
void fm_tasting_result_add_positions (GtkBox *box, const FmTastingReading *reading);

/* fm-tasting-result-parts.c: what the sections are made of */
/** "731 – Draft 3"; (transfer full). */
char *fm_tasting_result_sample (const FmTastingReading *reading, guint column);
void fm_tasting_result_add_heading (GtkBox *box, const char *text);
void fm_tasting_result_add_sentence (GtkBox *box, const char *text);
/** A table that can be unfolded; rows are added by fm_text_grid_add_row(). (transfer none) */
GtkGrid *fm_tasting_result_add_table (GtkBox *box, const char *title);
/** @text: (transfer full): the method and its source, folded away. Returns: (transfer none): the
 * table below it, for numbers of the test. */
GtkGrid *fm_tasting_result_add_method (GtkBox *box, char *text);
/** An axis for rank sums that ends where sums can end, and says which end is liked. */
FmChartIntervalAxis fm_tasting_result_rank_axis (const FmRankResult *rank);
/** The same for the nine points of liking. */
FmChartIntervalAxis fm_tasting_result_liking_axis (void);
/** Lets @chart scroll sideways where the window is narrower. */
void fm_tasting_result_add_chart (GtkBox *box, GtkWidget *chart);

G_END_DECLS
