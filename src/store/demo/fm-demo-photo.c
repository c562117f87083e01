/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/demo/fm-demo-photo.h"

#include <errno.h>
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <math.h>

#define LONG_PX 640
#define SHORT_PX 480

typedef struct {
  double r;
  double g;
  double b;
} Colour;

/* Where in the picture a pixel lies: the patty's own frame, in units of its radius. */
typedef struct {
  double x;
  double y;
  double radius; /* 1 = edge of the patty */
} Spot;

static const Colour board = { 0.66, 0.50, 0.34 };
static const Colour pan = { 0.17, 0.17, 0.18 };
static const Colour raw_meat = { 0.70, 0.20, 0.20 };
static const Colour fat_fleck = { 0.93, 0.83, 0.76 };
static const Colour crust = { 0.33, 0.19, 0.10 };
static const Colour crust_pale = { 0.58, 0.38, 0.22 };
static const Colour rare = { 0.74, 0.33, 0.32 };
static const Colour done = { 0.54, 0.43, 0.35 };

/* An integer hash, so that the grain needs no state and no library's random numbers. */
static double
hash (int x, int y, guint32 seed)
{
  guint32 h = (guint32)x * 0x8da6b343u ^ (guint32)y * 0xd8163841u ^ seed * 0xcb1ab31fu;

  h ^= h >> 15;
  h *= 0x2c1b3c6du;
  h ^= h >> 12;
  h *= 0x297a2d39u;
  h ^= h >> 15;
  return h / (double)G_MAXUINT32;
}

/* Smooth noise in 0-1: random values at whole coordinates, eased between them. */
static double
noise (double x, double y, guint32 seed)
{
  double fx = floor (x);
  double fy = floor (y);
  double tx = x - fx;
  double ty = y - fy;
  int ix = (int)fx;
  int iy = (int)fy;

  tx = tx * tx * (3.0 - 2.0 * tx);
  ty = ty * ty * (3.0 - 2.0 * ty);
  double top = hash (ix, iy, seed) * (1.0 - tx) + hash (ix + 1, iy, seed) * tx;
  double bottom = hash (ix, iy + 1, seed) * (1.0 - tx) + hash (ix + 1, iy + 1, seed) * tx;
  return top * (1.0 - ty) + bottom * ty;
}

static double
grain (double x, double y, guint32 seed)
{
  return 0.6 * noise (x, y, seed) + 0.4 * noise (2.3 * x, 2.3 * y, seed + 1);
}

static Colour
mix (Colour a, Colour b, double share_b)
{
  double t = CLAMP (share_b, 0.0, 1.0);

  return (Colour){ a.r + (b.r - a.r) * t, a.g + (b.g - a.g) * t, a.b + (b.b - a.b) * t };
}

static Colour
shade (Colour colour, double light)
{
  return (Colour){ colour.r * light, colour.g * light, colour.b * light };
}

/* 0 below 50 C, 1 from 75 C: a painter's ramp for the eye, no measure of doneness. */
static double
doneness (const FmDemoPhoto *photo)
{
  return CLAMP ((photo->peak_core_c - 50.0) / 25.0, 0.0, 1.0);
}

/* Pale flecks where the noise is highest; the threshold falls as fat rises. */
static double
fleck (const FmDemoPhoto *photo, const Spot *spot, double scale)
{
  double threshold = 0.78 - photo->fat_pct / 100.0;
  double value = grain (spot->x * scale, spot->y * scale, photo->seed + 7);

  return CLAMP ((value - threshold) * 9.0, 0.0, 1.0);
}

static Colour
paint_ground (const FmDemoPhoto *photo, const Spot *spot)
{
  double shadow = CLAMP ((spot->radius - 1.0) * 6.0, 0.55, 1.0);

  if (photo->kind == FM_DEMO_PHOTO_SEARED) {
    double rim = CLAMP ((hypot (spot->x, spot->y) - 1.30) * 30.0, 0.0, 1.0);
    double speckle = 0.9 + 0.2 * noise (spot->x * 60, spot->y * 60, photo->seed);
    return shade (pan, shadow * speckle * (1.0 + 0.9 * rim));
  }
  return shade (board,
                shadow * (0.8 + 0.3 * noise (spot->x * 2.0, spot->y * 26.0, photo->seed + 3)));
}

static Colour
paint_raw (const FmDemoPhoto *photo, const Spot *spot)
{
  double strand = noise (spot->x * 22, spot->y * 22, photo->seed + 11);
  Colour meat = shade (raw_meat, 0.70 + 0.55 * strand);

  return mix (meat, fat_fleck, fleck (photo, spot, 17.0));
}

static Colour
paint_seared (const FmDemoPhoto *photo, const Spot *spot)
{
  double patches = grain (spot->x * 5, spot->y * 5, photo->seed + 13);
  double crumbs = noise (spot->x * 34, spot->y * 34, photo->seed + 17);
  double browning = 0.25 + 0.55 * doneness (photo);
  Colour colour = mix (crust_pale, crust, browning + (patches - 0.5) * 1.3);

  return shade (colour, 0.72 + 0.5 * crumbs);
}

/* Crust outside, then a grey band that grows with the temperature, then the core's colour. */
static Colour
paint_cut_face (const FmDemoPhoto *photo, const Spot *spot)
{
  double depth = 1.0 - spot->radius + 0.05 * (noise (spot->x * 9, spot->y * 9, photo->seed) - 0.5);
  double band = 0.16 + 0.35 * doneness (photo);
  Colour core = mix (rare, done, doneness (photo));
  Colour flesh = mix (done, core, (depth - band) * 5.0);
  double hole = grain (spot->x * 21, spot->y * 21, photo->seed + 19);

  flesh = mix (flesh, fat_fleck, 0.45 * fleck (photo, spot, 19.0));
  if (hole < 0.30)
    flesh = shade (flesh, 0.55 + hole);
  return mix (crust, flesh, (depth - 0.05) * 22.0);
}

static Colour
paint_patty (const FmDemoPhoto *photo, const Spot *spot)
{
  double light = 1.05 - 0.18 * (spot->x + spot->y) - 0.25 * pow (spot->radius, 6);

  switch (photo->kind) {
  case FM_DEMO_PHOTO_RAW:
    return shade (paint_raw (photo, spot), light);
  case FM_DEMO_PHOTO_SEARED:
    return shade (paint_seared (photo, spot), light);
  case FM_DEMO_PHOTO_CUT_FACE:
    break;
  }
  return paint_cut_face (photo, spot);
}

/* An uneven disc from above; from the side a flattened, rounded slab. */
static Spot
locate (const FmDemoPhoto *photo, int x_px, int y_px, int width_px, int height_px)
{
  double unit_px = 0.36 * MIN (width_px, height_px);
  Spot spot = { (x_px - width_px / 2.0) / unit_px, (y_px - height_px / 2.0) / unit_px, 0.0 };

  if (photo->kind == FM_DEMO_PHOTO_CUT_FACE) {
    double across = fabs (spot.x) / 1.15;
    double up = fabs (spot.y) / 0.42;
    spot.radius = pow (pow (across, 4.0) + pow (up, 4.0), 0.25);
    return spot;
  }
  double distance = MAX (hypot (spot.x, spot.y), 1e-6);
  double edge = 1.0 + 0.09 * (noise (3.0 * spot.x / distance + 9.0, 3.0 * spot.y / distance + 9.0,
                                     photo->seed + 23) -
                              0.5);
  spot.radius = distance / edge;
  return spot;
}

static guchar
to_byte (double value)
{
  return (guchar)(CLAMP (value, 0.0, 1.0) * 255.0 + 0.5);
}

static GdkPixbuf *
paint_pixels (const FmDemoPhoto *photo)
{
  int width_px = photo->portrait ? SHORT_PX : LONG_PX;
  int height_px = photo->portrait ? LONG_PX : SHORT_PX;
  GdkPixbuf *pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width_px, height_px);

  if (pixbuf == NULL)
    return NULL;
  for (int y = 0; y < height_px; y++) {
    guchar *pixel =
        gdk_pixbuf_get_pixels (pixbuf) + (gsize)y * (gsize)gdk_pixbuf_get_rowstride (pixbuf);
    for (int x = 0; x < width_px; x++, pixel += 3) {
      Spot spot = locate (photo, x, y, width_px, height_px);
      Colour colour = spot.radius <= 1.0 ? paint_patty (photo, &spot) : paint_ground (photo, &spot);
      pixel[0] = to_byte (colour.r);
      pixel[1] = to_byte (colour.g);
      pixel[2] = to_byte (colour.b);
    }
  }
  return pixbuf;
}

GBytes *
fm_demo_photo_paint (const FmDemoPhoto *photo, GError **error)
{
  g_autoptr (GdkPixbuf) upright = paint_pixels (photo);
  g_autoptr (GdkPixbuf) stored = NULL;
  char *buffer = NULL;
  gsize size = 0;

  if (upright != NULL)
    stored = photo->portrait
                 ? gdk_pixbuf_rotate_simple (upright, GDK_PIXBUF_ROTATE_COUNTERCLOCKWISE)
                 : g_object_ref (upright);
  if (stored == NULL) {
    g_set_error_literal (error, GDK_PIXBUF_ERROR, GDK_PIXBUF_ERROR_INSUFFICIENT_MEMORY,
                         g_strerror (ENOMEM));
    return NULL;
  }
  if (!gdk_pixbuf_save_to_buffer (stored, &buffer, &size, "jpeg", error, "quality", "82", NULL))
    return NULL;

  g_autoptr (GBytes) jpeg = g_bytes_new_take (buffer, size);
  return fm_demo_photo_tag (jpeg, photo->portrait ? 6 : 1, photo->taken_at);
}

/* Spaces stand for a time that is not known. */
static char *
clock_text (gint64 taken_at)
{
  g_autoptr (GDateTime) time = taken_at != 0 ? g_date_time_new_from_unix_utc (taken_at) : NULL;

  return time != NULL ? g_date_time_format (time, "%Y:%m:%d %H:%M:%S")
                      : g_strdup ("    :  :     :  :  ");
}

GBytes *
fm_demo_photo_tag (GBytes *jpeg, int orientation, gint64 taken_at)
{
  /* Marker, length, "Exif", then a TIFF header (big-endian), a directory of two entries, tag 0x0112
   * (type SHORT, one value) and tag 0x8769 (type LONG, where the other directory lies), and that
   * one with tag 0x9003 (type ASCII, 20 bytes behind it). Exif 2.3, sections 4.5 and 4.6. */
  const guint8 segment[] = {
    0xff, 0xe1, 0x00, 0x54, 'E',  'x',  'i',  'f',  0x00, 0x00,
    'M',  'M',  0x00, 0x2a, 0x00, 0x00, 0x00, 0x08, 0x00, 0x02,
    0x01, 0x12, 0x00, 0x03, 0x00, 0x00, 0x00, 0x01, 0x00, (guint8)orientation,
    0x00, 0x00, 0x87, 0x69, 0x00, 0x04, 0x00, 0x00, 0x00, 0x01,
    0x00, 0x00, 0x00, 0x26, 0x00, 0x00, 0x00, 0x00, 0x00, 0x01,
    0x90, 0x03, 0x00, 0x02, 0x00, 0x00, 0x00, 0x14, 0x00, 0x00,
    0x00, 0x38, 0x00, 0x00, 0x00, 0x00,
  };
  gsize size;
  const guint8 *bytes = g_bytes_get_data (jpeg, &size);
  g_autofree char *clock = clock_text (taken_at);
  GByteArray *tagged = g_byte_array_new ();

  g_return_val_if_fail (size > 2 && strlen (clock) == 19, NULL);
  /* Right behind the two bytes of the start marker. */
  g_byte_array_append (tagged, bytes, 2);
  g_byte_array_append (tagged, segment, sizeof segment);
  g_byte_array_append (tagged, (const guint8 *)clock, 20);
  g_byte_array_append (tagged, bytes + 2, (guint)(size - 2));
  return g_byte_array_free_to_bytes (tagged);
}
