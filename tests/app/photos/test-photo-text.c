/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-photo-text.c - what is said of a photo, and which one is laid beside it */
#include "app/photos/fm-photo-text.h"

static FmPhotoInfo *
add (GPtrArray *photos, gint64 id, gint64 experiment_id, FmPhotoView view)
{
  FmPhotoInfo *info = g_new0 (FmPhotoInfo, 1);

  info->id = id;
  info->experiment_id = experiment_id;
  info->view = view;
  g_ptr_array_add (photos, info);
  return info;
}

static void
test_words (void)
{
  FmPhotoInfo info = { .id = 7,
                       .mime = (char *)"image/heif",
                       .view = FM_PHOTO_VIEW_CRUST,
                       .caption = (char *)"Dark",
                       .taken = (char *)"2025-03-03 14:05:09",
                       .version_number = 3 };
  g_autofree char *words = fm_photo_text_words (&info);
  g_autofree char *origin = fm_photo_text_origin (&info);
  g_autofree char *name = fm_photo_text_file_name (&info);
  g_autofree char *nothing = fm_photo_text_words (&(FmPhotoInfo){ .id = 7 });

  g_assert_cmpstr (words, ==, "Crust · Dark · taken 03/03/25 14:05");
  g_assert_cmpstr (origin, ==, "Version 3 · Untitled experiment · Crust · Dark");
  g_assert_cmpstr (name, ==, "photo-7.heic");
  g_assert_cmpstr (nothing, ==, "");
}

static void
test_beside (void)
{
  g_autoptr (GPtrArray) photos =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_photo_info_free);
  const FmPhotoInfo *shown = add (photos, 1, 1, FM_PHOTO_VIEW_CRUST);

  g_assert_cmpuint (fm_photo_text_find_beside (photos, shown), ==, 0);
  add (photos, 2, 1, FM_PHOTO_VIEW_RAW);
  g_assert_cmpuint (fm_photo_text_find_beside (photos, shown), ==, 1);
  add (photos, 3, 2, FM_PHOTO_VIEW_NONE);
  add (photos, 4, 2, FM_PHOTO_VIEW_CRUST);
  add (photos, 5, 3, FM_PHOTO_VIEW_CRUST);
  g_assert_cmpuint (fm_photo_text_find_beside (photos, shown), ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/photo-text/words", test_words);
  g_test_add_func ("/photo-text/beside", test_beside);
  return g_test_run ();
}
