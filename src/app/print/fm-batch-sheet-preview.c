/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-preview.c - the first page of a batch sheet as it will be printed */
#include "app/print/fm-batch-sheet-preview.h"

#include <glib/gi18n-lib.h>

#define MIN_WIDTH_PX 240
#define NAT_WIDTH_PX 560

struct _FmBatchSheetPreview {
  GtkWidget parent_instance;

  const FmBatchSheet *sheet;
};

G_DEFINE_FINAL_TYPE (FmBatchSheetPreview, fm_batch_sheet_preview, GTK_TYPE_WIDGET)

static int
height_for (int width)
{
  return (int)(width * FM_A4_HEIGHT_PT / FM_A4_WIDTH_PT);
}

static GtkSizeRequestMode
fm_batch_sheet_preview_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
fm_batch_sheet_preview_measure (GtkWidget *widget,
                                GtkOrientation orientation,
                                int for_size,
                                int *minimum,
                                int *natural,
                                int *minimum_baseline,
                                int *natural_baseline)
{
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = MIN_WIDTH_PX;
    *natural = NAT_WIDTH_PX;
  } else {
    *minimum = *natural = height_for (for_size > 0 ? for_size : MIN_WIDTH_PX);
  }
}

/* Paper is white and print is black, in the dark too. */
static void
fm_batch_sheet_preview_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmBatchSheetPreview *self = FM_BATCH_SHEET_PREVIEW (widget);
  const float width = (float)gtk_widget_get_width (widget);
  const double zoom = (double)width / FM_A4_WIDTH_PT;
  graphene_rect_t paper =
      GRAPHENE_RECT_INIT (0.0f, 0.0f, width, (float)gtk_widget_get_height (widget));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &paper);

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  if (self->sheet != NULL) {
    cairo_scale (cr, zoom, zoom);
    g_autoptr (FmSheetLayout) layout =
        fm_sheet_layout_new (self->sheet, cr, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);
    fm_sheet_layout_paint (layout, self->sheet, cr, FM_A4_WIDTH_PT, 0);
  }
  cairo_destroy (cr);
}

static void
fm_batch_sheet_preview_class_init (FmBatchSheetPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->get_request_mode = fm_batch_sheet_preview_get_request_mode;
  widget_class->measure = fm_batch_sheet_preview_measure;
  widget_class->snapshot = fm_batch_sheet_preview_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_batch_sheet_preview_init (FmBatchSheetPreview *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Preview of the sheet"), -1);
}

void
fm_batch_sheet_preview_set_sheet (FmBatchSheetPreview *self, const FmBatchSheet *sheet)
{
  g_autofree char *text = sheet != NULL ? fm_batch_sheet_text (sheet) : g_strdup ("");

  self->sheet = sheet;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
