/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-short-name.c - what a cook calls a food of the dataset */
#include "core/composition/fm-short-name.h"

#include <string.h>

#define MAX_CUT_PARTS 2

/* A name taken apart. */
typedef struct {
  const char *head;   /* "beef" */
  gboolean is_ground; /* the meat is named by its lean point, not by its cut */
  char *lean_point;   /* "80/20"; NULL = none */
  GPtrArray *cut;     /* "chuck", "blade" */
  GPtrArray *rest;    /* "choice", "1/8 in trim" */
} Parts;

static const char *const meats[] = { "beef",   "pork", "lamb",  "veal", "chicken",
                                     "turkey", "duck", "goose", NULL };

/* What is understood unless another word is said. */
static const char *const understood[] = {
  "all classes",
  "all grades",
  "broilers or fryers",
  "cooked", /* the way of cooking follows */
  "domestic",
  "fresh",
  "game meat",
  "imported",
  "lean and fat",
  "r", /* a name cut short by the dataset */
  "ra",
  "raw",
  "spices",
  "variety meats and by-products",
  NULL,
};

/* Cuts that no other animal has, so that beef need not be said. */
static const char *const beef_cuts[] = {
  "bottom round", "bottom sirloin", "brisket",   "chuck",       "eye of round", "flank", "plate",
  "round",        "short loin",     "top round", "top sirloin", "tri-tip",      NULL,
};

static const char *const said_shorter[][2] = {
  { "choice grade", "choice" }, { "select grade", "select" },     { "prime grade", "prime" },
  { "lean only", "lean" },      { "meat and skin", "with skin" }, { "meat only", "no skin" },
};

static gboolean
begins_with_word (const char *text, const char *word)
{
  const gsize length = strlen (word);

  return g_str_has_prefix (text, word) && (text[length] == '\0' || text[length] == ' ');
}

static gboolean
is_beef_cut (const char *cut)
{
  for (guint i = 0; beef_cuts[i] != NULL; i++) {
    if (begins_with_word (cut, beef_cuts[i]))
      return TRUE;
  }
  return FALSE;
}

/* What stands in brackets explains, and is left out. */
static char *
without_brackets (const char *text)
{
  GString *plain = g_string_new (NULL);
  guint depth = 0;

  for (const char *p = text; *p != '\0'; p++) {
    if (*p == '(')
      depth++;
    else if (*p == ')' && depth > 0)
      depth--;
    else if (depth == 0)
      g_string_append_c (plain, *p);
  }
  return g_string_free (plain, FALSE);
}

/* "trimmed to 1/8 inch fat" as "1/8 in trim"; NULL when @part is no trim. */
static char *
read_trim (const char *part)
{
  static const char begin[] = "trimmed to ";
  static const char end[] = " inch fat";

  if (!g_str_has_prefix (part, begin) || !g_str_has_suffix (part, end))
    return NULL;
  return g_strdup_printf ("%.*s in trim", (int)(strlen (part) - strlen (begin) - strlen (end)),
                          part + strlen (begin));
}

static gboolean
is_lean_point (const char *part)
{
  return g_ascii_isdigit (part[0]) && strchr (part, '/') != NULL &&
         part[strspn (part, "0123456789/")] == '\0';
}

static const char *
shorter (const char *part)
{
  for (guint i = 0; i < G_N_ELEMENTS (said_shorter); i++) {
    if (g_str_equal (part, said_shorter[i][0]))
      return said_shorter[i][1];
  }
  return NULL;
}

static char *
without_roast (const char *cut)
{
  static const char *const endings[] = { " pot roast", " roast" };

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++) {
    if (g_str_has_suffix (cut, endings[i]))
      return g_strndup (cut, strlen (cut) - strlen (endings[i]));
  }
  return g_strdup (cut);
}

/* Takes @part, the next of a name of meat, to where it belongs. */
static void
take_meat (Parts *self, const char *part)
{
  char *trim = read_trim (part);

  if (trim != NULL) {
    g_ptr_array_add (self->rest, trim);
  } else if (is_lean_point (part)) {
    g_free (self->lean_point);
    self->lean_point = g_strdup (part);
  } else if (g_str_equal (part, "ground") && self->cut->len == 0) {
    self->is_ground = TRUE;
  } else if (shorter (part) != NULL) {
    g_ptr_array_add (self->rest, g_strdup (shorter (part)));
  } else if (self->rest->len == 0 && !self->is_ground && self->cut->len < MAX_CUT_PARTS) {
    g_ptr_array_add (self->cut, without_roast (part));
  } else {
    g_ptr_array_add (self->rest, g_strdup (part));
  }
}

static void
append_all (GString *text, GPtrArray *parts, const char *between)
{
  for (guint i = 0; i < parts->len; i++)
    g_string_append_printf (text, "%s%s", text->len > 0 ? between : "",
                            (const char *)g_ptr_array_index (parts, i));
}

static char *
put_together (Parts *self)
{
  GString *text = g_string_new (NULL);

  if (self->is_ground)
    g_string_append_printf (text, "ground %s", self->head);
  else if (!g_str_equal (self->head, "beef") || self->cut->len == 0 ||
           !is_beef_cut (g_ptr_array_index (self->cut, 0)))
    g_string_append (text, self->head);
  append_all (text, self->cut, " ");
  if (self->lean_point != NULL)
    g_string_append_printf (text, " %s", self->lean_point);
  append_all (text, self->rest, ", ");
  return g_string_free (text, FALSE);
}

static char *
capitalised (const char *text)
{
  g_autofree char *first = g_utf8_substring (text, 0, g_utf8_strlen (text, -1) > 0 ? 1 : 0);
  g_autofree char *upper = g_utf8_strup (first, -1);

  return g_strconcat (upper, text + strlen (first), NULL);
}

static char *
shorten_meat (const char *head, char **parts)
{
  g_autoptr (GPtrArray) cut = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) rest = g_ptr_array_new_with_free_func (g_free);
  Parts self = { .head = head, .cut = cut, .rest = rest };
  g_autofree char *text = NULL;

  for (guint i = 0; parts[i] != NULL; i++) {
    if (!g_strv_contains (understood, parts[i]) && parts[i][0] != '\0')
      take_meat (&self, parts[i]);
  }
  text = put_together (&self);
  g_free (self.lean_point);
  return capitalised (text);
}

static char *
shorten_other (char **parts)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; parts[i] != NULL; i++) {
    if (!g_strv_contains (understood, parts[i]) && parts[i][0] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", parts[i]);
  }
  return capitalised (text->str);
}

char *
fm_short_name (const char *full_name)
{
  g_autofree char *plain = NULL;
  g_auto (GStrv) parts = NULL;
  g_autofree char *name = NULL;

  g_return_val_if_fail (full_name != NULL, NULL);

  plain = without_brackets (full_name);
  parts = g_strsplit (plain, ", ", -1);
  if (parts[0] == NULL || parts[1] == NULL)
    return g_strdup (full_name);
  for (guint i = 0; parts[i] != NULL; i++)
    g_strstrip (parts[i]);
  parts[0][0] = g_ascii_tolower (parts[0][0]);
  name = g_strv_contains (meats, parts[0]) ? shorten_meat (parts[0], parts + 1)
                                           : shorten_other (parts);
  return name[0] != '\0' ? g_steal_pointer (&name) : g_strdup (full_name);
}
