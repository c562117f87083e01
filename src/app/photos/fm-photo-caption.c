/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-caption.c - caption and view of a photo being edited, saved as they change */
#include "app/photos/fm-photo-caption.h"

#include <glib/gi18n-lib.h>

struct _FmPhotoCaption {
  FmStoredDocument parent_instance;
};

G_DEFINE_FINAL_TYPE (FmPhotoCaption, fm_photo_caption, FM_TYPE_STORED_DOCUMENT)

typedef struct {
  gint64 photo_id;
  char *text;
  FmPhotoView view;
} Caption;

static Caption *
caption_new (gint64 photo_id, const char *text, FmPhotoView view)
{
  Caption *caption = g_new0 (Caption, 1);

  caption->photo_id = photo_id;
  caption->text = g_strdup (text != NULL ? text : "");
  caption->view = view;
  return caption;
}

static void
caption_free (gpointer data)
{
  Caption *caption = data;

  g_free (caption->text);
  g_free (caption);
}

static gpointer
copy (FmStoredDocument *document)
{
  const Caption *caption = fm_stored_document_get_content (document);

  return caption_new (caption->photo_id, caption->text, caption->view);
}

static gboolean
save (FmNotebook *notebook, gpointer data, GError **error)
{
  const Caption *caption = data;

  return fm_photos_describe (notebook, caption->photo_id, caption->text, caption->view, error);
}

static char *
describe (FmStoredDocument *document)
{
  const Caption *caption = fm_stored_document_get_content (document);

  return g_strdup_printf (_ ("The caption “%s” of a photo"), caption->text);
}

static void
fm_photo_caption_class_init (FmPhotoCaptionClass *klass)
{
  FmStoredDocumentClass *document_class = FM_STORED_DOCUMENT_CLASS (klass);

  document_class->copy = copy;
  document_class->free = caption_free;
  document_class->save = save;
  document_class->describe = describe;
}

static void
fm_photo_caption_init (FmPhotoCaption *self)
{
}

FmPhotoCaption *
fm_photo_caption_open (FmSession *session, const FmPhotoInfo *info)
{
  return fm_documents_open (fm_session_get_documents (session), FM_TYPE_PHOTO_CAPTION,
                            fm_session_get_notebook (session), info->id,
                            caption_new (info->id, info->caption, info->view));
}

const char *
fm_photo_caption_get_text (FmPhotoCaption *self)
{
  const Caption *caption = fm_stored_document_get_content (FM_STORED_DOCUMENT (self));

  return caption->text;
}

void
fm_photo_caption_set_text (FmPhotoCaption *self, const char *text)
{
  Caption *caption = fm_stored_document_get_content (FM_STORED_DOCUMENT (self));

  if (g_str_equal (caption->text, text))
    return;
  g_free (caption->text);
  caption->text = g_strdup (text);
  fm_stored_document_touch (FM_STORED_DOCUMENT (self));
}

FmPhotoView
fm_photo_caption_get_view (FmPhotoCaption *self)
{
  const Caption *caption = fm_stored_document_get_content (FM_STORED_DOCUMENT (self));

  return caption->view;
}

void
fm_photo_caption_set_view (FmPhotoCaption *self, FmPhotoView view)
{
  Caption *caption = fm_stored_document_get_content (FM_STORED_DOCUMENT (self));

  if (caption->view == view)
    return;
  caption->view = view;
  fm_stored_document_touch (FM_STORED_DOCUMENT (self));
}
