/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-choice.c - what somebody chose and stated for the label of a blend */
#include "core/label/fm-label-choice.h"

#include <math.h>

FmLabelChoice *
fm_label_choice_new (double serving_g)
{
  FmLabelChoice *self = g_new0 (FmLabelChoice, 1);

  self->input = (FmLabelInput){ FM_LABEL_US_RETAIL, serving_g, NAN, FALSE };
  fm_label_stated_init (&self->stated);
  self->words =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify)fm_label_words_free);
  return self;
}

void
fm_label_choice_free (FmLabelChoice *self)
{
  g_free (self->stated_source);
  g_hash_table_unref (self->words);
  g_free (self);
}

static const char *
text_or_null (const char *text)
{
  return text != NULL && *text != '\0' ? text : NULL;
}

void
fm_label_choice_set_words (FmLabelChoice *self,
                           const char *identity,
                           const char *name,
                           const char *parts)
{
  if (text_or_null (name) == NULL && text_or_null (parts) == NULL)
    g_hash_table_remove (self->words, identity);
  else
    g_hash_table_insert (self->words, g_strdup (identity),
                         fm_label_words_new (text_or_null (name), text_or_null (parts)));
}
