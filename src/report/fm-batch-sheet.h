/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet.h - the sheet that goes to the grinder, as plain rows of text
 *
 * What stands on the sheet is decided here; fm-batch-sheet-paint.h only puts it on paper.
 */
#pragma once

#include <cairo.h>

#include "core/batch/fm-batch.h"
#include "core/cooking/fm-cooking.h"

G_BEGIN_DECLS

typedef struct {
  const char *notebook_name; /* (nullable) name of the file */
  const char *blend_name;
  const char *version_name; /* translated: "version 3" or "draft" */
  const char *date_text;    /* (nullable) */
  const char *currency;     /* sign beside costs, may be "" */
  const char *notice;       /* (nullable) static: of FmBatchSheet */
  FmBatchPlan plan;         /* cook_yield_pct as predicted for @method, or measured */
  FmCookMethod method;
  FmCookFood food;            /* of the blend: decides yield and cautions */
  double salt_minutes_before; /* from salting to cooking; NaN = not planned */
  double plate_mm;            /* NaN = not planned */
  int grind_passes;           /* 0 = not planned */
  double meat_temp_c;         /* NaN = not planned */
} FmBatchSheetInput;

typedef enum {
  FM_SHEET_TITLE, /* begins a page */
  FM_SHEET_SUBTITLE,
  FM_SHEET_HEADING,
  FM_SHEET_COLUMNS,    /* column headings of the table */
  FM_SHEET_INGREDIENT, /* a row with a box to tick at the scale */
  FM_SHEET_TOTAL,
  FM_SHEET_STEP, /* with a box to tick */
  FM_SHEET_TEXT,
  FM_SHEET_WRITE, /* a line with room to write on */
  FM_SHEET_CAUTION,
  FM_SHEET_SMALL,
  FM_SHEET_DRAWING, /* at its true size; the first cell has its words, which are not printed */
} FmSheetKind;

/* Cells of a row of the table: name, share, edible, as purchased, cost. */
#define FM_SHEET_N_CELLS 5

/** What is drawn in place of text. Lengths in points. */
typedef struct {
  double width_pt;
  double height_pt;
  void (*paint) (gconstpointer data, cairo_t *cr); /* (nullable): from the origin */
  gpointer data;                                   /* owned */
  GDestroyNotify free_data;
} FmSheetDrawing;

typedef struct {
  FmSheetKind kind;
  char *cells[FM_SHEET_N_CELLS]; /* only the first one but for rows of the table */
  FmSheetDrawing *drawing;       /* (nullable) owned */
} FmSheetRow;

/** Shared by those who show it and those who put it on paper (atomic); changed while it is made. */
typedef struct {
  gatomicrefcount ref_count;
  const char *what;   /* translated, e.g. "Batch Sheet" */
  const char *notice; /* (nullable) static: stands on every page, e.g. that all of it is invented */
  GPtrArray *rows;    /* FmSheetRow, top down */
  double type_scale;  /* of type at its full size; 0 = 1 */
  gboolean is_long;   /* goes on over pages at full size, else shrinks first to fit on one */
  gboolean secret;    /* goes to paper or a file without a preview */
  char *costs;        /* the three costs and what has no price, for the dialog */
  char *cost_derivation; /* (nullable): what they are worked out of */
} FmBatchSheet;

/** NULL + error as fm_batch_new(). */
FmBatchSheet *
fm_batch_sheet_new (const FmFormula *formula, const FmBatchSheetInput *input, GError **error);
/** @what: translated, static; for sheets of another kind that go to paper the same way. */
FmBatchSheet *fm_batch_sheet_new_empty (const char *what);
/** @text: (transfer full) first cell. Returns: (transfer none) the new row at the end. */
FmSheetRow *fm_batch_sheet_add (FmBatchSheet *self, FmSheetKind kind, char *text);
FmBatchSheet *fm_batch_sheet_ref (FmBatchSheet *self);
/** Lets go of it; the last one frees it. */
void fm_batch_sheet_free (FmBatchSheet *self);
/** All of it as lines of text, for a screen reader. Returns: (transfer full). */
char *fm_batch_sheet_text (const FmBatchSheet *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmBatchSheet, fm_batch_sheet_free)

G_END_DECLS
