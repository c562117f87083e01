/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-sheet.c - a label and all that stands beside it, as rows of a sheet */
#include "report/fm-label-sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/formula/fm-legal.h"

static char *
make_caption (const FmLabelOrigin *origin, FmLabelSetId set)
{
  g_autofree char *caption =
      /* TRANSLATORS: blend, "version 3", date, set of rules, who must check it */
      g_strdup_printf (_ ("%s, %s. %s. %s. %s"), origin->blend_name, origin->version_name,
                       origin->date_text != NULL ? origin->date_text : _ ("no date"),
                       _ (fm_label_sets[set].title), fm_label_caution ());

  return origin->notice != NULL ? g_strdup_printf ("%s %s", origin->notice, caption)
                                : g_steal_pointer (&caption);
}

FmLabel *
fm_label_new (const FmLabelOrigin *origin, const FmLabelChoice *choice)
{
  const FmIngredientListInput list_input = { choice->input.set, choice->gather_pct, NAN,
                                             choice->words };
  g_autoptr (GError) error = NULL;
  FmLabel *self = g_new0 (FmLabel, 1);

  self->panel = fm_label_panel_new (origin->formula, origin->analysis, &choice->input,
                                    &choice->stated, &error);
  if (error != NULL)
    self->refused = g_strdup (error->message);
  self->list =
      fm_ingredient_list_new (origin->used != NULL ? origin->used : origin->formula, &list_input);
  self->caption = make_caption (origin, choice->input.set);
  self->serving_words = g_strdup (origin->serving_words);
  return self;
}

void
fm_label_free (FmLabel *self)
{
  g_clear_pointer (&self->panel, fm_label_panel_free);
  g_free (self->refused);
  fm_ingredient_list_free (self->list);
  g_free (self->caption);
  g_free (self->serving_words);
  g_free (self);
}

FmLabelPicture
fm_label_picture (const FmLabel *self)
{
  return (FmLabelPicture){ self->panel, self->serving_words, self->caption };
}

static void
paint_cb (gconstpointer data, cairo_t *cr)
{
  const FmLabelPicture picture = fm_label_picture (data);

  fm_label_picture_paint (&picture, cr);
}

static void
add_lines (FmBatchSheet *sheet, FmSheetKind kind, const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    if (*lines[i] != '\0')
      fm_batch_sheet_add (sheet, kind, g_strdup (lines[i]));
}

/* The sheet owns the label from here on, whether it has a panel or not. */
static void
add_panel (FmBatchSheet *sheet, FmLabel *self)
{
  FmSheetDrawing *drawing = g_new0 (FmSheetDrawing, 1);
  FmSheetRow *row;

  drawing->data = self;
  drawing->free_data = (GDestroyNotify)fm_label_free;
  drawing->paint = paint_cb;
  if (self->panel == NULL) {
    add_lines (sheet, FM_SHEET_CAUTION, self->refused);
    row = fm_batch_sheet_add (sheet, FM_SHEET_DRAWING, g_strdup (""));
    drawing->paint = NULL;
  } else {
    const FmLabelPicture picture = fm_label_picture (self);

    fm_label_picture_size (&picture, &drawing->width_pt, &drawing->height_pt);
    row = fm_batch_sheet_add (sheet, FM_SHEET_DRAWING, fm_label_picture_text (&picture));
  }
  row->drawing = drawing;
}

static void
add_ingredients (FmBatchSheet *sheet, const FmIngredientList *list)
{
  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (_ ("Ingredients")));
  if (list->held_back != NULL)
    fm_batch_sheet_add (sheet, FM_SHEET_CAUTION, g_strdup (list->held_back));
  if (list->text != NULL)
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT, g_strdup (list->text));
  if (list->contains != NULL)
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT, g_strdup (list->contains));
  add_lines (sheet, FM_SHEET_SMALL, list->notes);
}

static void
add_edges (FmBatchSheet *sheet, const FmLabelPanel *panel, const char *stated_source)
{
  g_autofree char *notes = fm_label_panel_notes (panel);
  gboolean has_stated = FALSE;

  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (_ ("How near each figure stands")));
  for (guint i = 0; i < panel->lines->len; i++) {
    const FmLabelLine *line = &g_array_index (panel->lines, FmLabelLine, i);
    g_autofree char *text = fm_label_edge_text (line);

    has_stated = has_stated || line->is_stated;
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL,
                        g_strdup_printf ("%s: %s.", fm_label_row_name (line->row), text));
  }
  if (has_stated)
    fm_batch_sheet_add (
        sheet, FM_SHEET_SMALL,
        g_strdup_printf (_ ("Stated figures: %s."), stated_source != NULL && *stated_source != '\0'
                                                        ? stated_source
                                                        : _ ("nobody says where they are from")));
  add_lines (sheet, FM_SHEET_SMALL, notes);
}

static void
add_claims (FmBatchSheet *sheet, const FmClaimInput *input)
{
  g_auto (GStrv) claims = fm_claims_of (input->set);
  g_autofree char *lean = fm_claim_lean_text (input);

  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (_ ("Claims, criterion by criterion")));
  for (guint i = 0; claims[i] != NULL; i++) {
    const FmClaimState state = fm_claim_state (claims[i], input);
    g_autofree char *text = fm_claim_text (claims[i], input);

    fm_batch_sheet_add (sheet, FM_SHEET_TEXT,
                        g_strdup_printf ("“%s”: %s", claims[i], fm_claim_state_name (state)));
    add_lines (sheet, FM_SHEET_SMALL, text);
  }
  add_lines (sheet, FM_SHEET_TEXT, lean);
}

FmBatchSheet *
fm_label_sheet_new (FmLabel *self, const FmLabelOrigin *origin, const FmLabelChoice *choice)
{
  const FmLabelSetId set = choice->input.set;
  FmBatchSheet *sheet = fm_batch_sheet_new_empty (_ ("Label"));
  const FmClaimInput claims = { set, origin->formula, origin->analysis, &choice->stated };
  g_autofree char *rules = fm_label_set_text (set);
  g_autofree char *legal = fm_legal_text (origin->formula, origin->analysis,
                                          set == FM_LABEL_EU ? FM_RULE_SET_EU : FM_RULE_SET_US);

  sheet->is_long = TRUE;
  sheet->notice = origin->notice;
  fm_batch_sheet_add (
      sheet, FM_SHEET_TITLE,
      /* TRANSLATORS: name of the blend, "version 3" */
      g_strdup_printf (_ ("Label: %s, %s"), origin->blend_name, origin->version_name));
  if (origin->date_text != NULL)
    fm_batch_sheet_add (sheet, FM_SHEET_SMALL, g_strdup (origin->date_text));
  fm_batch_sheet_add (sheet, FM_SHEET_CAUTION, g_strdup (fm_label_caution ()));
  add_panel (sheet, self);
  add_ingredients (sheet, self->list);
  if (self->panel != NULL)
    add_edges (sheet, self->panel, choice->stated_source);
  add_claims (sheet, &claims);
  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (_ ("Limits of the law")));
  add_lines (sheet, FM_SHEET_SMALL, legal);
  fm_batch_sheet_add (sheet, FM_SHEET_HEADING, g_strdup (_ ("Rules of this label")));
  fm_batch_sheet_add (sheet, FM_SHEET_SMALL, g_steal_pointer (&rules));
  return sheet;
}
