/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-text.c - what is said of a photo, in words */
#include "app/photos/fm-photo-text.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-date.h"
#include "core/base/fm-number.h"

static void
add_part (GString *text, const char *part)
{
  if (part == NULL || *part == '\0')
    return;
  if (text->len > 0)
    g_string_append (text, " · ");
  g_string_append (text, part);
}

static void
add_view (GString *text, const FmPhotoInfo *info)
{
  if (info->view != FM_PHOTO_VIEW_NONE)
    add_part (text, fm_photo_view_name (info->view));
}

char *
fm_photo_text_words (const FmPhotoInfo *info)
{
  GString *text = g_string_new (NULL);

  add_view (text, info);
  add_part (text, info->caption);
  if (info->taken != NULL) {
    g_autofree char *time = fm_date_text_of_clock (info->taken);
    /* TRANSLATORS: day and time, by the clock of the camera */
    g_autofree char *taken = g_strdup_printf (_ ("taken %s"), time);

    add_part (text, taken);
  }
  return g_string_free (text, FALSE);
}

char *
fm_photo_text_size (const FmPhotoInfo *info)
{
  g_autofree char *width = fm_number_format (info->width_px, 0);
  g_autofree char *height = fm_number_format (info->height_px, 0);
  g_autofree char *size = g_format_size ((guint64)info->size_bytes);

  return g_strdup_printf (_ ("%s × %s pixels, %s"), width, height, size);
}

char *
fm_photo_text_origin (const FmPhotoInfo *info)
{
  g_autofree char *version = g_strdup_printf (_ ("Version %d"), info->version_number);
  GString *text = g_string_new (version);

  add_part (text, info->title != NULL ? info->title : _ ("Untitled experiment"));
  add_view (text, info);
  add_part (text, info->caption);
  return g_string_free (text, FALSE);
}

static const char *
suffix_for (const char *mime)
{
  const struct {
    const char *mime;
    const char *suffix;
  } known[] = {
    { "image/jpeg", ".jpg" },  { "image/png", ".png" },   { "image/webp", ".webp" },
    { "image/tiff", ".tiff" }, { "image/heif", ".heic" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    if (g_strcmp0 (mime, known[i].mime) == 0)
      return known[i].suffix;
  return "";
}

char *
fm_photo_text_file_name (const FmPhotoInfo *info)
{
  return g_strdup_printf ("photo-%" G_GINT64_FORMAT "%s", info->id, suffix_for (info->mime));
}

/* How well @info goes beside @shown; 0 = it is the same. */
static int
fitness (const FmPhotoInfo *info, const FmPhotoInfo *shown)
{
  const gboolean is_other_making = info->experiment_id != shown->experiment_id;
  const gboolean has_same_view = info->view == shown->view && info->view != FM_PHOTO_VIEW_NONE;

  if (info->id == shown->id)
    return 0;
  return 1 + (is_other_making && has_same_view ? 2 : 0) + (has_same_view ? 1 : 0);
}

guint
fm_photo_text_find_beside (GPtrArray *photos, const FmPhotoInfo *shown)
{
  guint best = 0;
  int best_fitness = 0;

  for (guint i = 0; i < photos->len; i++) {
    const int here = fitness (g_ptr_array_index (photos, i), shown);

    if (here > best_fitness) {
      best = i;
      best_fitness = here;
    }
  }
  return best;
}
