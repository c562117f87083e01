/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Images, new and stored, with what a camera writes into them. */
#include "fuzz.h"
#include "store/fm-image.h"

int
LLVMFuzzerTestOneInput (const guint8 *bytes, gsize size)
{
  g_autoptr (GBytes) data = g_bytes_new (bytes, size);
  g_autoptr (GError) image_error = NULL;
  g_autoptr (GError) small_error = NULL;
  g_autoptr (FmImage) image = fm_image_inspect (data, NULL, &image_error);
  g_autoptr (GdkPixbuf) small =
      fm_image_decode (data, &fm_image_thumbnail_limits, NULL, &small_error);

  fuzz_check_error (image != NULL, image_error);
  fuzz_check_error (small != NULL, small_error);
  if (image != NULL && (image->width_px < 1 || image->height_px < 1))
    g_error ("An image without pixels was taken.");
  return 0;
}
