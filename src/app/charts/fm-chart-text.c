/* fm-chart-text.c - small text in drawn charts */
#include "app/charts/fm-chart-text.h"

static PangoLayout *
layout_new (GtkWidget *widget, const char *text)
{
  PangoLayout *layout = gtk_widget_create_pango_layout (widget, text);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_scale_new (PANGO_SCALE_SMALL));
  pango_layout_set_attributes (layout, attributes);
  return layout;
}

void
fm_chart_text_draw (GtkWidget *widget,
                    cairo_t *cr,
                    const char *text,
                    double x,
                    double y,
                    double align,
                    int max_width)
{
  g_autoptr (PangoLayout) layout = layout_new (widget, text);
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  if (max_width > 0 && width > max_width) {
    pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    pango_layout_set_width (layout, max_width * PANGO_SCALE);
    width = max_width;
  }
  cairo_move_to (cr, x - align * width, y - height / 2.0);
  pango_cairo_show_layout (cr, layout);
  /* An arc would be joined to where the text began. */
  cairo_new_path (cr);
}

void
fm_chart_text_size (GtkWidget *widget, const char *text, int *width, int *height)
{
  g_autoptr (PangoLayout) layout = layout_new (widget, text);

  pango_layout_get_pixel_size (layout, width, height);
}
