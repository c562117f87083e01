/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-help-text.h - a page of the manual as a run of blocks
 *
 * Pages are written in a part of Mallard 1.1: page, info, title, p, section, list and steps of
 * items, note, media of type image, and in a text gui, key, em, file and link. What else stands
 * there is left out.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_HELP_TITLE,
  FM_HELP_HEADING,
  FM_HELP_PARAGRAPH,
  FM_HELP_ITEM,
  FM_HELP_STEP,
  FM_HELP_NOTE,
  FM_HELP_PICTURE,
} FmHelpKind;

typedef struct {
  FmHelpKind kind;
  char *markup;  /* Pango markup; of a picture what it shows, as plain text */
  char *picture; /* file beside the page; NULL = it is no picture */
  guint number;  /* of a step, from 1 */
} FmHelpBlock;

/**
 * fm_help_text_parse:
 * @xml: a page
 * Returns: (element-type FmHelpBlock) (transfer full): its blocks; NULL with G_MARKUP_ERROR
 */
GPtrArray *fm_help_text_parse (const char *xml, gsize length, GError **error);
/**
 * fm_help_text_find:
 * @page: such as "formula"
 *
 * Where the page lies in the language of the user, else in English: in the folder
 * FORCEMEAT_HELP_DIR of an uninstalled run, else where the manual is installed.
 * Returns: (transfer full) (nullable): NULL when it is nowhere.
 */
char *fm_help_text_find (const char *page);

G_END_DECLS
