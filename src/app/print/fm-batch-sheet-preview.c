/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-preview.c - the pages of a sheet as they will be printed */
#include "app/print/fm-batch-sheet-preview.h"

#include <glib/gi18n-lib.h>

#define MIN_WIDTH_PX 240
#define NAT_WIDTH_PX 560
/* Of a page's height, between two of them. */
#define GAP_PART 0.015

struct _FmBatchSheetPreview {
  GtkWidget parent_instance;

  FmBatchSheet *sheet;   /* (nullable) */
  FmSheetLayout *layout; /* of it; NULL without */
};

G_DEFINE_FINAL_TYPE (FmBatchSheetPreview, fm_batch_sheet_preview, GTK_TYPE_WIDGET)

static guint
n_pages (FmBatchSheetPreview *self)
{
  return self->layout != NULL ? fm_sheet_layout_n_pages (self->layout) : 1;
}

static double
page_height (double width)
{
  return width * FM_A4_HEIGHT_PT / FM_A4_WIDTH_PT;
}

static int
height_for (FmBatchSheetPreview *self, int width)
{
  const double gaps = (n_pages (self) - 1) * GAP_PART;

  return (int)(page_height (width) * (n_pages (self) + gaps));
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
    *minimum = *natural =
        height_for (FM_BATCH_SHEET_PREVIEW (widget), for_size > 0 ? for_size : MIN_WIDTH_PX);
  }
}

/* Paper is white and print is black, in the dark too. */
static void
snapshot_page (FmBatchSheetPreview *self, GtkSnapshot *snapshot, guint page)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self)), height = page_height (width);
  const double y = page * height * (1.0 + GAP_PART);
  const double zoom = width / FM_A4_WIDTH_PT;
  graphene_rect_t paper = GRAPHENE_RECT_INIT (0.0f, (float)y, (float)width, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &paper);

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  if (self->layout != NULL) {
    cairo_translate (cr, 0.0, y);
    cairo_scale (cr, zoom, zoom);
    fm_sheet_layout_paint (self->layout, self->sheet, cr, FM_A4_WIDTH_PT, page);
  }
  cairo_destroy (cr);
}

static void
fm_batch_sheet_preview_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmBatchSheetPreview *self = FM_BATCH_SHEET_PREVIEW (widget);

  for (guint page = 0; page < n_pages (self); page++)
    snapshot_page (self, snapshot, page);
}

static void
fm_batch_sheet_preview_finalize (GObject *object)
{
  g_clear_pointer (&FM_BATCH_SHEET_PREVIEW (object)->layout, fm_sheet_layout_free);
  g_clear_pointer (&FM_BATCH_SHEET_PREVIEW (object)->sheet, fm_batch_sheet_free);
  G_OBJECT_CLASS (fm_batch_sheet_preview_parent_class)->finalize (object);
}

static void
fm_batch_sheet_preview_class_init (FmBatchSheetPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_batch_sheet_preview_finalize;
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

static FmSheetLayout *
lay_out (const FmBatchSheet *sheet)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  FmSheetLayout *layout = fm_sheet_layout_new (sheet, cr, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return layout;
}

void
fm_batch_sheet_preview_set_sheet (FmBatchSheetPreview *self, FmBatchSheet *sheet)
{
  g_autofree char *text = sheet != NULL ? fm_batch_sheet_text (sheet) : g_strdup ("");

  g_clear_pointer (&self->layout, fm_sheet_layout_free);
  g_clear_pointer (&self->sheet, fm_batch_sheet_free);
  self->sheet = sheet != NULL ? fm_batch_sheet_ref (sheet) : NULL;
  if (sheet != NULL)
    self->layout = lay_out (sheet);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text,
                                  -1);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

FmBatchSheet *
fm_batch_sheet_preview_get_sheet (FmBatchSheetPreview *self)
{
  return self->sheet;
}
