/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-view.c - what side of a patty a photo shows */
#include "core/experiment/fm-photo-view.h"

#include <glib/gi18n-lib.h>

typedef struct {
  const char *key; /* NULL: none */
  const char *name;
} View;

static const View views[FM_N_PHOTO_VIEWS] = {
  [FM_PHOTO_VIEW_NONE] = { NULL, N_ ("No view") },
  [FM_PHOTO_VIEW_RAW] = { "raw", N_ ("Raw") },
  [FM_PHOTO_VIEW_CRUST] = { "crust", N_ ("Crust") },
  [FM_PHOTO_VIEW_CROSS_SECTION] = { "cross section", N_ ("Cross section") },
  [FM_PHOTO_VIEW_CRUMB] = { "crumb", N_ ("Crumb") },
};

const char *
fm_photo_view_key (FmPhotoView view)
{
  g_return_val_if_fail ((guint)view < FM_N_PHOTO_VIEWS, NULL);
  return views[view].key;
}

FmPhotoView
fm_photo_view_of_key (const char *key)
{
  for (guint i = FM_PHOTO_VIEW_RAW; i < FM_N_PHOTO_VIEWS; i++)
    if (g_strcmp0 (key, views[i].key) == 0)
      return (FmPhotoView)i;
  return FM_PHOTO_VIEW_NONE;
}

const char *
fm_photo_view_name (FmPhotoView view)
{
  g_return_val_if_fail ((guint)view < FM_N_PHOTO_VIEWS, "");
  return _ (views[view].name);
}
