/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-verdict-row.c - what one authority's table says about the core readings, in words */
#include "app/cook/fm-cook-verdict-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

struct _FmCookVerdictRow {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *name_label;
  GtkLabel *state_label;
  GtkLabel *text_label;
  GtkLabel *hold_label;
  GtkLabel *note_label;

  FmAuthority authority;
  FmCookFood food;
};

G_DEFINE_FINAL_TYPE (FmCookVerdictRow, fm_cook_verdict_row, GTK_TYPE_WIDGET)

/* The seconds that the table asks for at the highest temperature that was measured. */
static char *
hold_text (FmCookVerdictRow *self, double highest_c)
{
  const double hold_s = fm_hold_required_s (self->authority, &self->food, highest_c);
  g_autofree char *temp = fm_notebook_text (FM_MEASURE_TEMPERATURE, highest_c, 1);
  g_autofree char *seconds = fm_number_format_unit (hold_s, 0, "s");

  if (isnan (highest_c))
    return NULL;
  if (isnan (hold_s))
    return g_strdup_printf (_ ("The highest reading, %s, lies below this table."), temp);
  if (hold_s <= 0)
    return g_strdup_printf (_ ("At the highest reading, %s, this table asks for no hold time."),
                            temp);
  return g_strdup_printf (_ ("At the highest reading, %s, this table asks for %s."), temp, seconds);
}

static void
fm_cook_verdict_row_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_COOK_VERDICT_ROW);
  G_OBJECT_CLASS (fm_cook_verdict_row_parent_class)->dispose (object);
}

static void
fm_cook_verdict_row_class_init (FmCookVerdictRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_verdict_row_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-verdict-row.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdictRow, box);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdictRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdictRow, state_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdictRow, text_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdictRow, hold_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookVerdictRow, note_label);
}

static void
fm_cook_verdict_row_init (FmCookVerdictRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_cook_verdict_row_new (FmAuthority authority, const FmCookFood *food)
{
  FmCookVerdictRow *self = g_object_new (FM_TYPE_COOK_VERDICT_ROW, NULL);

  self->authority = authority;
  self->food = *food;
  gtk_label_set_text (self->name_label, fm_authority_name (authority));
  gtk_label_set_text (self->note_label, fm_authority_note (authority));
  return GTK_WIDGET (self);
}

void
fm_cook_verdict_row_set_readings (FmCookVerdictRow *self, const GArray *readings)
{
  FmHoldVerdict verdict;
  g_autofree char *hold = NULL;

  g_return_if_fail (FM_IS_COOK_VERDICT_ROW (self));
  fm_hold_judge (self->authority, &self->food, readings, &verdict);
  gtk_label_set_text (self->state_label, fm_hold_state_name (verdict.state));
  gtk_label_set_text (self->text_label, verdict.text);
  hold = hold_text (self, verdict.highest_c);
  gtk_label_set_text (self->hold_label, hold != NULL ? hold : "");
  gtk_widget_set_visible (GTK_WIDGET (self->hold_label), hold != NULL);
  fm_hold_verdict_clear (&verdict);
}
