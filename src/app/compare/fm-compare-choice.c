/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-choice.c - a version or experiment that can be compared */
#include "app/compare/fm-compare-choice.h"

/* By FmCompareKind. */
static const char letters[] = "ved";

struct _FmCompareChoice {
  GObject parent_instance;

  char *key;
  char *title;
  char *subtitle;
  char *search_text;
  gboolean chosen;
};

G_DEFINE_FINAL_TYPE (FmCompareChoice, fm_compare_choice, G_TYPE_OBJECT)

enum {
  PROP_CHOSEN = 1,
  N_PROPERTIES,
};

static GParamSpec *properties[N_PROPERTIES];

static void
fm_compare_choice_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_CHOSEN)
    g_value_set_boolean (value, FM_COMPARE_CHOICE (object)->chosen);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_compare_choice_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_CHOSEN)
    fm_compare_choice_set_chosen (FM_COMPARE_CHOICE (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_compare_choice_finalize (GObject *object)
{
  FmCompareChoice *self = FM_COMPARE_CHOICE (object);

  g_free (self->key);
  g_free (self->title);
  g_free (self->subtitle);
  g_free (self->search_text);
  G_OBJECT_CLASS (fm_compare_choice_parent_class)->finalize (object);
}

static void
fm_compare_choice_class_init (FmCompareChoiceClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = fm_compare_choice_get_property;
  object_class->set_property = fm_compare_choice_set_property;
  object_class->finalize = fm_compare_choice_finalize;
  properties[PROP_CHOSEN] =
      g_param_spec_boolean ("chosen", NULL, NULL, FALSE,
                            G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
}

static void
fm_compare_choice_init (FmCompareChoice *self)
{
}

FmCompareChoice *
fm_compare_choice_new (FmCompareKind kind, gint64 id, const char *title, const char *subtitle)
{
  FmCompareChoice *self = g_object_new (FM_TYPE_COMPARE_CHOICE, NULL);
  g_autofree char *all = g_strjoin (" ", title, subtitle, NULL);

  self->key = fm_compare_key (kind, id);
  self->title = g_strdup (title);
  self->subtitle = g_strdup (subtitle);
  self->search_text = g_utf8_casefold (all, -1);
  return self;
}

const char *
fm_compare_choice_get_key (FmCompareChoice *self)
{
  return self->key;
}

const char *
fm_compare_choice_get_title (FmCompareChoice *self)
{
  return self->title;
}

const char *
fm_compare_choice_get_subtitle (FmCompareChoice *self)
{
  return self->subtitle;
}

gboolean
fm_compare_choice_get_chosen (FmCompareChoice *self)
{
  return self->chosen;
}

void
fm_compare_choice_set_chosen (FmCompareChoice *self, gboolean chosen)
{
  if (self->chosen == chosen)
    return;
  self->chosen = chosen;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_CHOSEN]);
}

static gboolean
has_all (const char *text, const char *const *words)
{
  for (guint i = 0; words[i] != NULL; i++)
    if (strstr (text, words[i]) == NULL)
      return FALSE;
  return TRUE;
}

gboolean
fm_compare_choice_matches (FmCompareChoice *self, const char *const *words)
{
  return has_all (self->search_text, words);
}

gboolean
fm_compare_choice_is_called (FmCompareChoice *self, const char *const *words)
{
  g_autofree char *folded = g_utf8_casefold (self->title, -1);

  return has_all (folded, words);
}

char *
fm_compare_key (FmCompareKind kind, gint64 id)
{
  return g_strdup_printf ("%c%" G_GINT64_FORMAT, letters[kind], id);
}

gboolean
fm_compare_key_parse (const char *key, FmCompareKind *kind, gint64 *id)
{
  const char *letter = key[0] != '\0' ? strchr (letters, key[0]) : NULL;
  char *end = NULL;

  if (letter == NULL)
    return FALSE;
  *kind = (FmCompareKind)(letter - letters);
  *id = g_ascii_strtoll (key + 1, &end, 10);
  return end != NULL && *end == '\0' && *id > 0;
}
