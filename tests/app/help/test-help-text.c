/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* Pages of the manual: read as blocks, and each page of the manual that lies in the sources. */
#include <glib.h>

#include "app/help/fm-help-text.h"

static const char page[] =
    "<page id=\"a\"><info><title>Left out</title><desc>And this</desc></info>"
    "<title>A &amp; B</title><p>One\n   two <gui>Save</gui>, "
    "<link xref=\"map\">Map</link>.</p>"
    "<media type=\"image\" src=\"figures/a.png\"><p>A &amp; picture</p></media>"
    "<section><title>Second</title>"
    "<steps><item><p>First</p></item><item><p>Then</p></item></steps>"
    "<list><item><p>Point</p></item></list><note><p>Mind</p></note>"
    "</section></page>";

static void
assert_block (GPtrArray *blocks, guint i, FmHelpKind kind, const char *markup)
{
  const FmHelpBlock *block = g_ptr_array_index (blocks, i);

  g_assert_cmpint (block->kind, ==, kind);
  g_assert_cmpstr (block->markup, ==, markup);
}

static void
test_blocks (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) blocks = fm_help_text_parse (page, sizeof page - 1, &error);
  const FmHelpBlock *picture, *step;

  g_assert_no_error (error);
  g_assert_cmpuint (blocks->len, ==, 8);
  assert_block (blocks, 0, FM_HELP_TITLE, "A &amp; B");
  assert_block (blocks, 1, FM_HELP_PARAGRAPH, "One two <b>Save</b>, <a href=\"map\">Map</a>.");
  assert_block (blocks, 2, FM_HELP_PICTURE, "A & picture");
  assert_block (blocks, 3, FM_HELP_HEADING, "Second");
  assert_block (blocks, 4, FM_HELP_STEP, "First");
  assert_block (blocks, 5, FM_HELP_STEP, "Then");
  assert_block (blocks, 6, FM_HELP_ITEM, "Point");
  assert_block (blocks, 7, FM_HELP_NOTE, "Mind");
  picture = g_ptr_array_index (blocks, 2);
  step = g_ptr_array_index (blocks, 5);
  g_assert_cmpstr (picture->picture, ==, "figures/a.png");
  g_assert_cmpuint (step->number, ==, 2);
}

static void
test_torn (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) blocks = fm_help_text_parse ("<page><title>Torn", 17, &error);

  g_assert_null (blocks);
  g_assert_nonnull (error);
  g_assert_true (error->domain == G_MARKUP_ERROR);
}

/* Links of the page lead to pages, and its pictures are there. */
static void
check_page (const char *folder, const char *path)
{
  g_autoptr (GRegex) links = g_regex_new ("<a href=\"([^\"]*)\">", 0, 0, NULL);
  g_autoptr (GPtrArray) blocks = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *xml = NULL;
  gsize length = 0;

  g_assert_true (g_file_get_contents (path, &xml, &length, &error));
  blocks = fm_help_text_parse (xml, length, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < blocks->len; i++) {
    const FmHelpBlock *block = g_ptr_array_index (blocks, i);
    g_autoptr (GMatchInfo) match = NULL;

    if (block->picture != NULL) {
      g_autofree char *picture = g_build_filename (folder, block->picture, NULL);

      g_assert_true (g_file_test (picture, G_FILE_TEST_EXISTS));
      g_assert_cmpstr (block->markup, !=, "");
    }
    g_regex_match (links, block->markup, 0, &match);
    for (; g_match_info_matches (match); g_match_info_next (match, NULL)) {
      g_autofree char *id = g_match_info_fetch (match, 1);
      g_autofree char *target = fm_help_text_find (id);

      g_assert_nonnull (target);
    }
  }
}

static void
test_manual (void)
{
  static const char *const pages[] = { "index",   "formula",  "versions",  "experiments",
                                       "compare", "map",      "targets",   "label",
                                       "kitchen", "tastings", "documents", "notebooks" };

  for (guint i = 0; i < G_N_ELEMENTS (pages); i++) {
    g_autofree char *path = fm_help_text_find (pages[i]);
    g_autofree char *folder = path != NULL ? g_path_get_dirname (path) : NULL;

    g_assert_nonnull (path);
    check_page (folder, path);
  }
  g_assert_null (fm_help_text_find ("nowhere"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/help-text/blocks", test_blocks);
  g_test_add_func ("/help-text/torn", test_torn);
  g_test_add_func ("/help-text/manual", test_manual);
  return g_test_run ();
}
