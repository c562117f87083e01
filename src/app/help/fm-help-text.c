/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-help-text.c - a page of the manual as a run of blocks */
#include "app/help/fm-help-text.h"

#include <string.h>

typedef struct {
  GPtrArray *blocks;
  GString *text; /* of the block that is being read; NULL = between blocks */
  FmHelpKind kind;
  char *picture;
  guint n_sections; /* that are open */
  guint n_steps;    /* so far, of the list that is open */
} Reader;

/* Element -> what stands for it in a text. */
static const struct {
  const char *element, *before, *after;
} inline_marks[] = {
  { "gui", "<b>", "</b>" },    { "key", "<b>", "</b>" }, { "em", "<i>", "</i>" },
  { "file", "<tt>", "</tt>" }, { "link", NULL, "</a>" },
};

static void
block_free (gpointer data)
{
  FmHelpBlock *block = data;

  g_free (block->markup);
  g_free (block->picture);
  g_free (block);
}

static gboolean
lies_in (GMarkupParseContext *context, const char *element)
{
  const GSList *stack = g_markup_parse_context_get_element_stack (context);

  for (const GSList *item = stack; item != NULL; item = item->next)
    if (g_str_equal (item->data, element))
      return TRUE;
  return FALSE;
}

static FmHelpKind
kind_of_paragraph (GMarkupParseContext *context)
{
  if (lies_in (context, "media"))
    return FM_HELP_PICTURE;
  if (lies_in (context, "steps"))
    return FM_HELP_STEP;
  if (lies_in (context, "list"))
    return FM_HELP_ITEM;
  return lies_in (context, "note") ? FM_HELP_NOTE : FM_HELP_PARAGRAPH;
}

static void
begin_block (Reader *self, FmHelpKind kind)
{
  self->kind = kind;
  self->text = g_string_new (NULL);
}

static void
end_block (Reader *self)
{
  FmHelpBlock *block = g_new0 (FmHelpBlock, 1);

  block->kind = self->kind;
  block->markup = g_strchomp (g_string_free (g_steal_pointer (&self->text), FALSE));
  if (self->kind == FM_HELP_STEP)
    block->number = ++self->n_steps;
  if (self->kind == FM_HELP_PICTURE)
    block->picture = g_steal_pointer (&self->picture);
  g_ptr_array_add (self->blocks, block);
}

static const char *
find_attribute (const char *name, const char **names, const char **values)
{
  for (guint i = 0; names[i] != NULL; i++)
    if (g_str_equal (names[i], name))
      return values[i];
  return NULL;
}

static void
begin_inline (Reader *self, const char *element, const char **names, const char **values)
{
  const char *page = find_attribute ("xref", names, values);

  for (guint i = 0; i < G_N_ELEMENTS (inline_marks); i++) {
    if (!g_str_equal (inline_marks[i].element, element))
      continue;
    if (inline_marks[i].before != NULL)
      g_string_append (self->text, inline_marks[i].before);
    else
      g_string_append_printf (self->text, "<a href=\"%s\">", page != NULL ? page : "");
  }
}

static void
end_inline (Reader *self, const char *element)
{
  for (guint i = 0; i < G_N_ELEMENTS (inline_marks); i++)
    if (g_str_equal (inline_marks[i].element, element))
      g_string_append (self->text, inline_marks[i].after);
}

static void
start_cb (GMarkupParseContext *context,
          const char *element,
          const char **names,
          const char **values,
          gpointer user_data,
          GError **error)
{
  Reader *self = user_data;

  if (self->text != NULL) {
    begin_inline (self, element, names, values);
  } else if (g_str_equal (element, "section")) {
    self->n_sections++;
  } else if (g_str_equal (element, "steps")) {
    self->n_steps = 0;
  } else if (g_str_equal (element, "media")) {
    g_free (self->picture);
    self->picture = g_strdup (find_attribute ("src", names, values));
  } else if (g_str_equal (element, "title") && !lies_in (context, "info")) {
    begin_block (self, self->n_sections > 0 ? FM_HELP_HEADING : FM_HELP_TITLE);
  } else if (g_str_equal (element, "p")) {
    begin_block (self, kind_of_paragraph (context));
  }
}

static void
end_cb (GMarkupParseContext *context, const char *element, gpointer user_data, GError **error)
{
  Reader *self = user_data;

  if (self->text != NULL && (g_str_equal (element, "title") || g_str_equal (element, "p")))
    end_block (self);
  else if (self->text != NULL)
    end_inline (self, element);
  else if (g_str_equal (element, "section"))
    self->n_sections--;
}

/* Lines of the file are no lines of the page: white space counts as one space. */
static void
text_cb (GMarkupParseContext *context,
         const char *text,
         gsize length,
         gpointer user_data,
         GError **error)
{
  Reader *self = user_data;
  g_autofree char *escaped = NULL;

  if (self->text == NULL)
    return;
  escaped = self->kind == FM_HELP_PICTURE ? g_strndup (text, length)
                                          : g_markup_escape_text (text, (gssize)length);
  for (const char *c = escaped; *c != '\0'; c++) {
    const gsize so_far = self->text->len;

    if (!g_ascii_isspace (*c))
      g_string_append_c (self->text, *c);
    else if (so_far > 0 && self->text->str[so_far - 1] != ' ')
      g_string_append_c (self->text, ' ');
  }
}

GPtrArray *
fm_help_text_parse (const char *xml, gsize length, GError **error)
{
  const GMarkupParser parser = { .start_element = start_cb,
                                 .end_element = end_cb,
                                 .text = text_cb };
  g_autoptr (GPtrArray) blocks = g_ptr_array_new_with_free_func (block_free);
  Reader reader = { .blocks = blocks };
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (&parser, 0, &reader, NULL);
  gboolean read;

  g_return_val_if_fail (xml != NULL, NULL);
  read = g_markup_parse_context_parse (context, xml, (gssize)length, error) &&
         g_markup_parse_context_end_parse (context, error);
  if (reader.text != NULL)
    g_string_free (reader.text, TRUE);
  g_free (reader.picture);
  return read ? g_steal_pointer (&blocks) : NULL;
}

char *
fm_help_text_find (const char *page)
{
  const char *own = g_getenv ("FORCEMEAT_HELP_DIR");
  g_autofree char *name = g_strconcat (page, ".page", NULL);

  for (const char *const *language = g_get_language_names (); *language != NULL; language++) {
    g_autofree char *path = own != NULL
                                ? g_build_filename (own, *language, name, NULL)
                                : g_build_filename (HELPDIR, *language, "forcemeat", name, NULL);

    if (g_file_test (path, G_FILE_TEST_EXISTS))
      return g_steal_pointer (&path);
  }
  return NULL;
}
